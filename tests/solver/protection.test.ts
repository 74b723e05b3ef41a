import { describe, expect, test } from "vitest";
import { Drawing } from "../rules/drawing.ts";
import { laundryAsFound, laundryProposed, multiwire } from "../rules/laundry.ts";
import { isolationIn } from "./isolation.ts";
import {
  asFeederPanel,
  deviceId,
  failing,
  liveAfterTrip,
  node,
  onlySection,
  outletKey,
  protection,
  standing,
} from "./look-at.ts";

/*
 * What a ground-fault device protects follows from how it works: it opens hot and neutral between LINE and LOAD and trips
 * on the difference of the two currents through it (UL 943, Class A: 6 mA; from memory). Each arrangement below was
 * worked out by hand from that.
 */

/** A second receptacle on pigtails in B1. */
const RX = (drawing: Drawing): Drawing => drawing.device("RX", "receptacle-15", "B1");

const swapLineAndLoad = (drawing: Drawing): Drawing =>
  drawing.exchange("R1b", "LINE_H", "LOAD_H").exchange("R1b", "LINE_N", "LOAD_N");

/** R1b is fed through switch S9 instead of straight from the supply. */
const fedThroughSwitch = (): Drawing =>
  laundryProposed()
    .removeJumper("a")
    .device("S9", "switch-single-pole", "B1")
    .jumper("y", "B1", "HL", "S9.C")
    .jumper("z", "B1", "S9.L", "R1b.LINE_H");

describe("the laundry circuit", () => {
  test("as found nothing protects anything, and everything is live", () => {
    const section = onlySection(laundryAsFound());
    expect(protection(section)).toEqual({ R1: [], R2: [], R3: [], R4: [], R5: [], L1: [] });
    expect(isolationIn(section).every(({ standing: { live }, certain }) => live && certain)).toBe(true);
  });

  test("proposed: R1b protects its face and what is on its LOAD, R4b its own face, the stair light stays outside", () => {
    expect(protection(onlySection(laundryProposed()))).toEqual({
      R1b: ["R1b"],
      R2: ["R1b"],
      R3: ["R1b"],
      R4b: ["R4b"],
      R5: ["R1b"],
      L1: [],
    });
  });

  test("proposed: who is dead and who lives after each trip", () => {
    const section = onlySection(laundryProposed());
    expect(liveAfterTrip(section, "R1b")).toEqual(["L1", "R4b"]);
    expect(liveAfterTrip(section, "R4b")).toEqual(["L1", "R1b", "R2", "R3", "R5"]);
  });

  test("an outlet that nothing feeds is protected by nothing, and is not live", () => {
    const section = onlySection(laundryProposed().put({ "C5.bk@B1": "cap" }));
    const { live, hot } = standing(section, "R5");
    expect([live, protection(section).R5, hot]).toEqual([false, [], "floating"]);
  });
});

describe("arrangements in which 'reachable from LOAD' would say yes", () => {
  test("a second hot path round the contacts", () => {
    const section = onlySection(laundryProposed().jumper("y", "B1", "HL", "HD"));
    for (const outlet of ["R1b", "R2", "R3", "R5"]) expect(failing(section, outlet, "R1b")).toEqual(["hot reached"]);
    expect(liveAfterTrip(section, "R1b")).toEqual(["L1", "R2", "R3", "R4b", "R5"]);
  });

  test("hot on LOAD, neutral on LINE", () => {
    const section = onlySection(laundryProposed().put({ "C5.wh@B1": "NL" }));
    expect(failing(section, "R5", "R1b")).toEqual(["neutral reached"]);
    expect(failing(section, "R2", "R1b")).toEqual([]);
    expect(liveAfterTrip(section, "R1b")).toEqual(["L1", "R4b"]);
  });

  test("hot on LOAD, neutral of another cable from the panel", () => {
    const drawing = laundryProposed()
      .cable("C9", "nm-12-2-g", "P", "B6")
      .put({ "C9.wh@P": "P-NB.BAR", "C5.wh@B6": "cap", "C9.wh@B6": "R5.N1" });
    expect(failing(onlySection(drawing), "R5", "R1b")).toEqual(["neutral reached"]);
  });

  test("hot on LINE, neutral on LOAD", () => {
    const section = onlySection(laundryProposed().put({ "C5.bk@B1": "HL" }));
    expect(failing(section, "R5", "R1b")).toEqual(["hot reached"]);
    expect(liveAfterTrip(section, "R1b")).toEqual(["L1", "R4b", "R5"]);
  });

  test("LINE and LOAD exchanged: what hangs on LINE passes the sensor in the wrong direction, the rest is not behind it", () => {
    const section = onlySection(swapLineAndLoad(laundryProposed()));
    expect(failing(section, "R2", "R1b")).toEqual(["direction"]);
    for (const outlet of ["R4b", "L1"])
      expect(failing(section, outlet, "R1b")).toEqual(["hot reached", "neutral reached", "direction"]);
    expect(liveAfterTrip(section, "R1b")).toEqual(["L1", "R4b"]);
    const open = section.contactsOpen(deviceId("R1b"));
    expect([open.isLive(node("R1b.LOAD_H")), open.isLive(node("R1b.LINE_H"))]).toEqual([true, false]);
    expect([open.isGrounded(node("R1b.LOAD_N")), open.isGrounded(node("R1b.LINE_N"))]).toEqual([true, false]);
  });

  test("LINE and LOAD exchanged on a device whose face is tied to LOAD: the face stays live", () => {
    const drawing = swapLineAndLoad(laundryProposed()).setDevice("R1b", { faceContact: "tied-to-load" });
    expect(liveAfterTrip(onlySection(drawing), "R1b")).toEqual(["L1", "R1b", "R4b"]);
  });

  test("split duplex, one half on LOAD and one on LINE, neutral whole on LOAD", () => {
    const drawing = laundryProposed()
      .device("RX", "receptacle-15", "B1", { hotTab: "removed" })
      .jumper("x", "B1", "HD", "RX.H1")
      .jumper("y", "B1", "HL", "RX.H2")
      .jumper("z", "B1", "ND", "RX.N1");
    const section = onlySection(drawing);
    expect(failing(section, "RX/upper", "R1b")).toEqual([]);
    expect(failing(section, "RX/lower", "R1b")).toEqual(["hot reached"]);
  });

  test("one-pole device before a multiwire split: its own leg is behind it, the other leg is not", () => {
    const drawing = multiwire()
      .device("G1", "gfci-receptacle-20", "JB")
      .put({ "M3.bk@JB": "G1.LINE_H", "M3.wh@JB": "G1.LINE_N" })
      .jumper("y", "JB", "G1.LOAD_H", "jA")
      .jumper("z", "JB", "G1.LOAD_N", "jN", { colour: "white" });
    const section = onlySection(drawing);
    expect(failing(section, "RA", "G1")).toEqual([]);
    expect(failing(section, "RB", "G1")).toEqual(["hot reached"]);
  });

  test("no neutral on LINE: the device has no power", () => {
    const section = onlySection(laundryProposed().put({ "b.2": "cap" }));
    expect(failing(section, "R2", "R1b")).toEqual(["no power"]);
  });

  test("hot on LINE and neutral supply on LOAD: out and back run the same way through the sensor", () => {
    const section = onlySection(laundryProposed().exchange("R1b", "LINE_N", "LOAD_N"));
    expect(failing(section, "R2", "R1b")).toEqual(["direction"]);
  });

  test("device fed through a switch: the outlet is dead whenever the device is", () => {
    expect(failing(onlySection(fedThroughSwitch()), "R2", "R1b")).toEqual([]);
  });

  test("device fed through a switch, and the outlet's hot before the switch", () => {
    const section = onlySection(fedThroughSwitch().put({ "C5.bk@B1": "HL" }));
    expect(failing(section, "R5", "R1b")).toEqual(["hot reached", "no power", "direction"]);
  });

  test("on LOAD in one position of a 3-way switch, on LINE in the other", () => {
    const drawing = RX(laundryProposed())
      .device("SX", "switch-3way", "B1")
      .jumper("x", "B1", "HD", "SX.T1")
      .jumper("y", "B1", "HL", "SX.T2")
      .jumper("w", "B1", "SX.C", "RX.H1")
      .jumper("z", "B1", "ND", "RX.N1");
    expect(failing(onlySection(drawing), "RX", "R1b")).toEqual(["hot reached"]);
    expect(failing(onlySection(drawing.removeJumper("y")), "RX", "R1b")).toEqual([]);
  });

  test("white and ground in contact behind the device", () => {
    const section = onlySection(laundryProposed().jumper("y", "B3", "R3.N2", "bond", { colour: "white" }));
    for (const outlet of ["R1b", "R2", "R3", "R5"])
      expect(failing(section, outlet, "R1b")).toEqual(["neutral reached"]);
  });

  test("a lamp between the LINE hot and the LOAD neutral brings its voltage to everything behind, after a trip", () => {
    const section = onlySection(laundryProposed().put({ "C4.wh@B1": "ND" }));
    expect(failing(section, "L1", "R1b")).toEqual(["hot reached", "reached through a load"]);
    expect(failing(section, "R2", "R1b")).toEqual(["reached through a load"]);
  });
});

describe("what a device is made of", () => {
  test("a duplex with its neutral tab off: each half by its own neutral", () => {
    const drawing = laundryProposed()
      .device("RX", "receptacle-15", "B1", { neutralTab: "removed" })
      .jumper("x", "B1", "HD", "RX.H1")
      .jumper("y", "B1", "ND", "RX.N1")
      .jumper("z", "B1", "NL", "RX.N2");
    const section = onlySection(drawing);
    expect(failing(section, "RX/upper", "R1b")).toEqual([]);
    expect(failing(section, "RX/lower", "R1b")).toEqual(["neutral reached"]);
  });

  test("two switches on one yoke, one in the hot and one in the neutral of LINE: one alone takes away the power", () => {
    const drawing = laundryProposed()
      .removeJumper("a")
      .removeJumper("b")
      .device("S9", "switch-two", "B1", { hotTab: "removed" })
      .jumper("h1", "B1", "HL", "S9.C1")
      .jumper("h2", "B1", "S9.L1", "R1b.LINE_H")
      .jumper("n1", "B1", "NL", "S9.C2")
      .jumper("n2", "B1", "S9.L2", "R1b.LINE_N");
    const section = onlySection(drawing);
    expect(failing(section, "R2", "R1b")).toEqual(["no power"]);
    const both = onlySection(
      drawing.setDevice("S9", { type: "switch-double-pole" }).put({
        "h1.2": "S9.L1",
        "h2.1": "S9.T1",
        "n1.2": "S9.L2",
        "n2.1": "S9.T2",
      }),
    );
    expect(failing(both, "R2", "R1b")).toEqual([]);
  });
});

describe("arrangements in which box order would say no", () => {
  test("LOAD sent back to a box nearer the panel is protected all the same", () => {
    const drawing = laundryProposed()
      .box("A0", 21)
      .cable("C9", "nm-12-2-g", "A0", "B1")
      .device("R9", "receptacle-15", "A0")
      .put({ "C9.bk@B1": "HD", "C9.wh@B1": "ND", "C9.bk@A0": "R9.H1", "C9.wh@A0": "R9.N1" });
    expect(failing(onlySection(drawing), "R9", "R1b")).toEqual([]);
  });

  test("a device behind another: its outlets are protected by both, the first face by the first alone", () => {
    const section = onlySection(laundryProposed().put({ "C3.bk@B1": "HD", "C3.wh@B1": "ND" }));
    expect(protection(section)).toMatchObject({ R1b: ["R1b"], R4b: ["R1b", "R4b"] });
  });

  test("a blank-face device protects what is on its LOAD and has no outlet of its own", () => {
    const drawing = laundryProposed().setDevice("R1b", { type: "gfci-blank" });
    const section = onlySection(drawing);
    expect(section.outlets().map(({ outlet }) => outlet.key)).not.toContain("R1b");
    expect(protection(section)).toMatchObject({ R2: ["R1b"], R5: ["R1b"] });
  });

  test("an arc-fault receptacle has LINE and LOAD and is no personnel protection", () => {
    const section = onlySection(laundryProposed().setDevice("R1b", { type: "afci-receptacle-15" }));
    expect(failing(section, "R2", "R1b")).toEqual(["class"]);
  });
});

describe("sensing breakers", () => {
  const withBreaker = (type: string, fn: "gfci" | "afci" | "dual" | "equipment-ground-fault", neutralOn: string) =>
    onlySection(laundryProposed().setDevice("Q14", { type, function: fn }).put({ "C1.wh@P": neutralOn }));

  test("circuit neutral on the breaker: every outlet is behind it, the stair light too", () => {
    const section = withBreaker("breaker-gfci-1", "gfci", "Q14.LOAD_N");
    expect(protection(section)).toEqual({
      R1b: ["Q14", "R1b"],
      R2: ["Q14", "R1b"],
      R3: ["Q14", "R1b"],
      R4b: ["Q14", "R4b"],
      R5: ["Q14", "R1b"],
      L1: ["Q14"],
    });
    expect(liveAfterTrip(section, "Q14")).toEqual([]);
  });

  test("its contacts open the hot and leave the neutral joined", () => {
    const open = withBreaker("breaker-gfci-1", "gfci", "Q14.LOAD_N").contactsOpen(deviceId("Q14"));
    expect([open.isLive(node("R2.UH")), open.isGrounded(node("R2.UN"))]).toEqual([false, true]);
  });

  test("circuit neutral on the bar goes round the sensor of the breaker", () => {
    const section = withBreaker("breaker-gfci-1", "gfci", "P-NB.BAR");
    for (const outlet of ["L1", "R3"]) expect(failing(section, outlet, "Q14")).toEqual(["neutral reached"]);
  });

  test("arc-fault and equipment-class breakers are not personnel protection; a dual-function one is", () => {
    expect(failing(withBreaker("breaker-afci-1", "afci", "Q14.LOAD_N"), "R4b", "Q14")).toEqual(["class"]);
    expect(failing(withBreaker("breaker-gfci-1", "equipment-ground-fault", "Q14.LOAD_N"), "R4b", "Q14")).toEqual([
      "class",
    ]);
    expect(failing(withBreaker("breaker-dual-1", "dual", "Q14.LOAD_N"), "R4b", "Q14")).toEqual([]);
    expect(failing(withBreaker("breaker-afci-1", "afci", "Q14.LOAD_N"), "R3", "R1b")).toEqual([]);
  });

  test("a two-pole sensing breaker protects both legs of a multiwire circuit and a 240 V appliance across them", () => {
    const drawing = multiwire()
      .device("Q", "breaker-gfci-2", "P", { legs: ["A", "B"] })
      .put({ "M3.bk@P": "Q.OUT1", "M3.rd@P": "Q.OUT2", "M3.wh@P": "Q.LOAD_N" })
      .device("W", "appliance-240", "JB")
      .jumper("w1", "JB", "jA", "W.L1")
      .jumper("w2", "JB", "jB", "W.L2");
    expect(protection(onlySection(drawing))).toEqual({ RA: ["Q"], RB: ["Q"], W: ["Q"] });
  });

  test("a sensing breaker on the feeder of a panel protects what that panel feeds", () => {
    const drawing = new Drawing()
      .panel("P")
      .panel("SP")
      .breaker("QF", 30, { legs: ["A", "B"] }, "breaker-gfci-2", "P")
      .breaker("QS", 20, { legs: ["B"] }, "breaker-1", "SP")
      .device("LUGS", "main-lugs", "SP")
      .box("B", 30.3)
      .cable("F", "nm-10-3-g", "P", "SP")
      .cable("C", "nm-12-2-g", "SP", "B")
      .device("R", "receptacle-20", "B")
      .put({ "F.bk@P": "QF.OUT1", "F.rd@P": "QF.OUT2", "F.wh@P": "QF.LOAD_N", "F.cu@P": "P-GB.BAR" })
      .put({ "F.bk@SP": "LUGS.L1", "F.rd@SP": "LUGS.L2", "F.wh@SP": "LUGS.N", "F.cu@SP": "SP-GB.BAR" })
      .put({ "C.bk@SP": "QS.OUT", "C.wh@SP": "SP-NB.BAR", "C.cu@SP": "SP-GB.BAR" })
      .put({ "C.bk@B": "R.H1", "C.wh@B": "R.N1", "C.cu@B": "R.G" });
    const section = onlySection(asFeederPanel(drawing, "SP"));
    expect(protection(section)).toEqual({ R: ["QF"] });
    expect(section.breakers().map(({ device }) => device.id)).toEqual(["QS"]);
    expect(section.circuitOf(deviceId("QS")).outlets).toEqual([outletKey("R")]);
  });
});
