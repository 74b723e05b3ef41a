/** Drawings that are right in form and absurd in substance: every verb answers, and only with numbers. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { drawing, jumperId } from "../builders/drawing.ts";
import { physicsCircuit } from "../builders/physics-circuit.ts";
import { buildLoadside, type Ended, loadside } from "./run-loadside.ts";

const folder = mkdtempSync(join(tmpdir(), "loadside-absurd-"));
beforeAll(buildLoadside, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

type Fields = Record<string, unknown>;
interface Doc extends Fields {
  supply: Fields;
  asFound: {
    cables: Record<string, Fields>;
    loads: Record<string, Fields>;
    enclosures: Record<string, { devices: Record<string, Fields>; places: Record<string, Fields> }>;
  };
}

const plainText = (): string => textToSave(physicsCircuit("F24").project);

/** The circuit of the table of faults with a heater, with every field of some kind set. */
function changed(change: (document: Doc) => void): string {
  const document = JSON.parse(plainText()) as Doc;
  change(document);
  return JSON.stringify(document);
}

const devices = ({ asFound }: Doc): Fields[] =>
  Object.values(asFound.enclosures).flatMap((enclosure) => Object.values(enclosure.devices));
const everyCable = (fields: Fields) => (document: Doc) => {
  for (const cable of Object.values(document.asFound.cables)) Object.assign(cable, fields);
};
const everyDevice = (fields: Fields) => (document: Doc) => {
  for (const device of devices(document)) Object.assign(device, fields);
};
const everyLoad = (fields: Fields) => (document: Doc) => {
  for (const load of Object.values(document.asFound.loads)) Object.assign(load, fields);
};
const everyPlace = (fields: Fields) => (document: Doc) => {
  for (const { places } of Object.values(document.asFound.enclosures))
    for (const place of Object.values(places)) Object.assign(place, fields);
};

const MOST = 10_000_000;

const VALUES: Readonly<Record<string, (document: Doc) => void>> = {
  "every cable 0 ft": everyCable({ lengthFt: 0 }),
  "every cable 1,900 miles": everyCable({ lengthFt: MOST }),
  "no resistance in any load": everyLoad({ loadOhm: 0 }),
  "0 W and 0 A": (document) => {
    everyLoad({ loadW: 0, loadOhm: undefined })(document);
    everyDevice({ loadW: 0, breakerRatingA: 0 })(document);
  },
  "10 MW on an outlet": everyLoad({ loadW: MOST, loadOhm: undefined }),
  "10 kA of leak": (document) => {
    everyLoad({ leakMa: MOST })(document);
    everyDevice({ leakMa: MOST })(document);
  },
  "joints of 0 ohm": everyPlace({ jointOhm: 0 }),
  "joints of 10 megohm": everyPlace({ jointOhm: MOST }),
  "a breaker of 10 MA": everyDevice({ breakerRatingA: MOST }),
  "a supply of 0 V": ({ supply }) => Object.assign(supply, { nominalV: 0 }),
  "a supply of 10 MV": ({ supply }) => Object.assign(supply, { nominalV: MOST }),
  "a stated load of 0 %": (document) => Object.assign(document, { statedLoadPercent: 0, branchDropPercent: 0 }),
  "a stated load of 10,000,000 %": (document) => Object.assign(document, { statedLoadPercent: MOST }),
};

const WIRINGS: Readonly<Record<string, () => Project>> = {
  "nothing drawn": () => drawing().project,
  "a panel alone": () => drawing().panel("P", "panel-16", { set: { mainBond: "here" } }).project,
  "bus to neutral bar, across the source": () =>
    physicsCircuit()
      .jumper("x", "P", "Q1.OUT", "P neutral.BAR")
      .set({ kind: "jumper", id: jumperId("x") }, "lengthIn", 0).project,
  "one leg to the other": () =>
    drawing()
      .panel("P", "panel-16", { set: { mainBond: "here" } })
      .breaker("Q", "P", { type: "breaker-2" })
      .jumper("x", "P", "Q.OUT1", "Q.OUT2").project,
  "a splice of a thousand wires": () => {
    const sheet = physicsCircuit();
    for (let wire = 0; wire < 1000; wire++) sheet.jumper(`w${wire}`, "B", "splice GB", "capped");
    return sheet.project;
  },
  "neutrals in rings, through boxes and through the panel": () =>
    ["A", "B", "C"]
      .reduce(
        (sheet, box) => sheet.box(box),
        drawing()
          .panel("P", "panel-16", { set: { mainBond: "here" } })
          .breaker("Q", "P"),
      )
      .device("R", "receptacle-20", "B")
      .cable("PA", "P", "A", { ft: 0 })
      .cable("PC", "P", "C", { ft: 40 })
      .cable("AB", "A", "B", { ft: 0 })
      .cable("BC", "B", "C", { ft: 0 })
      .cable("CA", "C", "A", { ft: 0 })
      .land("PA.bk@P", "Q.OUT")
      .land("PA.wh@P", "P neutral.BAR")
      .land("PC.wh@P", "P neutral.BAR")
      .splice("NA", "A", "twist-medium", "PA.wh@A", "AB.wh@A", "CA.wh@A")
      .splice("NB", "B", "twist-medium", "AB.wh@B", "BC.wh@B")
      .splice("NC", "C", "twist-medium", "PC.wh@C", "BC.wh@C", "CA.wh@C")
      .splice("HA", "A", "twist-medium", "PA.bk@A", "AB.bk@A")
      .land("AB.bk@B", "R.H1")
      .jumper("n", "B", "splice NB", "R.N1").project,
};

const FILES: ReadonlyMap<string, () => string> = new Map([
  ...Object.entries(VALUES).map(([name, change]) => [name, () => changed(change)] as const),
  ...Object.entries(WIRINGS).map(([name, make]) => [name, () => textToSave(make())] as const),
]);

const SPOILT = /\b(NaN|Infinity|undefined)\b|\[object/;
/** Fields that say by null that there is none of it: an outlet without ground has no reading to it. */
const MAY_BE_NULL: ReadonlySet<string> = new Set(
  "hg ng tester dropV dropPercent atStatedLoad longest acknowledged standing fix basis leakPerAmpere loadPerAmpere room requiredBy device textOf".split(
    " ",
  ),
);

function nullsIn(value: unknown, key = ""): readonly string[] {
  if (value === null) return MAY_BE_NULL.has(key) ? [] : [key];
  if (Array.isArray(value)) return value.flatMap((one) => nullsIn(one, key));
  if (typeof value !== "object") return [];
  return Object.entries(value).flatMap(([name, one]) => nullsIn(one, name));
}

describe.each([...FILES])("%s", (name, text) => {
  const file = join(folder, `${name.replaceAll(/\W+/g, "-")}.loadside`);
  const run = (verb: string, ...options: readonly string[]): Ended => loadside([verb, file, ...options]);
  beforeAll(() => writeFileSync(file, text()));

  test.each(["simulate", "prove", "check"])("%s", (verb) => {
    // The other two write what their JSON holds; a process takes its quarter of a second.
    for (const options of verb === "simulate" ? [["--json"], []] : [["--json"]]) {
      const { status, stdout, stderr } = run(verb, ...options);
      expect([stderr, status === 0 || status === 1]).toEqual(["", true]);
      expect(stdout).not.toMatch(SPOILT);
      if (options.length > 0) expect(nullsIn(JSON.parse(stdout))).toEqual([]);
      else expect(stdout).not.toMatch(/\bnull\b/);
    }
  });
});

describe("numbers that nothing can have: one line with file, place and remedy", () => {
  test.each<readonly [string, (document: Doc) => void, RegExp]>([
    ["negative watts", everyLoad({ loadW: -60 }), /: \/asFound\/loads\/[^:]+\/loadW: [^\n]*number from 0 to/],
    ["negative ohms", everyLoad({ loadOhm: -12 }), /: \/asFound\/loads\/[^:]+\/loadOhm: [^\n]*number from 0 to/],
    ["a length below zero", everyCable({ lengthFt: -1 }), /\/asFound\/cables\/[^:]+\/lengthFt: [^\n]*number from 0 to/],
    ["a rating below zero", everyDevice({ breakerRatingA: -15 }), /\/breakerRatingA: [^\n]*number from 0 to/],
    [
      "volts below zero",
      ({ supply }) => Object.assign(supply, { nominalV: -120 }),
      /: \/supply\/nominalV: [^\n]*number from 0 to/,
    ],
    [
      "a stated load below zero",
      (document) => Object.assign(document, { statedLoadPercent: -80 }),
      /: \/statedLoadPercent: [^\n]*number from 0 to/,
    ],
    ["more than anything has", everyCable({ lengthFt: 1e300 }), /\/lengthFt: [^\n]*number from 0 to/],
    ["a text", everyCable({ lengthFt: "60" }), /\/lengthFt: [^\n]*number/],
  ])("%s", (_, change, line) => {
    const file = join(folder, "spoilt.loadside");
    writeFileSync(file, changed(change));
    for (const verb of ["simulate", "prove", "check"]) {
      const { status, stdout, stderr } = loadside([verb, file]);
      expect([status, stdout]).toEqual([2, ""]);
      for (const one of stderr.trimEnd().split("\n"))
        expect(one.startsWith(`${file}: `) && one.endsWith(".")).toBe(true);
      expect(stderr).toMatch(line);
    }
  });

  test.each(["NaN", "Infinity", "-Infinity", "1e999"])("%s is no number of a file", (word) => {
    const file = join(folder, "spoilt.loadside");
    writeFileSync(file, plainText().replace(/"lengthFt": ?60/, `"lengthFt": ${word}`));
    const { status, stdout, stderr } = loadside(["simulate", file]);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(/^[^\n]+: [^\n]+\.\n$/);
  });
});
