import type { Project } from "../../../shared-model/model/project.ts";
import { jumperId } from "../ids.ts";
import { SampleDrawing } from "./sample-drawing.ts";

/**
 * A kitchen on a multiwire circuit: 12/3 from a two-pole breaker to a junction box in the basement ceiling, where the two
 * legs part, each with a white of its own. Leg A serves the counter and the refrigerator, leg B the freezer and the counter.
 */
export function kitchenMultiwire(): Project {
  const asFound = SampleDrawing.empty("1974 kitchen on a multiwire circuit", 2020)
    .notes(
      "As found: two legs of a 20 A two-pole breaker share the white of M1 as far as JB, where it is joined, not taken through a device: pulling any receptacle leaves it whole. Beyond JB each leg has a white of its own.",
      "Leg A: counter K1 and K2, refrigerator F2. Leg B: freezer F1 in the basement, then counter K3. Nothing has ground-fault protection.",
      "Proposed: protection after the split, on each leg. K1b protects K2 from its LOAD. F1b has the freezer alone and feeds on from LINE, so K3b has a device of its own. A one-pole device before JB would see one leg of a shared white and trip.",
      "K1b and K3b are dual-function: a receptacle replaced in a kitchen is on the arc-fault list. The refrigerator may stay as it is by the 2020 edition; by the 2023 edition its place is on the ground-fault list.",
      "Told by the owner: the freezer was added to the kitchen circuit later, which a small-appliance circuit may not feed; as an existing condition it is noted. The directory is corrected. Seen with covers off: the panel, JB and the boxes of K1 and F1. Assumed: the other boxes and all lengths.",
    )
    .roomAt("below", "Basement, unfinished", "basement-unfinished")
    .roomAt("at", "Kitchen counter", "kitchen-counter")
    .roomAt("at", "Kitchen, refrigerator wall", "kitchen-other");
  enclosures(asFound);
  cables(asFound);
  junction(asFound);
  outlets(asFound);
  asFound
    .load("Freezer", "freezer-180", "F1")
    .load("Refrigerator", "freezer-180", "F2")
    .directory({ "Q6/8": "Kitchen" })
    .knowAll("assumed")
    .know("seen", "P", "JB", "BK1", "BF1")
    .knowCables("seen", "M1", "CA1", "CA3", "CB1", "CA2", "CB2");
  return proposal(asFound);
}

function enclosures(house: SampleDrawing): void {
  const kitchen = { room: "Kitchen counter" };
  house
    .panelAt(0, 1, "P", "panel-16", "Basement, unfinished")
    .breakerIn(6, "Q6/8", "P", { ratingA: 20, type: "breaker-2" })
    .boxAt(1, 1, "JB", "square-4-2-1-8", { room: "Basement, unfinished", note: "basement junction" })
    .boxAt(2, 0, "BK1", "plastic-new-1", { ...kitchen, note: "counter, left" })
    .boxAt(3, 0, "BK2", "plastic-new-1", { ...kitchen, note: "counter, right" })
    .boxAt(2, 1, "BF2", "plastic-new-1", { room: "Kitchen, refrigerator wall", note: "refrigerator" })
    .boxAt(2, 2, "BF1", "square-4-2-1-8", { room: "Basement, unfinished", note: "freezer" })
    .boxAt(3, 2, "BK3", "plastic-new-1", { ...kitchen, note: "by the range" })
    .device("K1", "receptacle-15", "BK1")
    .device("K2", "receptacle-15", "BK2")
    .device("F2", "receptacle-15", "BF2")
    .device("F1", "receptacle-15", "BF1")
    .device("K3", "receptacle-15", "BK3");
}

function cables(house: SampleDrawing): void {
  house
    .cable("M1", "P", "JB", { item: "nm-12-3-g", ft: 28 })
    .cable("CA1", "JB", "BK1", { ft: 22 })
    .cable("CA2", "BK1", "BK2", { ft: 9 })
    .cable("CA3", "JB", "BF2", { ft: 26 })
    .cable("CB1", "JB", "BF1", { ft: 16 })
    .cable("CB2", "BF1", "BK3", { ft: 20 });
}

function junction(house: SampleDrawing): void {
  house
    .land("M1.bk@P", "Q6/8.OUT1")
    .land("M1.rd@P", "Q6/8.OUT2")
    .land("M1.wh@P", "P neutral.BAR")
    .land("M1.cu@P", "P ground.BAR")
    .joint("JB", "leg A", ["M1.bk@JB", "CA1.bk@JB", "CA3.bk@JB"])
    .joint("JB", "leg B", ["M1.rd@JB", "CB1.bk@JB"])
    .joint("JB", "shared white", ["M1.wh@JB", "CA1.wh@JB", "CA3.wh@JB", "CB1.wh@JB"])
    .grounds("JB", ["M1", "CA1", "CA3", "CB1"]);
}

function outlets(house: SampleDrawing): void {
  house
    .pigtailed("BK1", ["CA1", "CA2"], "K1.H1", "K1.N1")
    .onto("CA2", "BK2", "K2.H1", "K2.N1")
    .onto("CA3", "BF2", "F2.H1", "F2.N1")
    .pigtailed("BF1", ["CB1", "CB2"], "F1.H1", "F1.N1")
    .onto("CB2", "BK3", "K3.H1", "K3.N1")
    .grounds("BK1", ["CA1", "CA2"], ["K1"])
    .grounds("BK2", ["CA2"], ["K2"])
    .grounds("BF2", ["CA3"], ["F2"])
    .grounds("BF1", ["CB1", "CB2"], ["F1"])
    .grounds("BK3", ["CB2"], ["K3"]);
}

/** At K1 the joints are opened: supply on LINE, the cable onward on LOAD. At F1 they stay and feed LINE. */
function proposal(asFound: SampleDrawing): Project {
  return asFound
    .proposing()
    .replace("K1", "K1b", "dual-function-receptacle-15")
    .onto("CA1", "BK1", "K1b.LINE_H", "K1b.LINE_N")
    .onto("CA2", "BK1", "K1b.LOAD_H", "K1b.LOAD_N")
    .remove({ kind: "jumper", id: jumperId("BK1p") }, { kind: "jumper", id: jumperId("BK1q") })
    .replace("F1", "F1b", "gfci-receptacle-15")
    .replace("K3", "K3b", "dual-function-receptacle-15")
    .directory({ "Q6/8": "Kitchen counter, refrigerator, basement freezer" }).project;
}
