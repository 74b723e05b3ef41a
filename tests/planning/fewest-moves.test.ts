import fc from "fast-check";
import { expect, test } from "vitest";
import type { EndKey, TerminalName } from "../../shared-model/model/ids.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { type JointGroup, USUAL_STYLE } from "../../shared-model/planning/joint-group.ts";
import { planJoints } from "../../shared-model/planning/plan-joints.ts";
import { boxId, deviceId, drawing, jumperId } from "../builders/drawing.ts";
import { fewestMoves } from "./exhaustive-joints.ts";
import "../same-seed.ts";

const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";
const RUNS = LONG ? 1500 : 60;
const CABLES = ["C1", "C2", "C3", "C4"];
const SPLICES = ["X", "Y"];
const DEVICES = ["D1", "D2"];

/** Places that an end of a small box may have: one of two splices, one of two terminals, or none. */
const place = fc.constantFrom("X", "X", "Y", "Y", "D1", "D2", "");

interface Small {
  readonly ends: readonly string[];
  readonly jumpers: readonly (readonly [string, string])[];
  readonly nets: readonly number[];
  readonly ports: readonly number[];
  readonly worn: readonly boolean[];
  readonly connector: string;
}

const small: fc.Arbitrary<Small> = fc.record({
  ends: fc.array(place, { minLength: 4, maxLength: 4 }),
  jumpers: fc.array(fc.tuple(place, place), { minLength: 0, maxLength: 2 }),
  nets: fc.array(fc.nat(1), { minLength: 4, maxLength: 4 }),
  ports: fc.array(fc.nat(2), { minLength: 2, maxLength: 2 }),
  worn: fc.array(fc.boolean(), { minLength: 4, maxLength: 4 }),
  connector: fc.constantFrom("twist-medium", "twist-large"),
});

/** Four capped cables in a box, then every black and every jumper put where the case has it. Two ends make a splice. */
function drawn({ ends, jumpers, worn, connector }: Small): Project {
  const box = drawing().box("BX");
  for (const name of CABLES) box.outside(name, "BX");
  for (const name of DEVICES) box.device(name, "receptacle-15", "BX");
  const kept = jumpers.filter(([a, b]) => a !== b || a === "");
  kept.forEach((_, index) => {
    box.jumper(`j${index}`, "BX", "capped", "capped");
  });
  const all = [
    ...CABLES.map((name, index) => [`${name}.bk@BX`, ends[index] ?? ""] as const),
    ...kept.flatMap(([a, b], index) => [[`j${index}.a`, a] as const, [`j${index}.b`, b] as const]),
  ];
  for (const name of SPLICES) {
    const members = all.filter(([, at]) => at === name).map(([end]) => end);
    if (members.length >= 2) box.splice(name, "BX", connector, ...members);
  }
  for (const [end, at] of all) if (DEVICES.includes(at)) box.land(end, `${at}.H1`);
  CABLES.forEach((name, index) => {
    if (worn[index]) box.setEnd(`${name}.bk@BX`, "condition", "brittle");
  });
  return box.project;
}

/** What a plan costs, read off where its ends are and go. */
function costOf(project: Project, plan: Extract<ReturnType<typeof planJoints>, { ok: true }>["value"]): number {
  const places = project.asFound.enclosures[boxId("BX")]?.places ?? {};
  const worn = [...plan.moved.keys()].filter((end: EndKey) => places[end]?.condition === "brittle").length;
  return plan.moves.detach + plan.moves.attach + 2 * plan.moves.newSplices + 3 * worn;
}

let compared = 0;

function compare(one: Small): void {
  const project = drawn(one);
  const enclosure = project.asFound.enclosures[boxId("BX")];
  if (enclosure === undefined) throw new Error("No box.");
  const ends = (net: number): readonly EndKey[] =>
    CABLES.flatMap((name, index) => (one.nets[index] === net ? [`cable-${name}.bk.a` as EndKey] : []));
  const ports = (net: number): readonly string[] =>
    DEVICES.flatMap((name, index) => (one.ports[index] === net ? [`${deviceId(name)}.H1`] : []));
  const nets = [0, 1]
    .map((net) => ({ ends: ends(net), ports: ports(net) }))
    .filter((net) => net.ends.length > 0 || net.ports.length === 2);
  const groups = nets.map(
    (net, index): JointGroup => ({
      name: `G${index}`,
      role: "hot",
      ends: net.ends,
      ports: net.ports.map((port) => ({
        kind: "terminal",
        device: deviceId(port.slice("device-".length, -3)),
        terminals: ["H1" as TerminalName],
      })),
      leastAwg: "12",
      colour: "black",
    }),
  );
  const style = { ...USUAL_STYLE, connectors: [one.connector] };
  const plan = planJoints(project.asFound, enclosure, groups, [], style);
  const fewest = fewestMoves({
    installation: project.asFound,
    box: enclosure,
    nets,
    connectors: [one.connector],
    awg: "12",
  });
  // The slow account stops at three splices a net.
  if (plan.ok && plan.value.landings.some(({ splices }) => splices.length > 3)) return;
  expect(plan.ok).toBe(Number.isFinite(fewest));
  if (!plan.ok) return;
  // Jumpers at places of no net are left alone by the plan and taken out by the other account.
  const left = Object.keys(enclosure.jumpers).length;
  const touched = new Set([...plan.value.removedJumpers, ...jumpersOf(plan.value)]);
  if (left !== touched.size) return;
  compared += 1;
  expect(costOf(project, plan.value)).toBe(fewest);
}

const jumpersOf = (plan: Extract<ReturnType<typeof planJoints>, { ok: true }>["value"]) =>
  [0, 1].map((n) => jumperId(`j${n}`)).filter((id) => plan.keptJumpers.includes(id));

test("no way to make a small box up takes fewer moves", () => {
  fc.assert(fc.property(small, compare), { numRuns: RUNS });
  expect(compared).toBeGreaterThan(RUNS / 2);
});
