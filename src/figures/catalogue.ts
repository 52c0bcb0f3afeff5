/**
 * Every computed figure by its stable name: its unit, whether each flight mode has its own, and what it is called.
 * Links, tests and other programs rely on names and units; titles may change.
 */
export interface Entry {
  readonly unit: string;
  readonly perMode: boolean;
  /** Plain English, for the opened number and for tables. */
  readonly title: string;
}

const whole = (unit: string, title: string): Entry => ({ unit, perMode: false, title });
const each = (unit: string, title: string): Entry => ({ unit, perMode: true, title });

export const catalogue = {
  "gear-ratio": whole("1", "motor turns for one turn of the rotor"),
  "pack-open-voltage": whole("V", "pack at rest, at this charge"),
  "pack-resistance": whole("ohm", "pack and leads, at this temperature"),
  "air-density": whole("kg/m3", "density of the air at the field"),
  "no-load-head-speed": whole("rpm", "fastest, with nothing to drive"),
  "learning-head-speed": whole("rpm", "head speed to expect while it learns"),
  "learned-motor-speed": whole("rpm", "motor speed that 100 % throttle asks for"),
  "learned-head-speed": whole("rpm", "head speed that 100 % throttle asks for"),
  "usable-low-head-speed": whole("rpm", "head speed at the low end of the usable band"),
  "usable-high-head-speed": whole("rpm", "head speed at the high end of the usable band"),
  "reference-state": whole("text", "state of the learned reference"),
  "set-head-speed": each("rpm", "head speed that the mode asks for"),
  throttle: each("percent", "exact throttle for the mode's head speed"),
  "throttle-entered": each("percent", "throttle as a transmitter takes it"),
  "head-speed-entered": each("rpm", "head speed that the rounded throttle gives"),
  "stale-head-speed": each("rpm", "head speed that the old throttle value gives with today's parts"),
  "ceiling-hover": each("rpm", "most the rotor can turn in hover"),
  "ceiling-full-pitch": each("rpm", "most the rotor can turn at full pitch"),
  "speed-headroom-hover": each("rpm", "room above the set speed in hover"),
  "speed-headroom-full-pitch": each("rpm", "room above the set speed at full pitch"),
  "duty-hover": each("percent", "duty that holds the set speed in hover"),
  "duty-full-pitch": each("percent", "duty that holds the set speed at full pitch"),
  "motor-speed": each("rpm", "motor speed at the set speed"),
  "electrical-speed": each("rpm", "electrical speed at the set speed"),
  "tail-rotor-speed": each("rpm", "tail rotor speed at the set speed"),
  "tip-speed": each("m/s", "speed of the blade tips"),
  "tip-mach": each("1", "tip speed over the speed of sound"),
  "blade-pull": each("N", "pull at the bolt of one blade"),
  "rotor-energy": each("J", "energy stored in all blades"),
  "hover-collective": each("deg", "pitch that hovers"),
  "hover-power": each("W", "power of the main rotor in hover"),
  "hover-motor-current": each("A", "motor current in hover"),
  "hover-pack-current": each("A", "pack current in hover"),
  "hover-duration": each("min", "hover from this charge down to 20 %, or until it is no longer held"),
  "hover-board-heat": each("W", "heat that stays on board in hover"),
  "hover-efficiency": each("percent", "share of the cells' power that reaches the main shaft in hover"),
  "full-pitch-power": each("W", "power of both rotors at full pitch"),
  "full-pitch-pack-current": each("A", "pack current at full pitch"),
  "full-pitch-motor-current": each("A", "motor current at full pitch"),
  "full-pitch-board-heat": each("W", "heat that stays on board at full pitch"),
  "full-pitch-efficiency": each("percent", "share of the cells' power that reaches the main shaft at full pitch"),
  "full-pitch-duration": each("min", "full pitch from this charge down to 20 %, or until it is no longer held"),
  "lowest-charge": each("percent", "charge down to which full pitch can be held"),
} as const satisfies Readonly<Record<string, Entry>>;

export type QuantityName = keyof typeof catalogue;

export const quantityNames = Object.keys(catalogue) as readonly QuantityName[];
