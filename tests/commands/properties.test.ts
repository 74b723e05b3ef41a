import { describe, expect, test } from "vitest";
import { propertiesOf } from "../../shared-model/commands/catalog/properties-of.ts";
import type { PropertyTarget, PropertyValue } from "../../shared-model/commands/command-args.ts";
import type { Box } from "../../shared-model/model/enclosure.ts";
import type { EvidenceMark } from "../../shared-model/model/evidence.ts";
import { asId } from "../../shared-model/model/ids.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { creditedVolume } from "../../shared-model/queries/box-volume.ts";
import { cubicInches, toDecimal } from "../../shared-model/units/volume.ts";
import { boxId, cableId, deviceId, drawing, laundryDrawing, loadId, roomId, spliceId } from "../builders/drawing.ts";
import { enclosureIn, placeOf, refused, titleOf } from "./asking.ts";

const B1: PropertyTarget = { kind: "enclosure", id: boxId("B1") };
const set = (project: Project, target: PropertyTarget, field: string, value: PropertyValue, evidence?: EvidenceMark) =>
  refused(project, "set-property", {
    state: "as-found",
    target,
    field,
    value,
    ...(evidence !== undefined && { evidence }),
  });

describe("which fields an item shows", () => {
  const fieldsOf = (type: string) => {
    const home = type.startsWith("breaker") ? drawing().panel("B1") : drawing().box("B1");
    const placed = enclosureIn(home.device("D", type, "B1").project, "B1").devices[deviceId("D")];
    if (placed === undefined) throw new Error("No device.");
    return propertiesOf("device", placed).map((property) => property.field);
  };

  test("a device shows what means something on it", () => {
    expect(fieldsOf("receptacle-15")).toEqual(
      expect.arrayContaining(["hotTab", "neutralTab", "tamperResistant", "zones"]),
    );
    expect(fieldsOf("receptacle-15")).not.toEqual(expect.arrayContaining(["reversal"]));
    expect(fieldsOf("gfci-receptacle-20")).toEqual(expect.arrayContaining(["reversal", "faceContact"]));
    expect(fieldsOf("gfci-receptacle-20")).not.toContain("hotTab");
    expect(fieldsOf("breaker-gfci-1")).toEqual(expect.arrayContaining(["slot", "breakerRatingA", "legs", "function"]));
    expect(fieldsOf("breaker-gfci-1")).not.toContain("reversal");
    expect(fieldsOf("luminaire-60")).toEqual(expect.arrayContaining(["loadW", "weightLb"]));
    expect(fieldsOf("luminaire-60")).not.toContain("tamperResistant");
  });

  test("a panel shows its spaces, a box its volume", () => {
    const { project } = drawing().box("B1").panel("P");
    const fields = (name: string) => propertiesOf("enclosure", enclosureIn(project, name)).map((one) => one.field);
    expect(fields("B1")).toContain("volume");
    expect(fields("B1")).not.toContain("spaces");
    expect(fields("P")).toContain("spaces");
    expect(fields("P")).not.toContain("volume");
  });
});

describe("set-property", () => {
  test("a value is set with how it is known; without a word, that is unknown again", () => {
    const house = drawing()
      .box("B1")
      .set(B1, "volume", { kind: "marked", volumeIn3: cubicInches(30.3) }, "seen");
    const b1 = () => enclosureIn(house.project, "B1");
    expect(b1()).toMatchObject({ volume: { kind: "marked", volumeIn3: 303_000 }, evidence: { volume: "seen" } });
    house.set(B1, "volume", { kind: "table", size: "4x1-1/2 square" });
    expect(b1().evidence).not.toHaveProperty("volume");
    house.set(B1, "depthIn", 2.125, "measured");
    expect(b1().evidence).toMatchObject({ depthIn: "measured", gangs: "assumed" });
    house.set(B1, "depthIn", null, "measured");
    expect(b1()).not.toHaveProperty("depthIn");
    expect(b1().evidence).not.toHaveProperty("depthIn");
  });

  test("the same value again changes nothing, a mark alone is a change", () => {
    const house = drawing().box("B1");
    const before = house.project;
    expect(house.set(B1, "gangs", 1).project).toBe(before);
    expect(house.set(B1, "gangs", 1, "seen").project).not.toBe(before);
    expect(enclosureIn(house.project, "B1").evidence).toMatchObject({ gangs: "seen" });
  });

  test("it reaches everything that carries fields", () => {
    const house = laundryDrawing();
    const { asFound } = house
      .setEnd("C1.bk@B1", "freeLengthIn", 6.5)
      .set({ kind: "entry", enclosure: boxId("B1"), id: asId("e-C1") }, "securedWithinIn", 8)
      .set({ kind: "ring", enclosure: boxId("B1"), id: asId("ring-box-B1") }, "volume", {
        kind: "marked",
        volumeIn3: 18_000,
      })
      .set({ kind: "cable", id: cableId("C1") }, "lengthFt", 60)
      .set({ kind: "conductor", cable: cableId("C1"), id: asId("bk") }, "awg", "14", "seen")
      .set({ kind: "jumper", id: asId("jumper-p") }, "awg", "14")
      .set({ kind: "load", id: loadId("Freezer") }, "leakMa", 0.4)
      .set({ kind: "room", id: roomId("Hall") }, "kinds", ["hallway", "stair"])
      .set({ kind: "project" }, "title", "Laundry")
      .set({ kind: "project" }, "supplyNominalV", 122).project;
    const b1 = enclosureIn(house.project, "B1");
    expect(placeOf(house, "C1.bk@B1").freeLengthIn).toBe(6.5);
    expect(Object.values(b1.entries)[0]?.securedWithinIn).toBe(8);
    // 30.3 by the table, and 1.8 marked on the ring.
    expect(toDecimal(creditedVolume(b1 as Box) ?? cubicInches(0))).toBe(32.1);
    const c1 = asFound.cables[cableId("C1")];
    expect([c1?.lengthFt, Object.values(c1?.conductors ?? {})[0]?.awg]).toEqual([60, "14"]);
    expect(c1?.evidence).toMatchObject({ "conductors-bk-awg": "seen" });
    expect(Object.values(b1.jumpers)[0]?.awg).toBe("14");
    expect(asFound.loads[loadId("Freezer")]?.leakMa).toBe(0.4);
    expect(house.project.rooms[roomId("Hall")]?.kinds).toEqual(["hallway", "stair"]);
    expect([house.project.title, house.project.supply]).toEqual(["Laundry", { system: "120/240", nominalV: 122 }]);
  });

  test("a document keeps a value of its own", () => {
    const zones = ["sink-zone"];
    const house = drawing()
      .box("B1")
      .device("R1", "receptacle-15", "B1", { zones: zones as ["sink-zone"] });
    zones.push("outdoor");
    expect(enclosureIn(house.project, "B1").devices[deviceId("R1")]?.zones).toEqual(["sink-zone"]);
    expect(Object.isFrozen(zones)).toBe(false);
  });

  test("a field takes its own kind of value, ends of its range included", () => {
    const { project } = drawing().box("B1").panel("P");
    expect(set(project, B1, "gangs", 0)).toBe("wrong-value");
    expect(set(project, B1, "gangs", 1.5)).toBe("wrong-value");
    expect(set(project, B1, "gangs", 11)).toBe("wrong-value");
    expect(set(project, B1, "gangs", null)).toBe("value-required");
    expect(set(project, B1, "depthIn", Number.NaN)).toBe("wrong-value");
    expect(set(project, B1, "shape", "heart")).toBe("wrong-value");
    expect(set(project, B1, "supports", ["stud", "stud"])).toBe("wrong-value");
    expect(set(project, B1, "accessible", "yes")).toBe("wrong-value");
    expect(set(project, B1, "note", "\ud800")).toBe("wrong-value");
    expect(set(project, B1, "spaces", 20)).toBe("unknown-field");
    expect(set(project, B1, "__proto__", 1)).toBe("unknown-field");
    expect(set(project, B1, "places", {})).toBe("unknown-field");
    const kept = drawing().box("B1").set(B1, "gangs", 10).set(B1, "terminalBlocks", ["12", "12"]).project;
    expect(enclosureIn(kept, "B1")).toMatchObject({ gangs: 10, terminalBlocks: ["12", "12"] });
  });

  test("a volume in decimal cubic inches by mistake is noticed", () => {
    const { project } = drawing().box("B1");
    expect(set(project, B1, "volume", { kind: "marked", volumeIn3: 30.3 })).toBe("wrong-value");
    expect(set(project, B1, "volume", { kind: "marked", volumeIn3: 18 })).toBe("wrong-value");
    expect(set(project, B1, "volume", { kind: "table", size: "bathtub" })).toBe("unknown-standard-box");
    expect(set(project, B1, "volume", { kind: "marked" })).toBe("wrong-value");
  });

  test("what would contradict the drawing is refused", () => {
    const house = laundryDrawing().device("R9", "receptacle-20", "B2").outside("C9", "B2").land("C9.bk@B2", "R9.H1#2");
    house.breaker("Q15", "P").breaker("Q16", "P", { type: "breaker-2" });
    const { project } = house;
    const device = (name: string): PropertyTarget => ({ kind: "device", id: deviceId(name) });
    expect(set(project, B1, "material", "nonmetallic")).toBe("no-metal-to-bond");
    expect(set(project, B1, "roomId", "room-Attic")).toBe("unknown-room");
    expect(set(project, { kind: "enclosure", id: boxId("P") }, "spaces", 13)).toBe("space-in-use");
    expect(set(project, device("R9"), "entryKind", "side-screw")).toBe("hole-in-use");
    expect(set(project, device("R9"), "entryKind", null)).toBe("hole-in-use");
    expect(set(project, device("Q14"), "slot", 17)).toBe("no-such-space");
    expect(set(project, device("Q14"), "legs", ["A", "B"])).toBe("wrong-leg-count");
    expect(set(project, device("Q16"), "legs", ["A"])).toBe("wrong-leg-count");
    expect(set(project, device("Q14"), "tiedTo", deviceId("Q14"))).toBe("unknown-device");
    expect(set(project, device("Q14"), "tiedTo", deviceId("R1"))).toBe("unknown-device");
    expect(set(project, device("Q14"), "tiedTo", deviceId("P neutral"))).toBe("unknown-device");
    expect(set(project, { kind: "project" }, "title", "  ")).toBe("value-required");
    expect(set(project, { kind: "room", id: roomId("Hall") }, "kinds", [], "seen")).toBe("no-evidence-here");
    expect(house.set(device("Q14"), "tiedTo", deviceId("Q15")).set(device("Q14"), "slot", 16)).toBeDefined();
  });

  test("what is gone is refused", () => {
    const { project } = laundryDrawing();
    const targets: readonly PropertyTarget[] = [
      { kind: "enclosure", id: boxId("B9") },
      { kind: "entry", enclosure: boxId("B1"), id: asId("e9") },
      { kind: "ring", enclosure: boxId("P"), id: asId("ring") },
      { kind: "pass-through", enclosure: boxId("B1"), id: asId("p9") },
      { kind: "conductor", cable: cableId("C1"), id: asId("rd") },
      { kind: "splice", id: spliceId("Q") },
      { kind: "room", id: roomId("Attic") },
    ];
    for (const target of targets) expect(set(project, target, "notes", "x")).toBe("unknown-item");
  });

  test("its step names field and item", () => {
    const { project } = laundryDrawing();
    const title = (target: PropertyTarget, field: string, value: PropertyValue) =>
      titleOf(project, "set-property", { state: "as-found", target, field, value });
    expect(title(B1, "internalClamps", "none")).toBe("Set internal clamps of B1");
    expect(title({ kind: "cable", id: cableId("C1") }, "lengthFt", null)).toBe("Clear length of C1");
  });
});

describe("mark-evidence", () => {
  const mark = (target: PropertyTarget, field: string, evidence: EvidenceMark | null) =>
    laundryDrawing().run("mark-evidence", { target, field, evidence });

  test("a fact is marked without changing it, and unmarked", () => {
    const house = mark(B1, "volume", "seen");
    expect(enclosureIn(house.project, "B1")).toMatchObject({
      volume: { kind: "table", size: "4x2-1/8 square" },
      evidence: { volume: "seen" },
    });
    house.run("mark-evidence", { target: B1, field: "volume", evidence: null });
    expect(enclosureIn(house.project, "B1").evidence).not.toHaveProperty("volume");
  });

  test("where an end is, what a splice has and what a cable is made of can be marked", () => {
    const house = laundryDrawing();
    const end = house.end("C1.bk@B1");
    house.run("mark-evidence", {
      target: { kind: "end", enclosure: end.enclosure, id: end.key },
      field: "at",
      evidence: "seen",
    });
    house.run("mark-evidence", { target: { kind: "splice", id: spliceId("X") }, field: "connector", evidence: "told" });
    house.run("mark-evidence", { target: { kind: "cable", id: cableId("C1") }, field: "conductors", evidence: "seen" });
    expect(placeOf(house, "C1.bk@B1").evidence).toEqual({ at: "seen" });
    expect(enclosureIn(house.project, "B1").splices[spliceId("X")]?.evidence).toEqual({ connector: "told" });
    expect(house.project.asFound.cables[cableId("C1")]?.evidence).toMatchObject({ conductors: "seen" });
  });

  test("nothing is known about a value that is not there", () => {
    const { project } = laundryDrawing();
    const ask = (target: PropertyTarget, field: string) =>
      refused(project, "mark-evidence", { state: "as-found", target, field, evidence: "seen" });
    expect(ask(B1, "openKnockouts")).toBe("nothing-to-mark");
    expect(ask(B1, "spaces")).toBe("unknown-field");
    expect(ask({ kind: "room", id: roomId("Hall") }, "kinds")).toBe("no-evidence-here");
    expect(ask({ kind: "device", id: deviceId("R9") }, "zones")).toBe("unknown-item");
  });
});
