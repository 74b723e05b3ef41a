import type { Project } from "../../../shared-model/model/project.ts";
import { SampleDrawing } from "./sample-drawing.ts";
import { boxFaults } from "./wrong-boxes.ts";
import { circuitFaults } from "./wrong-circuits.ts";
import { conductorFaults } from "./wrong-conductors.ts";
import { enclosureFaults } from "./wrong-enclosures.ts";
import { groundFaultFaults } from "./wrong-ground-faults.ts";
import { STATIONS, station } from "./wrong-stations.ts";

/**
 * A sheet for a class: a panel with thirty small circuits, each a station with one fault a learner can find by
 * looking or by following the conductors; 16, 17 and 20 to 30 are groups of boxes with a fault in each. No rule is broken twice.
 */
export function wrongOnPurpose(): Project {
  const sheet = SampleDrawing.empty("Wrong on purpose: a fault at every station", 2020)
    .notes(
      "Nothing here is to be copied. Each circuit is a station with one fault; the boxes of station 3 are 3A and 3B.",
      "1A: a pigtail of 14 AWG behind a 20 A breaker. 2A: hot and neutral exchanged at the receptacle. 3A: the white to 3B hangs loose, 3B has no neutral. 4A: the black to 4B hangs loose, 4B has no hot. 5A: a porch receptacle without ground-fault protection. 6A: the switch is in the white, the lamp stays live. 7A: the switch lies across the lamp and shorts the circuit when it is turned on. 8A: a jumper from neutral to ground at the receptacle.",
      "9A: supply on LOAD, the cable onward on LINE. 10A: hots right, whites exchanged between LINE and LOAD. 11A: the hot goes round the contacts. 12A: the white goes round the contacts. 13A: the white to 13B is on LINE, its black on LOAD. 14A: the black to 14B is on LINE, its white on LOAD. 15A: the ground-fault receptacle has no neutral and cannot trip.",
      "16A: too little volume. 16B: volume not recorded. 16C: exactly full. 16D: a cable without a clamp. 16E: two wires under one screw. 16F: 12 AWG in push-in holes.",
      "17A: two wires in one clamp hole. 17B: a joint with tape alone. 17C: a connector too small for its joint. 17D: metal not joined to ground. 17E: no ground on the receptacle. 17F: the grounds are in two groups, so that none reaches 17G. 17G: wired right itself, at the end of a run that loses more than 3 % of its voltage at 16 A.",
      "18A: the pigtail of the green screw is in the joint of the blacks, the yoke is live. 19A: a pigtail of the blacks hangs loose.",
      "20A: five grounds, which the editions count differently. 20B: a deep device in a shallow box. 20C: the sheath ends in front of the box. 20D: 4 in. of free wire. 20E: an open knockout. 21A: two cables in a clamp for one. 21B: no cover. 21C: a device that nothing holds. 21D: a ring with the volume of a box.",
      "22A: behind panelling. 22B: set back 1/2 in. 22C: a cover that leaves a plug in the spray. 23B: 20 lb under a device box in a ceiling. 23C: 60 °C wire at a luminaire for 90. 23D: a fan on a box for luminaires. 24B: a spare switched conductor at a box that cannot carry a fan; what feeds these, 23A, 24A and 24C, is right.",
      "25A: the run onward hangs on the springs of push-in entries. 25B: brittle insulation. 25C: a stranded pigtail under a plain screw. 25D: a tab broken off and both screws on one joint. 26A: the ground of 26B runs through the screw of the receptacle. 26B: 10 AWG in a clamp plate for 14 and 12.",
      "27B: 14 AWG behind a home run of 12, and no tag at the breaker. 27C: the red is fed and capped. 28A: its neutral shares a hole of the bar. 28B: hot by one cable, neutral by the other. 28C: two whites in parallel. 29A: aluminium and copper under a connector for copper. 29C: aluminium on a receptacle that is not marked for it; 29B is.",
      "30A: a ground of 14 AWG behind 20 A. 30B: protected, and no ground. 30C: armour that is taken as the ground, and nobody saw its strip. 30D: a ground clamped to a water pipe far from its entry. 30E: old open wiring in a filled attic.",
    )
    .roomAt("above", "Attic", "attic")
    .roomAt("above", "Classroom", "hallway")
    .roomAt("at", "Porch", "outdoor")
    .roomAt("above", "Reading room", "library")
    .panelAt(0, 4, "P", "panel-30", "Classroom");
  for (const each of STATIONS) station(sheet, each);
  circuitFaults(sheet);
  groundFaultFaults(sheet);
  boxFaults(sheet);
  enclosureFaults(sheet);
  conductorFaults(sheet);
  return sheet.knowAll("seen").knowCables("assumed", "C30C").project;
}
