import fc from "fast-check";
import { afterAll, expect, test } from "vitest";
import type { CommandCall } from "../../shared-model/answers/command-call.ts";
import { applyPatches, runCommand } from "../../shared-model/commands/run-command.ts";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import { canonicalText } from "../../shared-model/lib/canonical-text.ts";
import { sameValue } from "../../shared-model/lib/same-value.ts";
import type { Installation, Project } from "../../shared-model/model/project.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { drawing, heldBackDrawing, laundryDrawing } from "../builders/drawing.ts";
import { callOf, type RandomStep, randomSteps } from "../builders/random-commands.ts";
import { mergeStatements, putTogether, type Statements, takeApart } from "./flow-oracle.ts";
import { sameDocument } from "./same-document.ts";
import { leftOvers } from "./sound-references.ts";

const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";
const RUNS = LONG ? 2_000 : 150;
const TIMEOUT = { timeout: LONG ? 1_800_000 : 120_000 };
const STEPS = 40;

/** Small, so that the two states meet on the same things often; and the laundry, for what a real box has. */
const STARTS: Readonly<Record<string, Project>> = {
  laundry: laundryDrawing().propose().project,
  small: drawing()
    .room("Hall", "hallway")
    .panel("P")
    .breaker("Q1", "P")
    .breaker("Q2", "P", { type: "breaker-2" })
    .box("B1", "square-4-2-1-8", { room: "Hall" })
    .box("B2", "plastic-new-2")
    .device("R1", "receptacle-15", "B1")
    .device("R2", "receptacle-15", "B2")
    .cable("C1", "P", "B1")
    .cable("C2", "B1", "B2")
    .land("C1.bk@P", "Q1.OUT")
    .splice("X", "B1", "twist-large", "C1.bk@B1", "C2.bk@B1")
    .jumper("p", "B1", "splice X", "R1.H1")
    .land("C2.bk@B2", "R2.H1")
    .load("Lamp", "lamp-60", "R2")
    .propose().project,
};

/** The same, and one where the states have come apart already, for laws that do not need them equal. */
const ANY: Readonly<Record<string, Project>> = { ...STARTS, heldBack: heldBackDrawing().project };

const tally = { carried: 0, diverged: 0, held: 0, removals: 0, outcomes: new Map<string, number>() };

const steps = fc.tuple(fc.constantFrom(...Object.keys(STARTS)), randomSteps(STEPS));
const anySteps = fc.tuple(fc.constantFrom(...Object.keys(ANY)), randomSteps(STEPS));

/** Runs a sequence, leaving out what is refused. */
function play(
  start: Project,
  sequence: readonly RandomStep[],
  on: (before: Project, after: Project, call: CommandCall, made: ReturnType<typeof runCommand> & { ok: true }) => void,
  change: (call: CommandCall) => CommandCall | undefined = (call) => call,
): Project {
  let project = start;
  sequence.forEach((step, index) => {
    const call = change(callOf(project, step, index));
    const done = call === undefined ? undefined : runCommand(project, call);
    if (call === undefined || done === undefined || !done.ok) return;
    const before = project;
    project = done.project;
    on(before, project, call, done);
  });
  return project;
}

const startOf = (name: string): Project => ANY[name] ?? drawing().propose().project;

test(
  "what proposed says after an as-found edit is what a merge of all statements says, or all that it said before",
  TIMEOUT,
  () => {
    fc.assert(
      fc.property(anySteps, ([start, sequence]) => {
        play(startOf(start), sequence, (before, after, call) => {
          // A room that is removed in proposed leaves as found too: that is no edit to carry over.
          const forProposed = (call.args as { readonly state?: string }).state === "proposed";
          if (call.command !== "run-together" && !forProposed) checkCarried(before, after, call);
        });
      }),
      { numRuns: RUNS },
    );
    // Each of these must have happened, or the test has shown nothing.
    expect(tally.carried).toBeGreaterThan(100);
    expect(tally.diverged).toBeGreaterThan(100);
    expect(tally.held).toBeGreaterThan(0);
    expect(tally.removals).toBeGreaterThan(10);
  },
);

function checkCarried(before: Project, after: Project, call: CommandCall): void {
  if (before.proposed === undefined || after.proposed === undefined || before.asFound === after.asFound) return;
  const was = takeApart(withoutDangling(before.asFound, after, call));
  const is = takeApart(after.asFound);
  const theirs = takeApart(withoutDangling(before.proposed, after, call));
  const merged = mergeStatements(was, is, theirs);
  const got = readable(takeApart(after.proposed));
  if (sameValue(got, readable(merged))) {
    if (!sameValue(got, readable(theirs))) tally.carried++;
    if (!sameValue(readable(is), got)) tally.diverged++;
    if ([...theirs.keys()].some((thing) => !merged.has(thing))) tally.removals++;
    return;
  }
  tally.held++;
  const [newest] = (after.heldBack ?? []).slice(-1);
  const what = newest?.because.replace(/[A-Z]\w*\d\w*|[a-z]+\d+/g, "…") ?? "nothing";
  tally.outcomes.set(what, (tally.outcomes.get(what) ?? 0) + 1);
  const wrong = newest === undefined ? difference(got, readable(merged)) : difference(got, readable(theirs));
  expect(wrong, `${newest?.title}: ${newest?.because}`).toEqual([]);
  expect(faults(merged, after), `held back for nothing: ${newest?.title}: ${newest?.because}`).not.toEqual([]);
}

/**
 * A state as the command itself leaves it before it is carried over: rooms that went, and replaced devices that went, are
 * named no longer. Where the record of a replaced device was corrected, what replaces it replaces the corrected one.
 */
function withoutDangling(state: Installation, { rooms, asFound }: Project, call: CommandCall): Installation {
  const corrected = call.command === "replace-device" ? (call.args as { device: string; id: string }) : undefined;
  const known = new Set(Object.values(asFound.enclosures).flatMap((one) => Object.keys(one.devices)));
  const copy = structuredClone(state) as unknown as {
    enclosures: Record<
      string,
      { roomId?: string; evidence?: Record<string, string>; devices: Record<string, { replaces?: string }> }
    >;
  };
  for (const enclosure of Object.values(copy.enclosures)) {
    if (enclosure.roomId !== undefined && !(enclosure.roomId in rooms)) {
      delete enclosure.roomId;
      delete enclosure.evidence?.roomId;
    }
    for (const device of Object.values(enclosure.devices)) {
      if (corrected !== undefined && device.replaces === corrected.device) device.replaces = corrected.id;
      if (device.replaces !== undefined && !known.has(device.replaces)) delete device.replaces;
    }
  }
  return copy as unknown as Installation;
}

const difference = (one: readonly string[], other: readonly string[]): readonly string[] => [
  ...one.filter((line) => !other.includes(line)).map((line) => `got ${line}`),
  ...other.filter((line) => !one.includes(line)).map((line) => `not ${line}`),
];

const readable = (statements: Statements): readonly string[] =>
  [...statements]
    .flatMap(([thing, said]) => [thing, ...[...said].map(([field, value]) => `${thing} ${field} ${value.trim()}`)])
    .sort();

/** What would be wrong with a drawing that has these statements as its proposed state. */
function faults(statements: Statements, after: Project): readonly string[] {
  let proposed: Installation;
  try {
    proposed = putTogether(statements);
  } catch (error) {
    return [String(error)];
  }
  const project = { ...after, proposed };
  const found = invariantProblems(project).map(({ message }) => message);
  if (found.length > 0) return found;
  return [
    ...leftOvers(project).filter((one) => !one.startsWith("the layout")),
    ...Object.values(proposed.enclosures).flatMap((one) => {
      const bonded = Object.values(one.places).some(({ at }) => at.kind === "bond");
      const passes = Object.values(one.passThroughs).map(({ cable }) => proposed.cables[cable]?.sides);
      return [
        ...(one.kind === "box" && one.material === "nonmetallic" && bonded ? ["bond in a nonmetallic box"] : []),
        ...Object.values(one.devices).flatMap(({ slot = 0 }) =>
          one.kind === "panel" && slot > one.spaces ? ["slot"] : [],
        ),
        ...(JSON.stringify(passes).includes(`"enclosure":"${one.id}"`) ? ["passes and ends"] : []),
      ];
    }),
    ...Object.values(proposed.cables).flatMap(({ sides: { a, b } }) => {
      const ends = [a, b].flatMap((side) => ("enclosure" in side ? side.enclosure : []));
      return new Set(ends).size === ends.length && ends.length > 0 ? [] : ["sides"];
    }),
  ];
}

test(
  "undo takes both states back, a mirror that gets patches alone agrees, and both states stay sound",
  TIMEOUT,
  () => {
    fc.assert(
      fc.property(anySteps, ([start, sequence]) => {
        let mirror = startOf(start);
        const inverses: { readonly text: string; readonly patches: Parameters<typeof applyPatches>[1] }[] = [];
        const end = play(startOf(start), sequence, (before, after, _call, made) => {
          mirror = applyPatches(mirror, structuredClone(made.patches));
          if (made.patches.length > 0) inverses.push({ text: canonicalText(before), patches: made.inverse });
          expect(invariantProblems(after)).toEqual([]);
          expect(leftOvers(after)).toEqual([]);
        });
        expect(sameDocument(mirror, end)).toBe(true);
        let project = end;
        for (const { text, patches } of inverses.reverse()) {
          project = applyPatches(project, patches);
          expect(canonicalText(project)).toBe(text);
        }
      }),
      { numRuns: RUNS / 2 },
    );
  },
);

/** The same call for as found, whatever it was for; commands of proposed itself are left out. */
function forAsFound({ command, args }: CommandCall): CommandCall | undefined {
  if (/-proposed$|held-back/.test(command)) return undefined;
  const own = args as { readonly state?: string; readonly calls?: readonly CommandCall[] };
  if (own.calls !== undefined)
    return { command, args: { ...own, calls: own.calls.flatMap((call) => forAsFound(call) ?? []) } };
  return { command, args: own.state === undefined ? own : { ...own, state: "as-found" } };
}

test("where nothing was changed in proposed, it stays equal to as found, and nothing is held back", TIMEOUT, () => {
  let edits = 0;
  fc.assert(
    fc.property(steps, ([start, sequence]) => {
      const check = (before: Project, after: Project) => {
        if (before.asFound !== after.asFound) edits++;
        expect(sameValue(after.asFound, after.proposed)).toBe(true);
        expect(after.heldBack).toBeUndefined();
      };
      play(startOf(start), sequence, check, forAsFound);
    }),
    { numRuns: RUNS },
  );
  expect(edits).toBeGreaterThan(500);
});

test("saving and opening in the middle changes nothing of the outcome", TIMEOUT, () => {
  fc.assert(
    fc.property(anySteps, fc.integer({ min: 0, max: STEPS }), ([start, sequence], middle) => {
      // The same calls, and not the same picks: keys of a table come in another order after opening.
      const calls: CommandCall[] = [];
      const straight = play(startOf(start), sequence, (_before, _after, call) => calls.push(call));
      const run = (from: Project, some: readonly CommandCall[]): Project =>
        some.reduce((project, call) => {
          const done = runCommand(project, call);
          if (!done.ok) throw new Error(done.refusal.message);
          return done.project;
        }, from);
      const opened = parseProject(textToSave(run(startOf(start), calls.slice(0, middle))));
      if (!opened.ok) throw new Error(opened.problems[0]?.message);
      const project = run(opened.value.project, calls.slice(middle));
      expect(canonicalText(project)).toBe(canonicalText(straight));
    }),
    { numRuns: RUNS / 2 },
  );
});

afterAll(() => {
  const { outcomes, ...counts } = tally;
  console.log(`carried over: ${JSON.stringify(counts)}`, Object.fromEntries(outcomes));
});

/** A few facts of a few things, each edited on either side: the model of the flow is two variables a fact. */
test("a fact that proposed changed is never overwritten; one that agrees follows", TIMEOUT, () => {
  const facts = [
    { target: { kind: "cable", id: "cable-C1" }, field: "notes", values: ["", "one", "two"] },
    { target: { kind: "cable", id: "cable-C2" }, field: "route", values: ["attic", "crawl space"] },
    { target: { kind: "enclosure", id: "box-B1" }, field: "gangs", values: [1, 2, 3] },
    { target: { kind: "enclosure", id: "box-B2" }, field: "note", values: ["hall", null] },
    { target: { kind: "device", id: "device-R1" }, field: "ratingA", values: [15, 20, null] },
    { target: { kind: "end", enclosure: "box-B1", id: "cable-C1.bk.b" }, field: "tag", values: ["1", "2", null] },
    { target: { kind: "load", id: "load-Lamp" }, field: "loadW", values: [60, 75] },
  ];
  const start = startOf("small");
  const read = (state: Installation, index: number): unknown => {
    const { enclosures, cables, loads } = state as unknown as Record<string, Record<string, Record<string, unknown>>>;
    const at = (value: unknown, ...path: readonly string[]): unknown =>
      path.reduce<unknown>((part, key) => (part as Record<string, unknown> | undefined)?.[key], value);
    return [
      () => at(cables, "cable-C1", "notes"),
      () => at(cables, "cable-C2", "route"),
      () => at(enclosures, "box-B1", "gangs"),
      () => at(enclosures, "box-B2", "note"),
      () => at(enclosures, "box-B1", "devices", "device-R1", "ratingA"),
      () => at(enclosures, "box-B1", "places", "cable-C1.bk.b", "tag"),
      () => at(loads, "load-Lamp", "loadW"),
    ][index]?.();
  };
  const edit = fc.record({
    state: fc.constantFrom("as-found", "proposed"),
    fact: fc.nat({ max: facts.length - 1 }),
    pick: fc.nat({ max: 5 }),
  });
  let kept = 0;
  fc.assert(
    fc.property(fc.array(edit, { minLength: 5, maxLength: 40 }), (edits) => {
      let project = start;
      const found = facts.map((_, index) => read(start.asFound, index));
      const planned = [...found];
      for (const { state, fact, pick } of edits) {
        const { target, field, values } = facts[fact] as (typeof facts)[number];
        const value = values[pick % values.length] ?? null;
        const done = runCommand(project, { command: "set-property", args: { state, target, field, value } });
        if (!done.ok) throw new Error(done.refusal.message);
        project = done.project;
        const apart = !sameValue(found[fact], planned[fact]);
        if (state === "proposed" || !apart) planned[fact] = value ?? undefined;
        else kept++;
        if (state === "as-found") found[fact] = value ?? undefined;
        facts.forEach((_, index) => {
          expect(read(project.asFound, index)).toEqual(found[index]);
          expect(read(project.proposed ?? project.asFound, index)).toEqual(planned[index]);
        });
      }
    }),
    { numRuns: RUNS },
  );
  expect(kept).toBeGreaterThan(100);
});
