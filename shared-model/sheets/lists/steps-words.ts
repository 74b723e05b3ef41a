import type { SignOff } from "../../answers/scope.ts";

export const STEPS = "Work steps";
export const NO_STEPS = "As found and proposed are alike: there is no work.";
export const HOW =
  "One line is one thing done by hand: tick it when it is done. At a hold point stop until everything in its frame is done and signed.";
export const HOLD = "HOLD POINT: stop here";
export const CIRCUITS = "Circuits to open";
export const MULTIWIRE = "multiwire: all poles together";
export const FOUND = "found";
export const IF_NOT = "If not: ";
export const CAUTION = "Caution: ";
export const RESTS_ON = "The expected values rest on";

/** Classes of instruction in the order of the work. */
const STAGES: readonly string[] = [
  "Before the work",
  "Breakers off",
  "Current in the whites",
  "Take out and photograph",
  "Roles of the cables",
  "The box",
  "Grounds",
  "Neutrals",
  "Hots",
  "Second reading",
  "Torque and fold",
  "Dead tests",
  "Close up",
  "Energise and test",
  "Labels and record",
];

export const stageTitle = (stage: number): string => STAGES[stage - 1] ?? `Stage ${stage}`;

export const FIELD_WORDS: Readonly<Record<SignOff["fields"][number], string>> = {
  name: "name",
  date: "date",
  time: "time",
  instrument: "instrument",
  signature: "signature",
};
export const USUAL_FIELDS: readonly SignOff["fields"][number][] = ["name", "date", "time", "signature"];
