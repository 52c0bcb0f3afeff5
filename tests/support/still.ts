/** Frames that begin at the same time: what is drawn when must not depend on how busy the machine of the tests is. */
const frame = globalThis.requestAnimationFrame;
globalThis.requestAnimationFrame = (call) => frame(() => call(0));
