/** Frames that come late, as on a machine that can't keep up, when the test says so. */
import { vi } from "vitest";

/** Takes the place of the browser's frames: `late` is the next one, 60 ms after the last; `stop` ends it. */
export function lateFrames(): { late(): void; stop(): void } {
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
