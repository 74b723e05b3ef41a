import { describe, expect, test } from "vitest";
import { asId, type LoadId, outletKey } from "../../../shared-model/model/ids.ts";
import type { Load } from "../../../shared-model/model/load.ts";
import type { Installation } from "../../../shared-model/model/project.ts";
import { watts } from "../../../shared-model/units/quantity.ts";
import type { Drawing } from "../../rules/drawing.ts";
import { laundryProposed, multiwire } from "../../rules/laundry.ts";
import { deviceId } from "../look-at.ts";
import { fedPanel } from "./fed-panel.ts";
import { failing, measured, offenders, proofBy, proofOf, proofs, protectors } from "./proofs.ts";

const LAUNDRY_FT = { C1: 55, C2: 18, C3: 30, C4: 16, C5: 25, C6: 22, C7: 12 };
const laundry = (): Drawing => laundryProposed();

describe("the laundry circuit", () => {
  test("proposed: each outlet by its device, the stair light by none, both devices quiet", () => {
    const all = proofs(measured(laundry(), LAUNDRY_FT).installation());
    expect(protectors(all)).toEqual({ R1b: ["R1b"], R2: ["R1b"], R3: ["R1b"], R4b: ["R4b"], R5: ["R1b"], L1: [] });
    expect(proofOf(all, "L1").verdict).toBe("none");
    expect([offenders(all, "R1b"), offenders(all, "R4b")]).toEqual([{}, {}]);
  });

  test("the white of C2 on LINE: R1b and R5 stay proved, and what is used at R2 or R3 opens the device", () => {
    const all = proofs(measured(laundry().put({ "C2.wh@B1": "NL" }), LAUNDRY_FT).installation());
    expect(protectors(all)).toMatchObject({ R1b: ["R1b"], R2: [], R3: [], R5: ["R1b"] });
    expect(Object.keys(offenders(all, "R1b"))).toEqual(["R2", "R3"]);
    expect(proofBy(all, "R5", "R1b").tests.P6).toBe("fail");
  });

  test("both conductors of C2 on LINE: nothing trips, and nothing protects", () => {
    const all = proofs(measured(laundry().put({ "C2.wh@B1": "NL", "C2.bk@B1": "HL" }), LAUNDRY_FT).installation());
    expect([failing(all, "R2", "R1b"), offenders(all, "R1b")]).toEqual([["P1(H)", "P1(N)", "P3"], {}]);
  });
});

describe("quiet", () => {
  test("a load that returns by the equipment ground makes the device trip", () => {
    const drawing = laundry().swap("C5.wh@B6", "C5.cu@B6");
    const all = proofs(measured(drawing, LAUNDRY_FT).installation());
    expect(failing(all, "R5", "R1b")).toEqual(["P2"]);
    expect(proofBy(all, "R5", "R1b").balance).toBeCloseTo(1, 6);
    expect(Object.keys(offenders(all, "R1b"))).toEqual(["R5"]);
  });
});

describe("by one device or another", () => {
  /**
   * The neutral of RX passes R1b and R8, one after the other; its hot comes from R1b round R8 or from R8 round R1b, as SX
   * stands. In each position the device that both conductors pass protects.
   */
  const changedOver = (): Drawing =>
    laundry()
      .device("R8", "gfci-receptacle-15", "B1")
      .device("SX", "switch-3way", "B1")
      .device("RX", "receptacle-15", "B1")
      .jumper("l", "B1", "HL", "R8.LINE_H")
      .jumper("m", "B1", "ND", "R8.LINE_N")
      .jumper("n", "B1", "R8.LOAD_N", "RX.N1")
      .jumper("h1", "B1", "HD", "SX.T1")
      .jumper("h2", "B1", "R8.LOAD_H", "SX.T2")
      .jumper("h3", "B1", "SX.C", "RX.H1");

  test("each setting has its own device, and neither protects in both", () => {
    const all = proofs(changedOver().installation());
    const { verdict, protectedBy, devices } = proofOf(all, "RX");
    expect([verdict, protectedBy]).toEqual(["by-setting", ["R1b", "R8"]]);
    expect(devices.filter(({ protects }) => protects)).toEqual([]);
    expect(proofBy(all, "RX", "R1b").failsWhen).toEqual([{ device: "SX", position: "down" }]);
    expect(proofBy(all, "RX", "R8").failsWhen).toEqual([{ device: "SX", position: "up" }]);
  });

  test("and none where one of the two is of another class", () => {
    const all = proofs(changedOver().setDevice("R8", { type: "afci-receptacle-15" }).installation());
    expect([proofOf(all, "RX").verdict, proofOf(all, "RX").protectedBy]).toEqual(["none", []]);
  });
});

describe("a path round the sensor", () => {
  test("counts when a bad joint in it lets next to nothing through", () => {
    const drawing = laundry().jumper("y", "B3", "R3.N2", "bond", { colour: "white" });
    const installation = drawing.installation();
    const box = Object.values(installation.enclosures).find(({ name }) => name === "B3");
    const end = Object.keys(box?.places ?? {}).find((key) => key.startsWith("y."));
    Object.assign(box?.places[end as keyof typeof box.places] ?? {}, { jointOhm: 1000 });
    const all = proofs(installation);
    expect(proofBy(all, "R3", "R1b").balance).toBeLessThan(0.001);
    expect(failing(all, "R3", "R1b")).toEqual(["P2"]);
    expect(offenders(all, "R1b")).toEqual({});
  });

  test("through what is plugged in makes everything behind the device live when it is open", () => {
    const split = (): Installation =>
      laundry()
        .device("RX", "receptacle-15", "B1", { hotTab: "removed" })
        .jumper("x", "B1", "HD", "RX.H1")
        .jumper("y", "B1", "HL", "RX.H2")
        .jumper("z", "B1", "ND", "RX.N1")
        .installation();
    const plug = outletKey(deviceId("RX"), "lower");
    const load: Load = { id: asId<LoadId>("lamp"), name: "Lamp", item: "lamp-60", plug, order: 0, loadW: watts(60) };
    const used = proofs({ ...split(), loads: { [load.id]: load } });
    expect(protectors(proofs(split()))).toMatchObject({ "RX/upper": ["R1b"], R2: ["R1b"], R4b: ["R4b"] });
    expect(protectors(used)).toMatchObject({ "RX/upper": [], R2: [], R4b: ["R4b"] });
    expect(failing(used, "R2", "R1b")).toEqual(["P1(load)"]);
  });
});

describe("behind a feeder panel", () => {
  test("what is used on one circuit is no concern of a device on another", () => {
    const all = proofs(fedPanel().installation());
    expect(protectors(all)).toEqual({ R1: ["R1"], R2: ["R1"], R3: [] });
    expect(offenders(all, "R1")).toEqual({});
  });

  test("until a neutral and a ground meet behind the device: then it sees a part of everything that the panel feeds", () => {
    const drawing = fedPanel().jumper("x", "B1", "R2.N2", "bond", { colour: "white" });
    const all = proofs(measured(drawing, { F: 30, C1: 30, C2: 30 }).installation());
    expect(Object.keys(offenders(all, "R1"))).toEqual(["R1", "R2", "R3"]);
    // By hand, milliohms: 30 ft of 10 AWG at 0.999 a foot back by the feeder neutral, against 30 ft of 12 AWG at 1.588 out
    // by the white and back by the ground of C1, a contact of 1, two jumpers of 0.95, and the ground of the feeder.
    const feeder = 30 * 0.999;
    const around = 30 * 1.588 * 2 + 1 + 2 * 0.95 + feeder;
    expect(Math.abs((offenders(all, "R1").R3 ?? 0) - feeder / (feeder + around))).toBeLessThan(0.01);
    expect(proofBy(all, "R2", "R1").tests.P6).toBe("fail");
  });
});

describe("what is not drawn, and what cannot be told", () => {
  test("an outlet that nothing feeds is not live, and its tests cannot be told", () => {
    const proof = proofOf(proofs(laundry().put({ "C5.bk@B1": "cap" }).installation()), "R5");
    expect([proof.verdict, proof.protectedBy]).toEqual(["not-live", []]);
    expect(proof.devices.map(({ tests }) => tests.P1)).toEqual(["cannot-tell", "cannot-tell"]);
  });

  test("a neutral that ends nowhere: the current of the outlet does not come back", () => {
    const all = proofs(laundry().put({ "C6.wh@B3": "cap" }).installation());
    expect(failing(all, "R3", "R1b")).toEqual(["P2"]);
    expect(proofBy(all, "R3", "R1b").neutralAdrift).toBe(true);
    expect(failing(all, "R2", "R1b")).toEqual([]);
  });

  test("eleven switches in a row bear on one outlet", () => {
    const row = (count: number): Drawing => {
      const drawing = laundry().device("RX", "receptacle-15", "B1");
      for (let n = 0; n < count; n++) {
        drawing.device(`S${n + 20}`, "switch-single-pole", "B1");
        drawing.jumper(`r${n}`, "B1", n === 0 ? "HD" : `S${n + 19}.L`, `S${n + 20}.C`);
      }
      return drawing.jumper("w", "B1", `S${count + 19}.L`, "RX.H1").jumper("z", "B1", "ND", "RX.N1");
    };
    expect(proofOf(proofs(row(10).installation()), "RX").protectedBy).toEqual(["R1b"]);
    const proof = proofOf(proofs(row(11).installation()), "RX");
    expect([proof.verdict, proof.protectedBy]).toEqual(["cannot-tell", []]);
    expect(proofBy([proof], "RX", "R1b").tests.P2).toBe("cannot-tell");
  });

  test("six switches in a row in the hot and six in the neutral: each row is tried, both together are not", () => {
    const drawing = laundry().device("RX", "receptacle-15", "B1");
    const row = (letter: string, from: string, to: string): void => {
      for (let n = 0; n < 6; n++) {
        drawing.device(`${letter}${n}`, "switch-single-pole", "B1");
        drawing.jumper(`${letter}j${n}`, "B1", n === 0 ? from : `${letter}${n - 1}.L`, `${letter}${n}.C`);
      }
      drawing.jumper(`${letter}j6`, "B1", `${letter}5.L`, to);
    };
    row("V", "HD", "RX.H1");
    row("W", "ND", "RX.N1");
    const all = proofs(drawing.installation());
    expect([proofOf(all, "RX").verdict, proofOf(all, "RX").protectedBy]).toEqual(["cannot-tell", []]);
    expect(proofBy(all, "RX", "R1b").tests).toMatchObject({ P1: "cannot-tell", P2: "cannot-tell", P6: "cannot-tell" });
    // What fails as drawn fails, whatever the other settings say.
    expect(proofBy(all, "RX", "R4b").tests).toMatchObject({ P1: "fail", P3: "fail" });
  });

  test("an empty drawing and one without devices that sense have nothing to prove", () => {
    expect(proofs(multiwire().installation()).map(({ verdict, devices }) => [verdict, devices.length])).toEqual([
      ["none", 0],
      ["none", 0],
    ]);
  });
});
