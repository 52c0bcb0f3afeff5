/**
 * When the cells run. The runtime takes `requestAnimationFrame` from the global scope while it loads, and would let a
 * change wait for the next frame with it. This stands in its place for that moment: the first change in a frame is
 * computed at once, in the very frame in which the input came; more changes in the same frame wait for the next one.
 */
type Callback = (time: number) => void;
type Frame = (callback: Callback) => unknown;

const browser: Frame | undefined = globalThis.requestAnimationFrame;
const next: Frame = browser ?? ((callback) => setTimeout(callback, 0));
let computed = false;

const soon: Frame = (callback) => {
  if (computed) return next(callback);
  computed = true;
  next(() => {
    computed = false;
  });
  queueMicrotask(() => callback(performance.now()));
  return 0;
};

const scope = globalThis as { requestAnimationFrame?: Frame };
scope.requestAnimationFrame = soon;

/** Puts the browser's own back. */
export function endLoading(): void {
  if (scope.requestAnimationFrame !== soon) return;
  if (browser) scope.requestAnimationFrame = browser;
  else delete scope.requestAnimationFrame;
}
