/** The flight modes as parts of the machine: name, head speed and collective of each, one to six of them. */
import { aimed, bind, type Socket } from "#inputs/bound";
import { makeText } from "#inputs/choice";
import { noticeAt } from "#inputs/notice";
import { makeSlider } from "#inputs/slider";
import type { ChangeOptions } from "#machine/bench";
import { shapeAt } from "#machine/fields";
import type { FlightMode, Machine } from "#machine/machine";
import { el, setText } from "#view/dom";
import { en } from "#view/words/en";

const MOST = (() => {
  const shape = shapeAt("modes");
  return shape?.kind === "list" ? shape.most : 1;
})();

/** Builds the section; it follows the bench from then on, also when modes come and go. */
export function makeModes(socket: Socket): HTMLElement {
  const { doc, bench, aim } = socket;
  const list = el(doc, "div", { class: "modes" });
  const add = el(doc, "button", { type: "button" }, en.panel.addMode);
  const host = el(doc, "div", {}, list, add);
  const notice = noticeAt(host, add);
  const change = (edit: (modes: readonly FlightMode[]) => readonly FlightMode[]) => {
    const options: ChangeOptions = { machine: aim.which === "what-if" && bench.whatIf ? "what-if" : "now" };
    const problems = bench.change((machine) => ({ ...machine, modes: [...edit(machine.modes)] }), options);
    notice.say(problems[0]?.words ?? null);
  };
  add.addEventListener("click", () =>
    change((modes) => [...modes, { ...(modes.at(-1) as FlightMode), name: en.panel.mode(modes.length + 1) }]),
  );

  function row(place: number): HTMLElement {
    const path = `modes.${place}`;
    const drop = el(doc, "button", { type: "button", class: "quiet" });
    drop.addEventListener("click", () => change((modes) => modes.filter((_, i) => i !== place)));
    const inputs = [
      makeText(socket, `${path}.name`),
      makeSlider(socket, `${path}.headRpm`),
      makeSlider(socket, `${path}.collectiveMinDeg`, { boxOnly: true }),
      makeSlider(socket, `${path}.collectiveMaxDeg`, { boxOnly: true }),
    ].map((control) => bind(socket, control).element);
    const group = el(doc, "fieldset", {}, el(doc, "legend", {}, en.panel.mode(place + 1)), ...inputs, drop);
    bind(socket, {
      element: group,
      part: "modes",
      refresh({ modes }: Machine) {
        setText(drop, en.panel.dropMode(modes[place]?.name ?? ""));
        drop.hidden = modes.length < 2;
      },
    });
    return group;
  }

  let rows = 0;
  bind(socket, {
    element: host,
    part: "modes",
    refresh() {
      const { length } = aimed(socket).modes;
      for (; rows < length; rows++) list.append(row(rows));
      for (; rows > length; rows--) list.lastElementChild?.remove();
      add.hidden = length >= MOST;
    },
  });
  return host;
}
