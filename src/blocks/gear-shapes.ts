/** Outlines of gears for pictures: straight flanks are enough at that size. Angles in turns of the gear, lengths in px. */

/** The four corners of tooth `i` of a gear of module `m` around the origin; tooth 0 points to the right. */
function corners(teeth: number, m: number, i: number): string[] {
  const [root, tip] = [(m * teeth) / 2 - 1.25 * m, (m * teeth) / 2 + m];
  const step = (2 * Math.PI) / teeth;
  const at = (radius: number, angle: number) =>
    `${(radius * Math.cos(angle)).toFixed(1)},${(radius * Math.sin(angle)).toFixed(1)}`;
  const a = i * step;
  return [at(root, a - 0.34 * step), at(tip, a - 0.13 * step), at(tip, a + 0.13 * step), at(root, a + 0.34 * step)];
}

/** A whole gear as one path. */
export function outline(teeth: number, m: number): string {
  return `M${Array.from({ length: teeth }, (_, i) => corners(teeth, m, i).join("L")).join("L")}Z`;
}

/** The piece of a gear with tooth 0 and `reach` teeth to either side, cut out to its axis; the whole gear where that is less. */
export function piece(teeth: number, m: number, reach: number): string {
  if (2 * reach + 1 >= teeth) return outline(teeth, m);
  return `M0,0L${Array.from({ length: 2 * reach + 1 }, (_, i) => corners(teeth, m, i - reach).join("L")).join("L")}Z`;
}

/** Every `every`-th tooth of a gear, from tooth `first` on, each closed: the teeth to be filled in. */
export function someTeeth(teeth: number, m: number, first: number, every: number): string {
  let path = "";
  for (let i = first; i < teeth; i += every) path += `M${corners(teeth, m, i).join("L")}Z`;
  return path;
}

/** Degrees by which a pinion at the right of a gear is turned so that its gap faces the tooth that points at it. */
export const facing = (pinion: number): number => (pinion % 2 === 0 ? 180 / pinion : 0);

/** The pinion's tooth beside that gap: the one that pushes the tooth of the gear. */
export const pushing = (pinion: number): number => Math.floor(pinion / 2);
