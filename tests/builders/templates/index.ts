import type { Project } from "../../../shared-model/model/project.ts";
import {
  ceilingLight,
  groundFaultProtects,
  halfSwitched,
  junction,
  multiwireSplit,
  receptacleAtEnd,
  receptacleThrough,
} from "./boxes.ts";
import { switchAndReceptacle, switchFed, switchLoop, threeWayPair } from "./switching.ts";

export interface Template {
  readonly about: string;
  readonly draw: (title: string) => Project;
  readonly title: string;
}

/** Common boxes of dwellings, by the name of their file, in the order in which they are offered. */
export const drawnTemplates: Readonly<Record<string, Template>> = {
  "receptacle-end": {
    title: "Receptacle at the end of a run",
    about: "One cable, hot, neutral and ground straight on the screws.",
    draw: receptacleAtEnd,
  },
  "receptacle-through": {
    title: "Receptacle with the run going on",
    about: "Hots, neutrals and grounds joined with pigtails, so that the run does not hang on the device.",
    draw: receptacleThrough,
  },
  "ground-fault-protects": {
    title: "Ground-fault receptacle that protects what follows",
    about: "The supply on LINE, the run going on from LOAD.",
    draw: groundFaultProtects,
  },
  "half-switched": {
    title: "Receptacle with one half switched",
    about: "Hot tab out: one half always live, the other behind a switch, both on one neutral.",
    draw: halfSwitched,
  },
  "switch-fed": {
    title: "Switch with the supply in its box",
    about: "The hot broken by the switch, the neutral joined through to the light.",
    draw: switchFed,
  },
  "switch-loop": {
    title: "Switch loop with the supply at the light",
    about: "Black down, red back, and the white kept as the neutral at the switch.",
    draw: switchLoop,
  },
  "three-way-pair": {
    title: "Light on two three-way switches",
    about: "Supply at the first switch, two travellers between them, the light at the second.",
    draw: threeWayPair,
  },
  "switch-and-receptacle": {
    title: "Switch and receptacle in a two-gang box",
    about: "One supply feeds both; the light hangs on the switch.",
    draw: switchAndReceptacle,
  },
  "ceiling-light": {
    title: "Ceiling light with the run going on",
    about: "Switched hot from its switch, and the cable to the next light.",
    draw: ceilingLight,
  },
  junction: {
    title: "Junction box with four cables",
    about: "Hots, neutrals and grounds joined, the metal bonded, a blank cover.",
    draw: junction,
  },
  "multiwire-split": {
    title: "Multiwire circuit that splits",
    about: "Three wires in, two circuits out, on one neutral that no device carries.",
    draw: multiwireSplit,
  },
};
