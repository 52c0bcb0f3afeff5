/** The set-up card: parts, reference, modes, limits, the steps with their cautions, and empty lines for what is measured. */
import type { QuantityName } from "#figures/catalogue";
import type { Figures } from "#figures/figures";
import { modeName } from "#figures/mode-name";
import { fieldAt } from "#machine/fields";
import { reserveCharge } from "#model/endurance";
import { motorSpeedLimit } from "#model/poles";
import { el, setText } from "#view/dom";
import { formatModelled, formatNumber, formatValue } from "#view/format";
import { machineTitle } from "#view/machine-name";
import { type Shown, show, type View } from "#view/shown";
import { en as enParts } from "#view/words/en";
import { enBlocks } from "#view/words/en-blocks";
import { enCard as en } from "#view/words/en-card";
import { fillOutput, quantityText } from "./quantity.ts";
import { warningList } from "./warnings.ts";

interface CardState {
  readonly figures: Figures;
}

/** The set-up card of a machine, to be printed on one page. */
export const setupCard = (figures: Figures): Shown<CardState> => show<CardState>(cardView, { figures });

type Line = readonly [name: string, text: string];

/** Blades are sold and limited by their millimetres: beside another unit these stand too. */
function diameter(value: number): string {
  const [own, shown] = [
    formatValue(value, "mm", { decimals: 0, units: "metric" }),
    formatValue(value, "mm", { decimals: 0 }),
  ];
  return own === shown ? own : `${shown} (${own})`;
}

/** A figure as it was entered, without needless zeros. */
const entered = (value: number, decimals: number): string => formatNumber(value, decimals).replace(/\.?0+$/, "");

function partLines({ machine }: Figures): Line[] {
  const { pack, motor, gears, mainRotor, tailRotor, airframe } = machine;
  const chemistry = fieldAt("pack.chemistry").choices?.find(({ value }) => value === pack.chemistry)?.name ?? "";
  const { secondStage } = gears;
  const second = secondStage ? en.secondStage(secondStage.driverTeeth, secondStage.drivenTeeth) : "";
  const module = formatValue(gears.moduleMm, "mm", { decimals: 2, units: "metric" }).replace(/0(?=\D*$)/, "");
  return [
    [en.part.pack, en.packOf(pack.cells, chemistry, formatValue(pack.capacityMah, "mAh"))],
    [en.part.motor, en.motorOf(formatValue(motor.kvRpmPerVolt, "rpm/V"), motor.poles)],
    [en.part.gears, en.gearsOf(gears.pinionTeeth, gears.mainTeeth, module) + second],
    [en.part.mainRotor, en.rotorOf(enParts.learned.bladeCount(mainRotor.blades), diameter(mainRotor.diameterMm))],
    [en.part.tailRotor, en.tailOf(diameter(tailRotor.diameterMm), entered(gears.tailRatio, 2))],
    [en.part.mass, formatValue(airframe.massG, "g")],
  ];
}

function referenceLines(figures: Figures): Line[] {
  const { usableLowPercent: low, usableHighPercent: high } = figures.machine.controller;
  const text = (name: QuantityName) => quantityText({ figures, name });
  const state = figures.value("reference-state") as keyof typeof enBlocks.quantity.states;
  return [
    [en.part.state, enBlocks.quantity.states[state]],
    [en.part.full, en.bothSpeeds(text("learned-head-speed"), text("learned-motor-speed"))],
    [
      en.part.band(entered(low, 1), entered(high, 1)),
      en.range(text("usable-low-head-speed"), text("usable-high-head-speed")),
    ],
  ];
}

function limitLines({ machine, rig }: Figures): Line[] {
  const { mainRotor, motor, controller } = machine;
  const limit = controller.electricalRpmLimit;
  const head = motorSpeedLimit({ electricalLimit: limit, poles: motor.poles }) / rig.ratio;
  const reserve = formatValue(100 * reserveCharge, "percent", { decimals: 0 });
  return [
    [en.part.blades, formatValue(mainRotor.ratedRpm, "rpm", { none: en.noBladeLimit })],
    [en.part.motor, formatValue(motor.ratedRpm, "rpm")],
    [en.part.controller, en.electrical(formatValue(limit, "rpm"), formatValue(head, "rpm"))],
    [en.part.landing, en.ofCharge(reserve)],
  ];
}

function steps(figures: Figures) {
  const head = figures.number("learning-head-speed");
  const throttle = formatValue(figures.machine.controller.learned.throttlePercent, "percent", { decimals: 0 });
  const speeds = head === null ? null : { head: formatModelled(head), motor: formatModelled(head * figures.rig.ratio) };
  return en.steps({ throttle, speeds });
}

/** A piece of the card: built once, then brought to a machine's figures. */
interface Piece {
  readonly element: HTMLElement;
  put(figures: Figures): void;
}

/** Names and texts beside each other; of each kind there are always as many. */
function lines(doc: Document, title: string, read: (figures: Figures) => readonly Line[]): Piece {
  const list = el(doc, "dl");
  const rows: (readonly [HTMLElement, HTMLElement])[] = [];
  return {
    element: el(doc, "section", {}, el(doc, "h3", {}, title), list),
    put(figures) {
      read(figures).forEach(([name, text], i) => {
        let row = rows[i];
        if (!row) {
          row = [el(doc, "dt"), el(doc, "dd")];
          rows.push(row);
          list.append(...row);
        }
        setText(row[0], name);
        setText(row[1], text);
      });
    },
  };
}

/** The steps of one job; only some of their words follow the machine. */
function stepList(doc: Document, place: number): Piece {
  const title = el(doc, "h3");
  const list = el(doc, "ol");
  const words: HTMLElement[] = [];
  return {
    element: el(doc, "section", {}, title, list),
    put(figures) {
      const job = steps(figures)[place];
      if (!job) return;
      setText(title, job.title);
      job.steps.forEach(({ does, caution }, i) => {
        let text = words[i];
        if (!text) {
          text = el(doc, "span");
          words.push(text);
          list.append(el(doc, "li", {}, text, ...(caution ? [" ", el(doc, "b", { class: "hand" }, caution)] : [])));
        }
        setText(text, does);
      });
    },
  };
}

const modeColumns: readonly (readonly [QuantityName, string])[] = [
  ["set-head-speed", enBlocks.modes.head],
  ["throttle", enBlocks.modes.throttle],
  ["throttle-entered", enBlocks.modes.entered],
  ["head-speed-entered", enBlocks.modes.real],
  ["lowest-charge", enBlocks.modes.lowest],
];

function modeTable(doc: Document): Piece {
  const titles = [enBlocks.modes.name, ...modeColumns.map(([, title]) => title), en.measured];
  const head = el(doc, "tr", {}, ...titles.map((title) => el(doc, "th", { scope: "col" }, title)));
  const body = el(doc, "tbody");
  const table = el(doc, "table", {}, el(doc, "thead", {}, head), body);
  const around = el(doc, "div", { class: "wide-table", tabindex: "0", role: "region", "aria-label": en.modes }, table);
  const rows: { readonly row: HTMLElement; readonly name: HTMLElement; readonly outputs: HTMLElement[] }[] = [];
  const add = () => {
    const name = el(doc, "th", { scope: "row" });
    const outputs = modeColumns.map(() => el(doc, "output"));
    const cells = outputs.map((output) => el(doc, "td", {}, output));
    const row = el(doc, "tr", {}, name, ...cells, el(doc, "td", { class: "blank" }));
    rows.push({ row, name, outputs });
    body.append(row);
  };
  return {
    element: el(doc, "section", { class: "card-modes" }, el(doc, "h3", {}, en.modes), around),
    put(figures) {
      const { modes } = figures.machine;
      while (rows.length < modes.length) add();
      while (rows.length > modes.length) rows.pop()?.row.remove();
      rows.forEach(({ name, outputs }, mode) => {
        setText(name, modeName(figures.machine, mode));
        modeColumns.forEach(([quantity], i) => {
          const output = outputs[i];
          if (output) fillOutput(output, { figures, name: quantity, mode, machine: null });
        });
      });
    },
  };
}

const cardView: View<CardState> = {
  name: "card",
  words: ({ figures }) =>
    [
      en.title,
      machineTitle(figures.machine),
      ...[...partLines(figures), ...referenceLines(figures), ...limitLines(figures)].map((line) => line.join(": ")),
      en.maker,
    ].join(". "),
  mount(host) {
    const doc = host.ownerDocument;
    const print = el(doc, "button", { type: "button", class: "print-card" }, en.print);
    // The page's styles print the card alone.
    print.addEventListener("click", () => doc.defaultView?.print());
    const title = el(doc, "h2");
    const facts = [
      lines(doc, en.parts, partLines),
      lines(doc, en.reference, referenceLines),
      lines(doc, en.limits, limitLines),
    ];
    const modes = modeTable(doc);
    const warnings = warningList(doc);
    const against = el(doc, "div", { class: "warnings" }, warnings.element);
    const jobs = [0, 1, 2].map((place) => stepList(doc, place));
    const columns = (pieces: readonly Piece[]) =>
      el(doc, "div", { class: "card-columns" }, ...pieces.map(({ element }) => element));
    const blanks = en.blanks.map((name) => el(doc, "span", { class: "fill-in" }, `${name} `));
    const card = el(
      doc,
      "section",
      { class: "card", "aria-label": en.title },
      title,
      el(doc, "p", { class: "fill-ins" }, ...blanks),
      columns(facts),
      modes.element,
      against,
      columns(jobs),
      el(doc, "p", { class: "maker" }, en.maker),
    );
    host.append(print, card);
    let last: Figures | null = null;
    return ({ figures }) => {
      if (figures === last) return;
      last = figures;
      setText(title, `${en.title}: ${machineTitle(figures.machine)}`);
      for (const piece of [...facts, modes, ...jobs]) piece.put(figures);
      warnings.put(figures.warnings, figures.machine);
      against.hidden = figures.warnings.length === 0;
    };
  },
};
