import { feet } from "../../../shared-model/units/quantity.ts";
import { Drawing } from "../../rules/drawing.ts";
import { labelled } from "../../rules/two-states.ts";
import { groundBetween, twoWire as twoWireRun, withSwitch } from "../../rules/two-wire.ts";
import { type Examples, slip } from "./example.ts";
import { boxIn, cableIs, conductor, fed, fromPanel, LARGE, one, pair } from "./scenes.ts";

/** The two-wire run in boxes that are called what they are. */
const twoWire = (made: Parameters<typeof twoWireRun>[0] = {}): Drawing =>
  twoWireRun(made).setBox("BT1", LARGE).setBox("BT2", LARGE);

const BOTH = [
  ["T1", "No Equipment Ground"],
  ["T2", "GFCI Protected"],
  ["T2", "No Equipment Ground"],
] as const;

/** An old two-wire cable, or one with a ground, to one ground-fault receptacle in a plastic box. */
const protectedBy = (cable: string): Drawing =>
  one("utility", "gfci-receptacle-15", { amps: 15, awg: "14", cable, plastic: true });

/** An armoured cable whose bonding strip is known in some way. */
function armoured(known: "assumed" | "seen"): Drawing {
  const drawing = boxIn(fed({ amps: 20 }), "B1").device("R1", "receptacle-15", "B1");
  drawing
    .cable("C1", "armoured-12-2-old", "P", "B1")
    .put({ "C1.bk@B1": "R1.H1", "C1.wh@B1": "R1.N1" })
    .jumper("g1", "B1", "bond", "R1.G", { colour: "bare" });
  fromPanel(drawing);
  return cableIs(drawing, "C1", { construction: "armoured-bonded", evidence: { construction: known } });
}

/** An old cable, and a ground wire G of its own from the receptacle. */
function ownGround(facts: object): Drawing {
  const drawing = one("utility", "receptacle-15", { amps: 15, awg: "14", cable: "nm-14-2", plastic: true });
  drawing.cable("G", "single-12-black", "B1", "P", { colour: "green", grounding: true });
  drawing.put({ "G.bk@B1": "R1.G", "G.bk@P": "P-GB.BAR" });
  return cableIs(drawing, "G", facts);
}

function onPipe(): Drawing {
  const drawing = ownGround({ groundClampedTo: "water-pipe", pipeFromEntryFt: feet(30) });
  const { places } = drawing.at("P");
  for (const end of Object.keys(places)) if (end.startsWith("G.")) delete places[end as never];
  return cableIs(drawing, "G", { sides: { a: drawing.cables.G?.sides.a, b: { outside: "water pipe" } } });
}

/** A receptacle at the end of a cable that comes from somewhere that is not drawn. */
const fromOutside = (black: "H1" | "G", bare: "cap" | "R2.G"): Drawing =>
  boxIn(new Drawing(), "B2", "utility", true)
    .device("R2", "receptacle-15", "B2")
    .cable("C2", "nm-12-2-g", "country", "B2")
    .put({ "C2.bk@B2": `R2.${black}`, "C2.wh@B2": "R2.N1", "C2.cu@B2": bare });

/** Grounds: that they arrive, stay whole, are thick enough, and what holds where there is none. */
export const groundExamples: Examples = {
  "metal-box-unbonded": slip("B1", pair, (right) => right.removeJumper("b1")),
  "insulated-as-ground": {
    show: ["B2"],
    wrong: () => fromOutside("G", "cap"),
    right: () => fromOutside("H1", "R2.G"),
  },
  "egc-missing": slip(
    "B1",
    () => protectedBy("nm-14-2-g"),
    () => protectedBy("nm-14-2"),
  ),
  "egc-broken-by-removal": slip("B1", pair, (right) => right.put({ "C2.cu@B1": "R1.G" })),
  "egc-not-spliced-all": slip("B1", pair, (right) => right.put({ "C2.cu@B1": "cap" })),
  "device-egc-missing": slip("B1", pair, (right) => right.removeJumper("g1")),
  "egc-too-small": slip("B1 P", pair, (right) => conductor(right, "C1", "cu", { awg: "14" })),
  "no-ground-label": {
    show: ["BT1", "BT2"],
    wrong: () => twoWire(),
    right: () => labelled(twoWire(), BOTH),
  },
  "egc-onward-from-no-ground": {
    show: ["BT1", "BT2"],
    wrong: () => labelled(groundBetween(twoWire()), BOTH),
    right: () => labelled(twoWire(), BOTH),
  },
  "grounding-type-unprotected": {
    show: ["BT2"],
    wrong: () => twoWire({ first: "receptacle-two-slot" }),
    right: () => twoWire({ first: "receptacle-two-slot", second: "receptacle-two-slot" }),
  },
  "plate-metal-no-ground": {
    show: ["BT1"],
    wrong: () => labelled(withSwitch(twoWire(), "LINE", { metalPlate: true }), BOTH),
    right: () => labelled(withSwitch(twoWire(), "LINE", { metalPlate: false }), BOTH),
  },
  "armour-assumed-ground": slip(
    "B1",
    () => armoured("seen"),
    () => armoured("assumed"),
  ),
  "metal-pipe-ground": {
    show: ["B1"],
    wrong: onPipe,
    right: () => ownGround({}),
  },
};
