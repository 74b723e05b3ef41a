import { asId } from "../../../shared-model/model/ids.ts";
import { amps, feet } from "../../../shared-model/units/quantity.ts";
import type { Drawing } from "../../rules/drawing.ts";
import { switchLoop } from "../../rules/loop.ts";
import { type Examples, slip } from "./example.ts";
import {
  behindGfci,
  boxIn,
  cableIs,
  conductor,
  endIs,
  fed,
  fromPanel,
  light,
  OCTAGON,
  one,
  PLASTIC,
  pair,
  through,
} from "./scenes.ts";

/** Receptacle R1 on an old cable of aluminium, on copper pigtails in joints of one kind. */
function oldCable(connector: string): Drawing {
  const drawing = boxIn(fed({ amps: 15 }), "B1", "utility", true).device("R1", "receptacle-15", "B1");
  drawing.cable("C1", "al-12-2-g", "P", "B1");
  fromPanel(drawing);
  for (const [joint, key, terminal, colour] of [
    ["H1", "bk", "H1", "black"],
    ["N1", "wh", "N1", "white"],
    ["E1", "cu", "G", "bare"],
  ] as const) {
    const own = key in (drawing.cables.C1?.conductors ?? {}) ? key : "al";
    drawing.splice(joint, "B1", connector).put({ [`C1.${own}@B1`]: joint });
    drawing.jumper(joint.toLowerCase(), "B1", joint, `R1.${terminal}`, { colour });
  }
  return drawing;
}

/** The same cable on the screws of R1. */
function oldOnScrews(markedForAluminium: boolean): Drawing {
  const drawing = oldCable("al-cu-listed");
  for (const name of ["h1", "n1", "e1"]) drawing.removeJumper(name);
  drawing.put({ "C1.bk@B1": "R1.H1", "C1.wh@B1": "R1.N1", "C1.cu@B1": "R1.G" });
  drawing.setBox("B1", { splices: {} });
  return drawing.setDevice("R1", { markedForAluminium });
}

/** B1 with C2 and C3 on LOAD of G1, its blacks in the holes given. */
function twoOnLoad(second: 1 | 2): Drawing {
  const drawing = boxIn(behindGfci(), "B3").device("R3", "receptacle-15", "B3").cable("C3", "nm-12-2-g", "B1", "B3");
  return drawing
    .put({ "C3.bk@B1": `G1.LOAD_H#${second}`, "C3.wh@B1": "G1.LOAD_N#2", "C3.cu@B1": "E1" })
    .put({ "C3.bk@B3": "R3.H1", "C3.wh@B3": "R3.N1" })
    .splice("E3", "B3", "lever-3")
    .put({ "C3.cu@B3": "E3" })
    .jumper("g3", "B3", "E3", "R3.G", { colour: "bare" })
    .jumper("b3", "B3", "E3", "bond", { colour: "bare" });
}

/** 14/2 in the place of C2. */
const thinner = (drawing: Drawing): Drawing =>
  cableIs(drawing.setConductors("C2", { awg: "14" }), "C2", { item: "nm-14-2-g" });

/** A second cable C3 between B1 and B2. */
const second = (drawing: Drawing): Drawing =>
  drawing
    .cable("C3", "nm-12-2-g", "B1", "B2")
    .setSplice("E1", { connector: "lever-5" })
    .setSplice("E2", { connector: "lever-5" })
    .put({ "C3.cu@B1": "E1", "C3.cu@B2": "E2" });

const knobAndTube = (insulatedCavity: boolean): Drawing => {
  const inAttic = { roomId: asId<never>("Attic"), cover: "blank", internalClamps: "none" } as const;
  const drawing = fed({ amps: 15 }).room("Attic", ["attic"], { insulatedCavity });
  drawing.box("B1", 30.3, inAttic).box("B2", 30.3, inAttic).cable("C1", "nm-14-2", "P", "B1");
  return fromPanel(drawing)
    .cable("K1", "knob-tube-14", "B1", "B2")
    .cable("K2", "knob-tube-14", "B1", "B2", { colour: "white" })
    .device("L1", "luminaire-60", "B2")
    .splice("H1", "B1", "lever-2")
    .splice("N1", "B1", "lever-2")
    .put({ "C1.bk@B1": "H1", "K1.bk@B1": "H1", "C1.wh@B1": "N1", "K2.bk@B1": "N1" })
    .put({ "K1.bk@B2": "L1.H", "K2.bk@B2": "L1.N" });
};

/** What conductors are made of, how thick they are, and what holds them. */
export const conductorExamples: Examples = {
  "splice-no-connector": slip("B1", pair, (right) => right.setSplice("H1", { connector: "taped" })),
  "splice-over-capacity": slip("B1", pair, (right) => right.setSplice("E1", { connector: "lever-3" })),
  "two-wires-one-screw": slip("B1", through, (right) => right.put({ "C2.bk@B1": "R1.H1" })),
  "clamp-hole-doubled": slip(
    "B1",
    () => twoOnLoad(2),
    () => twoOnLoad(1),
  ),
  "push-in-gauge": slip("B2", pair, (right) => right.setDevice("R2", { entryKind: "push-in" })),
  "push-in-feedthrough": {
    show: ["B1"],
    wrong: () => through({ awg: "14", amps: 15 }).setDevice("R1", { entryKind: "push-in" }),
    right: () => pair({ awg: "14", amps: 15 }),
  },
  "terminal-gauge": slip(
    "B1",
    () => one("utility", "gfci-receptacle-15"),
    (right) => conductor(conductor(right, "C1", "bk", { awg: "10" }), "C1", "wh", { awg: "10" }),
  ),
  "conductor-too-small": slip("B2 P", pair, thinner),
  "mixed-gauge": slip("B1", () => pair({ amps: 15 }), thinner),
  "al-cu-direct": slip(
    "B1",
    () => oldCable("al-cu-listed"),
    () => oldCable("twist-medium"),
  ),
  "al-on-device": slip(
    "B1",
    () => oldOnScrews(true),
    () => oldOnScrews(false),
  ),
  "insulation-damaged": slip(
    "B1",
    () => one(),
    (right) => endIs(right, "C1.bk@B1", { condition: "brittle" }),
  ),
  "stranded-on-side-screw": slip("B1", pair, (right) => right.setJumper("h1", { stranded: true })),
  "voltage-drop-advice": slip(
    "B1 P",
    () => cableIs(one("utility", "receptacle-15", { awg: "14", amps: 15 }), "C1", { lengthFt: feet(35) }),
    (right) => cableIs(right, "C1", { lengthFt: feet(150) }),
  ),
  "live-loose-end": slip("B2", pair, (right) => right.put({ "C2.bk@B2": "loose" })),
  "capped-neutral-forgotten": {
    show: ["B2"],
    wrong: () => loopWithNeutral(),
    right: () => endIs(loopWithNeutral(), "LP.wh@B2", { spare: true }),
  },
  "isolated-route": slip("B1 B2", pair, (right) =>
    second(right).put({ "C2.wh@B1": "cap", "C2.wh@B2": "cap", "C3.wh@B1": "N1", "C3.wh@B2": "R2.N1" }),
  ),
  "parallel-small": slip("B1 B2", pair, (right) =>
    second(right)
      .setSplice("N1", { connector: "lever-5" })
      .splice("W2", "B2", "lever-3")
      .put({ "C3.wh@B1": "N1", "C2.wh@B2": "W2", "C3.wh@B2": "W2" })
      .jumper("n2", "B2", "W2", "R2.N1", { colour: "white" }),
  ),
  "knob-tube-in-insulation": slip(
    "B1",
    () => knobAndTube(false),
    () => knobAndTube(true),
  ),
  "coloured-as-neutral": slip("B1", pair, (right) => right.setJumper("n1", { colour: "black" })),
  "green-bare-as-current": slip("B1", pair, (right) => right.setJumper("h1", { colour: "green" })),
  "white-hot-unmarked": {
    show: ["B2"],
    wrong: () => closedLoop(),
    right: () => markedLoop(),
  },
  "white-as-switched-return": {
    show: ["B1", "B2"],
    wrong: () => marked(closedLoop().swap("LP.bk@B1", "LP.wh@B1").swap("LP.bk@B2", "LP.wh@B2")),
    right: () => markedLoop(),
  },
  "no-neutral-at-switch": {
    show: ["B2"],
    wrong: () => markedLoop(),
    right: () => endIs(loopWithNeutral(), "LP.wh@B2", { spare: true }),
  },
  "switch-in-neutral": slip("B1", light, (right) =>
    right.put({ "C1.bk@B1": "N1", "C2.bk@B1": "N1", "C1.wh@B1": "S1.C", "C2.wh@B1": "S1.L" }),
  ),
  "switch-no-effect": slip("B1", light, (right) =>
    right
      .splice("H1", "B1", "lever-5")
      .put({ "C1.bk@B1": "H1", "C2.bk@B1": "H1" })
      .jumper("s1", "B1", "H1", "S1.C", { awg: "14" })
      .jumper("s2", "B1", "H1", "S1.L", { awg: "14" }),
  ),
  "receptacle-rating": slip(
    "B2 P",
    () => pair({ awg: "14", amps: 15 }),
    (right) => right.setDevice("R2", { type: "receptacle-20", ratingA: amps(20), entryKind: "clamp-plate" }),
  ),
};

const MARKED = { markedAs: "black" } as const;

/** The switch loop in closed boxes, that of the switch of plastic. */
const closedLoop = (): Drawing =>
  switchLoop()
    .setBox("B1", { ...OCTAGON, cover: "luminaire" })
    .setBox("B2", { ...PLASTIC, cover: "device-plate" });

/** Its white marked at both ends. */
const marked = (loop: Drawing): Drawing => endIs(endIs(loop, "LP.wh@B1", MARKED), "LP.wh@B2", MARKED);

const markedLoop = (): Drawing => marked(closedLoop());

function loopWithNeutral(): Drawing {
  const drawing = closedLoop();
  drawing.cable("LP", "nm-14-3-g", "B1", "B2");
  return drawing
    .splice("W", "B1", "lever-3")
    .put({ "LP.bk@B1": "F", "LP.rd@B1": "L1.H", "LP.wh@B1": "W", "C1.wh@B1": "W", "LP.cu@B1": "E" })
    .put({ "LP.bk@B2": "S1.C", "LP.rd@B2": "S1.L", "LP.cu@B2": "S1.G" })
    .jumper("w", "B1", "W", "L1.N", { colour: "white", awg: "14" });
}
