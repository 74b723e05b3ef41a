import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CommandArgs } from "../../shared-model/commands/command-args.ts";
import { emptyHistory, record, undo } from "../../shared-model/commands/history.ts";
import { applyPatches, runCommand } from "../../shared-model/commands/run-command.ts";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import { canonicalText } from "../../shared-model/lib/canonical-text.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Installation, Project, StateName } from "../../shared-model/model/project.ts";
import { type CutItem, type CutOut, cutOut, isFromInside } from "../../shared-model/queries/cut-out.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { boxId, cableId, deviceId, drawing, jumperId, laundryDrawing, loadId, spliceId } from "../builders/drawing.ts";
import { Picker } from "../builders/picker.ts";
import { callOf, randomSteps } from "../builders/random-commands.ts";
import { idsInCutOut } from "../builders/random-paste.ts";
import { item } from "../builders/random-scene.ts";
import { refused, titleOf } from "./asking.ts";
import { sameDocument } from "./same-document.ts";
import { leftOvers } from "./sound-references.ts";

const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";

type Args = CommandArgs["paste-items"];

const enclosure = (name: string): CutItem => ({ kind: "enclosure", id: boxId(name) });
const device = (name: string): CutItem => ({ kind: "device", id: deviceId(name) });
const splice = (name: string): CutItem => ({ kind: "splice", id: spliceId(name) });

function cut(project: Project, ...selection: readonly CutItem[]): CutOut {
  const made = cutOut(project, "as-found", selection);
  if (made === undefined) throw new Error("Nothing was cut out.");
  return made;
}

function argsFor(parts: CutOut, state: StateName = "as-found", mark = "new", more: Partial<Args> = {}): Args {
  const { enclosures, splices, cables } = parts.layout;
  return {
    state,
    from: parts.asFound,
    rooms: parts.rooms,
    layout: { enclosures, splices, cables },
    ids: Object.fromEntries(idsInCutOut(parts).map((id, index) => [id, `${mark}-${index}`])),
    names: {},
    at: { x: 0, y: 0 },
    ...more,
  };
}

function paste(project: Project, args: Args) {
  const done = runCommand(project, { command: "paste-items", args });
  if (!done.ok) throw new Error(done.refusal.message);
  return done;
}

/** The pasted enclosures as a cut-out of their own, with the ids that they had, changed in the text. */
function underOldIds(project: Project, args: Args): unknown {
  const back = new Map(Object.entries(args.ids).map(([old, id]) => [id, old]));
  const selection = Object.keys(args.from.enclosures).map((id) => ({ kind: "enclosure", id: args.ids[id] ?? "" }));
  const again = cutOut(project, args.state, selection);
  const text = JSON.stringify(again?.asFound ?? null);
  return JSON.parse(text.replaceAll(/[A-Za-z0-9_-]+/g, (word) => back.get(word) ?? word));
}

/** What the drawing of a copy does not have to keep: places in lists, and which room it joined. */
function withoutOrder(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutOrder);
  if (typeof value !== "object" || value === null) return value;
  const entries = Object.entries(value).filter(([key]) => key !== "order" && key !== "roomId");
  return Object.fromEntries(entries.map(([key, one]) => [key, withoutOrder(one)]));
}

describe("cutting out boxes", () => {
  const house = laundryDrawing().wish("R2");
  house.run("add-label", { id: "label-1" as never, wording: "No equipment ground", on: { cable: cableId("C3") } });
  house.run("set-box-intent", {
    enclosure: boxId("B1"),
    intent: { supply: cableId("C1"), protect: { [cableId("C2")]: true, [cableId("C3")]: false } },
  });

  test("cables between them come, cables to boxes that stay do not, and their entries and places go", () => {
    const { asFound } = cut(house.project, enclosure("B1"), enclosure("B2"));
    expect(Object.keys(asFound.cables)).toEqual([cableId("C2")]);
    const b1 = asFound.enclosures[boxId("B1")];
    expect(Object.keys(b1?.entries ?? {})).toEqual(["e-C2"]);
    expect(Object.keys(b1?.places ?? {}).sort()).toEqual(
      [
        ...["bk", "wh", "cu"].map((conductor) => `cable-C2.${conductor}.a`),
        ...["p", "q", "r", "t"].flatMap((name) => [`jumper-${name}.a`, `jumper-${name}.b`]),
      ].sort(),
    );
    expect(Object.keys(b1?.splices ?? {}).sort()).toEqual([spliceId("X"), spliceId("Y"), spliceId("Z")].sort());
    expect(asFound.intent.boxes).toEqual({ [boxId("B1")]: { protect: { [cableId("C2")]: true } } });
    expect(asFound.labels).toEqual({});
    expect(Object.keys(asFound.intent.outlets)).toEqual([deviceId("R2")]);
  });

  test("a selected cable to a box that stays leads into open country", () => {
    const { asFound } = cut(house.project, enclosure("B4"), { kind: "cable", id: cableId("C3") });
    expect(asFound.cables[cableId("C3")]?.sides).toEqual({
      a: { outside: "to B1" },
      b: { enclosure: boxId("B4"), entry: "e-C3" },
    });
    expect(Object.keys(asFound.loads)).toEqual([loadId("Freezer")]);
    expect(Object.keys(asFound.labels)).toEqual(["label-1"]);
  });

  test("rooms and places on the sheet come along, from the foremost corner", () => {
    const parts = cut(house.project, enclosure("B1"), enclosure("B2"), enclosure("B3"));
    expect(Object.values(parts.rooms).map(({ name }) => name)).toEqual(["Laundry", "Porch"]);
    // B1 stands at 620, 0; B2 at 1300, -420; B3 at 1900, -420.
    expect(parts.layout.enclosures).toEqual({
      [boxId("B1")]: { x: 0, y: 420 },
      [boxId("B2")]: { x: 680, y: 0 },
      [boxId("B3")]: { x: 1280, y: 0 },
    });
  });

  test("a replacement comes as itself, and a tie only with the other breaker", () => {
    const panel = drawing().panel("P").breaker("Q1", "P").breaker("Q2", "P");
    panel.set({ kind: "device", id: deviceId("Q1") }, "tiedTo", deviceId("Q2"), "seen");
    const tied = (...names: readonly string[]) =>
      cut(panel.project, ...names.map(device)).asFound.enclosures[boxId("P")]?.devices[deviceId("Q1")];
    expect(tied("Q1", "Q2")).toMatchObject({ tiedTo: deviceId("Q2"), evidence: { tiedTo: "seen" } });
    expect(tied("Q1")).not.toHaveProperty("tiedTo");
    expect(tied("Q1")?.evidence).not.toHaveProperty("tiedTo");
    const plan = laundryDrawing().propose();
    plan.run("replace-device", {
      device: deviceId("R1"),
      id: deviceId("R1b"),
      type: "gfci-receptacle-20",
      name: "R1b",
    });
    const copy = cutOut(plan.project, "proposed", [device("R1b")]);
    expect(copy?.asFound.enclosures[boxId("B1")]?.devices[deviceId("R1b")]).not.toHaveProperty("replaces");
  });

  test("what stands by itself nowhere is no cut-out", () => {
    expect(cutOut(house.project, "proposed", [enclosure("B1")])).toBeUndefined();
    for (const one of [
      { kind: "cable", id: cableId("C1") },
      { kind: "load", id: loadId("Freezer") },
      { kind: "enclosure", id: "gone" },
      splice("X"),
    ])
      expect(cutOut(house.project, "as-found", [one])).toBeUndefined();
  });
});

describe("cutting out what is inside a box", () => {
  const { project } = laundryDrawing();

  test("a device with splices brings the jumpers between them, and no cable", () => {
    const parts = cut(project, device("R1"), splice("X"), splice("Z"));
    expect(isFromInside(parts)).toBe(true);
    const b1 = parts.asFound.enclosures[boxId("B1")];
    expect(Object.keys(b1?.jumpers ?? {}).sort()).toEqual([jumperId("p"), jumperId("r")]);
    expect(Object.keys(b1?.splices ?? {}).sort()).toEqual([spliceId("X"), spliceId("Z")]);
    expect(b1?.entries).toEqual({});
    expect(Object.keys(b1?.places ?? {}).sort()).toEqual(
      [jumperId("p"), jumperId("r")].flatMap((id) => [`${id}.a`, `${id}.b`]),
    );
  });

  test("a jumper that is selected itself comes with its other end capped; on the bond it stays", () => {
    const parts = cut(project, { kind: "jumper", id: jumperId("q") }, { kind: "jumper", id: jumperId("t") });
    const { places = {}, splices } = parts.asFound.enclosures[boxId("B1")] ?? {};
    expect(splices).toEqual({});
    expect(
      Object.values(places)
        .map(({ at }) => at.kind)
        .sort(),
    ).toEqual(["bond", "capped", "capped", "capped"]);
  });

  test("parts of two boxes come each in a box, so they are not for inside one", () => {
    expect(isFromInside(cut(project, device("R1"), device("R2")))).toBe(false);
    expect(isFromInside(cut(project, device("R1"), enclosure("B2")))).toBe(false);
  });
});

describe("paste-items", () => {
  const { project } = laundryDrawing();

  test("a copy is wired as the original, under new ids, and the original is untouched", () => {
    const parts = cut(project, enclosure("B1"), enclosure("B2"), enclosure("B4"), enclosure("P"));
    const args = argsFor(parts);
    const { project: after } = paste(project, args);
    expect(invariantProblems(after)).toEqual([]);
    expect(withoutOrder(underOldIds(after, args))).toEqual(withoutOrder(parts.asFound));
    for (const [id, one] of Object.entries(project.asFound.enclosures))
      expect(after.asFound.enclosures[id as EnclosureId]).toBe(one);
    expect(Object.keys(after.asFound.enclosures)).toHaveLength(12);
    expect(Object.values(after.rooms)).toHaveLength(5);
    const inOrder = Object.values(after.asFound.enclosures).sort((a, b) => a.order - b.order);
    expect(inOrder.slice(8).map(({ name }) => name)).toEqual(["P", "B1", "B2", "B4"]);
  });

  test("pasted twice, and undone in one step each", () => {
    const parts = cut(project, enclosure("B1"), enclosure("B2"));
    const first = paste(project, argsFor(parts, "as-found", "one"));
    const second = paste(first.project, argsFor(parts, "as-found", "two"));
    expect(Object.keys(second.project.asFound.enclosures)).toHaveLength(12);
    const history = record(record(emptyHistory, first, 0), second, 10_000);
    const back = undo(history);
    const once = applyPatches(second.project, back?.patches ?? []);
    expect(sameDocument(once, first.project)).toBe(true);
    expect(sameDocument(applyPatches(once, undo(back?.history ?? history)?.patches ?? []), project)).toBe(true);
  });

  test("into another drawing with its rooms: one of the same name and kinds is joined, another comes", () => {
    const parts = cut(project, enclosure("B1"), enclosure("B3"));
    const other = drawing().room("Laundry", "basement-unfinished", "laundry").room("Porch", "garage").project;
    const args = argsFor(parts, "as-found", "new", { at: { x: 100, y: -50 } });
    const after = paste(other, args).project;
    const rooms = Object.values(after.asFound.enclosures).map(({ roomId }) => roomId && after.rooms[roomId]);
    expect(rooms.map((room) => [room?.name, room?.kinds])).toEqual([
      ["Laundry", ["basement-unfinished", "laundry"]],
      ["Porch", ["outdoor"]],
    ]);
    expect(Object.values(after.rooms)).toHaveLength(3);
    expect(Object.values(after.layout.enclosures)).toEqual([
      { x: 100, y: 370 },
      { x: 1380, y: -50 },
    ]);
  });

  test("into the other state", () => {
    const both = laundryDrawing().propose().project;
    const args = argsFor(cut(both, enclosure("B4")), "proposed");
    const after = paste(both, args).project;
    expect(after.asFound).toBe(both.asFound);
    expect(withoutOrder(underOldIds(after, args))).toEqual(withoutOrder(args.from));
  });

  test("parts go into a box that is there, to the right of what is in it", () => {
    const house = laundryDrawing().load("Iron", "lamp-60", "R1").wish("R1");
    const parts = cut(house.project, device("R1"), splice("X"));
    const more = { into: boxId("B4"), names: { [deviceId("R1")]: "R6" } };
    const args = argsFor(parts, "as-found", "new", more);
    const after = paste(house.project, args).project;
    const b4 = after.asFound.enclosures[boxId("B4")];
    const id = (old: string) => args.ids[old] ?? "";
    expect(Object.values(b4?.devices ?? {}).map(({ name, order }) => [name, order])).toEqual([
      ["R4", 0],
      ["R6", 1],
    ]);
    expect(b4?.places[`${id(jumperId("p"))}.a` as never]).toEqual({
      at: { kind: "splice", splice: id(spliceId("X")) },
    });
    expect(b4?.places[`${id(jumperId("p"))}.b` as never]).toEqual({
      at: { kind: "terminal", device: id(deviceId("R1")), terminal: "H1", hole: 1 },
    });
    expect(Object.keys(after.asFound.enclosures)).toEqual(Object.keys(house.project.asFound.enclosures));
    expect(after.asFound.loads[id(loadId("Iron")) as never]).toMatchObject({ plug: id(deviceId("R1")) });
    expect(Object.keys(after.asFound.intent.outlets)).toContain(id(deviceId("R1")));
    expect(titleOf(house.project, "paste-items", args)).toBe("Paste R6 into B4");
    expect(titleOf(house.project, "paste-items", { ...args, as: "duplicate" })).toBe("Duplicate R6 into B4");
    expect(leftOvers(after)).toEqual([]);
  });

  test("a breaker keeps its space only where that is free; on a bond that is not there an end is capped", () => {
    const house = drawing().panel("P").panel("P2", "panel-16").box("B1").box("B2", "plastic-new-1");
    house.device("Q1", "breaker-1", "P", { set: { slot: 3 } }).device("Q2", "breaker-1", "P2", { set: { slot: 5 } });
    const into = (name: string) => argsFor(cut(house.project, device("Q1")), "as-found", "new", { into: boxId(name) });
    const slotIn = (name: string) =>
      Object.values(paste(house.project, into(name)).project.asFound.enclosures[boxId(name)]?.devices ?? {}).find(
        ({ id }) => id.startsWith("new"),
      )?.slot;
    expect(slotIn("P")).toBeUndefined();
    expect(slotIn("P2")).toBe(3);
    house.jumper("g", "B1", "bond", "capped");
    const args = argsFor(cut(house.project, { kind: "jumper", id: jumperId("g") }), "as-found", "j", {
      into: boxId("B2"),
    });
    const b2 = paste(house.project, args).project.asFound.enclosures[boxId("B2")];
    expect(Object.values(b2?.places ?? {}).map(({ at }) => at.kind)).toEqual(["capped", "capped"]);
  });

  test("says no, and why", () => {
    const parts = cut(project, enclosure("B1"), enclosure("B2"));
    const inner = cut(project, device("R1"));
    const good = argsFor(parts);
    const ask = (args: Args) => refused(project, "paste-items", args);
    const ids = Object.entries(good.ids);
    expect(ask({ ...good, state: "proposed" })).toBe("no-proposed-state");
    expect(ask({ ...good, from: { ...good.from, enclosures: {} } })).toBe("nothing-to-paste");
    for (const [id] of ids) {
      const { [id]: _gone, ...rest } = good.ids;
      if (!(id in parts.rooms)) expect(ask({ ...good, ids: rest }), id).toBe("id-missing");
    }
    expect(ask({ ...good, ids: { ...good.ids, [deviceId("R1")]: deviceId("R4") } })).toBe("id-in-use");
    expect(ask({ ...good, ids: { ...good.ids, [deviceId("R1")]: good.ids[deviceId("R2")] ?? "" } })).toBe("id-in-use");
    expect(ask({ ...good, into: boxId("B4") })).toBe("not-from-inside");
    expect(ask({ ...argsFor(inner), into: boxId("B9") })).toBe("unknown-item");
    expect(ask({ ...argsFor(inner), into: boxId("P") })).toBe("device-in-wrong-enclosure");
    const { [boxId("B2")]: _b2, ...half } = good.from.enclosures;
    expect(ask({ ...good, from: { ...good.from, enclosures: half } as Installation })).toBe("not-sound");
    expect(ask({ ...good, rooms: {} })).toBe("not-sound");
  });

  test("fields that we do not know come along, unless no file could hold them", () => {
    const withExtra = (json: string): Args => {
      const args = structuredClone(argsFor(cut(project, enclosure("B1"))));
      Object.assign(args.from.enclosures[boxId("B1")] ?? {}, { extra: JSON.parse(json) });
      return args;
    };
    const args = withExtra('{"later": [1, "two", null]}');
    const pasted = paste(project, args).project.asFound.enclosures[args.ids[boxId("B1")] as EnclosureId];
    expect(pasted).toMatchObject({ extra: { later: [1, "two", null] } });
    for (const json of ['{"__proto__": 1}', '{"a": {"constructor": 1}}', '[{"prototype": 1}]', '"\\ud800"', "1e300"])
      expect(refused(project, "paste-items", withExtra(json)), json).toBe("malformed-arguments");
  });

  test("ties that lead nowhere or round are refused", () => {
    const panel = drawing().panel("P").breaker("Q1", "P").breaker("Q2", "P").breaker("Q3", "P").project;
    const tied = (ties: Readonly<Record<string, string>>): Args => {
      const args = structuredClone(argsFor(cut(panel, enclosure("P"))));
      const devices = Object.values(args.from.enclosures)[0]?.devices ?? {};
      for (const [from, to] of Object.entries(ties))
        Object.assign(devices[deviceId(from)] ?? {}, { tiedTo: deviceId(to) });
      return args;
    };
    for (const ties of [{ Q1: "Q1" }, { Q1: "Q9" }, { Q1: "Q2", Q2: "Q3", Q3: "Q1" }])
      expect(refused(drawing().project, "paste-items", tied(ties))).toBe("not-sound");
    for (const ties of [
      { Q1: "Q2", Q2: "Q1" },
      { Q1: "Q2", Q2: "Q3", Q3: "Q2" },
    ]) {
      const after = paste(drawing().project, tied(ties)).project;
      expect(parseProject(textToSave(after)).ok).toBe(true);
    }
  });
});

/** Whatever was drawn by random commands, in one of its states. */
function randomProject(start: string, steps: Parameters<typeof callOf>[1][]): Project {
  let project = start === "both" ? laundryDrawing().propose().project : laundryDrawing().project;
  steps.forEach((step, index) => {
    const done = runCommand(project, callOf(project, step, index));
    if (done.ok) project = done.project;
  });
  return project;
}

describe("laws", () => {
  test("any selection of any drawing is a document of its own, and pasting it keeps both", {
    timeout: LONG ? 600_000 : 120_000,
  }, () => {
    fc.assert(
      fc.property(
        fc.constantFrom("one", "both"),
        randomSteps(25),
        fc.integer({ min: 0, max: 0x7fff_ffff }),
        (start, steps, seed) => {
          const project = randomProject(start, [...steps]);
          const pick = new Picker(seed);
          const state: StateName = project.proposed !== undefined && pick.chance(0.5) ? "proposed" : "as-found";
          const scene = { project, pick, state, index: 0 };
          const parts = cutOut(
            project,
            state,
            Array.from({ length: 1 + pick.below(8) }, () => item(scene)),
          );
          if (parts === undefined) return;
          expect(invariantProblems(parts)).toEqual([]);
          expect(leftOvers(parts)).toEqual([]);
          const opened = parseProject(textToSave(parts));
          if (!opened.ok) throw new Error(opened.problems.map(({ path, message }) => `${path}: ${message}`).join("\n"));
          expect(canonicalText(opened.value.project)).toBe(canonicalText(parts));
          const args = argsFor(parts, state, "z");
          const after = paste(project, args).project;
          expect(invariantProblems(after)).toEqual([]);
          expect(leftOvers(after)).toEqual([]);
          expect(withoutOrder(underOldIds(after, args))).toEqual(withoutOrder(parts.asFound));
          const side = (one: Project) => (state === "proposed" ? one.proposed : one.asFound) as Installation;
          for (const [id, one] of Object.entries(side(project).enclosures))
            expect(side(after).enclosures[id as EnclosureId]).toBe(one);
        },
      ),
      { numRuns: LONG ? 1_500 : 150 },
    );
  });

  test("arguments with one value exchanged are refused or make a document that can be saved and opened", {
    timeout: LONG ? 600_000 : 120_000,
  }, () => {
    const { project } = laundryDrawing();
    const good = argsFor(cut(project, enclosure("B1"), enclosure("B2"), enclosure("B4"), enclosure("P")));
    const strange = fc.oneof(
      fc.anything({ withBigInt: true, withNullPrototype: true }),
      fc.constantFrom<unknown>(
        "__proto__",
        "\ud800",
        "",
        "box-B1",
        -1,
        0.5,
        1e300,
        Number.NaN,
        null,
        [],
        {},
        undefined,
      ),
    );
    let taken = 0;
    fc.assert(
      fc.property(fc.nat(), strange, fc.boolean(), (where, value, asField) => {
        const args = exchanged(good, where, value, asField);
        const done = runCommand(project, { command: "paste-items", args });
        if (!done.ok) return;
        taken++;
        expect(invariantProblems(done.project)).toEqual([]);
        const opened = parseProject(textToSave(done.project));
        if (!opened.ok) throw new Error(opened.problems.map(({ path, message }) => `${path}: ${message}`).join("\n"));
      }),
      { numRuns: LONG ? 20_000 : 2_000 },
    );
    expect(taken).toBeGreaterThan(0);
  });
});

/** A copy of plain data in which one value, counted around, is another, or one record has a field more. */
function exchanged(data: unknown, where: number, value: unknown, asField: boolean): unknown {
  const count = (one: unknown): number =>
    typeof one !== "object" || one === null
      ? 1
      : 1 + Object.values(one).reduce<number>((sum, each) => sum + count(each), 0);
  let left = where % count(data);
  const walk = (one: unknown): unknown => {
    const here = left-- === 0;
    const isRecord = typeof one === "object" && one !== null && !Array.isArray(one);
    if (here && !(asField && isRecord)) return value;
    if (typeof one !== "object" || one === null) return one;
    if (Array.isArray(one)) return one.map(walk);
    const entries = Object.entries(one).map(([key, each]) => [key, walk(each)] as const);
    return Object.fromEntries(here ? [...entries, ["extra", value]] : entries);
  };
  return walk(data);
}
