import type { Project } from "../../../shared-model/model/project.ts";
import { SampleDrawing } from "./sample-drawing.ts";
import { boxFaults } from "./wrong-boxes.ts";
import { circuitFaults } from "./wrong-circuits.ts";
import { groundFaultFaults } from "./wrong-ground-faults.ts";
import { STATIONS, station } from "./wrong-stations.ts";

/**
 * A sheet for a class: a panel with nineteen small circuits, each a station with one fault a learner can find by looking
 * or by following the conductors; 16 and 17 are chains of boxes with a fault in each. Every rule is broken once.
 */
export function wrongOnPurpose(): Project {
  const sheet = SampleDrawing.empty("Wrong on purpose: a fault at every station", 2020)
    .notes(
      "Nothing here is to be copied. Each circuit is a station with one fault; the boxes of station 3 are 3A and 3B.",
      "1A: 14 AWG behind a 20 A breaker. 2A: hot and neutral exchanged at the receptacle. 3A: the white to 3B is capped, 3B has no neutral. 4A: the black to 4B is capped, 4B has no hot. 5A: a porch receptacle without ground-fault protection. 6A: the switch is in the white, the lamp stays live. 7A: the switch lies across the lamp and shorts the circuit when it is turned on. 8A: a jumper from neutral to ground at the receptacle.",
      "9A: supply on LOAD, the cable onward on LINE. 10A: hots right, whites exchanged between LINE and LOAD. 11A: the hot goes round the contacts. 12A: the white goes round the contacts. 13A: the white to 13B is on LINE, its black on LOAD. 14A: the black to 14B is on LINE, its white on LOAD. 15A: the ground-fault receptacle has no neutral and cannot trip.",
      "16A: too little volume. 16B: volume not recorded. 16C: exactly full. 16D: a cable without a clamp. 16E: two wires under one screw. 16F: 12 AWG in push-in holes.",
      "17A: two wires in one clamp hole. 17B: a joint with tape alone. 17C: a connector too small for its joint. 17D: metal not joined to ground. 17E: no ground on the receptacle. 17F: the grounds are in two groups, so that none reaches 17G, which is wired right itself.",
      "18A: the pigtail of the green screw is in the joint of the blacks, the yoke is live. 19A: a pigtail of the blacks hangs loose.",
    )
    .roomAt("above", "Classroom", "hallway")
    .roomAt("at", "Porch", "outdoor")
    .panelAt(0, 4, "P", "panel-30", "Classroom");
  for (const each of STATIONS) station(sheet, each);
  circuitFaults(sheet);
  groundFaultFaults(sheet);
  boxFaults(sheet);
  return sheet.knowAll("seen").project;
}
