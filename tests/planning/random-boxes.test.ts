/**
 * Random boxes, wired at random before: what is offered is one net a group, keeps the bookkeeping, brings no danger and no
 * violation by the account of a whole session, and protects what it says. Nothing of a plain box is refused.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import { openSession } from "../../shared-model/analysis/session.ts";
import type { MakeUpIntent } from "../../shared-model/answers/make-up-intent.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import { type EndKey, type JumperId, jumperEnd } from "../../shared-model/model/ids.ts";
import type { At } from "../../shared-model/model/place.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { isSerious } from "../../shared-model/model/severity.ts";
import { type MakeUpProposal, makeUp } from "../../shared-model/planning/make-up.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { sectionProof } from "../../shared-model/solver/circuit/section-proof.ts";
import { sectionOf } from "../../shared-model/solver/sections.ts";
import { boxId, cableId, deviceId } from "../builders/drawing.ts";
import { Drawing } from "../builders/drawing-by-commands.ts";
import { down, intent, workedBox } from "./worked-boxes.ts";
import "../same-seed.ts";
import { withRoom } from "../same-seed.ts";

const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";
const RUNS = LONG ? 600 : 25;

const leg = fc.record({ light: fc.boolean(), protect: fc.boolean(), switched: fc.boolean() });
const small = fc.record({
  legs: fc.array(leg, { minLength: 1, maxLength: 6 }),
  guard: fc.constantFrom("gfci-receptacle-15", "dual-function-receptacle-15", "gfci-blank", undefined),
  thin: fc.boolean(),
  /** Old cables without an equipment ground. */
  bare: fc.boolean(),
  /** A duplex with its tab off, the one half on a switch where there is one. */
  split: fc.boolean(),
  hasSwitch: fc.boolean(),
  /** Where every end of the box is beforehand: in one of two joints of the right kind, or capped. */
  before: fc.array(fc.nat(2), { minLength: 21, maxLength: 21 }),
  bothHoles: fc.boolean(),
});
type Case = typeof small extends fc.Arbitrary<infer T> ? T : never;

function drawn({ legs, guard, thin, bare, split, hasSwitch, before }: Case): Project {
  const names = legs.map((_, index) => `V${index + 2}`);
  const project = workedBox({
    in3: 90,
    supply: bare ? "nm-14-2" : thin ? "nm-14-2-g" : "nm-12-2-g",
    ratingA: bare || thin ? 15 : 20,
    legs: Object.fromEntries(
      names.map((name, index) => [name, { to: legs[index]?.light ? ("light" as const) : ("receptacle" as const) }]),
    ),
    devices: {
      ...(guard !== undefined && { GD: guard }),
      ...(hasSwitch && { SW: "switch-single-pole" }),
      ...(split && !bare && { R: "receptacle-tr-15" }),
    },
  });
  const box = new Drawing(project, "as-found");
  if (split && !bare) box.set({ kind: "device", id: deviceId("R") }, "hotTab", "removed");
  for (const [at, conductor] of (bare ? ["bk", "wh"] : ["bk", "wh", "cu"]).entries())
    for (const joint of [1, 2]) {
      const ends = ["V1", ...names]
        .filter((_, index) => before[3 * index + at] === joint)
        .map((name) => `${name}.${conductor}@BX`);
      if (ends.length >= 2) box.splice(`${conductor}${joint}`, "BX", "twist-large", ...ends);
    }
  return box.project;
}

function intended({ legs, guard, hasSwitch, bothHoles, split, bare }: Case) {
  let isUsed = false;
  const protect = (wanted: boolean): boolean => wanted && guard !== undefined;
  const switched: { cable: ReturnType<typeof cableId>; switch: ReturnType<typeof deviceId>; protect: boolean }[] = [];
  const downstream = legs.flatMap((one, index) => {
    const cable = `V${index + 2}`;
    // The switch takes the first leg that wants one, else the first of all.
    const isSwitched = hasSwitch && !isUsed && (one.switched || index === legs.length - 1);
    if (!isSwitched) return [down(cable, protect(one.protect))];
    isUsed = true;
    switched.push({ cable: cableId(cable), switch: deviceId("SW"), protect: protect(one.protect) });
    return [];
  });
  const devices: MakeUpIntent["devices"] =
    split && !bare && isUsed ? [{ device: deviceId("R"), half: "lower", protect: false, switch: deviceId("SW") }] : [];
  return intent("V1", { downstream, switched, devices, style: { direct: true, bothHoles, noPushIn: true } });
}

/** Nets of a box, walked from each end over splices, terminals, the bond and jumpers: another way than the plan's own. */
function netOf({ places, jumpers }: Enclosure, start: EndKey): ReadonlySet<string> {
  const key = (at: At | undefined): string | undefined =>
    at?.kind === "splice"
      ? `s${at.splice}`
      : at?.kind === "terminal"
        ? `${at.device}.${at.terminal}`
        : at?.kind === "bond"
          ? "bond"
          : undefined;
  const found = new Set<string>();
  const todo = [key(places[start]?.at)];
  for (let point = todo.pop(); point !== undefined || todo.length > 0; point = todo.pop()) {
    if (point === undefined || found.has(point)) continue;
    found.add(point);
    for (const id of Object.keys(jumpers) as JumperId[]) {
      const sides = [jumperEnd(id, "a"), jumperEnd(id, "b")].map((end) => key(places[end]?.at));
      if (sides.includes(point)) todo.push(...sides);
    }
  }
  return new Set(
    (Object.keys(places) as EndKey[])
      .filter((end) => end.startsWith("cable-") && found.has(key(places[end]?.at) ?? ""))
      .concat([...found].filter((point) => !point.startsWith("s")) as EndKey[]),
  );
}

function expectNets({ groups, project }: MakeUpProposal): void {
  const box = project.asFound.enclosures[boxId("BX")] as Enclosure;
  for (const { ends, ports } of groups) {
    const [first] = ends;
    if (first === undefined || (ends.length === 1 && ports.length === 0)) continue;
    const net = netOf(box, first);
    const terminals = [...net].filter((point) => !point.startsWith("cable-"));
    expect([...net].filter((point) => point.startsWith("cable-")).sort()).toEqual([...ends].sort());
    expect(terminals).toHaveLength(ports.length);
    for (const port of ports)
      expect(port.kind === "bond" ? ["bond"] : port.terminals.map((name) => `${port.device}.${name}`)).toSatisfy(
        (names: readonly string[]) => names.some((name) => terminals.includes(name)),
      );
  }
}

function check(one: Case): void {
  const project = drawn(one);
  const asked = intended(one);
  const made = makeUp(project, "as-found", boxId("BX"), asked);
  if (!made.ok) throw new Error(`${made.refusal.code}: ${made.refusal.message}`);
  const then = made.value.project;
  expect(invariantProblems(then)).toEqual([]);
  expectNets(made.value);
  const tried = openSession(project).tryCall("as-found", made.value.call);
  if (!tried.done) throw new Error(tried.refused);
  expect(tried.brings.introduces.filter(isSerious)).toEqual([]);
  const section = sectionOf(then.asFound, boxId("BX"));
  if (section === undefined) throw new Error("No section.");
  const protects = new Set(
    [...asked.downstream, ...asked.switched]
      .filter(({ protect }) => protect)
      .map(({ cable }) => `o${cable.slice("cable-".length)}`),
  );
  for (const { standing, protectedBy } of sectionProof(section).outlets) {
    expect(standing.live).toBe(true);
    const { name } = standing.outlet;
    if (name !== "GD" && !name.startsWith("R/"))
      expect([name, protectedBy.length > 0]).toEqual([name, protects.has(name)]);
  }
  const again = makeUp(then, "as-found", boxId("BX"), asked);
  expect(again.ok && again.value.plan.moves).toEqual({ detach: 0, attach: 0, newSplices: 0 });
}

test(
  "random boxes",
  () => {
    fc.assert(fc.property(small, check), { numRuns: RUNS });
  },
  withRoom(LONG ? 600_000 : 30_000),
);
