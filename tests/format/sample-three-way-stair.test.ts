import { expect, test } from "vitest";
import { getDeviceType } from "../../shared-model/catalog/device-types.ts";
import { UnionFind } from "../../shared-model/lib/union-find.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { findingsOf } from "../builders/samples/look-into.ts";
import { openSample } from "../builders/samples/open-sample.ts";

const { asFound } = openSample("three-way-stair");

test("nothing to find", () => {
  expect(findingsOf(openSample("three-way-stair"), "as-found")).toEqual([]);
});

test("lit in two of four positions, and either handle turns it over from each", () => {
  const lit = (a: string, b: string) => isLit(asFound, { SA: a, SB: b });
  expect([lit("up", "up"), lit("down", "down"), lit("up", "down"), lit("down", "up")]).toEqual([
    true,
    true,
    false,
    false,
  ]);
});

/** Hot of L1 joined to the breaker and its neutral to the bar, by joints and device paths in one position of the handles. */
function isLit({ enclosures, cables }: Installation, handles: Readonly<Record<string, string>>): boolean {
  const nodes = new Map<string, number>();
  const wires = new UnionFind();
  const node = (name: string): number => nodes.get(name) ?? nodes.set(name, nodes.size).size - 1;
  const join = (a: string, b: string): void => {
    wires.join(node(a), node(b));
  };
  for (const enclosure of Object.values(enclosures)) joinInside(enclosure, handles, join);
  for (const { id, conductors } of Object.values(cables))
    for (const key of Object.keys(conductors)) join(`${id}.${key}.a`, `${id}.${key}.b`);
  const joined = (a: string, b: string) => wires.find(node(a)) === wires.find(node(b));
  return joined("L1.H", "Q10.OUT") && joined("L1.N", "Neutral bar.BAR");
}

function joinInside(
  { places, devices, jumpers }: Enclosure,
  handles: Readonly<Record<string, string>>,
  join: (a: string, b: string) => void,
): void {
  for (const [end, { at }] of Object.entries(places)) {
    if (at.kind === "splice") join(end, at.splice);
    if (at.kind === "terminal") join(end, `${devices[at.device]?.name}.${at.terminal}`);
  }
  for (const id of Object.keys(jumpers)) join(`${id}.a`, `${id}.b`);
  for (const { name, type } of Object.values(devices))
    for (const { a, b, when } of getDeviceType(type).paths)
      if (when === handles[name]) join(`${name}.${a}`, `${name}.${b}`);
}
