import { watts } from "../../../shared-model/units/quantity.ts";
import { Drawing } from "../../rules/drawing.ts";
import { multiwire } from "../../rules/laundry.ts";
import { threeWay } from "../../rules/three-way.ts";
import { twoCircuits } from "../../rules/two-circuits.ts";
import { withDirectory } from "../../rules/two-states.ts";
import { type Examples, signedAt, slip } from "./example.ts";
import { boxIn, chain, LARGE, light, one, PLASTIC, pair, SQUARE, type Station, spreadOnBars } from "./scenes.ts";

/** The light on two three-way switches, in plastic boxes with all grounds made. */
function threeWays(): Drawing {
  const drawing = threeWay().room("Stair", ["stair"]);
  const plastic = { ...PLASTIC, internalClamps: "none", cover: "device-plate" } as const;
  return drawing
    .setBox("A", plastic)
    .setBox("B", plastic)
    .splice("EA", "A", "lever-3")
    .splice("EB", "B", "lever-3")
    .put({ "V1.cu@A": "EA", "V2.cu@A": "EA", "V2.cu@B": "EB" })
    .jumper("g", "A", "EA", "SA.G", { colour: "bare", awg: "14" })
    .jumper("f", "B", "EB", "SB.G", { colour: "bare", awg: "14" })
    .jumper("e", "B", "EB", "L1.G", { colour: "bare", awg: "14" });
}

/** The multiwire circuit, its boxes closed. */
const legs = (): Drawing => {
  const drawing = multiwire();
  drawing.setDevice("QA", { slot: 1 }).setDevice("QB", { slot: 3 });
  for (const box of ["JB", "BA", "BB"])
    drawing.setBox(box, { internalClamps: "none", cover: box === "JB" ? "blank" : "device-plate" });
  return drawing.room("Dining", ["utility"], { name: "Workroom" });
};

const circuits = (): Drawing =>
  spreadOnBars(twoCircuits())
    .room("Dining", ["utility"], { name: "Workroom" })
    .setBox("B1", { ...SQUARE, internalClamps: "none", cover: "device-plate" })
    .setBox("B2", { ...SQUARE, internalClamps: "none", cover: "device-plate" })
    .put({ "C1.cu@B1": "cap", "C2.cu@B2": "cap" })
    .splice("e1", "B1", "lever-5")
    .splice("e2", "B2", "lever-5")
    .put({ "C1.cu@B1": "e1", "X.cu@B1": "e1", "C2.cu@B2": "e2", "X.cu@B2": "e2" })
    .jumper("g1", "B1", "e1", "R1.G", { colour: "bare" })
    .jumper("b1", "B1", "e1", "bond", { colour: "bare" })
    .jumper("g2", "B2", "e2", "R2.G", { colour: "bare" })
    .jumper("b2", "B2", "e2", "bond", { colour: "bare" });

/** The halves of R1 on a breaker each. */
const halves = (tied: boolean): Drawing =>
  circuits()
    .setDevice("R1", { hotTab: "removed", neutralTab: "removed" })
    .put({ "X.bk@B1": "R1.H2", "X.bk@B2": "h2", "X.wh@B1": "R1.N2", "X.wh@B2": "n2" })
    .setDevice("Q2", tied ? { tiedTo: "Q1" as never } : {});

function untied(): Drawing {
  const drawing = legs();
  const { tiedTo: _gone, ...rest } = drawing.deviceOf("QB");
  drawing.at("P").devices["QB" as never] = rest as never;
  return drawing;
}

/** RJ in the junction box, on leg A and on a white pigtail. */
const withReceptacle = (): Drawing =>
  legs()
    .setBox("JB", { cover: "device-plate", ...LARGE })
    .device("RJ", "receptacle-15", "JB")
    .splice("jH", "JB", "lever-3")
    .put({ "M3.bk@JB": "jH", "MA.bk@JB": "jH" })
    .jumper("h", "JB", "jH", "RJ.H1")
    .jumper("w", "JB", "jN", "RJ.N1", { colour: "white" })
    .jumper("g", "JB", "jE", "RJ.G", { colour: "bare" });

function single(grouped: boolean): Drawing {
  const tie = { groupedInPanel: grouped };
  const drawing = new Drawing()
    .panel("P")
    .breaker("Q1", 20, tie)
    .breaker("Q2", 20, { legs: ["B"], tiedTo: "Q1" as never, ...tie })
    .breaker("Q3", 20);
  boxIn(drawing, "B1");
  for (const number of ["1", "2", "3"])
    drawing
      .cable(`H${number}`, "single-12-black", "P", "B1")
      .device(`R${number}`, "receptacle-15", "B1")
      .put({ [`H${number}.bk@P`]: `Q${number}.OUT`, [`H${number}.bk@B1`]: `R${number}.H1` });
  drawing
    .cable("N", "single-12-white", "P", "B1")
    .cable("N3", "single-12-white", "P", "B1")
    .splice("n", "B1", "lever-3")
    .put({ "N.wh@P": "P-NB.BAR", "N.wh@B1": "n", "N3.wh@P": "P-NB.BAR", "N3.wh@B1": "R3.N1" })
    .jumper("u", "B1", "n", "R1.N1", { colour: "white" })
    .jumper("v", "B1", "n", "R2.N1", { colour: "white" });
  for (const cable of Object.values(drawing.cables)) cable.route = "raceway 1";
  return spreadOnBars(drawing).setBox("B1", { gangs: 3 });
}

/** A dual-function breaker feeds them, so that nothing but the mixture is at issue. */
const mixed = (...stations: readonly Station[]): Drawing => chain(stations, { breaker: "breaker-dual-1" });

const heater = (load: number): Drawing =>
  one("utility", "receptacle-15", { amps: 15, awg: "14" }).load("Heater", "heater-1200", "R1", {
    loadW: watts(load),
    continuous: true,
  });

const fastened = (load: number): Drawing =>
  chain(
    [
      ["R1", "receptacle-15"],
      ["A1", "appliance-120"],
    ],
    { amps: 15, awg: "14" },
  ).setDevice("A1", { loadW: watts(load) });

const dimmed = (load: number): Drawing => light("luminaire-60", "dimmer").setDevice("L1", { loadW: watts(load) });

/** Circuits as a whole: which breaker, which leg, which neutral, and what is fed. */
export const circuitExamples: Examples = {
  "polarity-swapped": slip("B2", pair, (right) => right.swap("C2.bk@B2", "C2.wh@B2")),
  "shell-hot": slip("B2", light, (right) => right.swap("C2.bk@B2", "C2.wh@B2")),
  "open-hot": signedAt(
    "end C2.bk.a",
    slip("B1", pair, (right) => right.put({ "C2.bk@B1": "cap" })),
  ),
  "open-neutral": slip("B2", pair, (right) => right.put({ "C2.wh@B2": "loose" })),
  "neutral-from-other-circuit": signedAt(
    "splice n1",
    slip("B1", circuits, (right) => right.put({ "C1.wh@B1": "cap", "X.wh@B1": "n1", "X.wh@B2": "n2" })),
  ),
  "neutrals-joined": signedAt(
    "splice n1",
    slip("B1 B2", circuits, (right) => right.put({ "X.wh@B1": "n1", "X.wh@B2": "n2" })),
  ),
  "hot-hot-joined": signedAt(
    "splice jA",
    slip("JB", legs, (right) => right.jumper("y", "JB", "jA", "jB")),
  ),
  "hot-neutral-joined": slip("B2", pair, (right) => right.jumper("y", "B2", "R2.H2", "R2.N2")),
  "neutral-ground-joined": slip("B2", pair, (right) =>
    right.setSplice("E2", { connector: "lever-5" }).jumper("y", "B2", "R2.N2", "E2", { colour: "white" }),
  ),
  "hot-ground-joined": slip("B2", pair, (right) => right.put({ "C2.bk@B2": "R2.G" })),
  "traveller-misused": slip("A", threeWays, (right) => right.put({ "V1.bk@A": "SA.T1", "V2.bk@A": "SA.C" })),
  "mwbc-no-common-opening": slip("P", legs, untied),
  "mwbc-same-phase": slip("P", legs, (right) => right.setDevice("QB", { legs: ["A"], slot: 2 })),
  "mwbc-neutral-through-device": slip("JB", withReceptacle, (right) => right.put({ "M3.wh@JB": "RJ.N2" })),
  "split-yoke-two-circuits": slip(
    "B1 P",
    () => halves(true),
    () => halves(false),
  ),
  "mwbc-hots-not-grouped": slip(
    "P",
    () => single(true),
    () => single(false),
  ),
  "neutral-bar-doubled": slip(
    "P",
    () => circuits(),
    (right) => right.put({ "C2.wh@P": "P-NB.BAR#1", "C1.wh@P": "P-NB.BAR#1" }),
  ),
  "tab-broken-unintended": slip("B2", pair, (right) => right.setDevice("R2", { hotTab: "removed" })),
  "dimmer-feeds-receptacle": slip(
    "B1",
    () => light("receptacle-15", "switch-single-pole", "12"),
    () => light("receptacle-15", "dimmer", "12"),
  ),
  "switch-rating": slip(
    "B1",
    () => light("appliance-120", "switch-single-pole", "12").setDevice("L1", { loadW: watts(1200) }),
    (right) => right.setDevice("L1", { loadW: watts(1920) }),
  ),
  "dimmer-load": slip(
    "B1",
    () => dimmed(300),
    () => dimmed(720),
  ),
  "bath-circuit-mixed": slip(
    "P B2",
    () =>
      mixed(
        ["R1", "receptacle-15", "bathroom", "first bath" as never],
        ["R2", "receptacle-15", "bathroom", "second bath" as never],
      ),
    () => mixed(["R1", "receptacle-15", "bathroom"], ["R2", "receptacle-15", "hallway"]),
  ),
  "kitchen-circuit-lights": slip(
    "P B2",
    () => mixed(["R1", "receptacle-15", "kitchen-counter"], ["R2", "receptacle-15", "dining"]),
    () => mixed(["R1", "receptacle-15", "kitchen-counter"], ["L1", "luminaire-60", "kitchen-counter"]),
  ),
  "laundry-circuit-mixed": slip(
    "P B2",
    () => mixed(["R1", "receptacle-15", "laundry"], ["R2", "receptacle-15", "laundry"]),
    () => mixed(["R1", "receptacle-15", "laundry"], ["R2", "receptacle-15", "hallway"]),
  ),
  "continuous-load": slip(
    "B1 P",
    () => heater(1200),
    () => heater(1680),
  ),
  "fixed-load-share": slip(
    "P B2",
    () => fastened(720),
    () => fastened(1080),
  ),
  "panel-breaker-not-listed": slip(
    "P",
    () =>
      one("utility", "receptacle-15", { breaker: "breaker-gfci-1" }).setBox("P", {
        listedBreakers: ["breaker-1", "breaker-gfci-1"],
      } as never),
    (right) => right.setBox("P", { listedBreakers: ["breaker-1", "breaker-2"] } as never),
  ),
  "directory-mismatch": {
    show: ["P"],
    wrong: () => withDirectory(one(), { Q1: "Attic lights" }),
    right: () => withDirectory(one(), { Q1: "Utility" }),
  },
};
