import { describe, expect, test } from "vitest";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import { asId } from "../../shared-model/model/ids.ts";
import type { Place } from "../../shared-model/model/place.ts";
import type { Installation, Project } from "../../shared-model/model/project.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { boxId, cableId, deviceId, jumperId, laundryAsFound, spliceId } from "../builders/drawing.ts";
import { enclosureIn } from "../commands/asking.ts";

const sound = laundryAsFound();
const b1 = enclosureIn(sound, "B1");

/** The laundry circuit with one part exchanged; parts that no type would allow are the point. */
const withFound = (part: object): Project => ({ ...sound, asFound: { ...sound.asFound, ...part } as Installation });
const withBox = (part: object, name = "B1"): Project => {
  const box = { ...enclosureIn(sound, name), ...part } as Enclosure;
  return withFound({ enclosures: { ...sound.asFound.enclosures, [boxId(name)]: box } });
};
const withPlace = (end: string, at: object): Project => withBox({ places: { ...b1.places, [end]: { at } } });
const codes = (project: Project) => [...new Set(invariantProblems(project).map((problem) => problem.code))];

const cable = (name: string) => {
  const found = sound.asFound.cables[cableId(name)];
  if (found === undefined) throw new Error(`No cable ${name}.`);
  return found;
};
const withCable = (part: object): Project =>
  withFound({ cables: { ...sound.asFound.cables, [cableId("C1")]: { ...cable("C1"), ...part } } });

test("what is wrong in any rule's eyes may still be sound bookkeeping", () => {
  expect(invariantProblems(sound)).toEqual([]);
});

describe("each broken invariant is named with its place", () => {
  const { [`${cableId("C1")}.bk.b`]: _lost, ...others } = b1.places as Readonly<Record<string, Place>>;
  const terminal = { kind: "terminal", device: deviceId("R1"), terminal: "H1", hole: 1 };
  const side = { enclosure: boxId("B1"), entry: "e-C1" };

  test.each<readonly [string, Project]>([
    ["end-without-place", withBox({ places: others })],
    ["place-without-end", withPlace("cable-C6.bk.a", { kind: "capped" })],
    ["unknown-splice", withPlace("cable-C1.bk.b", { kind: "splice", splice: "splice-Q" })],
    ["unknown-device", withPlace("cable-C1.bk.b", { ...terminal, device: "device-R9" })],
    ["unknown-terminal", withPlace("cable-C1.bk.b", { ...terminal, terminal: "LINE_H" })],
    ["unknown-hole", withPlace("cable-C1.bk.b", { ...terminal, hole: 2 })],
    ["unknown-hole", withPlace("cable-C1.bk.b", { ...terminal, hole: 0 })],
    ["unknown-hole", withPlace("cable-C1.bk.b", { ...terminal, hole: 1.5 })],
    ["jumper-to-itself", withPlace("jumper-p.b", { kind: "splice", splice: spliceId("X") })],
    ["unknown-room", withBox({ roomId: "room-Attic" })],
    ["unknown-enclosure", withCable({ sides: { a: { enclosure: "box-B9", entry: "e" }, b: side } })],
    ["unknown-entry", withCable({ sides: { a: cable("C1").sides.a, b: { ...side, entry: "e9" } } })],
    ["id-differs-from-key", withCable({ id: cableId("C8") })],
    ["id-differs-from-key", withBox({ id: boxId("B8") }, "B1")],
  ])("%s", (code, project) => {
    expect(codes(project)).toContain(code);
    expect(invariantProblems(project).find((problem) => problem.code === code)?.path).toMatch(/^[/]asFound[/]/);
  });

  test("device types and where they belong", () => {
    const r1 = b1.devices[deviceId("R1")];
    const devices = (type: string) =>
      withBox({ devices: { [deviceId("R1")]: { ...r1, type } }, jumpers: {}, places: {} });
    expect(codes(devices("toaster"))).toContain("unknown-device-type");
    expect(codes(devices("breaker-1"))).toContain("device-in-wrong-enclosure");
  });

  test("an identity is used once in a state", () => {
    const p = b1.jumpers[jumperId("p")];
    const twice = withBox({ splices: { ...b1.splices, [jumperId("p")]: { ...p, connector: "none" } } });
    expect(codes(twice)).toContain("duplicate-id");
    const elsewhere = enclosureIn(sound, "B2");
    const devices = { ...elsewhere.devices, [deviceId("R1")]: b1.devices[deviceId("R1")] };
    expect(codes(withBox({ devices }, "B2"))).toContain("duplicate-id");
  });

  test("pass-throughs name a cable, its conductors and two entries", () => {
    const pass = { id: "p1", cable: cableId("C6"), conductors: ["bk"], entryIn: "e-C1", entryOut: "e-C2" };
    const withPass = (part: object) => withBox({ passThroughs: { p1: { ...pass, ...part } } });
    expect(codes(withPass({}))).toEqual([]);
    expect(codes(withPass({ cable: cableId("C9") }))).toEqual(["unknown-conductor"]);
    expect(codes(withPass({ conductors: ["rd"] }))).toEqual(["unknown-conductor"]);
    expect(codes(withPass({ entryOut: "e9" }))).toEqual(["unknown-entry"]);
  });

  test("loads, labels, intent and directory name what exists", () => {
    const load = Object.values(sound.asFound.loads)[0];
    const label = (on: object) => withFound({ labels: { l1: { id: "l1", wording: "x", on, order: 0 } } });
    const boxes = (table: object) => withFound({ intent: { boxes: table, outlets: {} } });
    expect(codes(withFound({ loads: { [load?.id ?? ""]: { ...load, plug: "device-R9" } } }))).toEqual([
      "unknown-outlet",
    ]);
    expect(codes(label({ device: "device-R9" }))).toEqual(["unknown-item"]);
    expect(codes(label({ enclosure: "box-B9" }))).toEqual(["unknown-item"]);
    expect(codes(label({ cable: "cable-C9" }))).toEqual(["unknown-item"]);
    expect(codes(label({ cable: cableId("C1") }))).toEqual([]);
    expect(codes(withFound({ intent: { boxes: {}, outlets: { "device-R9": { wish: "protect" } } } }))).toEqual([
      "unknown-outlet",
    ]);
    expect(codes(boxes({ "box-B9": {} }))).toEqual(["unknown-enclosure"]);
    expect(codes(boxes({ [boxId("B1")]: { supply: "cable-C9" } }))).toEqual(["unknown-cable"]);
    expect(codes(boxes({ [boxId("B1")]: { protect: { "cable-C9": true } } }))).toEqual(["unknown-cable"]);
    expect(codes(withFound({ directory: { "device-Q99": "dryer" } }))).toEqual(["unknown-device"]);
  });

  test("proposed is held to the same", () => {
    const broken = withBox({ roomId: asId("room-Attic") }).asFound;
    const [first] = invariantProblems({ ...sound, proposed: broken });
    expect(first).toMatchObject({ code: "unknown-room", path: `/proposed/enclosures/${boxId("B1")}/roomId` });
  });
});
