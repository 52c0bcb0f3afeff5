/**
 * Formulas that are set on demand, as MathML. The typesetter is fetched when the first one is wanted; until then, and
 * where it can't be fetched, the TeX stands there.
 */
const wanted = new WeakMap<HTMLElement, string>();

/** Sets TeX in an element. Of several that are asked for in turn the last one stays. */
export async function setFormula(host: HTMLElement, tex: string): Promise<void> {
  if (wanted.get(host) === tex) return;
  const first = !wanted.has(host);
  wanted.set(host, tex);
  // A formula whose numbers move keeps its old ones for the blink that setting takes: nothing jumps.
  if (first) host.textContent = tex;
  try {
    const { default: katex } = await import("katex");
    if (wanted.get(host) !== tex) return;
    // Not strict: units hold letters that TeX has other commands for.
    katex.render(`\\displaystyle ${tex}`, host, { output: "mathml", throwOnError: false, strict: false });
    for (const note of host.querySelectorAll("annotation")) note.remove();
  } catch {
    // Without a network the typesetter may be out of reach: the next time tries again.
    if (wanted.get(host) !== tex) return;
    wanted.delete(host);
    host.textContent = tex;
  }
}
