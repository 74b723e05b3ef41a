import { describe, expect, test } from "vitest";
import { asId, type EnclosureId } from "../../shared-model/model/ids.ts";
import { boxId, cableId, deviceId, drawing, laundryDrawing, loadId, roomId, spliceId } from "../builders/drawing.ts";
import { enclosureIn, refused, titleOf } from "./asking.ts";

const AT = { x: 10, y: 20 };
const box = (name: string) => ({ state: "as-found" as const, id: boxId(name), item: "square-4-2-1-8", name, at: AT });

describe("place-enclosure", () => {
  test("a placed box has the facts of its catalogue item, all of them assumed", () => {
    const { project } = drawing().run("place-enclosure", { ...box("B1"), note: "laundry" });
    expect(enclosureIn(project, "B1")).toEqual({
      kind: "box",
      id: boxId("B1"),
      name: "B1",
      note: "laundry",
      item: "square-4-2-1-8",
      material: "metal",
      shape: "square",
      volume: { kind: "table", size: "4x2-1/8 square" },
      internalClamps: "present",
      gangs: 1,
      depthIn: 2.125,
      rings: {},
      supports: [],
      entries: {},
      devices: {},
      splices: {},
      jumpers: {},
      passThroughs: {},
      places: {},
      order: 0,
      evidence: {
        material: "assumed",
        shape: "assumed",
        volume: "assumed",
        internalClamps: "assumed",
        gangs: "assumed",
        depthIn: "assumed",
      },
    });
    expect(project.layout.enclosures[boxId("B1")]).toEqual(AT);
  });

  test("a panel comes with its bars and without a word about its main bond", () => {
    const panel = enclosureIn(drawing().panel("P").project, "P");
    expect(panel).toMatchObject({ kind: "panel", spaces: 16, supply: "service", mainBond: "unknown" });
    expect(panel.evidence).toEqual({ spaces: "assumed", supply: "assumed" });
    expect(Object.values(panel.devices).map((device) => device.type)).toEqual(["neutral-bar", "ground-bar"]);
  });

  test("boxes are numbered in the order of placing", () => {
    const { project } = drawing().box("B1").box("B2");
    expect([enclosureIn(project, "B1").order, enclosureIn(project, "B2").order]).toEqual([0, 1]);
  });

  test("it is refused with what to do instead", () => {
    const { project } = drawing().box("B1").room("Hall", "hallway");
    const bars = { neutral: deviceId("N"), ground: deviceId("G") };
    const ask = (args: object) => refused(project, "place-enclosure", { ...box("B2"), ...args });
    expect(ask({ id: boxId("B1") })).toBe("id-in-use");
    expect(ask({ id: roomId("Hall") as string })).toBe("id-in-use");
    expect(ask({ item: "bucket" })).toBe("unknown-catalog-item");
    expect(ask({ item: "panel-16" })).toBe("panel-without-bars");
    expect(ask({ bars })).toBe("box-with-bars");
    expect(ask({ item: "panel-16", bars: { neutral: deviceId("N"), ground: deviceId("N") } })).toBe("id-in-use");
    expect(ask({ roomId: roomId("Attic") })).toBe("unknown-room");
    expect(ask({ state: "proposed" })).toBe("no-proposed-state");
  });
});

describe("move-enclosures", () => {
  test("boxes move together and nothing about the wiring changes", () => {
    const before = drawing().box("B1").box("B2").project;
    const moves = [
      { id: boxId("B1"), to: { x: 1, y: 2 } },
      { id: boxId("B2"), to: { x: 3, y: 4 } },
    ];
    const after = drawing().box("B1").box("B2").run("move-enclosures", { moves }).project;
    expect(after.layout.enclosures).toEqual({ [boxId("B1")]: { x: 1, y: 2 }, [boxId("B2")]: { x: 3, y: 4 } });
    expect(after.asFound).toEqual(before.asFound);
    expect(titleOf(before, "move-enclosures", { moves })).toBe("Move 2 boxes");
    expect(titleOf(before, "move-enclosures", { moves: moves.slice(0, 1) })).toBe("Move B1");
  });

  test("a box that is gone cannot be moved", () => {
    const moves = [{ id: boxId("B9"), to: AT }];
    expect(refused(drawing().box("B1").project, "move-enclosures", { moves })).toBe("unknown-item");
  });
});

describe("rename-item", () => {
  test("every kind of item takes another name", () => {
    const house = laundryDrawing();
    const rename = (item: Parameters<typeof house.run<"rename-item">>[1]["item"]) =>
      house.run("rename-item", { item, name: "New" }).project;
    const b1 = () => enclosureIn(house.project, "B1");
    expect(rename({ kind: "enclosure", id: boxId("B1") }).asFound.enclosures[boxId("B1")]?.name).toBe("New");
    expect(rename({ kind: "cable", id: cableId("C1") }).asFound.cables[cableId("C1")]?.name).toBe("New");
    expect(rename({ kind: "load", id: loadId("Freezer") }).asFound.loads[loadId("Freezer")]?.name).toBe("New");
    expect(rename({ kind: "room", id: roomId("Hall") }).rooms[roomId("Hall")]?.name).toBe("New");
    rename({ kind: "device", id: deviceId("R1") });
    expect(b1().devices[deviceId("R1")]?.name).toBe("New");
    rename({ kind: "splice", id: spliceId("X") });
    expect(b1().splices[spliceId("X")]?.name).toBe("New");
    rename({ kind: "jumper", id: asId("jumper-p") });
    expect(Object.values(b1().jumpers).filter((jumper) => jumper.name === "New")).toHaveLength(1);
  });

  test("what is gone and what has wording instead of a name are refused", () => {
    const { project } = drawing().box("B1");
    const rename = (kind: "cable" | "label" | "room", id: string) =>
      refused(project, "rename-item", { state: "as-found", item: { kind, id: asId<never>(id) }, name: "New" });
    expect(rename("cable", "c9")).toBe("unknown-item");
    expect(rename("room", "r9")).toBe("unknown-item");
    expect(rename("label", "l9")).toBe("label-has-wording");
  });
});

describe("remove-items: a box", () => {
  test("takes its cables, their other ends and entries, and joints left empty, and leaves the rest", () => {
    const house = laundryDrawing();
    house.remove({ kind: "enclosure", id: boxId("B5") });
    const { asFound, layout } = house.project;
    expect(Object.keys(asFound.cables)).toEqual(["C1", "C2", "C3", "C5", "C6"].map(cableId));
    expect(Object.keys(asFound.enclosures[boxId("B1")]?.entries ?? {})).toEqual(["e-C1", "e-C2", "e-C3", "e-C5"]);
    const b7 = enclosureIn(house.project, "B7");
    expect(Object.keys(b7.entries)).toEqual([]);
    expect(Object.keys(b7.places).sort()).toEqual([
      "jumper-B7bond.a",
      "jumper-B7bond.b",
      "jumper-B7g0.a",
      "jumper-B7g0.b",
    ]);
    expect(Object.keys(b7.splices)).toEqual([spliceId("E_B7")]);
    expect(boxId("B5") in layout.enclosures).toBe(false);
    expect(Object.keys(enclosureIn(house.project, "B1").splices)).toEqual(["X", "Y", "Z"].map(spliceId));
  });

  test("takes the loads, wishes, labels and intent of what was in it", () => {
    const house = laundryDrawing()
      .run("add-label", { id: asId("l1"), wording: "GFCI protected outlet", on: { device: deviceId("R4") } })
      .run("add-label", { id: asId("l2"), wording: "Freezer", on: { enclosure: boxId("B4") } })
      .run("add-label", { id: asId("l3"), wording: "To the freezer", on: { cable: cableId("C3") } })
      .run("add-label", { id: asId("l4"), wording: "Laundry", on: { enclosure: boxId("B1") } })
      .run("set-outlet-wish", { outlet: asId<never>("device-R4"), wish: { wish: "protect" } })
      .run("set-box-intent", { enclosure: boxId("B4"), intent: { supply: cableId("C3") } })
      .run("set-box-intent", {
        enclosure: boxId("B1"),
        intent: { supply: cableId("C1"), protect: { [cableId("C3")]: false, [cableId("C5")]: true } },
      })
      .remove({ kind: "enclosure", id: boxId("B4") });
    const { asFound } = house.project;
    expect(Object.keys(asFound.loads)).toEqual([]);
    expect(Object.keys(asFound.labels)).toEqual(["l4"]);
    expect(Object.keys(asFound.intent.outlets)).toEqual(["device-R5"]);
    expect(asFound.intent.boxes).toEqual({
      [boxId("B1")]: { supply: cableId("C1"), protect: { [cableId("C5")]: true } },
    });
  });

  test("a splice whose only members came by its cables goes at the other box", () => {
    const house = drawing().box("B1").box("B2").cable("C1", "B1", "B2", { item: "nm-12-3-g" });
    house.splice("S", "B2", "twist-small", "C1.bk@B2", "C1.rd@B2");
    house.run("move-splice", { splice: spliceId("S"), to: { x: 5, y: 5 } });
    house.remove({ kind: "enclosure", id: boxId("B1") });
    expect(enclosureIn(house.project, "B2")).toMatchObject({ splices: {}, places: {}, entries: {} });
    expect(house.project.layout.splices).toEqual({});
  });

  test("keeps where it stands while the other state still has it", () => {
    const proposed = drawing()
      .box("B1")
      .propose()
      .remove({ kind: "enclosure", id: boxId("B1") });
    expect(proposed.project.proposed?.enclosures).toEqual({});
    expect(Object.keys(proposed.project.asFound.enclosures)).toEqual([boxId("B1")]);
    expect(boxId("B1") in proposed.project.layout.enclosures).toBe(true);
  });

  test("a room goes from the boxes of both states", () => {
    const proposed = drawing().room("Hall", "hallway").box("B1", "square-4-2-1-8", { room: "Hall" }).propose();
    proposed.remove({ kind: "room", id: roomId("Hall") });
    const { project } = proposed;
    expect(project.rooms).toEqual({});
    expect(project.asFound.enclosures[boxId("B1")]).not.toHaveProperty("roomId");
    expect(project.proposed?.enclosures[boxId("B1")]).not.toHaveProperty("roomId");
  });

  test("several items at once may depend on each other", () => {
    const house = laundryDrawing();
    house.remove(
      { kind: "device", id: deviceId("R1") },
      { kind: "enclosure", id: boxId("B1") },
      { kind: "cable", id: cableId("C1") },
      { kind: "splice", id: spliceId("X") },
    );
    expect(Object.keys(house.project.asFound.cables)).toEqual([cableId("C6"), cableId("C7")]);
    expect(enclosureIn(house.project, "P").places).toEqual({});
  });

  test("nothing is removed when one of the items is gone", () => {
    const { project } = drawing().box("B1");
    const items = [
      { kind: "enclosure" as const, id: boxId("B1") },
      { kind: "enclosure" as const, id: asId<EnclosureId>("b9") },
    ];
    expect(refused(project, "remove-items", { state: "as-found", items })).toBe("unknown-item");
  });
});
