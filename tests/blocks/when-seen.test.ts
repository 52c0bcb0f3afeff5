import { afterEach, describe, expect, it, vi } from "vitest";
import { whenSeen } from "#blocks/when-seen";

type Look = (entries: { isIntersecting: boolean }[]) => void;

/** An observer whose eye the test opens and closes. */
function eye(): (near: boolean) => void {
  let look: Look = () => {};
  vi.stubGlobal(
    "IntersectionObserver",
    class {
      constructor(callback: Look) {
        look = callback;
      }
      observe() {}
    },
  );
  return (near) => look([{ isIntersecting: near }]);
}

afterEach(() => vi.unstubAllGlobals());

describe("work that waits until it is seen", () => {
  it("waits while the figure is far, however often it is woken, and is then done once", () => {
    const see = eye();
    const work = vi.fn();
    const seen = whenSeen(document.createElement("figure"), work);
    seen.wake();
    seen.wake();
    expect(work).not.toHaveBeenCalled();
    see(true);
    expect(work).toHaveBeenCalledTimes(1);
  });

  it("is done at once while the figure is near, and waits again when it has gone", () => {
    const see = eye();
    const work = vi.fn();
    const seen = whenSeen(document.createElement("figure"), work);
    see(true);
    expect(work).not.toHaveBeenCalled();
    seen.wake();
    expect(work).toHaveBeenCalledTimes(1);
    see(false);
    seen.wake();
    expect(work).toHaveBeenCalledTimes(1);
  });

  it("is done before the page is printed", () => {
    eye();
    const work = vi.fn();
    whenSeen(document.createElement("figure"), work).wake();
    window.dispatchEvent(new Event("beforeprint"));
    expect(work).toHaveBeenCalledTimes(1);
  });

  it("is done at once where nothing can look", () => {
    vi.stubGlobal("IntersectionObserver", undefined);
    const work = vi.fn();
    whenSeen(document.createElement("figure"), work).wake();
    expect(work).toHaveBeenCalledTimes(1);
  });
});
