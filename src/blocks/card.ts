/** The set-up card: parts, reference, modes, limits, the steps with their cautions, and empty lines for what is measured. */
import type { QuantityName } from "#figures/catalogue";
import type { Figures } from "#figures/figures";
import { el } from "#view/dom";
import { formatValue } from "#view/format";
import { type Shown, show, type View } from "#view/shown";
import { enBlocks as en } from "#view/words/en-blocks";
import { checkSteps, endPointSteps, learningSteps, type StepList } from "./card-steps.ts";
import { fillOutput } from "./quantity.ts";
import { warningItem } from "./warnings.ts";

interface CardState {
  readonly figures: Figures;
}

/** The set-up card of a machine, to be printed on one page. */
export const setupCard = (figures: Figures): Shown<CardState> => show<CardState>(cardView, { figures });

type Line = readonly [name: string, text: string];

function partLines({ machine }: Figures): Line[] {
  const { pack, motor, gears, mainRotor, tailRotor, airframe } = machine;
  const chemistry = { lipo: "lithium polymer", lihv: "high-voltage lithium polymer", life: "lithium iron phosphate" }[
    pack.chemistry
  ];
  return [
    ["Pack", `${pack.cells} cells, ${chemistry}, ${formatValue(pack.capacityMah, "mAh")}`],
    ["Motor", `${formatValue(motor.kvRpmPerVolt, "rpm/V")}, ${motor.poles} magnet poles`],
    [
      "Gears",
      `${gears.pinionTeeth} : ${gears.mainTeeth}, module ${gears.moduleMm} mm${gears.secondStage ? `, then ${gears.secondStage.driverTeeth} : ${gears.secondStage.drivenTeeth}` : ""}`,
    ],
    ["Main rotor", `${mainRotor.blades} blades, ${formatValue(mainRotor.diameterMm, "mm", { decimals: 0 })} across`],
    [
      "Tail rotor",
      `${formatValue(tailRotor.diameterMm, "mm", { decimals: 0 })} across, ${gears.tailRatio} turns for one`,
    ],
    ["Mass", formatValue(airframe.massG, "g")],
  ];
}

function referenceLines(figures: Figures): Line[] {
  const { controller } = figures.machine;
  const text = (name: QuantityName) => formatValue(figures.number(name), "rpm");
  return [
    ["State", en.quantity.states[figures.value("reference-state") as keyof typeof en.quantity.states]],
    ["100 % asks for", `${text("learned-head-speed")} at the rotor, ${text("learned-motor-speed")} at the motor`],
    [
      `Usable band ${controller.usableLowPercent} to ${controller.usableHighPercent} %`,
      `${text("usable-low-head-speed")} to ${text("usable-high-head-speed")}`,
    ],
  ];
}

function limitLines({ machine, rig }: Figures): Line[] {
  const { mainRotor, motor, controller } = machine;
  return [
    ["Blades", mainRotor.ratedRpm === null ? "none printed: ask their maker" : formatValue(mainRotor.ratedRpm, "rpm")],
    ["Motor", formatValue(motor.ratedRpm, "rpm")],
    [
      "Controller",
      `${formatValue(controller.electricalRpmLimit, "rpm")} electrical: ${formatValue((controller.electricalRpmLimit * 2) / motor.poles / rig.ratio, "rpm")} at the rotor`,
    ],
    ["Land at", "20 % of charge"],
  ];
}

const modeColumns: readonly (readonly [QuantityName, string])[] = [
  ["set-head-speed", en.modes.head],
  ["throttle", en.modes.throttle],
  ["throttle-entered", en.modes.entered],
  ["head-speed-entered", en.modes.real],
  ["lowest-charge", en.modes.lowest],
];

function lines(doc: Document, title: string, all: readonly Line[]): HTMLElement {
  const rows = all.flatMap(([name, text]) => [el(doc, "dt", {}, name), el(doc, "dd", {}, text)]);
  return el(doc, "section", {}, el(doc, "h3", {}, title), el(doc, "dl", {}, ...rows));
}

function stepList(doc: Document, { title, steps }: StepList): HTMLElement {
  const items = steps.map(({ does, caution }) =>
    el(doc, "li", {}, does, ...(caution ? [" ", el(doc, "b", { class: "hand" }, caution)] : [])),
  );
  return el(doc, "section", {}, el(doc, "h3", {}, title), el(doc, "ol", {}, ...items));
}

function modeTable(doc: Document, figures: Figures): HTMLElement {
  const titles = [en.modes.name, ...modeColumns.map(([, title]) => title), en.card.measured];
  const rows = figures.machine.modes.map(({ name }, mode) => {
    const cells = modeColumns.map(([quantity]) => {
      const output = el(doc, "output");
      fillOutput(output, { figures, name: quantity, mode, machine: null });
      return el(doc, "td", {}, output);
    });
    return el(
      doc,
      "tr",
      {},
      el(doc, "th", { scope: "row" }, name || `${mode + 1}`),
      ...cells,
      el(doc, "td", { class: "blank" }),
    );
  });
  const head = el(doc, "tr", {}, ...titles.map((title) => el(doc, "th", { scope: "col" }, title)));
  const table = el(doc, "table", {}, el(doc, "thead", {}, head), el(doc, "tbody", {}, ...rows));
  return el(
    doc,
    "section",
    { class: "card-modes" },
    el(doc, "h3", {}, en.card.modes),
    el(doc, "div", { class: "wide-table", tabindex: "0", role: "region", "aria-label": en.card.modes }, table),
  );
}

function build(doc: Document, figures: Figures): HTMLElement[] {
  const { machine } = figures;
  const learn = {
    throttle: formatValue(machine.controller.learned.throttlePercent, "percent", { decimals: 0 }),
    headSpeed: formatValue(figures.number("learning-head-speed"), "rpm"),
    motorSpeed: formatValue((figures.number("learning-head-speed") ?? 0) * figures.rig.ratio, "rpm"),
  };
  const warnings = figures.warnings.map((warning) => warningItem(doc, warning));
  const blank = (name: string) => el(doc, "span", { class: "fill-in" }, `${name} `);
  return [
    el(doc, "h2", {}, `${en.card.title}: ${machine.name}`),
    el(doc, "p", { class: "fill-ins" }, blank(en.card.date), blank(en.card.place), blank(en.card.signed)),
    el(
      doc,
      "div",
      { class: "card-columns" },
      lines(doc, en.card.parts, partLines(figures)),
      lines(doc, en.card.reference, referenceLines(figures)),
      lines(doc, en.card.limits, limitLines(figures)),
    ),
    modeTable(doc, figures),
    ...(warnings.length > 0 ? [el(doc, "div", { class: "warnings" }, el(doc, "ul", {}, ...warnings))] : []),
    el(
      doc,
      "div",
      { class: "card-columns" },
      ...[endPointSteps(), learningSteps(learn), checkSteps()].map((list) => stepList(doc, list)),
    ),
    el(doc, "p", { class: "maker" }, en.card.maker),
  ];
}

const cardView: View<CardState> = {
  name: "card",
  words: ({ figures }) =>
    [
      en.card.title,
      figures.machine.name,
      ...[...partLines(figures), ...referenceLines(figures), ...limitLines(figures)].map((line) => line.join(": ")),
      en.card.maker,
    ].join(". "),
  mount(host) {
    const doc = host.ownerDocument;
    const card = el(doc, "section", { class: "card", "aria-label": en.card.title });
    const print = el(doc, "button", { type: "button", class: "print-card" }, en.card.print);
    print.addEventListener("click", () => {
      // The page's styles then print the card alone.
      doc.documentElement.dataset["print"] = "card";
      doc.defaultView?.print();
      delete doc.documentElement.dataset["print"];
    });
    host.append(print, card);
    let last: Figures | null = null;
    return ({ figures }) => {
      if (figures === last) return;
      last = figures;
      card.replaceChildren(...build(doc, figures));
    };
  },
};
