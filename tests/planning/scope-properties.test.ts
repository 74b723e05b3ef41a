/**
 * Random drawings, changed at random in both accounts: every conductor end is told exactly once, counts are those of another
 * way of counting, what is the same is in no list, and what was undone leaves no scope.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import { scopeAnswer } from "../../shared-model/analysis/scope-answer.ts";
import { openSession } from "../../shared-model/analysis/session.ts";
import type { ScopeBox } from "../../shared-model/answers/scope.ts";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import { type EndKey, type JumperId, parseEnd } from "../../shared-model/model/ids.ts";
import type { At } from "../../shared-model/model/place.ts";
import type { Installation, Project } from "../../shared-model/model/project.ts";
import { scopeDifference } from "../../shared-model/planning/scope/difference.ts";
import { laundryAsFound } from "../builders/drawing.ts";
import { callOf, type RandomStep, randomSteps } from "../builders/random-commands.ts";
import { openSample } from "../builders/samples/open-sample.ts";
import "../same-seed.ts";

const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";
const RUNS = LONG ? 800 : 60;

const STARTS: readonly (() => Project)[] = [
  laundryAsFound,
  () => openSample("kitchen-multiwire"),
  () => openSample("three-way-stair"),
  () => openSample("laundry-proposed"),
];

/** A start with proposed begun and some random commands run over both accounts. */
function changed(start: number, steps: readonly RandomStep[]): Project {
  let project = STARTS[start]?.() ?? laundryAsFound();
  const begun = runCommand(project, { command: "start-proposed", args: {} });
  if (begun.ok) project = begun.project;
  for (const [index, step] of steps.entries()) {
    if (step.command === "discard-proposed" || step.command === "reset-proposed") continue;
    const done = runCommand(project, callOf(project, step, index));
    if (done.ok && done.project.proposed !== undefined) project = done.project;
  }
  return project;
}

const drawn = fc.record({ start: fc.nat(STARTS.length - 1), steps: randomSteps(25) });

const isOn = (at: At | undefined): boolean => at !== undefined && at.kind !== "capped" && at.kind !== "loose";
const boxIn = ({ enclosures }: Installation, id: string): Enclosure | undefined =>
  Object.values<Enclosure>(enclosures).find((one) => one.id === id);

/** Whether a piece of wire is another piece: told field by field, as a person would look at it. */
function isOtherWire(before: Installation, after: Installation, was: Enclosure, is: Enclosure, end: EndKey): boolean {
  const parsed = parseEnd(end);
  if (parsed?.of === "jumper") {
    const [one, other] = [was.jumpers[parsed.jumper as JumperId], is.jumpers[parsed.jumper as JumperId]];
    return (["awg", "colour", "material", "stranded"] as const).some((field) => one?.[field] !== other?.[field]);
  }
  if (parsed === undefined) return false;
  const [one, other] = [before.cables[parsed.cable], after.cables[parsed.cable]];
  const made = (cable: typeof one): string =>
    JSON.stringify([
      cable?.item,
      cable?.construction,
      Object.entries(cable?.conductors ?? {})
        .map(([key, conductor]) => [key, ...Object.entries(conductor).sort()])
        .sort(),
    ]);
  return made(one) !== made(other);
}

/** Moves counted end by end under the same ids: right wherever nothing was drawn anew. */
function countedById(before: Installation, after: Installation, id: string): readonly [number, number] {
  const [was, is] = [boxIn(before, id), boxIn(after, id)];
  let detach = 0;
  let attach = 0;
  for (const end of new Set([...Object.keys(was?.places ?? {}), ...Object.keys(is?.places ?? {})]) as Set<EndKey>) {
    const [old, now] = [was?.places[end]?.at, is?.places[end]?.at];
    const sameDevice = old?.kind !== "terminal" || was?.devices[old.device]?.type === is?.devices[old.device]?.type;
    const same = old !== undefined && now !== undefined && JSON.stringify(sorted(old)) === JSON.stringify(sorted(now));
    if (same && sameDevice && was !== undefined && is !== undefined && !isOtherWire(before, after, was, is, end))
      continue;
    if (isOn(old)) detach += 1;
    if (isOn(now)) attach += 1;
  }
  return [detach, attach];
}

const sorted = (at: At): readonly unknown[] => Object.entries(at).sort();
const isRedrawn = ({ changes }: ScopeBox): boolean =>
  changes.some(({ item }) => item.was !== undefined && (item.kind === "splice" || item.kind === "jumper"));

test("two equal accounts have no difference", () => {
  fc.assert(
    fc.property(drawn, ({ start, steps }) => {
      const { proposed } = changed(start, steps);
      if (proposed === undefined) return;
      const scope = scopeDifference(proposed, structuredClone(proposed));
      expect([scope.boxes, scope.elsewhere, scope.elsewhereLines]).toEqual([[], [], []]);
      expect(Object.values(scope.totals).every((count) => count === 0)).toBe(true);
    }),
    { numRuns: RUNS },
  );
});

test("every end is told once, in the box that it is in, and what is left out is the same in both", () => {
  fc.assert(
    fc.property(drawn, ({ start, steps }) => {
      const { asFound, proposed } = changed(start, steps);
      if (proposed === undefined) return;
      const { boxes } = scopeDifference(asFound, proposed);
      for (const box of boxes) {
        const ends = box.changes.filter(({ item }) => item.kind === "end");
        const before = ends.flatMap(({ item, was }) => (was === undefined ? [] : [item.was ?? item.id])).sort();
        const after = ends.flatMap(({ item, will }) => (will === undefined ? [] : [item.id])).sort();
        expect(before).toEqual(Object.keys(boxIn(asFound, box.enclosure)?.places ?? {}).sort());
        expect(after).toEqual(Object.keys(boxIn(proposed, box.enclosure)?.places ?? {}).sort());
        expect(new Set(box.changes.map(({ key }) => key)).size).toBe(box.changes.length);
      }
      const told = new Set<string>(boxes.map(({ enclosure }) => enclosure));
      for (const installation of [asFound, proposed])
        for (const id of Object.keys(installation.enclosures))
          if (!told.has(id)) expect(countedById(asFound, proposed, id)).toEqual([0, 0]);
    }),
    { numRuns: RUNS },
  );
});

test("moves are those of counting end by end, sums are sums, and every change stands in a line", () => {
  let compared = 0;
  fc.assert(
    fc.property(drawn, ({ start, steps }) => {
      const { asFound, proposed } = changed(start, steps);
      if (proposed === undefined) return;
      const { boxes, totals, elsewhere, elsewhereLines } = scopeDifference(asFound, proposed);
      for (const box of boxes) {
        const [detach, attach] = countedById(asFound, proposed, box.enclosure);
        // What was drawn anew is found again: that spares moves, and never costs one.
        if (isRedrawn(box)) expect(box.counts.detach).toBeLessThanOrEqual(detach);
        else {
          expect([box.counts.detach, box.counts.attach]).toEqual([detach, attach]);
          compared += detach + attach;
        }
        const inLines = new Set(box.lines.flatMap(({ changes }) => changes));
        for (const { key, kind, owner } of box.changes)
          if (kind !== "kept" || owner?.kind === "cable") expect(inLines).toContain(key);
        const known = new Set(box.changes.map(({ key }) => key));
        for (const key of inLines) expect(known).toContain(key);
      }
      for (const field of ["detach", "attach", "newJoints", "devices", "newJumpers"] as const)
        expect(totals[field]).toBe(boxes.reduce((sum, { counts }) => sum + counts[field], 0));
      expect(elsewhereLines).toHaveLength(elsewhere.length);
    }),
    { numRuns: RUNS },
  );
  expect(compared).toBeGreaterThan(100);
});

test("going back to as found leaves nothing, and as found and proposed exchanged exchange off and on", () => {
  fc.assert(
    fc.property(drawn, ({ start, steps }) => {
      const project = changed(start, steps);
      const { asFound, proposed } = project;
      if (proposed === undefined) return;
      const back = runCommand(project, { command: "reset-proposed", args: {} });
      if (back.ok && back.project.proposed !== undefined)
        expect(scopeDifference(back.project.asFound, back.project.proposed).boxes).toEqual([]);
      const [there, home] = [scopeDifference(asFound, proposed), scopeDifference(proposed, asFound)];
      if (there.boxes.some(isRedrawn) || home.boxes.some(isRedrawn)) return;
      expect([there.totals.detach, there.totals.attach]).toEqual([home.totals.attach, home.totals.detach]);
    }),
    { numRuns: RUNS },
  );
});

test("the whole answer is plain data, with one step an end and steps that are there once", () => {
  fc.assert(
    fc.property(drawn, ({ start, steps: random }) => {
      const answer = scopeAnswer(openSession(changed(start, random)));
      if (answer === undefined) return;
      expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
      const { steps, boxes, signOffs } = answer;
      expect(new Set(steps.map(({ id }) => id)).size).toBe(steps.length);
      const ids = (kind: string): readonly string[] =>
        steps.flatMap((step) => (step.kind === kind ? [`${step.box?.id} ${step.items[0]?.id}`] : [])).sort();
      const moved = (field: "detach" | "attach"): readonly string[] =>
        boxes
          .filter(({ work }) => work !== "not-opened")
          .flatMap(({ enclosure, changes }) =>
            changes.flatMap((change) => (change[field] > 0 ? [`${enclosure} ${change.item.id}`] : [])),
          )
          .sort();
      expect(ids("detach")).toEqual(moved("detach"));
      // Capping an end is a step too, and no move.
      expect(ids("attach")).toEqual(expect.arrayContaining([...moved("attach")]));
      expect(signOffs.map(({ step }) => step)).toEqual(steps.filter(({ sign }) => sign).map(({ id }) => id));
      for (const { kind, items } of steps) if (kind === "attach" || kind === "detach") expect(items).toHaveLength(1);
    }),
    { numRuns: LONG ? 200 : 25 },
  );
});
