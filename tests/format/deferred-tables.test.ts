/** A long document is read in parts: what is inside a box or a cable when it is first asked for. It must not be noticed. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import { partText } from "../../shared-model/format/deferred-tables.ts";
import { parsePlain, parseProject } from "../../shared-model/format/parse-project.ts";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { type JsonValue, smallText, valueAt } from "./small-document.ts";

const SAMPLES = new URL("../../assets/samples/", import.meta.url);
const samples = readdirSync(SAMPLES).filter((name) => name.endsWith(".loadside"));
const sample = (name: string): string => readFileSync(new URL(name, SAMPLES), "utf8");

function inParts(text: string): Project {
  const read = parsePlain(text, 0);
  if (read === undefined) throw new Error("It gives cause for doubt.");
  expect(read.judged).toBe(false);
  return read.project;
}

function atOnce(text: string): Project {
  const read = parseProject(text);
  if (!read.ok) throw new Error(read.problems[0]?.message);
  return read.value.project;
}

const B1 = "box-B1" as EnclosureId;
/** How a file has it that someone wrote by other means. */
const rewritten = (change: (root: JsonValue) => void, indent: number | string = 1): string => {
  const root = JSON.parse(smallText()) as JsonValue;
  change(root);
  return JSON.stringify(root, null, indent);
};

test.each(samples)("%s is the same drawing, read in parts or at once", (name) => {
  const text = sample(name);
  const parted = inParts(text);
  expect(partText(text).text.length).toBeLessThan(text.length * 0.7);
  expect(structuredClone(parted)).toEqual(atOnce(text));
  expect(textToSave(parted)).toBe(text);
});

test("what was read once is the same object from then on, in a copy too", () => {
  const box = inParts(smallText()).asFound.enclosures[B1];
  if (box === undefined) throw new Error("The box is gone.");
  const { places, splices } = box;
  expect(Object.keys(places).length).toBeGreaterThan(4);
  expect(box.places).toBe(places);
  expect({ ...box }.splices).toBe(splices);
  expect(Object.keys(box).toSorted()).toEqual(Object.keys(atOnce(smallText()).asFound.enclosures[B1] ?? {}).toSorted());
});

test("a drawing that was read in parts is worked on like any other", () => {
  const [parted, whole] = [inParts(smallText()), atOnce(smallText())].map((project) => {
    const renamed = runCommand(project, {
      command: "rename-item",
      args: { state: "as-found", item: { kind: "enclosure", id: B1 }, name: "Hall box" },
    });
    if (!renamed.ok) throw new Error(renamed.refusal.message);
    return renamed;
  });
  expect(parted?.project.asFound.enclosures[B1]?.name).toBe("Hall box");
  expect(structuredClone(parted?.project)).toEqual(whole?.project);
  expect(parted?.patches).toEqual(whole?.patches);
});

describe("a text that is spaced otherwise", () => {
  test.each<readonly [string, string]>([
    ["on one line", rewritten(() => undefined, 0)],
    ["with wider indents", rewritten(() => undefined, 2)],
    ["with tabs", rewritten(() => undefined, "\t")],
    ["with Windows line ends", smallText().replaceAll("\n", "\r\n")],
    ["with a byte order mark", `\ufeff${smallText()}`],
    [
      "with the tables last",
      rewritten((root) => {
        const box = valueAt(root, `/asFound/enclosures/${B1}`) as Record<string, JsonValue>;
        const { jumpers, places } = box;
        delete box.jumpers;
        delete box.places;
        Object.assign(box, { places, jumpers });
      }),
    ],
    ["with keys that need escapes", smallText().replaceAll("box-B2", "box-\\u00422")],
    [
      "with a field that looks like the drawing",
      smallText().replace(
        "{\n",
        '{\n "aside": {\n "asFound": {\n  "enclosures": {\n   "box-B1": {\n    "places": {\n     "a": 1\n    },\n    "x": 1\n   }\n  }\n }\n },\n',
      ),
    ],
  ])("%s", (_how, text) => {
    const read = parsePlain(text, 0);
    // What is in doubt is read as a whole; what is taken is what the whole says.
    if (read !== undefined) expect(structuredClone(read.project)).toEqual(atOnce(text));
    expect(textToSave(atOnce(text))).toBe(textToSave(atOnce(text.replaceAll("\r", ""))));
  });

  test("most of them are taken all the same", () => {
    for (const text of [rewritten(() => undefined, 0), rewritten(() => undefined, 2), `\ufeff${smallText()}`])
      expect(parsePlain(text, 0)).toBeDefined();
  });
});

describe("damage inside a table", () => {
  const places = `/asFound/enclosures/${B1}/places`;
  test.each<readonly [string, string]>([
    [
      "a place of no known kind",
      rewritten((root) => Object.assign(valueAt(root, places) as object, { "C1.bk@a": { at: { kind: "nowhere" } } })),
    ],
    ["a reserved key", smallText().replace('"places": {\n', '"places": {\n     "__proto__": {"polluted": true},\n')],
    ["text that is not JSON", smallText().replace(/("places": \{\n.*\n)/, "$1      nonsense,\n")],
  ])("%s is nothing there, and the whole is refused", (_what, text) => {
    expect(text).not.toBe(smallText());
    const boxes = Object.values(parsePlain(text, 0)?.project.asFound.enclosures ?? {});
    expect(boxes.length).toBeGreaterThan(0);
    expect(boxes.filter((box) => Object.keys(box.places).length === 0).length).toBeGreaterThan(0);
    expect(parseProject(text).ok).toBe(false);
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  });

  test("a box without a table is not taken", () => {
    const text = rewritten((root) => {
      delete (valueAt(root, `/asFound/enclosures/${B1}`) as Record<string, JsonValue>).places;
    });
    expect(parsePlain(text, 0)).toBeUndefined();
  });
});
