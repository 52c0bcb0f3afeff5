/** The page on what the rotor asks: its plots answer to the machine, in words too. */
import { expect, it } from "vitest";
import { hoverPowerPlot, hoverTimePlot } from "#blocks/hover-plots";
import { pitchPowerPlot } from "#blocks/pitch-power-plot";
import { slowerFacts, slowerTable, twiceTable } from "#blocks/slower-tables";
import { figuresOf } from "#figures/figures";
import { demos } from "#machine/demos";
import { withValue } from "#machine/paths";

const machine = demos[0]!;
const figures = figuresOf(machine);

it("has a mark for each mode, on the curve, that changes its head speed", () => {
  for (const { state } of [hoverPowerPlot(figures, 2), hoverTimePlot(figures, null, 2)]) {
    expect(state.handles?.map(({ path }) => path)).toEqual(machine.modes.map((_, i) => `modes.${i}.headRpm`));
    for (const handle of state.handles ?? []) expect(handle.y).toBeGreaterThan(0);
  }
});

it("shows the turn with the machine on both sides of it", () => {
  const { state } = slowerTable(figures, 2);
  const minutes = state.rows.find((row) => row.marked)!.cells.map((cell) => Number.parseFloat(cell));
  expect(minutes[1]).toBeGreaterThan(minutes[0]!);
  expect(minutes[2]).toBeGreaterThanOrEqual(minutes[1]!);
  // Below the turn it is shorter, or there is no hover at all.
  expect(Number.isNaN(minutes[3]!) || minutes[3]! < minutes[2]!).toBe(true);
});

it("shows that twice the head speed is neither twice the power", () => {
  const times = twiceTable(figures, 2).state.rows.map((row) => Number(row.cells[2]));
  expect(times[0]).toBeGreaterThan(6);
  expect(times[1]).toBeLessThan(4);
  expect(slowerFacts(figures, 2).hoverTimes).toBeCloseTo(times[1]!, 1);
});

it("says so when the machine can't hover, or full pitch asks too much", () => {
  expect(hoverPowerPlot(figuresOf(withValue(demos[1]!, "airframe.massG", 30_000))).state.words).toMatch(
    /At no head speed/,
  );
  const tired = figuresOf(withValue(withValue(machine, "pack.chargePercent", 5), "modes.2.headRpm", 2700));
  expect(pitchPowerPlot(tired, 2).state.words).toMatch(/There is only/);
});
