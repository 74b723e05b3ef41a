import { describe, expect, test } from "vitest";
import type { Section } from "../../shared-model/solver/section.ts";
import { Drawing } from "../rules/drawing.ts";
import { laundryAsFound, laundryProposed, multiwire } from "../rules/laundry.ts";
import { isolationIn } from "./isolation.ts";
import { endKey, node, onlySection, rolesAt, spliceId } from "./look-at.ts";

/** A breaker, and box after box on one 12/2 run: each cable's hot and ground reach the next box, its neutral too. */
const oneBox = (): Drawing =>
  new Drawing()
    .panel("P")
    .breaker("Q", 20)
    .box("B", 30.3)
    .cable("C", "nm-12-2-g", "P", "B")
    .put({ "C.bk@P": "Q.OUT", "C.wh@P": "P-NB.BAR", "C.cu@P": "P-GB.BAR" });

describe("roles of the laundry circuit", () => {
  test("as found: blacks are hot, whites are neutral, bares are ground, and the black past the switch is switched", () => {
    const section = onlySection(laundryAsFound());
    const roles = new Map(
      section.enclosures.flatMap((box) =>
        Object.keys(box.places).map((end) => [end, section.roleOfEnd(end as never)] as const),
      ),
    );
    for (const [end, role] of roles) {
      const [owner = "", conductor] = end.split(".");
      const grounding = conductor === "cu" || ["r", "t"].includes(owner) || /^B\d[gb]$/.test(owner);
      const grounded = conductor === "wh" || owner === "q";
      const expected = grounding ? "ground" : grounded ? "grounded" : owner === "C7" ? "switched" : "ungrounded";
      expect([end, role]).toEqual([end, expected]);
    }
    expect(roles.size).toBe(13 * 3 + (4 + 12) * 2);
    expect(["X", "Y", "Z", "B5n"].map((name) => section.roleOfSplice(spliceId(name)))).toEqual([
      "ungrounded",
      "grounded",
      "ground",
      "grounded",
    ]);
    expect(section.bounded).toBe(false);
  });

  test("proposed: LINE and LOAD have the same roles while the device is reset", () => {
    const section = onlySection(laundryProposed());
    const at = (name: string) => section.roleOfNode(node(name).device, node(name).node);
    expect(["R1b.LINE_H", "R1b.LOAD_H", "R1b.UH", "R3.LH"].map(at)).toEqual(Array(4).fill("ungrounded"));
    expect(["R1b.LINE_N", "R1b.LOAD_N", "R1b.UN", "R3.LN"].map(at)).toEqual(Array(4).fill("grounded"));
    expect(["R1b.G", "R3.LG", "L1.G"].map(at)).toEqual(Array(3).fill("ground"));
    expect(at("L1.H")).toBe("switched");
  });

  test("a conductor whose far side is not drawn floats, with everything on it", () => {
    const drawing = new Drawing()
      .box("B1", 30.3)
      .cable("C1", "nm-12-2-g", "street", "B1")
      .device("R1", "receptacle-15", "B1")
      .put({ "C1.bk@B1": "R1.H1", "C1.wh@B1": "R1.N1", "C1.cu@B1": "R1.G" });
    expect(rolesAt(drawing, "C1.bk@B1", "C1.wh@B1", "C1.cu@B1")).toEqual({
      "C1.bk@B1": "floating",
      "C1.wh@B1": "floating",
      "C1.cu@B1": "floating",
    });
  });
});

describe("switching", () => {
  /** Breaker - SA - (three-conductor cable) - SB - lamp. */
  const threeWay = (): Drawing =>
    oneBox()
      .box("B2", 30.3)
      .box("B3", 30.3)
      .cable("T", "nm-12-3-g", "B", "B2")
      .cable("D", "nm-12-2-g", "B2", "B3")
      .device("SA", "switch-3way", "B")
      .device("SB", "switch-3way", "B2")
      .device("L", "luminaire-60", "B3")
      .splice("NA", "B", "twist-medium")
      .splice("NB", "B2", "twist-medium")
      .put({ "C.bk@B": "SA.C", "T.bk@B": "SA.T1", "T.rd@B": "SA.T2", "C.wh@B": "NA", "T.wh@B": "NA" })
      .put({ "T.bk@B2": "SB.T1", "T.rd@B2": "SB.T2", "D.bk@B2": "SB.C", "T.wh@B2": "NB", "D.wh@B2": "NB" })
      .put({ "D.bk@B3": "L.H", "D.wh@B3": "L.N" });

  test("3-way pair: two travellers, and a switched conductor after the second common", () => {
    expect(rolesAt(threeWay(), "C.bk@B", "T.bk@B", "T.rd@B2", "D.bk@B2", "D.bk@B3", "D.wh@B3")).toEqual({
      "C.bk@B": "ungrounded",
      "T.bk@B": "traveller",
      "T.rd@B2": "traveller",
      "D.bk@B2": "switched",
      "D.bk@B3": "switched",
      "D.wh@B3": "grounded",
    });
  });

  test("3-way pair: no position joins the two travellers", () => {
    const section = onlySection(threeWay());
    const reach = section.reach();
    expect(reach.areJoined(node("SA.T1"), node("SA.T2"))).toBe(false);
    expect(reach.areJoined(node("SA.C"), node("L.H"))).toBe(true);
    expect(reach.isLive(node("L.H"))).toBe(true);
    expect(reach.isAlwaysLive(node("L.H"))).toBe(false);
  });

  test("a lamp hung on a traveller makes that net a switched one", () => {
    const drawing = threeWay().device("L2", "luminaire-60", "B2").jumper("x", "B2", "SB.T1", "L2.H");
    expect(rolesAt(drawing, "T.bk@B", "T.rd@B")).toEqual({ "T.bk@B": "switched", "T.rd@B": "traveller" });
  });

  test("4-way switch between two 3-way switches: all four between are travellers", () => {
    const drawing = oneBox()
      .device("SA", "switch-3way", "B")
      .device("S4", "switch-4way", "B")
      .device("SB", "switch-3way", "B")
      .device("L", "luminaire-60", "B")
      .put({ "C.bk@B": "SA.C", "C.wh@B": "L.N" })
      .jumper("t1", "B", "SA.T1", "S4.A1")
      .jumper("t2", "B", "SA.T2", "S4.A2")
      .jumper("t3", "B", "S4.B1", "SB.T1")
      .jumper("t4", "B", "S4.B2", "SB.T2")
      .jumper("s", "B", "SB.C", "L.H");
    expect(rolesAt(drawing, "t1.1", "t2.1", "t3.1", "t4.1", "s.2")).toEqual({
      "t1.1": "traveller",
      "t2.1": "traveller",
      "t3.1": "traveller",
      "t4.1": "traveller",
      "s.2": "switched",
    });
  });

  test("a switch in the neutral leaves the shell on the neutral in one position, so it is grounded and not always", () => {
    const drawing = oneBox()
      .device("S", "switch-single-pole", "B")
      .device("L", "luminaire-60", "B")
      .put({ "C.bk@B": "L.H", "C.wh@B": "S.C" })
      .jumper("w", "B", "S.L", "L.N", { colour: "white" });
    expect(rolesAt(drawing, "w.1")).toEqual({ "w.1": "grounded" });
    const reach = onlySection(drawing).reach();
    expect([reach.isGrounded(node("L.N")), reach.isAlwaysGrounded(node("L.N"))]).toEqual([true, false]);
  });

  test("two switches on one yoke are thrown one by one", () => {
    const drawing = oneBox()
      .device("S", "switch-two", "B", { hotTab: "removed" })
      .device("L", "luminaire-60", "B")
      .put({ "C.bk@B": "S.C1", "C.wh@B": "L.N" })
      .jumper("x", "B", "S.L1", "S.C2")
      .jumper("y", "B", "S.L2", "L.H");
    const section = onlySection(drawing);
    expect(section.roleOfEnd(endKey(section.installation, "y.2"))).toBe("switched");
    expect(section.reach().isLive(node("L.H"))).toBe(true);
  });

  test("twelve lamps, each with its switch on one feed, are all told; twelve switches in a row are not", () => {
    const many = oneBox().put({ "C.wh@B": "loose" }).splice("H", "B", "twist-large").put({ "C.bk@B": "H" });
    const chain = oneBox();
    for (let index = 0; index < 12; index++) {
      many
        .device(`S${index}`, "switch-single-pole", "B")
        .device(`L${index}`, "luminaire-60", "B")
        .jumper(`f${index}`, "B", "H", `S${index}.C`)
        .jumper(`s${index}`, "B", `S${index}.L`, `L${index}.H`);
      chain.device(`S${index}`, "switch-single-pole", "B");
      if (index > 0) chain.jumper(`c${index}`, "B", `S${index - 1}.L`, `S${index}.C`);
    }
    chain
      .put({ "C.bk@B": "S0.C", "C.wh@B": "loose" })
      .device("L", "luminaire-60", "B")
      .jumper("l", "B", "S11.L", "L.H");
    const standings = (section: Section) =>
      isolationIn(section).map(({ standing: { hot, live }, certain }) => [hot, live, certain]);
    const told = onlySection(many);
    expect(told.bounded).toBe(false);
    expect(standings(told)).toEqual(Array(12).fill(["switched", true, true]));
    const untold = onlySection(chain);
    expect(untold.bounded).toBe(true);
    expect(standings(untold)).toEqual([["switched", true, false]]);
  });
});

describe("more than one source", () => {
  test("multiwire: both legs are ungrounded and the shared white is grounded", () => {
    expect(rolesAt(multiwire(), "M3.bk@JB", "M3.rd@JB", "M3.wh@JB", "MB.bk@BB", "MB.wh@BB")).toEqual({
      "M3.bk@JB": "ungrounded",
      "M3.rd@JB": "ungrounded",
      "M3.wh@JB": "grounded",
      "MB.bk@BB": "ungrounded",
      "MB.wh@BB": "grounded",
    });
  });

  test("two legs on one conductor conflict; two breakers of one leg do not show in the role", () => {
    const joined = multiwire().jumper("y", "JB", "jA", "jB");
    expect(rolesAt(joined, "M3.bk@JB", "M3.wh@JB")).toEqual({ "M3.bk@JB": "conflict", "M3.wh@JB": "grounded" });
    expect(rolesAt(joined.setDevice("QB", { legs: ["A"] }), "M3.bk@JB")).toEqual({ "M3.bk@JB": "ungrounded" });
  });

  test("white and bare in contact conflict as far as the bars, and no further", () => {
    const drawing = laundryAsFound()
      .jumper("y", "B3", "R3.N2", "bond", { colour: "white" })
      .box("B9", 18)
      .cable("C9", "nm-12-2-g", "P", "B9")
      .device("R9", "receptacle-15", "B9")
      .put({ "C9.bk@P": "Q14.OUT", "C9.wh@P": "P-NB.BAR", "C9.cu@P": "P-GB.BAR" })
      .put({ "C9.bk@B9": "R9.H1", "C9.wh@B9": "R9.N1", "C9.cu@B9": "R9.G" });
    expect(rolesAt(drawing, "C6.wh@B3", "C1.cu@B1", "C1.bk@B1", "C9.wh@B9", "C9.cu@B9")).toEqual({
      "C6.wh@B3": "conflict",
      "C1.cu@B1": "conflict",
      "C1.bk@B1": "ungrounded",
      "C9.wh@B9": "grounded",
      "C9.cu@B9": "ground",
    });
  });

  test("a switch that shorts hot to neutral in one position shows as a conflict on both", () => {
    const drawing = oneBox().device("S", "switch-single-pole", "B").put({ "C.bk@B": "S.C", "C.wh@B": "S.L" });
    expect(rolesAt(drawing, "C.bk@B", "C.wh@B")).toEqual({ "C.bk@B": "conflict", "C.wh@B": "conflict" });
  });

  test("the interconnect of two alarms is a signal conductor, until a source reaches it", () => {
    const drawing = oneBox()
      .device("A1", "smoke-alarm", "B")
      .device("A2", "smoke-alarm", "B")
      .put({ "C.bk@B": "A1.H", "C.wh@B": "A1.N" })
      .jumper("i", "B", "A1.SIG", "A2.SIG");
    expect(rolesAt(drawing, "i.1")).toEqual({ "i.1": "signal" });
    expect(rolesAt(drawing.jumper("m", "B", "A2.SIG", "A1.H"), "i.1")).toEqual({ "i.1": "ungrounded" });
  });

  test("a jumper between the bars of the service panel is the main bond and joins no roles", () => {
    expect(rolesAt(laundryAsFound().jumper("mb", "P", "P-NB.BAR", "P-GB.BAR"), "C1.wh@B1", "C1.cu@B1")).toEqual({
      "C1.wh@B1": "grounded",
      "C1.cu@B1": "ground",
    });
  });

  test("the metal of a panel is its ground", () => {
    const drawing = laundryAsFound().put({ "C1.cu@P": "bond" });
    expect(rolesAt(drawing, "C1.cu@P", "C5.cu@B6")).toEqual({ "C1.cu@P": "ground", "C5.cu@B6": "ground" });
  });

  test("a self-grounding device has its ground from a bonded metal box, and from no other", () => {
    const roleOfYoke = (material: "metal" | "nonmetallic") =>
      onlySection(
        oneBox()
          .setBox("B", { material })
          .device("R", "receptacle-15", "B", { selfGrounding: true })
          .put({ "C.cu@B": "bond" }),
      ).roleOfNode(node("R.UG").device, "UG");
    expect([roleOfYoke("metal"), roleOfYoke("nonmetallic")]).toEqual(["ground", "floating"]);
  });
});
