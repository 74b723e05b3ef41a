import { describe, expect, test } from "vitest";
import type { DeviceId, EndKey, TerminalName } from "../../shared-model/model/ids.ts";
import type { At } from "../../shared-model/model/place.ts";
import { boxId, deviceId, drawing, jumperId, spliceId } from "../builders/drawing.ts";
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
const _BK = "cable-C1.bk.a" as EndKey;
const splices = (house: ReturnType<typeof wired>) => Object.keys(enclosureIn(house.project, "B1").splices);

describe("jumpers and pigtails", () => {
  test("a jumper has both ends placed; what it is made of is assumed", () => {
    const house = wired().splice("X", "B1", "twist-large", "C1.bk@B1", "C2.bk@B1");
    house.jumper("p", "B1", "splice X", "R1.H1", { awg: "14" });
    expect(enclosureIn(house.project, "B1").jumpers[jumperId("p")]).toEqual({
      id: jumperId("p"),
      name: "p",
      awg: "14",
      colour: "black",
      material: "copper",
      stranded: false,
      order: 0,
      evidence: { material: "assumed", stranded: "assumed" },
    });
    expect(placeOf(house, "p.a").at).toEqual({ kind: "splice", splice: spliceId("X") });
    expect(placeOf(house, "p.b").at).toEqual(terminal(deviceId("R1"), "H1"));
  });

  test("a jumper joins two different points", () => {
    const house = wired()
      .splice("X", "B1", "twist-large", "C1.bk@B1", "C2.bk@B1")
      .jumper("p", "B1", "splice X", "R1.H1");
    const add = (from: At, to: At, jumper = jumperId("q")) =>
      refused(house.project, "add-jumper", { ...inB1, jumper, name: "q", awg: "12", colour: "black", from, to });
    expect(add({ kind: "bond" }, { kind: "bond" })).toBe("jumper-to-itself");
    expect(add(terminal(deviceId("R1"), "H1", 1), terminal(deviceId("R1"), "H1", 2))).toBe("jumper-to-itself");
    expect(add({ kind: "splice", splice: spliceId("Y") }, { kind: "bond" })).toBe("unknown-splice");
    expect(add({ kind: "bond" }, { kind: "loose" }, jumperId("p"))).toBe("id-in-use");
    const land = (end: string, at: At) => refused(house.project, "land-end", { ...inB1, end: end as EndKey, at });
    expect(land("jumper-p.a", terminal(deviceId("R1"), "H1", 2))).toBe("jumper-to-itself");
  });

  test("removing a jumper takes both its ends, and a splice that was left with none", () => {
    const house = wired()
      .splice("X", "B1", "twist-large", "C1.bk@B1", "C2.bk@B1")
      .jumper("p", "B1", "splice X", "R1.H1");
    for (const end of ["cable-C1.bk.a", "cable-C2.bk.a"])
      house.run("leave-splice", { enclosure: boxId("B1"), end: end as EndKey });
    expect(splices(house)).toEqual([spliceId("X")]);
    house.remove({ kind: "jumper", id: jumperId("p") });
    expect(splices(house)).toEqual([]);
    const b1 = enclosureIn(house.project, "B1");
    expect(b1.jumpers).toEqual({});
    expect(Object.keys(b1.places).some((end) => end.startsWith("jumper-"))).toBe(false);
  });

  test("a pigtail takes all that was on a terminal into a splice, and one jumper back", () => {
    const house = wired();
    house.outside("C4", "B1", { item: "nm-10-2-g" }).land("C1.bk@B1", "R1.H1").land("C4.bk@B1", "R1.H1#2");
    const args = {
      enclosure: boxId("B1"),
      device: deviceId("R1"),
      terminal: "H1",
      splice: spliceId("X"),
      spliceName: "X",
      connector: "twist-large",
      jumper: jumperId("p"),
      jumperName: "p",
    };
    expect(titleOf(house.project, "pigtail-terminal", { ...args, state: "as-found" })).toBe("Pigtail R1 H");
    house.run("pigtail-terminal", args);
    for (const end of ["C1.bk@B1", "C4.bk@B1", "p.a"])
      expect(placeOf(house, end).at).toEqual({ kind: "splice", splice: spliceId("X") });
    expect(placeOf(house, "p.b").at).toEqual(terminal(deviceId("R1"), "H1"));
    const { awg, colour } = enclosureIn(house.project, "B1").jumpers[jumperId("p")] ?? {};
    expect([awg, colour]).toEqual(["10", "black"]);
  });

  test("a terminal with nothing on it has nothing to pigtail", () => {
    const house = wired().land("C1.bk@B1", "R1.H1");
    const ask = (args: object) =>
      refused(house.project, "pigtail-terminal", {
        ...inB1,
        device: deviceId("R1"),
        terminal: "H1",
        splice: spliceId("X"),
        spliceName: "X",
        connector: "twist-large",
        jumper: jumperId("p"),
        jumperName: "p",
        ...args,
      });
    expect(ask({ terminal: "H2" })).toBe("nothing-landed");
    expect(ask({ terminal: "Q" })).toBe("unknown-terminal");
    expect(ask({ device: deviceId("R9") })).toBe("unknown-device");
    expect(ask({ connector: "glue" })).toBe("unknown-catalog-item");
    expect(ask({ jumper: spliceId("X") })).toBe("id-in-use");
  });
});
