import { describe, expect, test } from "vitest";
import { asId, type EntryId, type PassThroughId } from "../../shared-model/model/ids.ts";
import { boxId, cableId, deviceId, drawing, laundryDrawing, spliceId } from "../builders/drawing.ts";
import { enclosureIn, placeOf, refused, titleOf } from "./asking.ts";

const entry = (text: string) => asId<EntryId>(text);
const to = (box: string, text: string) => ({ enclosure: boxId(box), newEntry: entry(text), means: "none" as const });
const OUTSIDE = { outside: "to the garage" };

describe("route-cable", () => {
  test("a cable has the conductors of its item, and each end arrives capped", () => {
    const { project } = drawing().box("B1").box("B2").cable("C1", "B1", "B2", { ft: 12.5 });
    const cable = project.asFound.cables[cableId("C1")];
    expect(cable).toMatchObject({
      name: "C1",
      item: "nm-12-2-g",
      construction: "nonmetallic-sheathed",
      insulationC: 90,
      lengthFt: 12.5,
      sides: {
        a: { enclosure: boxId("B1"), entry: "e-C1" },
        b: { enclosure: boxId("B2"), entry: "e-C1" },
      },
      evidence: { construction: "assumed", conductors: "assumed", insulationC: "assumed" },
    });
    expect(Object.values(cable?.conductors ?? {}).map((one) => [one.colour, one.awg, one.grounding])).toEqual([
      ["black", "12", false],
      ["white", "12", false],
      ["bare", "12", true],
    ]);
    const capped = { at: { kind: "capped" } };
    expect(enclosureIn(project, "B1").places).toEqual({
      "cable-C1.bk.a": capped,
      "cable-C1.wh.a": capped,
      "cable-C1.cu.a": capped,
    });
    expect(Object.keys(enclosureIn(project, "B2").places)).toEqual(["cable-C1.bk.b", "cable-C1.wh.b", "cable-C1.cu.b"]);
  });

  test("two cables may share an entry, and one side may be in open country", () => {
    const house = drawing().box("B1").outside("C1", "B1");
    const a = { enclosure: boxId("B1"), entry: entry("e-C1") };
    house.run("route-cable", { id: cableId("C2"), item: "nm-14-2", name: "C2", a, b: OUTSIDE });
    expect(Object.keys(enclosureIn(house.project, "B1").entries)).toEqual(["e-C1"]);
    expect(Object.keys(enclosureIn(house.project, "B1").places)).toHaveLength(5);
  });

  test("it is refused with what to do instead", () => {
    const { project } = drawing().box("B1").box("B2").outside("C1", "B1");
    const ask = (args: object) =>
      refused(project, "route-cable", {
        state: "as-found",
        id: cableId("C2"),
        item: "nm-12-2-g",
        name: "C2",
        a: to("B1", "e1"),
        b: to("B2", "e2"),
        ...args,
      });
    expect(ask({ a: OUTSIDE, b: OUTSIDE })).toBe("both-sides-outside");
    expect(ask({ b: to("B1", "e2") })).toBe("same-enclosure");
    expect(ask({ b: to("B9", "e2") })).toBe("unknown-item");
    expect(ask({ a: { enclosure: boxId("B1"), entry: entry("e9") } })).toBe("unknown-entry");
    expect(ask({ a: to("B1", "e-C1") })).toBe("id-in-use");
    expect(ask({ id: cableId("C1") })).toBe("id-in-use");
    expect(ask({ item: "rope" })).toBe("unknown-catalog-item");
  });

  test("its step is named by where it goes", () => {
    const { project } = drawing().box("B1").box("B2");
    const args = { state: "as-found" as const, id: cableId("C1"), item: "nm-12-2-g", name: "C1", a: to("B1", "e1") };
    expect(titleOf(project, "route-cable", { ...args, b: to("B2", "e2") })).toBe("Run C1 from B1 to B2");
    expect(titleOf(project, "route-cable", { ...args, b: OUTSIDE })).toBe("Run C1 from B1 to outside the drawing");
  });
});

describe("move-cable-side", () => {
  const move = (target: ReturnType<typeof to>) =>
    laundryDrawing().run("move-cable-side", { cable: cableId("C3"), side: "b", to: target });

  test("in another box its ends arrive capped, and the box that it left forgets it", () => {
    const house = move(to("B6", "e-new"));
    expect(placeOf(house, "C3.bk@B6")).toEqual({ at: { kind: "capped" } });
    const b4 = enclosureIn(house.project, "B4");
    expect(b4.entries).toEqual({});
    expect(Object.keys(b4.places).some((end) => end.startsWith("cable-"))).toBe(false);
    expect(placeOf(house, "C3.bk@B1").at).toEqual({ kind: "splice", splice: spliceId("X") });
  });

  test("what the box was meant to do with it is forgotten there only", () => {
    const house = laundryDrawing()
      .run("set-box-intent", { enclosure: boxId("B4"), intent: { supply: cableId("C3") } })
      .run("set-box-intent", { enclosure: boxId("B1"), intent: { protect: { [cableId("C3")]: false } } })
      .run("move-cable-side", { cable: cableId("C3"), side: "b", to: to("B6", "e-new") });
    expect(house.project.asFound.intent.boxes).toEqual({ [boxId("B1")]: { protect: { [cableId("C3")]: false } } });
  });

  test("by another entry of the same box, its ends stay where they are", () => {
    const house = move(to("B4", "e-new"));
    expect(Object.keys(enclosureIn(house.project, "B4").entries)).toEqual(["e-new"]);
    expect(placeOf(house, "C3.bk@B4").at).toMatchObject({ kind: "terminal", device: deviceId("R4") });
  });

  test("it can lead out of the drawing and back", () => {
    const house = laundryDrawing().run("move-cable-side", { cable: cableId("C3"), side: "b", to: OUTSIDE });
    expect(house.project.asFound.cables[cableId("C3")]?.sides.b).toEqual(OUTSIDE);
    house.run("move-cable-side", { cable: cableId("C3"), side: "b", to: to("B4", "e1") });
    expect(placeOf(house, "C3.bk@B4").at).toEqual({ kind: "capped" });
  });

  test("it is refused with what to do instead", () => {
    const { project } = laundryDrawing();
    const ask = (args: object) =>
      refused(project, "move-cable-side", { state: "as-found", cable: cableId("C3"), side: "b", to: OUTSIDE, ...args });
    expect(ask({ to: to("B1", "e9") })).toBe("same-enclosure");
    expect(ask({ to: to("B9", "e9") })).toBe("unknown-item");
    expect(ask({ to: { enclosure: boxId("B6"), entry: entry("e9") } })).toBe("unknown-entry");
    expect(ask({ cable: cableId("C9") })).toBe("unknown-item");
    const one = drawing().box("B1").outside("C1", "B1").project;
    const args = { state: "as-found" as const, cable: cableId("C1"), side: "a" as const, to: OUTSIDE };
    expect(refused(one, "move-cable-side", args)).toBe("both-sides-outside");
  });
});

describe("pass-throughs", () => {
  const loop = { id: asId<never>("p1"), cable: cableId("C1"), conductors: [asId<never>("wh")] };
  const run = () => drawing().box("B1").box("B2").box("B3").cable("C1", "B1", "B3");
  const passing = () =>
    run().run("add-pass-through", {
      ...loop,
      enclosure: boxId("B2"),
      entryIn: { newEntry: entry("in"), means: "none" },
      entryOut: { newEntry: entry("out"), means: "none" },
      loopLengthIn: 14,
    });

  test("conductors of a cable run through a box by two entries", () => {
    const b2 = enclosureIn(passing().project, "B2");
    expect(b2.passThroughs).toEqual({ p1: { ...loop, entryIn: "in", entryOut: "out", loopLengthIn: 14 } });
    expect(Object.keys(b2.entries)).toEqual(["in", "out"]);
    expect(b2.places).toEqual({});
  });

  test("they go with their cable, and leave no entry behind", () => {
    const house = passing().remove({ kind: "cable", id: cableId("C1") });
    expect(enclosureIn(house.project, "B2")).toMatchObject({ passThroughs: {}, entries: {} });
    const taken = passing().run("remove-pass-through", { enclosure: boxId("B2"), id: asId("p1") });
    expect(enclosureIn(taken.project, "B2")).toMatchObject({ passThroughs: {}, entries: {} });
  });

  test("they are refused with what to do instead", () => {
    const { project } = passing();
    const ask = (args: object) =>
      refused(project, "add-pass-through", {
        ...loop,
        id: asId<never>("p2"),
        state: "as-found",
        enclosure: boxId("B2"),
        entryIn: { entry: entry("in") },
        entryOut: { entry: entry("out") },
        ...args,
      });
    expect(ask({})).toBe("already-passes");
    expect(ask({ enclosure: boxId("B1") })).toBe("cable-ends-here");
    expect(ask({ cable: cableId("C9") })).toBe("unknown-item");
    expect(ask({ conductors: ["rd"] })).toBe("unknown-conductor");
    expect(ask({ conductors: ["wh", "wh"] })).toBe("unknown-conductor");
    const clean = run().project;
    const fresh = (args: object) =>
      refused(clean, "add-pass-through", {
        ...loop,
        state: "as-found",
        enclosure: boxId("B2"),
        entryIn: { newEntry: entry("in"), means: "none" },
        entryOut: { newEntry: entry("in"), means: "none" },
        ...args,
      });
    expect(fresh({})).toBe("same-entry");
    expect(fresh({ entryOut: { entry: entry("out") } })).toBe("unknown-entry");
    const remove = (enclosure: string, id: string) =>
      refused(project, "remove-pass-through", {
        state: "as-found",
        enclosure: boxId(enclosure),
        id: asId<PassThroughId>(id),
      });
    expect(remove("B2", "p9")).toBe("unknown-item");
    expect(remove("B9", "p1")).toBe("unknown-item");
    const args = { state: "as-found" as const, cable: cableId("C1"), side: "b" as const, to: to("B2", "e9") };
    expect(refused(project, "move-cable-side", args)).toBe("passes-through");
  });
});
