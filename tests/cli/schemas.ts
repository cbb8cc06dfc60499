import { readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020, type AnySchemaObject } from "ajv/dist/2020.js";
import { expect } from "vitest";
import { root } from "./program.js";

export function schemaOf(command: string): AnySchemaObject {
  return JSON.parse(readFileSync(join(root, "language-server", "schema", `${command}.schema.json`), "utf8"));
}

/** The same schema, in which nothing may occur that it does not describe: so that nothing stays undocumented. */
export function closed(schema: AnySchemaObject, part: AnySchemaObject = schema): AnySchemaObject {
  const entries = Object.entries(part).map(([key, value]) => {
    if (key === "properties" || key === "$defs")
      return [
        key,
        Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, closed(schema, inner as object)])),
      ];
    if (key === "items") return [key, closed(schema, value)];
    return [key, value];
  });
  const isBase = part === schema.$defs?.check;
  return { ...Object.fromEntries(entries), ...(part.properties && !isBase ? { unevaluatedProperties: false } : {}) };
}

/** The answer in some JSON, held against its schema both open and closed. */
export function answerOf<Answer>(command: string, json: string): Answer {
  const schema = schemaOf(command);
  const answer = JSON.parse(json) as Answer;
  for (const one of [schema, { ...closed(schema), $id: "urn:sunwright:schema:closed" }]) {
    const validate = new Ajv2020({ allErrors: true }).compile(one);
    validate(answer);
    expect(validate.errors ?? []).toEqual([]);
  }
  return answer;
}
