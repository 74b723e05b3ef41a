import type { Project } from "../../../shared-model/model/project.ts";
import { SampleDrawing } from "./sample-drawing.ts";

/**
 * A bedroom circuit of a house of 1954, wired with 14/2 that has no ground. Two-slot receptacles fed through their
 * screws, in boxes that are exactly full; the ceiling light on a switch loop whose white is the feed.
 */
export function twoWireBedroom(): Project {
  const asFound = SampleDrawing.empty("1954 house, bedroom without a ground", 2020)
    .notes(
      "As found: 14/2 without a ground from 1954, two-slot receptacles fed through their screws, 15 A. B1 and B2 are exactly full, 14.00 in³ in 14.0; so is B3 if its box is the same.",
      "Seen with covers off: the panel, B1 and B2. Told by the owner: the order of the boxes. B3 to B5 are assumed.",
      "Proposed: R1b, the first outlet, is a dual-function receptacle and protects everything behind it; R2b and R3b may then have three slots although no ground reaches them. No ground is run from R1b to them.",
      "R1b is labelled No Equipment Ground, R2b and R3b GFCI Protected and No Equipment Ground. The bedroom is on the arc-fault list, which a plain ground-fault receptacle would not answer.",
      "The ceiling light goes dark with R1b: tell the owner.",
    )
    .roomAt("below", "Cellar", "utility", "basement-unfinished")
    .roomAt("above", "Bedroom", "bedroom");
  enclosures(asFound);
  wiring(asFound);
  asFound
    .load("Table lamp", "lamp-60", "R2")
    .directory({ Q4: "Bedroom" })
    .knowAll("assumed")
    .know("seen", "P", "B1", "B2")
    .knowCables("seen", "T1", "T2", "T3");
  return proposal(asFound);
}

function enclosures(house: SampleDrawing): void {
  house
    .panelAt(0, 0, "P", "panel-16", "Cellar")
    .breakerIn(4, "Q4", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "device-3-2-2-3-4", { room: "Bedroom", note: "at the door" })
    .boxAt(2, 0, "B2", "device-3-2-2-3-4", { room: "Bedroom", note: "bed wall" })
    .boxAt(3, 0, "B3", "device-3-2-2-3-4", { room: "Bedroom", note: "window" })
    .boxAt(4, 1, "B4", "octagon-4-1-1-2", { room: "Bedroom", note: "ceiling" })
    .boxAt(5, 1, "B5", "device-3-2-2-3-4", { room: "Bedroom", note: "light switch" })
    .device("R1", "receptacle-two-slot", "B1")
    .device("R2", "receptacle-two-slot", "B2")
    .device("R3", "receptacle-two-slot", "B3")
    .device("L1", "luminaire-60", "B4")
    .device("S1", "switch-single-pole", "B5");
}

function wiring(house: SampleDrawing): void {
  const old = (ft: number) => ({ item: "nm-14-2", ft });
  house
    .cable("T1", "P", "B1", old(42))
    .cable("T2", "B1", "B2", old(14))
    .cable("T3", "B2", "B3", old(18))
    .cable("T4", "B3", "B4", old(16))
    .cable("T5", "B4", "B5", old(12))
    .onto("T1", "P", "Q4.OUT", "P neutral.BAR")
    .throughScrews("B1", "T1", "T2", "R1")
    .throughScrews("B2", "T2", "T3", "R2")
    .throughScrews("B3", "T3", "T4", "R3")
    // The white of the loop is the feed to the switch, its black the way back.
    .joint("B4", "feed", ["T4.bk@B4", "T5.wh@B4"], {}, { awg: "14" })
    .setEnd("T5.wh@B4", "markedAs", "black")
    .setEnd("T5.wh@B5", "markedAs", "black")
    .land("T5.bk@B4", "L1.H")
    .land("T4.wh@B4", "L1.N")
    .land("T5.wh@B5", "S1.C")
    .land("T5.bk@B5", "S1.L");
}

function proposal(asFound: SampleDrawing): Project {
  const plan = asFound
    .proposing()
    .replace("R1", "R1b", "dual-function-receptacle-15")
    .onto("T1", "B1", "R1b.LINE_H", "R1b.LINE_N")
    .onto("T2", "B1", "R1b.LOAD_H", "R1b.LOAD_N")
    .replace("R2", "R2b", "receptacle-tr-15")
    .replace("R3", "R3b", "receptacle-tr-15")
    .plate("label-R1b", "No Equipment Ground", "R1b", "406.4(D)(2)");
  for (const device of ["R2b", "R3b"])
    plan
      .plate(`label-${device}-protected`, "GFCI Protected", device, "406.4(D)(2)")
      .plate(`label-${device}-ground`, "No Equipment Ground", device, "406.4(D)(2)");
  return plan.project;
}
