/** Cells with places on a page, for the tests of what is drawn there. */
import { vi } from "vitest";
import type { Bench } from "../../src/machine/bench.ts";
import { openPage } from "../../src/notebook/page.ts";
import type { CellRecord } from "../../src/notebook/record.ts";
import type { View } from "../../src/view/shown.ts";

export const bench = {} as Bench;
export const cell = (id: string, run: (x: number) => unknown, gives: string[] = [], needs = ["x"]): CellRecord => ({
  id,
  line: 12,
  needs,
  gives,
  shows: true,
  run: (x: number) => [run(x), ...gives.map(() => x)],
});
export const at = (id: string) => document.querySelector<HTMLElement>(`[data-cell="${id}"]`);

export async function opened(...records: CellRecord[]) {
  document.body.innerHTML = records.map(({ id }) => `<p><span data-cell="${id}">drawn before</span></p>`).join("");
  const page = openPage({ document, records, given: { x: 1 }, bench });
  await page.settled();
  return page;
}

export const mount = vi.fn();
export const meter: View<number> = {
  name: "meter",
  words: String,
  mount(host, given) {
    mount(given);
    const output = host.ownerDocument.createElement("output");
    host.append(output);
    return (state) => {
      if (state === 13) throw new Error("unlucky");
      output.textContent = String(state);
    };
  },
};
