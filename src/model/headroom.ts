/** What is left above the speed asked for. Any one unit of speed. */
import { relation } from "./relation.ts";

/** How far the ceiling lies above the set speed; negative: the governor can't hold it. */
export const speedHeadroom = relation({
  name: "speed headroom",
  symbol: "\\Delta n",
  unit: "rad/s",
  terms: {
    ceiling: { name: "ceiling at this load and charge", symbol: "n_c", unit: "rad/s" },
    setSpeed: { name: "set head speed", symbol: "n", unit: "rad/s" },
  },
  formula: (t) => `${t.ceiling} - ${t.setSpeed}`,
  of: (v) => v.ceiling - v.setSpeed,
  assumes: "Both for the same load and charge. Any unit of speed will do.",
  source: "definition",
});
