/** The ways into teaching: the presenting view, and questions to the room. All of it is fetched when it is asked for. */

const asked = (): boolean => new URLSearchParams(location.search).has("present");

async function start(doc: Document, anew: boolean): Promise<void> {
  const { present, followAddress } = await import("./present.ts");
  if (anew || asked()) present(doc, anew);
  followAddress(doc);
}

/** Waits for the teacher: a link to present, an opened fold of theirs, or an address that asks for it. */
export function awaitTeacher(doc: Document): void {
  doc.addEventListener("click", (event) => {
    if (event.ctrlKey || event.metaKey || event.shiftKey || !(event.target as Element).closest?.("[data-present]"))
      return;
    event.preventDefault();
    void start(doc, true);
  });
  // A fold's own event doesn't rise.
  doc.addEventListener(
    "toggle",
    (event) => {
      const fold = event.target as HTMLDetailsElement;
      if (fold.open && fold.matches(".teacher")) void import("./teacher-fold.ts").then(({ fitOut }) => fitOut(fold));
    },
    true,
  );
  if (asked()) void start(doc, false);
}
