/**
 * Machines of ours to start from, invented for the purpose: no real product is meant. Links tell a machine by how it
 * differs from one of these, so a demo machine never changes once links can name it; a better one is added beside it.
 */
import { defaultMachine, type Machine, VERSION } from "./machine.ts";
import { same } from "./paths.ts";

/** The machine on the bench at first: 6 cells, a rotor of just under a metre. */
export const clubTrainer: Machine = defaultMachine;

/** A small machine for the garden: 3 cells. */
const gardenMachine: Machine = {
  version: VERSION,
  name: "3-cell garden machine",
  pack: {
    cells: 3,
    chemistry: "lipo",
    capacityMah: 850,
    cellResistanceMilliohm: 9,
    leadResistanceMilliohm: 6,
    chargePercent: 100,
    temperatureC: 25,
  },
  motor: {
    kvRpmPerVolt: 4100,
    resistanceMilliohm: 62,
    noLoadCurrentA: 0.9,
    noLoadVoltageV: 8,
    poles: 8,
    ratedRpm: 60_000,
    rotorInertiaGcm2: 8,
    windingTemperatureC: 55,
  },
  controller: {
    ...defaultMachine.controller,
    resistanceMilliohm: 7,
    startRampSeconds: 8,
  },
  gears: { pinionTeeth: 11, mainTeeth: 110, moduleMm: 0.4, meshEfficiency: 0.95, secondStage: null, tailRatio: 4.1 },
  mainRotor: {
    blades: 2,
    diameterMm: 430,
    chordMm: 20,
    rootCutoutMm: 42,
    bladeMassG: 6.5,
    bladeCentreMm: 112,
    ratedRpm: 4800,
    bladeSection: "symmetric-12",
  },
  tailRotor: { blades: 2, diameterMm: 92, chordMm: 12, armMm: 268 },
  airframe: { massG: 330, dragAreaM2: 0.004 },
  place: { ...defaultMachine.place },
  modes: [
    { name: "gentle", headRpm: 3150, collectiveMinDeg: -4, collectiveMaxDeg: 9 },
    { name: "club", headRpm: 3550, collectiveMinDeg: -8, collectiveMaxDeg: 10 },
    { name: "sporty", headRpm: 4100, collectiveMinDeg: -11, collectiveMaxDeg: 11 },
  ],
};

/** A large machine: 12 cells, blades of 700 mm. */
const longBlades: Machine = {
  version: VERSION,
  name: "12-cell long-blade machine",
  pack: {
    cells: 12,
    chemistry: "lipo",
    capacityMah: 5000,
    cellResistanceMilliohm: 1.6,
    leadResistanceMilliohm: 2.5,
    chargePercent: 100,
    temperatureC: 25,
  },
  motor: {
    kvRpmPerVolt: 500,
    resistanceMilliohm: 13,
    noLoadCurrentA: 2.2,
    noLoadVoltageV: 20,
    poles: 10,
    ratedRpm: 30_000,
    rotorInertiaGcm2: 900,
    windingTemperatureC: 65,
  },
  controller: {
    ...defaultMachine.controller,
    resistanceMilliohm: 2,
    startRampSeconds: 15,
  },
  gears: { pinionTeeth: 12, mainTeeth: 124, moduleMm: 1, meshEfficiency: 0.97, secondStage: null, tailRatio: 4.7 },
  mainRotor: {
    blades: 2,
    diameterMm: 1580,
    chordMm: 62,
    rootCutoutMm: 160,
    bladeMassG: 188,
    bladeCentreMm: 425,
    ratedRpm: 2200,
    bladeSection: "symmetric-12",
  },
  tailRotor: { blades: 2, diameterMm: 306, chordMm: 30, armMm: 945 },
  airframe: { massG: 5200, dragAreaM2: 0.03 },
  place: { ...defaultMachine.place },
  modes: [
    { name: "gentle", headRpm: 1480, collectiveMinDeg: -4, collectiveMaxDeg: 9 },
    { name: "club", headRpm: 1700, collectiveMinDeg: -8, collectiveMaxDeg: 11 },
    { name: "sporty", headRpm: 1960, collectiveMinDeg: -12, collectiveMaxDeg: 12 },
  ],
};

/** Every demo machine, the one that is on the bench at first in front. */
export const demos: readonly Machine[] = [clubTrainer, gardenMachine, longBlades];

/** The demo machine whose name a machine bears although its parts are others by now; null where it has a name of its own. */
export function outgrownDemo(machine: Machine): Machine | null {
  const demo = demos.find(({ name }) => name === machine.name);
  // A fuller or emptier pack, another day or another wish is still the same machine.
  const parts = (each: Machine) => ({
    ...each,
    modes: null,
    place: null,
    controller: null,
    pack: { ...each.pack, chargePercent: 0 },
  });
  return demo && !same(parts(demo), parts(machine)) ? demo : null;
}
