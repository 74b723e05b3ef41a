import { describe, expect, test } from "vitest";
import samples from "../../assets/samples/index.json" with { type: "json" };
import { countFindings } from "../../renderer/panels/outline/finding-counts.ts";
import type { OutlineNode } from "../../renderer/panels/outline/outline-node.ts";
import { visibleRows } from "../../renderer/panels/outline/outline-rows.ts";
import { outlineOf } from "../../renderer/panels/outline/outline-tree.ts";
import { ancestorsOf, keyInOutline } from "../../renderer/panels/outline/path-to.ts";
import { selectable } from "../../renderer/state/item-actions/subject.ts";
import type { Finding } from "../../shared-model/answers/finding.ts";
import type { EndKey } from "../../shared-model/model/ids.ts";
import type { Installation, Project } from "../../shared-model/model/project.ts";
import { terminalsOf } from "../../shared-model/queries/terminals-of.ts";
import { boxId, cableId, deviceId, laundryAsFound, laundryDrawing, spliceId } from "../builders/drawing.ts";
import { openSample } from "../builders/samples/open-sample.ts";

const nodesOf = (project: Project): readonly OutlineNode[] => outlineOf(project, project.asFound);

function everything(nodes: readonly OutlineNode[]): readonly OutlineNode[] {
  return nodes.flatMap((node) => [node, ...everything(node.children())]);
}

test("everything that the document holds stands in the outline, each place under a key of its own", () => {
  const house = laundryDrawing();
  house.run("add-label", { id: "l1" as never, wording: "GFCI protected", on: { device: deviceId("R1") } });
  const { project } = house;
  const all = everything(nodesOf(project));
  const keys = all.map(({ key }) => key);
  expect(new Set(keys).size).toBe(keys.length);
  const shown = new Set(all.flatMap(({ subject }) => ("id" in subject ? [`${subject.kind} ${subject.id}`] : [])));
  const wanted = itemsOf(project, project.asFound);
  expect(wanted.filter((key) => !shown.has(key))).toEqual([]);
});

describe.each(samples)("the outline of $name", ({ name }) => {
  test("has every item of both accounts of the wiring, each with a name and what it is", () => {
    const project = openSample(name);
    for (const installation of [project.asFound, ...(project.proposed === undefined ? [] : [project.proposed])]) {
      const all = everything(outlineOf(project, installation));
      const shown = new Set(all.flatMap(({ subject }) => ("id" in subject ? [`${subject.kind} ${subject.id}`] : [])));
      expect(itemsOf(project, installation).filter((key) => !shown.has(key))).toEqual([]);
      for (const { key, name: words, kind } of all) expect([key, words, kind]).toEqual([key, FILLED, FILLED]);
      // What has no id of its own: terminals by their device, the bond by its box.
      const own = new Set(all.map(({ key }) => key));
      for (const box of Object.values(installation.enclosures)) {
        expect(own.has(`${box.id}/bond`), box.name).toBe(true);
        for (const device of Object.values(box.devices))
          for (const terminal of terminalsOf(device))
            expect(own.has(`${box.id}/${device.id}/${terminal.name}`), device.name).toBe(true);
      }
    }
  });
});

const FILLED = expect.stringMatching(/\S/);

/** Everything that a document holds and a person can point at, by kind and id. */
function itemsOf(project: Project, { enclosures, cables, loads, labels }: Installation): readonly string[] {
  const keys = (kind: string, table: object): readonly string[] => Object.keys(table).map((id) => `${kind} ${id}`);
  return [
    ...keys("enclosure", enclosures),
    ...keys("cable", cables),
    ...keys("load", loads),
    ...keys("label", labels),
    ...keys("room", project.rooms),
    ...keys("reading", project.readings),
    ...Object.values(enclosures).flatMap((box) => [
      ...keys("device", box.devices),
      ...keys("splice", box.splices),
      ...keys("jumper", box.jumpers),
      ...keys("entry", box.entries),
      ...keys("end", box.places),
      ...keys("pass-through", box.passThroughs),
      ...(box.kind === "box" ? keys("ring", box.rings) : []),
    ]),
  ];
}

test("the key of a thing is one of a row that shows it, and its ancestors are rows", () => {
  const house = laundryDrawing();
  house.run("add-label", { id: "l1" as never, wording: "Words", on: { cable: cableId("C2") } });
  const { project } = house;
  const all = everything(nodesOf(project));
  const byKey = new Map(all.map((node) => [node.key, node]));
  let seen = 0;
  for (const { subject } of all) {
    const item = selectable(subject);
    if (item === undefined) continue;
    const key = keyInOutline(project.asFound, item, undefined) ?? "";
    const found = byKey.get(key);
    expect(found && selectable(found.subject)).toEqual(item);
    for (const above of ancestorsOf(key)) expect(byKey.has(above), above).toBe(true);
    seen += 1;
  }
  expect(seen).toBeGreaterThan(150);
});

test("a cable is shown in the box where the person is", () => {
  const { asFound } = laundryAsFound();
  const c2 = { kind: "cable", id: cableId("C2") } as const;
  expect(keyInOutline(asFound, c2, boxId("B2"))).toBe(`${boxId("B2")}/${cableId("C2")}.b`);
  expect(keyInOutline(asFound, c2, `${boxId("B1")}/x`)).toBe(`${boxId("B1")}/${cableId("C2")}.a`);
  expect(keyInOutline(asFound, c2, boxId("B7"))).toBe(`${boxId("B1")}/${cableId("C2")}.a`);
});

test("rows follow what is open and know where they stand", () => {
  const nodes = nodesOf(laundryAsFound());
  expect(visibleRows(nodes, new Set()).map(({ text }) => text)).toEqual([
    "P",
    "B1",
    "B2",
    "B3",
    "B4",
    "B5",
    "B6",
    "B7",
    "Rooms",
  ]);
  const b7 = boxId("B7");
  const rows = visibleRows(nodes, new Set([b7, `${b7}/${spliceId("E_B7")}`, "gone"]));
  const inside = rows.filter(({ key }) => key.startsWith(b7));
  expect(inside.map(({ text, level, position, count }) => [text, level, position, count])).toEqual([
    ["B7", 1, 8, 9],
    ["C7", 2, 1, 6],
    ["L1", 2, 2, 6],
    ["E_B7", 2, 3, 6],
    ["C7 bare", 3, 1, 3],
    ["B7bond bare", 3, 2, 3],
    ["B7g0 bare", 3, 3, 3],
    ["B7g0", 2, 4, 6],
    ["B7bond", 2, 5, 6],
    ["Box ground screw", 2, 6, 6],
  ]);
});

test("an edit makes new rows only where it changed something", () => {
  const house = laundryDrawing();
  const before = nodesOf(house.project).map((node) => node.children());
  house.land("C7.bk@B7", "capped");
  const after = nodesOf(house.project).map((node) => node.children());
  const changed = after.flatMap((children, at) => (children === before[at] ? [] : [nodesOf(house.project)[at]?.name]));
  expect(changed).toEqual(["B7", "Rooms"]);
});

const finding = (severity: Finding["severity"], ...subjects: readonly [Finding["subjects"][0]["kind"], string][]) =>
  ({ severity, subjects: subjects.map(([kind, id]) => ({ kind, id, name: id })) }) as unknown as Finding;

test("a finding counts once on each thing it is about and once on each box it is in", () => {
  const { asFound } = laundryAsFound();
  const counts = countFindings(asFound, [
    finding("caution", ["terminal", `${deviceId("R1")}.H1`], ["device", deviceId("R1")]),
    finding("danger", ["end", "cable-C2.bk.b" as EndKey]),
    finding("advice", ["cable", cableId("C2")], ["splice", spliceId("X")]),
  ]);
  expect(counts.get(`device ${deviceId("R1")}`)).toEqual({ count: 1, worst: "caution" });
  expect(counts.get(`terminal ${deviceId("R1")}.H1`)).toEqual({ count: 1, worst: "caution" });
  expect(counts.get(`enclosure ${boxId("B1")}`)).toEqual({ count: 2, worst: "caution" });
  expect(counts.get(`enclosure ${boxId("B2")}`)).toEqual({ count: 2, worst: "danger" });
  expect(counts.get(`enclosure ${boxId("B3")}`)).toBeUndefined();
});
