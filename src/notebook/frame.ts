/**
 * When the cells run. The runtime takes `requestAnimationFrame` from the global scope while it loads, and would let a
 * change wait for the next frame with it. This stands in its place for that moment: the first change in a frame is
 * computed at once, in the very frame in which the input came; more changes in the same frame wait for the next one.
 */
type Callback = (time: number) => void;
type Frame = (callback: Callback) => unknown;

const browser: Frame | undefined = globalThis.requestAnimationFrame;
const next: Frame = browser ?? ((callback) => setTimeout(callback, 0));

/** Tells whether this is the first change in its frame. */
type First = () => boolean;

/** By the time of the page's own timeline, which stands still for a frame: asking the browser for a call costs more. */
function byTimeline(timeline: { readonly currentTime: unknown }): First {
  let last: unknown = null;
  return () => {
    const now = timeline.currentTime;
    // A timeline that doesn't run yet tells no frames apart.
    if (now !== null && now === last) return false;
    last = now;
    return true;
  };
}

/** By a call at the next frame, where there is no timeline. */
function byCall(): First {
  let computed = false;
  return () => {
    if (computed) return false;
    computed = true;
    next(() => {
      computed = false;
    });
    return true;
  };
}

const timeline = globalThis.document?.timeline;
const first: First = timeline ? byTimeline(timeline) : byCall();

const soon: Frame = (callback) => {
  if (!first()) return next(callback);
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
