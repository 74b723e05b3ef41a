/** A text that was judged in one place and read again in another must give one and the same document. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { Migration } from "../../shared-model/format/migrations.ts";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import { projectOfReadable, readableJson } from "../../shared-model/format/read-again.ts";
import { smallText } from "./small-document.ts";

const SAMPLES = new URL("../../assets/samples/", import.meta.url);

const judged = (text: string, ...more: [] | [{ readonly version: number; readonly chain: readonly Migration[] }]) => {
  const parsed = parseProject(text, ...more);
  if (!parsed.ok) throw new Error(parsed.problems[0]?.message);
  return parsed.value.project;
};

describe("a text that is read again", () => {
  test.each(readdirSync(SAMPLES).filter((name) => name.endsWith(".loadside")))("%s is the same document", (name) => {
    const text = readFileSync(new URL(name, SAMPLES), "utf8");
    expect(projectOfReadable(readableJson(text))).toEqual(judged(text));
  });

  test("a byte order mark is not in its way, and unknown fields stay", () => {
    const text = `\ufeff${smallText().replace('"title"', '"madeBy": {"name": "another"}, "title"')}`;
    const again = projectOfReadable(readableJson(text));
    expect(again).toEqual(judged(text));
    expect(again).toMatchObject({ madeBy: { name: "another" } });
  });

  test("an older document is brought up to date in the same way", () => {
    const chain = [{ from: 1, migrate: (document: object) => ({ ...document, title: "Brought along" }) }];
    const reader = { version: 2, chain: chain as unknown as readonly Migration[] };
    const again = projectOfReadable(readableJson(smallText()), reader);
    expect(again).toEqual(judged(smallText(), reader));
    expect(again).toMatchObject({ version: 2, title: "Brought along" });
  });

  test("is only said to be readable when it is JSON within the limits and calls itself a document that this program reads", () => {
    const said = (text: string): boolean => {
      let readable = false;
      parseProject(text, undefined, () => {
        readable = true;
      });
      return readable;
    };
    expect(said(smallText())).toBe(true);
    // Of the wrong shape, and still harmless to read.
    expect(said(smallText().replace(/"asFound": \{/, '"asFound": {"loads": 7, '))).toBe(true);
    expect(said("[1, 2]")).toBe(false);
    expect(said('{"format": "loadside"')).toBe(false);
    expect(
      said(smallText().replace('"minReader": 1', '"minReader": 99').replace('"version": 1', '"version": 99')),
    ).toBe(false);
    expect(said(`${smallText().slice(0, -2)}, "more": [${"[],".repeat(1_000_001)}0]}`)).toBe(false);
  });
});
