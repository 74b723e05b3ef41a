import { describe, expect, test } from "vitest";
import type { EndKey, TerminalName } from "../../shared-model/model/ids.ts";
import { cablesInto } from "../../shared-model/queries/cables-into.ts";
import { farEnd, findEndFacts, getEndFacts, nameOfEnd } from "../../shared-model/queries/end-facts.ts";
import { findDevice, findJumper, findSplice, getEnclosure } from "../../shared-model/queries/find-item.ts";
import { inOrder, nextOrder } from "../../shared-model/queries/in-order.ts";
import { currentState, findInstallation, getInstallation } from "../../shared-model/queries/installation-of.ts";
import { landedAt, landingsOf, membersOf } from "../../shared-model/queries/landings.ts";
import {
  boxId,
  cableId,
  deviceId,
  drawing,
  jumperId,
  laundryAsFound,
  laundryDrawing,
  spliceId,
} from "../builders/drawing.ts";

const laundry = laundryAsFound();
const b1 = getEnclosure(laundry.asFound, boxId("B1"));

describe("who is where in a box", () => {
  test("six conductors in the hot joint and in the neutral joint, seven in the ground joint", () => {
    // The five cables of the job, and the pigtail; the ground joint also bonds the box.
    expect(["X", "Y", "Z"].map((name) => membersOf(b1, spliceId(name)).length)).toEqual([6, 6, 7]);
    expect(membersOf(b1, spliceId("X"))).toEqual([
      "cable-C1.bk.b",
      "cable-C2.bk.a",
      "cable-C3.bk.a",
      "cable-C4.bk.a",
      "cable-C5.bk.a",
      "jumper-p.a",
    ]);
    expect(membersOf(b1, spliceId("nowhere"))).toEqual([]);
  });

  test("one pigtail on each screw of R1 that is used, and the box bonded by one", () => {
    const on = (terminal: string) => landedAt(b1, deviceId("R1"), terminal as TerminalName);
    expect(on("H1")).toEqual([{ end: "jumper-p.b", hole: 1 }]);
    expect(on("H2")).toEqual([]);
    expect(landingsOf(b1).bonded).toEqual(["jumper-t.b"]);
  });

  test("the answer is kept as long as the places are the same", () => {
    const moved = laundryDrawing().run("rename-item", { item: { kind: "enclosure", id: b1.id }, name: "L" }).project;
    const renamed = getEnclosure(moved.asFound, b1.id);
    expect(landingsOf(renamed)).toBe(landingsOf({ ...renamed }));
    const landed = laundryDrawing().land("C1.bk@B1", "R1.H2").project;
    expect(landedAt(getEnclosure(landed.asFound, b1.id), deviceId("R1"), "H2" as TerminalName)).toHaveLength(1);
  });
});

describe("ends", () => {
  test("an end knows what its conductor is made of", () => {
    expect(getEndFacts(laundry.asFound, b1, "cable-C1.cu.b" as EndKey)).toEqual({
      parsed: { of: "cable", cable: cableId("C1"), conductor: "cu", side: "b" },
      awg: "12",
      colour: "bare",
      material: "copper",
      stranded: false,
      grounding: true,
      owner: "C1",
    });
    expect(findEndFacts(laundry.asFound, b1, "jumper-r.a" as EndKey)).toMatchObject({ grounding: true, owner: "r" });
    expect(findEndFacts(laundry.asFound, b1, "jumper-q.a" as EndKey)).toMatchObject({
      grounding: false,
      colour: "white",
    });
    expect(findEndFacts(laundry.asFound, b1, "cable-C9.bk.a" as EndKey)).toBeUndefined();
    expect(findEndFacts(laundry.asFound, b1, "nonsense" as EndKey)).toBeUndefined();
    expect(() => getEndFacts(laundry.asFound, b1, "cable-C1.rd.b" as EndKey)).toThrow();
  });

  test("an end is called by its cable and the letters of its colour, both colours where it is re-identified", () => {
    const house = drawing().box("B1").outside("C4", "B1", { item: "nm-12-2-2-g" });
    house.setEnd("C4.wh2@B1", "markedAs", "black");
    const box = getEnclosure(house.project.asFound, boxId("B1"));
    const name = (end: string) => nameOfEnd(house.project.asFound, box, end as EndKey);
    expect(name("cable-C4.wh.a")).toBe("C4 WH");
    expect(name("cable-C4.wh2.a")).toBe("C4 WH 2 as BK");
    expect(name("cable-C4.cu.a")).toBe("C4 bare");
    expect(nameOfEnd(laundry.asFound, b1, "jumper-q.a" as EndKey)).toBe("q WH");
  });

  test("each conductor has two ends", () => {
    for (const end of ["cable-C1.bk.a", "cable-C1.bk.b", "jumper-p.a"] as EndKey[]) {
      expect(farEnd(end)).not.toBe(end);
      expect(farEnd(farEnd(end))).toBe(end);
    }
    expect(farEnd("cable-C1.bk.a" as EndKey)).toBe("cable-C1.bk.b");
    expect(() => farEnd("cable-C1.bk.c" as EndKey)).toThrow();
  });
});

describe("finding things", () => {
  test("five cables enter the laundry box, in their order", () => {
    const into = cablesInto(laundry.asFound.cables, boxId("B1"));
    expect(into.map(({ cable, side, entry }) => [cable.name, side, entry])).toEqual([
      ["C1", "b", "e-C1"],
      ["C2", "a", "e-C2"],
      ["C3", "a", "e-C3"],
      ["C4", "a", "e-C4"],
      ["C5", "a", "e-C5"],
    ]);
    expect(cablesInto(laundry.asFound.cables, boxId("B9"))).toEqual([]);
  });

  test("devices, splices and jumpers are found with the box they are in", () => {
    const { asFound } = laundry;
    expect(findDevice(asFound, deviceId("S1"))?.enclosure.name).toBe("B5");
    expect(findSplice(asFound, spliceId("E_B6"))?.enclosure.name).toBe("B6");
    expect(findJumper(asFound, jumperId("p"))?.jumper.name).toBe("p");
    expect(findDevice(asFound, deviceId("R9"))).toBeUndefined();
    expect(findSplice(asFound, spliceId("Q"))).toBeUndefined();
    expect(findJumper(asFound, jumperId("z"))).toBeUndefined();
    expect(() => getEnclosure(asFound, boxId("B9"))).toThrow();
  });

  test("a check looks at proposed once it was started", () => {
    const { project } = laundryDrawing().propose();
    expect([currentState(laundry), currentState(project)]).toEqual(["as-found", "proposed"]);
    expect(findInstallation(laundry, "proposed")).toBeUndefined();
    expect(getInstallation(project, "proposed")).toBe(project.proposed);
    expect(() => getInstallation(laundry, "proposed")).toThrow();
  });

  test("order is by the order field, then by id, whatever the order of keys", () => {
    const table = { c: { id: "c", order: 0 }, b: { id: "b", order: 1 }, a: { id: "a", order: 1 } };
    expect(inOrder(table).map((one) => one.id)).toEqual(["c", "a", "b"]);
    expect([nextOrder(table), nextOrder({})]).toEqual([2, 0]);
  });
});
