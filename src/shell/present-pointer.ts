/** A ring around the pointer, large enough to be seen from the back of a room. */
import { el } from "#view/dom";

/** Puts the ring up; the function that comes back takes it away. */
export function showPointer(doc: Document): () => void {
  const ring = el(doc, "div", { class: "present-ring", "aria-hidden": "true", hidden: true });
  doc.body.append(ring);
  const move = (event: PointerEvent) => {
    // A finger covers what it points at anyway.
    ring.hidden = event.pointerType === "touch";
    ring.style.translate = `${event.clientX}px ${event.clientY}px`;
  };
  const press = (event: PointerEvent) => ring.classList.toggle("is-pressed", event.type === "pointerdown");
  const leave = () => {
    ring.hidden = true;
  };
  doc.addEventListener("pointermove", move);
  doc.addEventListener("pointerdown", press);
  doc.addEventListener("pointerup", press);
  doc.documentElement.addEventListener("pointerleave", leave);
  return () => {
    doc.removeEventListener("pointermove", move);
    doc.removeEventListener("pointerdown", press);
    doc.removeEventListener("pointerup", press);
    doc.documentElement.removeEventListener("pointerleave", leave);
    ring.remove();
  };
}
