/** Lets the browser keep the whole workbook, once the page has everything that it needs itself. */

/** Registers the service worker of a built site. Where there is none, or it is refused, the workbook works as before. */
export function keepForTheField(view: Window): void {
  const { serviceWorker, connection } = view.navigator as Navigator & { connection?: { saveData?: boolean } };
  // The dev server has no such file, and whoever saves data is asked for no more than the page.
  if (!import.meta.env?.PROD || !serviceWorker || connection?.saveData) return;
  const idle = view.requestIdleCallback ?? ((work: () => void) => view.setTimeout(work, 500));
  const register = () => idle(() => void serviceWorker.register("offline.js").catch(() => {}));
  if (view.document.readyState === "complete") register();
  else view.addEventListener("load", register, { once: true });
}
