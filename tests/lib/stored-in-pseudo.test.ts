/** What a document gets when something is made in it, in the language of whoever makes it, and what of it is known again. */
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import type { Project } from "../../shared-model/model/project.ts";

const loadCore = async () => ({
  ...(await import("../../shared-model/catalog/stored-words.ts")),
  ...(await import("../../shared-model/queries/far-side.ts")),
  ...(await import("../../shared-model/rules/fill/box-room.ts")),
  ...(await import("../../shared-model/rules/editions/editions.ts")),
  ...(await import("../rules/drawing.ts")),
  ...(await import("../../shared-model/commands/run-command.ts")),
  ...(await import("../../shared-model/model/project.ts")),
  ...(await import("../rules/check-drawing.ts")),
});

let english: Awaited<ReturnType<typeof loadCore>>;
let other: Awaited<ReturnType<typeof loadCore>>;
beforeAll(async () => {
  vi.resetModules();
  english = await loadCore();
  vi.resetModules();
  vi.stubGlobal("name", "stored pseudo");
  other = await loadCore();
}, 60_000);
afterAll(() => {
  vi.unstubAllGlobals();
  vi.resetModules();
});

const BOTH = () => [english, other] as const;

/** One receptacle, whose cable leads out of the drawing to what is called so. */
function leadingTo({ Drawing }: typeof english, outside: string): Project {
  const project = new Drawing()
    .box("A", 30)
    .cable("C1", "nm-12-2-g", "country", "A")
    .device("R1", "receptacle-tr-15", "A", { zones: ["bathroom"] })
    .put({ "C1.bk@A": "R1.H1", "C1.wh@A": "R1.N1" })
    .project();
  const cables = Object.fromEntries(
    Object.entries(project.asFound.cables).map(([id, cable]) => [
      id,
      { ...cable, sides: { ...cable.sides, a: { outside } } },
    ]),
  );
  return { ...project, asFound: { ...project.asFound, cables } };
}

test("the bars of a new panel are called in the language of the window", () => {
  const barsOf = ({ runCommand, emptyProject }: typeof english): readonly string[] => {
    const done = runCommand(emptyProject("Test", 2023), {
      command: "place-enclosure",
      args: {
        state: "as-found",
        id: "p",
        item: "panel-16",
        name: "P",
        at: { x: 0, y: 0 },
        bars: { neutral: "n", ground: "g" },
      },
    });
    if (!done.ok) throw new Error(done.refusal.message);
    return Object.values(done.project.asFound.enclosures)
      .flatMap(({ devices }) => Object.values(devices))
      .map(({ name }) => name);
  };
  expect(barsOf(english)).toEqual(["Neutral bar", "Ground bar"]);
  expect(barsOf(other)).toEqual([other.STORED_WORDS.neutralBar, other.STORED_WORDS.groundBar]);
  expect(barsOf(other).join("")).not.toMatch(/[A-Za-z]/);
});

test("“the supply” is taken for the supply in the language in which it was stored, and in English", () => {
  const askedOf = (core: typeof english, outside: string): readonly (string | undefined)[] =>
    core
      .checkDocument(leadingTo(core, outside))
      .couldNotTell.map(({ subjects }) => subjects[0]?.kind)
      .slice(0, 1);
  for (const core of BOTH()) {
    // The cable is named where it is known that it brings the supply, else the box.
    expect(askedOf(core, core.STORED_WORDS.theSupply)).toEqual(["cable"]);
    expect(askedOf(core, "the supply")).toEqual(["cable"]);
    expect(askedOf(core, "the kitchen")).toEqual(["enclosure"]);
    expect(askedOf(core, core.UNNAMED_SIDE)).toEqual(["enclosure"]);
  }
});

test("a far side that nobody named is stored without a word, and said in the language of the reader", () => {
  for (const core of BOTH()) {
    expect(core.UNNAMED_SIDE).not.toMatch(/\p{L}/u);
    // As older drawings have it.
    for (const stored of [core.UNNAMED_SIDE, "not drawn", "somewhere"]) {
      expect(core.saysWhere(stored)).toBe(false);
      expect(core.outsideWords(stored)).toBe(core.outsideWords(""));
    }
    expect([core.saysWhere("attic"), core.outsideWords("attic")]).toEqual([true, "attic"]);
  }
  expect(english.outsideWords("")).toBe("not drawn");
  expect(other.outsideWords("")).not.toMatch(/[A-Za-z]/);
});

test("a size that a table does not have is named as the stock names it", () => {
  const size = "4x1-1/4 square";
  const why = (core: typeof english): string | undefined => {
    const [box] = Object.values(new core.Drawing().box("A", 30).project().asFound.enclosures);
    if (box?.kind !== "box") throw new Error("A is no box.");
    return core.whyNotInTable({ ...box, volume: { kind: "table", size } }, core.editions["CSA-C22.1"]);
  };
  expect(why(english)).toContain(" no box 4 × 1-1/4 square: ");
  expect(why(other)).toMatch(/\d/);
  expect(why(other)?.replace(/\b(Table|Rule)\b/g, "")).not.toMatch(/[A-Za-z]{3,}/);
});
