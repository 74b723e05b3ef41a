import { describe, expect, test } from "vitest";
import { asId, type DeviceId, type EndKey, type SpliceId, type TerminalName } from "../../shared-model/model/ids.ts";
import type { At } from "../../shared-model/model/place.ts";
import { boxId, deviceId, drawing, laundryDrawing, spliceId } from "../builders/drawing.ts";
import { enclosureIn, placeOf, refused, titleOf } from "./asking.ts";

const inB1 = { state: "as-found" as const, enclosure: boxId("B1") };
const terminal = (device: DeviceId, name: string, hole = 1): At => ({
  kind: "terminal",
  device,
  terminal: name as TerminalName,
  hole,
});
const wired = () =>
  drawing().box("B1").device("R1", "receptacle-20", "B1").outside("C1", "B1").outside("C2", "B1").outside("C3", "B1");
const BK = "cable-C1.bk.a" as EndKey;
const splices = (house: ReturnType<typeof wired>) => Object.keys(enclosureIn(house.project, "B1").splices);

describe("landing, lifting, capping", () => {
  test("an end goes to a hole, the bond, a cap, loose", () => {
    const house = wired();
    const at = (spot: string) => placeOf(house.land("C1.bk@B1", spot), "C1.bk@B1").at;
    expect(at("R1.H1#2")).toEqual(terminal(deviceId("R1"), "H1", 2));
    expect(at("bond")).toEqual({ kind: "bond" });
    expect(at("loose")).toEqual({ kind: "loose" });
    expect(at("capped")).toEqual({ kind: "capped" });
    house.run("lift-end", { enclosure: boxId("B1"), end: BK });
    expect(placeOf(house, "C1.bk@B1").at).toEqual({ kind: "loose" });
    house.run("cap-end", { enclosure: boxId("B1"), end: BK });
    expect(placeOf(house, "C1.bk@B1").at).toEqual({ kind: "capped" });
  });

  test("two ends may share a hole: as found it may be so, and a rule judges it", () => {
    const house = wired().land("C1.bk@B1", "R1.H1").land("C2.bk@B1", "R1.H1");
    expect(placeOf(house, "C2.bk@B1").at).toEqual(placeOf(house, "C1.bk@B1").at);
  });

  test("what is known of the end stays with it, what is known of the joint goes", () => {
    const house = wired();
    house
      .setEnd("C1.bk@B1", "freeLengthIn", 7)
      .setEnd("C1.bk@B1", "tag", "supply")
      .setEnd("C1.bk@B1", "markedAs", "red");
    house.setEnd("C1.bk@B1", "jointOhm", 0.5).run("mark-spare", { enclosure: boxId("B1"), end: BK, spare: true });
    const target = { kind: "end" as const, enclosure: boxId("B1"), id: BK };
    house.run("mark-evidence", { target, field: "at", evidence: "seen" });
    house.run("mark-evidence", { target, field: "freeLengthIn", evidence: "measured" });
    house.land("C1.bk@B1", "R1.H1");
    expect(placeOf(house, "C1.bk@B1")).toEqual({
      at: terminal(deviceId("R1"), "H1"),
      freeLengthIn: 7,
      tag: "supply",
      markedAs: "red",
      evidence: { freeLengthIn: "measured" },
    });
  });

  test("landing an end where it already is changes nothing", () => {
    const house = wired().land("C1.bk@B1", "R1.H1");
    const before = house.project;
    expect(house.land("C1.bk@B1", "R1.H1").project).toBe(before);
  });

  test("the step says what goes where", () => {
    const house = laundryDrawing();
    const { key } = house.end("C1.bk@B1");
    const title = (at: At) => titleOf(house.project, "land-end", { ...inB1, end: key, at });
    expect(title(terminal(deviceId("R1"), "H2"))).toBe("Land C1 BK on R1 H");
    expect(title({ kind: "splice", splice: spliceId("Y") })).toBe("Land C1 BK on splice Y");
    expect(title({ kind: "bond" })).toBe("Land C1 BK on the ground screw of B1");
    expect(title({ kind: "capped" })).toBe("Cap C1 BK");
    expect(title({ kind: "loose" })).toBe("Lift C1 BK");
  });

  test("places that do not exist are refused with those that do", () => {
    const house = wired().box("B2").box("B3", "plastic-new-1").outside("C9", "B3");
    const land = (at: At, args: object = {}) => refused(house.project, "land-end", { ...inB1, end: BK, at, ...args });
    expect(land(terminal(deviceId("R9"), "H1"))).toBe("unknown-device");
    expect(land(terminal(deviceId("R1"), "LINE_H"))).toBe("unknown-terminal");
    expect(land(terminal(deviceId("R1"), "H1", 3))).toBe("unknown-hole");
    expect(land(terminal(deviceId("R1"), "G", 2))).toBe("unknown-hole");
    expect(land({ kind: "splice", splice: spliceId("X") })).toBe("unknown-splice");
    expect(land({ kind: "capped" }, { end: "cable-C9.bk.a" })).toBe("unknown-end");
    expect(land({ kind: "capped" }, { enclosure: boxId("B2") })).toBe("unknown-end");
    const bond = { enclosure: boxId("B3"), end: "cable-C9.cu.a" as EndKey };
    expect(land({ kind: "bond" }, bond)).toBe("no-metal-to-bond");
    for (const command of ["lift-end", "cap-end"] as const)
      expect(refused(house.project, command, { ...inB1, end: "cable-C9.bk.a" as EndKey })).toBe("unknown-end");
  });
});

describe("mark-spare", () => {
  test("a capped end is left so on purpose until it is landed or unmarked", () => {
    const house = wired();
    const mark = (spare: boolean) => house.run("mark-spare", { enclosure: boxId("B1"), end: BK, spare });
    expect(placeOf(mark(true), "C1.bk@B1")).toEqual({ at: { kind: "capped" }, spare: true });
    expect(placeOf(mark(false), "C1.bk@B1")).toEqual({ at: { kind: "capped" } });
    mark(true).run("lift-end", { enclosure: boxId("B1"), end: BK });
    expect(placeOf(house, "C1.bk@B1")).toEqual({ at: { kind: "loose" } });
  });

  test("an end that is not capped is no spare", () => {
    const { project } = wired().land("C1.bk@B1", "R1.H1");
    expect(refused(project, "mark-spare", { ...inB1, end: BK, spare: true })).toBe("not-capped");
  });
});

describe("splices", () => {
  const spliced = () => wired().splice("X", "B1", "twist-medium", "C1.bk@B1", "C2.bk@B1");
  test("ends are joined, join later, and leave capped", () => {
    const house = spliced();
    expect(enclosureIn(house.project, "B1").splices[spliceId("X")]).toEqual({
      id: spliceId("X"),
      name: "X",
      connector: "twist-medium",
      order: 0,
    });
    house.run("join-splice", { enclosure: boxId("B1"), end: "cable-C3.bk.a" as EndKey, splice: spliceId("X") });
    expect(placeOf(house, "C3.bk@B1").at).toEqual({ kind: "splice", splice: spliceId("X") });
    house.run("leave-splice", { enclosure: boxId("B1"), end: BK });
    expect(placeOf(house, "C1.bk@B1").at).toEqual({ kind: "capped" });
    expect(splices(house)).toEqual([spliceId("X")]);
  });

  test("a splice goes with its last member, however that leaves", () => {
    const left = spliced().run("leave-splice", { enclosure: boxId("B1"), end: BK });
    expect(splices(left)).toEqual([spliceId("X")]);
    expect(splices(left.land("C2.bk@B1", "R1.H1"))).toEqual([]);
    const moved = spliced().splice("Y", "B1", "twist-large", "C1.bk@B1", "C2.bk@B1", "C3.bk@B1");
    expect(splices(moved)).toEqual([spliceId("Y")]);
    const cut = spliced();
    cut.remove({ kind: "cable", id: asId("cable-C1") }, { kind: "cable", id: asId("cable-C2") });
    expect(splices(cut)).toEqual([]);
  });

  test("a removed splice leaves its ends capped", () => {
    const house = spliced().remove({ kind: "splice", id: spliceId("X") });
    expect(placeOf(house, "C1.bk@B1").at).toEqual({ kind: "capped" });
    expect(splices(house)).toEqual([]);
  });

  test("its connector is changed; what was known of the old one goes", () => {
    const house = spliced().run("mark-evidence", {
      target: { kind: "splice", id: spliceId("X") },
      field: "connector",
      evidence: "seen",
    });
    house.run("change-connector", { enclosure: boxId("B1"), splice: spliceId("X"), connector: "taped" });
    expect(enclosureIn(house.project, "B1").splices[spliceId("X")]).toEqual({
      id: spliceId("X"),
      name: "X",
      connector: "taped",
      order: 0,
    });
  });

  test("what cannot be joined is refused", () => {
    const house = spliced().jumper("p", "B1", "splice X", "R1.H1");
    const splice = (args: object) =>
      refused(house.project, "splice-ends", {
        ...inB1,
        splice: spliceId("N"),
        name: "N",
        connector: "twist-large",
        ends: [BK, "cable-C3.bk.a" as EndKey],
        ...args,
      });
    expect(splice({ ends: [BK] })).toBe("too-few-ends");
    expect(splice({ ends: [BK, BK] })).toBe("too-few-ends");
    expect(splice({ ends: [BK, "cable-C9.bk.a"] })).toBe("unknown-end");
    expect(splice({ ends: ["jumper-p.a", "jumper-p.b"] })).toBe("jumper-to-itself");
    expect(splice({ connector: "glue" })).toBe("unknown-catalog-item");
    expect(splice({ splice: spliceId("X") })).toBe("id-in-use");
    const join = (end: string, id: SpliceId) =>
      refused(house.project, "join-splice", { ...inB1, end: end as EndKey, splice: id });
    expect(join("cable-C3.bk.a", spliceId("Y"))).toBe("unknown-splice");
    expect(join("jumper-p.b", spliceId("X"))).toBe("jumper-to-itself");
    expect(join("cable-C9.bk.a", spliceId("X"))).toBe("unknown-end");
    expect(refused(house.project, "leave-splice", { ...inB1, end: "cable-C3.bk.a" as EndKey })).toBe("not-in-splice");
    const change = (id: SpliceId, connector: string) =>
      refused(house.project, "change-connector", { ...inB1, splice: id, connector });
    expect(change(spliceId("Y"), "taped")).toBe("unknown-splice");
    expect(change(spliceId("X"), "glue")).toBe("unknown-catalog-item");
  });
});
