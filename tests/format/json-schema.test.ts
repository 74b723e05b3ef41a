import { readFileSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import { jsonSchemaText } from "../../shared-model/format/json-schema.ts";

const FILE = new URL("../../assets/loadside.schema.json", import.meta.url);

test("the JSON Schema in assets/ is that of the program (LOADSIDE_WRITE=1 writes it anew)", () => {
  if (process.env.LOADSIDE_WRITE === "1") writeFileSync(FILE, jsonSchemaText());
  expect(readFileSync(FILE, "utf8")).toBe(jsonSchemaText());
});

test("it says what a document must have, what ids look like, and that unknown fields may stand", () => {
  const schema = JSON.parse(jsonSchemaText());
  expect(schema.required).toEqual([
    "format",
    "version",
    "minReader",
    "title",
    "edition",
    "amendments",
    "supply",
    "rooms",
    "asFound",
    "layout",
    "readings",
    "acknowledgements",
    "attachments",
    "notes",
  ]);
  expect(schema.properties.format).toEqual({ const: "loadside" });
  expect(schema.properties.edition).toMatchObject({ enum: [2011, 2014, 2017, 2020, 2023, 2026, "CSA-C22.1"] });
  expect(schema.properties.rooms.propertyNames).toMatchObject({ pattern: "^[A-Za-z0-9_-]{1,40}$" });
  expect(schema.additionalProperties).not.toBe(false);
});
