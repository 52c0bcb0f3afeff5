import { describe, expect, it } from "vitest";
import { fields } from "#machine/fields";
import { machineJsonSchema } from "#machine/json-schema";

interface Node {
  readonly [key: string]: unknown;
  readonly properties?: Record<string, Node>;
  readonly items?: Node;
  readonly anyOf?: readonly Node[];
  readonly required?: readonly string[];
}

const schema = machineJsonSchema() as unknown as Node;

/** The part of the schema that a field's path leads to. */
function at(path: string): Node {
  let node = schema;
  for (const key of path.split(".")) {
    const whole = node.anyOf?.find((each) => each.properties) ?? node;
    node = (key === "*" ? whole.items : whole.properties?.[key]) as Node;
  }
  return node;
}

describe("the published schema", () => {
  // A changed definition is published by `npx vitest run --project unit tests/machine/json-schema.test.ts -u`.
  it("is up to date", async () => {
    await expect(`${JSON.stringify(schema, null, 2)}\n`).toMatchFileSnapshot("../../public/machine.schema.json");
  });

  it.each(fields.map((field) => [field.path, field] as const))("says of %s what the table says", (path, field) => {
    const node = at(path);
    // A number that may be left open is nothing when it is.
    const missing = field.kind === "nullable number" ? null : field.default;
    expect(node).toMatchObject({ title: field.name, description: field.read, default: missing });
    if (field.unit) expect(node["x-unit"]).toBe(field.unit);
    const limits = node.anyOf?.find((each) => each.type !== "null") ?? node;
    if (field.choices) expect(limits.enum).toEqual(field.choices.map((choice) => choice.value));
    else if (field.kind === "text") expect(limits).toMatchObject({ type: "string", maxLength: field.max });
    else expect(limits).toMatchObject({ minimum: field.min, maximum: field.max });
    if (field.kind === "integer") expect(limits.type).toBe("integer");
    if (field.wholeEven) expect(limits.multipleOf).toBe(2);
  });

  it("asks for all but what may be left open", () => {
    expect(schema.required).toEqual(
      "version name pack motor controller gears mainRotor tailRotor airframe place modes".split(" "),
    );
    expect(at("gears").required).not.toContain("secondStage");
    expect(at("gears").required).toContain("pinionTeeth");
    expect(at("modes")).toMatchObject({ type: "array", minItems: 1, maxItems: 6 });
  });
});
