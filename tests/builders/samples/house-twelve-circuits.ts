import type { Project } from "../../../shared-model/model/project.ts";
import { circuitsOfEvenSpaces } from "./house-even-spaces.ts";
import { circuitsOfOddSpaces } from "./house-odd-spaces.ts";
import { SampleDrawing } from "./sample-drawing.ts";

/**
 * A house of 1978 with twelve circuits, as found. Box B31 is the first of circuit 3, cable C31 the one that feeds it. The
 * panel stands in the middle; circuits of odd spaces run to the left of it, those of even spaces to the right.
 */
export function houseTwelveCircuits(): Project {
  const house = SampleDrawing.empty("1978 house, twelve circuits", 2020).notes(
    "Box B31 is the first box of circuit 3, cable C31 the one that feeds it. Circuits of odd spaces run to the left of the panel, those of even spaces to the right.",
    "Protection as found is mixed: an arc-fault breaker for the first bedroom (Q1), a ground-fault breaker for garage and outdoors (Q9), ground-fault receptacles in the kitchen (R51), the bathroom (R71) and at the laundry sink (R82).",
    "Without protection where the 2020 edition asks for it: the counter by the range (R61), the washer (R81), the workbench and the stair foot in the basement (R104, R105).",
    "B21 holds a branch to the third bedroom and is too small for it; B41 is exactly full; nobody has seen how deep the box of the stair light is.",
    "Seen with covers off: panel, kitchen, bathroom, laundry. Told by the owner: what each breaker turns off. The rest is assumed.",
  );
  rooms(house);
  house
    .panelAt(0, 3, "P", "panel-30", "Basement")
    .breakerIn(1, "Q1", "P", { ratingA: 15, type: "breaker-afci-1" })
    .breakerIn(2, "Q2", "P", { ratingA: 15 })
    .breakerIn(3, "Q3", "P", { ratingA: 15 })
    .breakerIn(4, "Q4", "P", { ratingA: 15 })
    .breakerIn(5, "Q5", "P")
    .breakerIn(6, "Q6", "P")
    .breakerIn(7, "Q7", "P")
    .breakerIn(8, "Q8", "P")
    .breakerIn(9, "Q9", "P", { type: "breaker-gfci-1" })
    .breakerIn(10, "Q10", "P", { ratingA: 15 })
    .breakerIn(11, "Q11", "P", { ratingA: 15 })
    .breakerIn(12, "Q12", "P", { ratingA: 30, type: "breaker-2" });
  circuitsOfOddSpaces(house);
  circuitsOfEvenSpaces(house);
  loadsAndDirectory(house);
  return house
    .knowAll("assumed")
    .know("seen", "P", "B51", "B52", "B53", "B61", "B62", "B63", "B71", "B72", "B73", "B81", "B82")
    .know("told", "B91", "B92", "B93", "B94", "B111", "B121")
    .knowCables("seen", "C51", "C52", "C53", "C61", "C62", "C63", "C71", "C72", "C73", "C81", "C82").project;
}

function rooms(house: SampleDrawing): void {
  house
    .roomAt("below", "Basement", "basement-unfinished", "utility")
    .roomAt("above", "Bedroom 1", "bedroom")
    .roomAt("above", "Bedroom 2", "bedroom")
    .roomAt("above", "Bedroom 3", "bedroom")
    .roomAt("above", "Living room", "living")
    .roomAt("above", "Hall", "hallway")
    .roomAt("above", "Stair", "stair")
    .roomAt("above", "Kitchen counter", "kitchen-counter")
    .roomAt("above", "Refrigerator wall", "kitchen-other")
    .roomAt("above", "Dining room", "dining")
    .roomAt("above", "Bathroom", "bathroom")
    .roomAt("below", "Laundry", "laundry", "basement-unfinished")
    .roomAt("at", "Garage", "garage")
    .roomAt("at", "Outdoors", "outdoor");
}

function loadsAndDirectory(house: SampleDrawing): void {
  house
    .load("Bedside lamp", "lamp-60", "R12")
    .load("Refrigerator", "freezer-180", "R63")
    .load("Washer", "washer-500", "R81")
    .load("Garage freezer", "freezer-180", "R92")
    .directory({
      Q1: "Bedroom 1",
      Q2: "Bedrooms 2 and 3",
      Q3: "Living room",
      Q4: "Hall, stair, smoke alarms",
      Q5: "Kitchen, counter by the sink",
      Q6: "Kitchen, counter by the range, dining room, refrigerator",
      Q7: "Bathroom",
      Q8: "Laundry",
      Q9: "Garage and outdoors",
      Q10: "Basement lights and receptacles",
      Q11: "Furnace",
      Q12: "Water heater",
    });
}
