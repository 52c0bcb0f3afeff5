import { describe, expect, it } from "vitest";
import { el, Pen, setAttribute, setText, svgEl } from "#view/dom";

describe("elements", () => {
  it("take their attributes and children; what is false or not given is left out", () => {
    const made = el(
      document,
      "button",
      { type: "button", disabled: true, hidden: false, title: undefined },
      "press ",
      el(document, "b", {}, "me"),
    );
    expect(made.outerHTML).toBe('<button type="button" disabled="">press <b>me</b></button>');
  });

  it("hold text as text, never as markup", () => {
    const made = el(document, "p", { title: '"><i>' }, "<b>loud</b>");
    expect(made.children).toHaveLength(0);
    expect(made.textContent).toBe("<b>loud</b>");
    setText(made, "<i>soft</i>");
    expect(made.children).toHaveLength(0);
  });

  it("of a drawing are of its own namespace", () => {
    expect(svgEl(document, "path", { d: "M0,0" }).namespaceURI).toBe("http://www.w3.org/2000/svg");
  });

  it("lose an attribute that is set to null", () => {
    const made = el(document, "p", { title: "a" });
    setAttribute(made, "title", null);
    expect(made.hasAttribute("title")).toBe(false);
  });
});

describe("a pen", () => {
  it("writes what is new and nothing else", () => {
    const line = svgEl(document, "line");
    const pen = new Pen(line);
    let writes = 0;
    const write = line.setAttribute.bind(line);
    line.setAttribute = (name: string, value: string) => {
      writes += 1;
      write(name, value);
    };
    for (const x of [1, 1, 1, 2]) pen.set("x1", x);
    expect(line.getAttribute("x1")).toBe("2");
    expect(writes).toBe(2);
    pen.show(false);
    expect(line.getAttribute("display")).toBe("none");
    pen.text("a");
    pen.text("b");
    expect(line.textContent).toBe("b");
  });
});
