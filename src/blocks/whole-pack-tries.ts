/** Buttons that put a changed copy of the machine beside it: an older pack, a cold morning, lower head speeds, a smaller pack. */
import type { Bench } from "#machine/bench";
import { fieldAt } from "#machine/fields";
import type { Machine } from "#machine/machine";
import { el, setText } from "#view/dom";
import { formatNumber, formatValue } from "#view/format";
import { type Shown, show, type View } from "#view/shown";
import { enWholePack } from "#view/words/en-whole-pack";

const en = enWholePack.tries;

/** An older pack's resistance, a cold pack, °C, and how much slower and smaller: the usual sizes. Our choice. */
const OLDER = 2;
const COLD = 5;
const SLOWER = 0.9;
const SMALLER = 0.75;

const within = (path: string, value: number): number => {
  const { min, max } = fieldAt(path);
  return Math.min(max, Math.max(min, value));
};

const withPack = (machine: Machine, change: Partial<Machine["pack"]>): Machine => ({
  ...machine,
  pack: { ...machine.pack, ...change },
});

/** What each button makes of a machine; a value stays within what the record takes, and the button says what it asks for. */
const tries = [
  {
    key: "older",
    says: en.older(formatNumber(OLDER)),
    make: (m: Machine) =>
      withPack(m, {
        cellResistanceMilliohm: within("pack.cellResistanceMilliohm", OLDER * m.pack.cellResistanceMilliohm),
      }),
  },
  {
    key: "cold",
    get says() {
      return en.cold(formatValue(COLD, "°C"));
    },
    make: (m: Machine) => withPack(m, { temperatureC: COLD }),
  },
  {
    key: "slower",
    says: en.slower,
    make: (m: Machine): Machine => ({
      ...m,
      modes: m.modes.map((mode) => ({
        ...mode,
        headRpm: within("modes.0.headRpm", 10 * Math.round((SLOWER * mode.headRpm) / 10)),
      })),
    }),
  },
  {
    key: "smaller",
    says: en.smaller,
    make: (m: Machine) =>
      withPack(m, { capacityMah: within("pack.capacityMah", 50 * Math.round((SMALLER * m.pack.capacityMah) / 50)) }),
  },
] as const;

interface TriesState {
  /** The try that stands beside the machine; "own" for another what-if; null for none. */
  readonly at: string | null;
}

/** Lets the reader try what changes a whole pack; the what-if stands on the bench like any other. */
export function wholePackTries(machine: Machine, whatIf: Machine | null): Shown<TriesState> {
  const same = (made: Machine) => JSON.stringify(made) === JSON.stringify(whatIf);
  const at = whatIf && (tries.find(({ make }) => same(make(machine)))?.key ?? "own");
  return show<TriesState>(triesView, { at });
}

const wordsOf = ({ at }: TriesState): string =>
  at === null ? en.none : en.now(tries.find(({ key }) => key === at)?.says ?? en.own);

const triesView: View<TriesState> = {
  name: "whole-pack-tries",
  words: (state) => `${en.title}: ${tries.map(({ says }) => says).join(", ")}. ${wordsOf(state)}`,
  mount(host: HTMLElement, bench: Bench) {
    const doc = host.ownerDocument;
    const buttons = tries.map(({ key, says, make }) => {
      const button = el(doc, "button", { type: "button", "data-try": key }, says);
      button.addEventListener("click", () => bench.replace(bench.now, make(bench.now)));
      return { key, button };
    });
    const drop = el(doc, "button", { type: "button", class: "quiet" }, en.drop);
    drop.addEventListener("click", () => bench.dropWhatIf());
    const said = el(doc, "p", { role: "status", class: "whole-pack-said" });
    const row = el(doc, "div", { class: "whole-pack-tries" }, ...buttons.map(({ button }) => button));
    const label = el(doc, "p", { class: "whole-pack-label" }, en.title);
    host.append(
      el(doc, "div", { class: "screen-only", role: "group", "aria-label": en.title }, label, row, said, drop),
    );
    return (state) => {
      for (const { key, button } of buttons) button.setAttribute("aria-pressed", String(key === state.at));
      drop.hidden = state.at === null;
      setText(said, state.at === null ? en.words : wordsOf(state));
    };
  },
};
