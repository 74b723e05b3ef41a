import type { Box } from "../../../shared-model/model/enclosure.ts";
import { asId, type RingId } from "../../../shared-model/model/ids.ts";
import { inches } from "../../../shared-model/units/quantity.ts";
import { cubicInches } from "../../../shared-model/units/volume.ts";
import { Drawing } from "../../rules/drawing.ts";
import { type Examples, slip } from "./example.ts";
import { behindGfci, boxIn, cableIs, endIs, fed, fromPanel, grounds, light, OCTAGON, one, through } from "./scenes.ts";

const marked = (in3: number) => ({ kind: "marked", volumeIn3: cubicInches(in3) }) as const;

/** The entry of C1 in the plastic box B1, as it is held and stripped there. */
const stripped = (inside: number): Drawing =>
  one("utility", "receptacle-15", { plastic: true }).setEntry("C1", "B1", {
    means: "integral-clamp",
    sheathInsideIn: inches(inside),
  });

const ring = (evidence: "assumed" | "seen"): Pick<Box, "rings"> => {
  const id = asId<RingId>("ring");
  return { rings: { [id]: { id, kind: "plaster-ring", volume: marked(4), order: 0, evidence: { volume: evidence } } } };
};

/** Cables from elsewhere into a plastic box with their grounds in one joint. */
function grounded(count: number): Drawing {
  const drawing = new Drawing().box("B1", 42, { material: "nonmetallic", internalClamps: "none", cover: "blank" });
  drawing.splice("E1", "B1", "lever-5");
  for (let index = 1; index <= count; index += 1) {
    const [cable, from] = [`C${index}`, index === 1 ? ["panel", "B1"] : ["B1", `run ${index}`]];
    drawing.cable(cable, "nm-12-2-g", from[0] as string, from[1] as string).put({ [`${cable}.cu@B1`]: "E1" });
  }
  return drawing;
}

/** Two switches in B1, and a fan or a luminaire F1 on a ceiling box B2 with black and red of its own. */
function ceiling(type: string, box: Partial<Box>): Drawing {
  const drawing = boxIn(fed({ amps: 15 }), "B1")
    .device("S1", "switch-single-pole", "B1")
    .device("S2", "switch-single-pole", "B1");
  drawing.setBox("B1", { gangs: 2 });
  boxIn(drawing, "B2", "bedroom").device("F1", type, "B2", { weightLb: 30 as never });
  const [hot, second] = type === "fan-light" ? ["H_FAN", "F1.H_LIGHT"] : ["H", "cap"];
  drawing
    .setBox("B2", { ...OCTAGON, mountedOn: "ceiling", cover: "luminaire", ...box })
    .cable("C1", "nm-14-2-g", "P", "B1")
    .cable("C2", "nm-14-3-g", "B1", "B2")
    .splice("H1", "B1", "lever-3")
    .splice("N1", "B1", "lever-2")
    .put({ "C1.bk@B1": "H1", "C1.wh@B1": "N1", "C2.wh@B1": "N1", "C2.bk@B1": "S1.L", "C2.rd@B1": "S2.L" })
    .put({ "C2.bk@B2": `F1.${hot}`, "C2.rd@B2": second, "C2.wh@B2": "F1.N" })
    .jumper("s1", "B1", "H1", "S1.C", { awg: "14" })
    .jumper("s2", "B1", "H1", "S2.C", { awg: "14" });
  fromPanel(drawing);
  grounds(drawing, "B1", ["C1", "C2"], "S1", "14").jumper("g9", "B1", "E1", "S2.G", { colour: "bare", awg: "14" });
  return grounds(drawing, "B2", ["C2"], "F1", "14");
}

const FAN: Partial<Box> = { item: "fan-rated", volume: marked(15.5), listedFor: ["luminaire", "fan"] };
const PLAIN: Partial<Box> = { listedFor: ["luminaire"] };

/** C1 and C2 by one opening of B1, whose connector is marked for so many. */
function sharing(markedForCables: number): Drawing {
  const drawing = through().setEntry("C1", "B1", { means: "external-connector", markedForCables });
  const sides = drawing.cables.C2?.sides;
  return cableIs(drawing, "C2", { sides: { ...sides, a: { enclosure: "B1", entry: "C1-B1" } } });
}

const porch = (cover: Box["cover"] & string): Drawing => {
  const drawing = boxIn(fed(), "B1", "outdoor").device("G1", "gfci-receptacle-wr-15", "B1");
  drawing.cable("C1", "nm-12-2-g", "P", "B1").put({ "C1.bk@B1": "G1.LINE_H", "C1.wh@B1": "G1.LINE_N" });
  fromPanel(drawing);
  return grounds(drawing, "B1", ["C1"], "G1").setBox("B1", {
    item: "weatherproof-fd",
    shape: "cast",
    volume: marked(18),
    exposure: "wet",
    cover,
  });
};

/** What a box holds, how cables come in, and what closes it. */
export const boxExamples: Examples = {
  "box-overfull": slip(
    "B1",
    () => through(),
    (right) => right.setBox("B1", { item: "device-3-2-2-3-4", volume: marked(14) }),
  ),
  "box-volume-unknown": slip(
    "B1",
    () => through(),
    (right) => right.setBox("B1", { volume: { kind: "unknown" } }),
  ),
  "fill-nearly-full": slip(
    "B1",
    () => through(),
    (right) => right.setBox("B1", { volume: marked(16) }),
  ),
  "egc-edition-difference": slip(
    "B1",
    () => grounded(4),
    () => grounded(5),
  ),
  "device-deeper-than-room": slip(
    "B1",
    () =>
      one()
        .setDevice("R1", { bodyDepthIn: inches(1.3) })
        .setBox("B1", { depthIn: inches(2.125) }),
    (right) => right.setBox("B1", { depthIn: inches(1.5) }),
  ),
  "cable-entry-unsecured": slip(
    "B1",
    () => one(),
    (right) => right.setEntry("C1", "B1", { means: "none" }),
  ),
  "too-many-cables-in-clamp": slip(
    "B1",
    () => sharing(2),
    () => sharing(1),
  ),
  "sheath-not-inside": slip(
    "B1",
    () => stripped(0.5),
    () => stripped(0),
  ),
  "free-length-short": slip(
    "B1",
    () => endIs(one(), "C1.bk@B1", { freeLengthIn: inches(7) }),
    (right) => endIs(right, "C1.bk@B1", { freeLengthIn: inches(4) }),
  ),
  "open-knockout": slip(
    "B1",
    () => one().setBox("B1", { openKnockouts: 0 }),
    (right) => right.setBox("B1", { openKnockouts: 1 }),
  ),
  "cover-missing": slip(
    "B1",
    () => one(),
    (right) => right.setBox("B1", { cover: "none" }),
  ),
  "ring-missing": slip(
    "B1",
    () => one().setDevice("R1", { fastenedTo: "ring" }).setBox("B1", ring("seen")),
    (right) => right.setDevice("R1", { fastenedTo: "nothing" }).setBox("B1", { rings: {} }),
  ),
  "ring-volume-unmarked": slip(
    "B1",
    () => one().setBox("B1", ring("seen")),
    (right) => right.setBox("B1", ring("assumed")),
  ),
  "box-not-accessible": slip(
    "B1",
    () => one().setBox("B1", { accessible: true }),
    (right) => right.setBox("B1", { accessible: false }),
  ),
  "box-setback": slip(
    "B1",
    () => one().setBox("B1", { setbackIn: inches(0.125), wallCombustible: false }),
    (right) => right.setBox("B1", { setbackIn: inches(0.5) }),
  ),
  "luminaire-box-not-listed": slip(
    "B2",
    () => light().setBox("B2", { listedFor: ["luminaire"], mountedOn: "ceiling" }),
    (right) =>
      right.setBox("B2", { item: "device-3-2-3-1-2", shape: "device", volume: marked(18), listedFor: ["device"] }),
  ),
  "fan-box-required": slip(
    "B2",
    () => ceiling("fan-light", FAN),
    () => ceiling("fan-light", PLAIN),
  ),
  "spare-fan-conductor": slip(
    "B2",
    () => ceiling("luminaire-60", FAN),
    () => ceiling("luminaire-60", PLAIN),
  ),
  "canopy-heat-old-cable": slip(
    "B2",
    () => cableIs(light().setDevice("L1", { supplyC: 90 as never }), "C2", { insulationC: 90 }),
    (right) => cableIs(right, "C2", { insulationC: 60 }),
  ),
  "wet-box-cover": slip(
    "B1",
    () => porch("weatherproof-in-use"),
    (right) => right.setBox("B1", { cover: "weatherproof-closed" }),
  ),
  "device-not-readily-accessible": slip(
    "B1",
    () => behindGfci().setDevice("G1", { reachHeightIn: inches(48) }),
    (right) => right.setDevice("G1", { reachHeightIn: inches(90) }),
  ),
};
