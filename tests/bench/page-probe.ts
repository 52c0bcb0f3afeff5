/**
 * What the page benchmarks put into a page before its own scripts: a clock for the first picture and the drawn plots,
 * and a hand that moves sliders. It runs in the browser, so it stands alone and imports nothing.
 */
export interface Probe {
  /** Milliseconds since the page was asked for: first paint of content, and all plots and figures there. */
  firstPaint: number | null;
  drawn: number | null;
  layoutShift: number;
  /** Moves one slider `count` times, each time from a quiet page: milliseconds from each event to its last change. */
  step(slider: string, count: number): Promise<number[]>;
  /** Moves one slider once in every frame, `count` times: the milliseconds between frames. */
  stream(slider: string, count: number): Promise<number[]>;
  /** Lets frames pass and does nothing. */
  rest(count: number): Promise<void>;
}

declare global {
  interface Window {
    probe: Probe;
  }
}

export function installProbe(): void {
  const shown = "output[data-quantity], figure[data-plot]";
  const probe: Probe = { firstPaint: null, drawn: null, layoutShift: 0, step, stream, rest };
  window.probe = probe;

  const watch = (type: string, take: (entry: PerformanceEntry) => void): void =>
    new PerformanceObserver((list) => list.getEntries().forEach(take)).observe({ type, buffered: true });
  watch("paint", (entry) => {
    if (entry.name === "first-contentful-paint") probe.firstPaint = entry.startTime;
  });
  watch("layout-shift", (entry) => {
    const shift = entry as PerformanceEntry & { value: number; hadRecentInput: boolean };
    if (!shift.hadRecentInput) probe.layoutShift += shift.value;
  });

  const allDrawn = (): boolean => {
    const plots = [...document.querySelectorAll("figure[data-plot]")];
    const figures = [...document.querySelectorAll("output[data-quantity]")];
    const curves = plots.filter((plot) => plot.querySelector("svg path[d]"));
    return curves.length >= 3 && figures.filter((figure) => /\d/.test(figure.textContent ?? "")).length >= 12;
  };
  const look = (): void => {
    if (document.documentElement && allDrawn()) probe.drawn = performance.now();
    else requestAnimationFrame(look);
  };
  requestAnimationFrame(look);

  // The first task after a frame: by then its picture has been handed over.
  const channel = new MessageChannel();
  let afterFrame: (() => void)[] = [];
  channel.port1.onmessage = () => {
    const waiting = afterFrame;
    afterFrame = [];
    for (const done of waiting) done();
  };
  const frame = (): Promise<number> =>
    new Promise((done) => {
      requestAnimationFrame((start) => {
        afterFrame.push(() => done(start));
        channel.port2.postMessage(null);
      });
    });

  let lastChange = 0;
  const changes = new MutationObserver((records) => {
    const ours = records.some((record) => {
      const at = record.target instanceof Element ? record.target : record.target.parentElement;
      return at?.closest(shown);
    });
    if (ours) lastChange = performance.now();
  });
  const observe = (): void =>
    changes.observe(document.documentElement, {
      subtree: true,
      childList: true,
      characterData: true,
      attributes: true,
    });

  const find = (slider: string): HTMLInputElement => {
    const element = document.querySelector<HTMLInputElement>(slider);
    if (!element) throw new Error(`There is no ${slider} on the page.`);
    return element;
  };
  /** Values up and down the middle of the slider's range, each different from the one before. */
  const wave = (slider: HTMLInputElement, count: number): number[] => {
    const [low, high] = [Number(slider.min), Number(slider.max)];
    const step = Number(slider.step) || (high - low) / 200;
    const levels = Math.max(2, Math.min(24, Math.floor((high - low) / step / 2)));
    const stride = Math.max(1, Math.floor((high - low) / step / 2 / levels)) * step;
    const first = low + Math.round((high - low) / 4 / step) * step;
    return Array.from({ length: count }, (_, i) => {
      const turn = i % (2 * levels - 2);
      return Number((first + stride * (turn < levels ? turn : 2 * levels - 2 - turn)).toFixed(6));
    });
  };
  const put = (slider: string, value: number | string): void => {
    const element = find(slider);
    element.value = String(value);
    element.dispatchEvent(new Event("input", { bubbles: true }));
  };

  async function step(slider: string, count: number): Promise<number[]> {
    const was = find(slider).value;
    const times: number[] = [];
    observe();
    for (const value of wave(find(slider), count)) {
      await rest(3);
      lastChange = 0;
      const start = performance.now();
      put(slider, value);
      for (let quiet = 0, seen = 0; quiet < 3 || (seen === 0 && quiet < 12); quiet++) {
        await frame();
        if (lastChange > seen) {
          seen = lastChange;
          quiet = 0;
        }
      }
      if (lastChange > 0) times.push(lastChange - start);
    }
    changes.disconnect();
    put(slider, was);
    await rest(3);
    return times;
  }

  async function stream(slider: string, count: number): Promise<number[]> {
    const was = find(slider).value;
    const starts = [await frame()];
    for (const value of wave(find(slider), count)) {
      put(slider, value);
      starts.push(await frame());
    }
    put(slider, was);
    await rest(3);
    return starts.slice(1).map((start, i) => start - (starts[i] ?? start));
  }

  async function rest(count: number): Promise<void> {
    for (let i = 0; i < count; i++) await frame();
  }
}
