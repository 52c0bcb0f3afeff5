/** Frames that come late, as on a machine that can't keep up, when the test says so. */
import { vi } from "vitest";

export interface Frames {
  /** The next frame, 60 ms after the last. */
  late(): void;
  /** Puts the browser's own frames back. */
  stop(): void;
}

/** Takes the place of the browser's frames, once nobody waits for one of those any more. */
export async function lateFrames(): Promise<Frames> {
  for (let i = 0; i < 3; i++) await new Promise((resolve) => requestAnimationFrame(resolve));
  let time = 0;
  let calls: ((time: number) => void)[] = [];
  vi.stubGlobal("requestAnimationFrame", (call: (time: number) => void) => calls.push(call));
  const late = () => {
    time += 60;
    const now = calls;
    calls = [];
    for (const call of now) call(time);
  };
  return {
    late,
    stop() {
      // Whoever still waits for a frame gets it.
      for (let i = 0; i < 9; i++) late();
      vi.unstubAllGlobals();
    },
  };
}
