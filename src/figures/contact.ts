/** How the teeth of a pinion share the load on the machine's main gear. */
import { meshOf } from "#model/gears-mesh";
import { undercutContactRatio } from "#model/undercut";
import type { Figures } from "./figures.ts";

/**
 * Mean number of tooth pairs in contact for a pinion on the machine's main gear, a ratio; an undercut pinion's is what the
 * undercut leaves. Null where there is no mesh. Source: `meshOf`, `undercutContactRatio`.
 */
export function contactWith(figures: Figures, pinionTeeth: number): number | null {
  const { module, mainTeeth } = figures.rig.parts.gears;
  const mesh = meshOf({ module, pinionTeeth, mainTeeth });
  if (!mesh) return null;
  const contact = mesh.undercut ? Math.min(mesh.contactRatio, undercutContactRatio(pinionTeeth)) : mesh.contactRatio;
  return Number.isFinite(contact) ? contact : null;
}
