/** The published JSON schema of the machine file, made from the validator's own definition. */
import { type JsonSchema, toJsonSchema } from "@valibot/to-json-schema";
import { machineSchema } from "./machine.ts";

/**
 * The JSON schema (draft 2020-12) of a machine file: titles, where each value is read, units (`x-unit`), limits and
 * defaults. Rules between fields are not in it: no schema can say them. Whoever reads a file ignores unknown fields.
 */
export function machineJsonSchema(): JsonSchema {
  const { $schema, ...rest } = toJsonSchema(machineSchema, {
    typeMode: "input",
    target: "draft-2020-12",
    // What JSON can't say: the validator's checks of single characters.
    ignoreActions: ["check"],
  });
  const title = "Machine file of the governor workbook";
  return { ...($schema ? { $schema } : {}), title, ...rest };
}
