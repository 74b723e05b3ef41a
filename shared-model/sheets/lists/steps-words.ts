import type { SignOff } from "../../answers/scope.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";

export const STEPS = catalogue({
  title: "Work steps",
  none: "As found and proposed are alike: there is no work.",
  how: "One line is one thing done by hand: tick it when it is done. At a hold point stop until everything in its frame is done and signed.",
  hold: (number: Part) => `HOLD POINT: stop here (${number})`,
  circuits: "Circuits to open",
  multiwire: "multiwire: all poles together",
  expect: "expect",
  found: "found",
  tested: (test: Part, words: Part) => `${test}: ${words}`,
  ifNot: (words: Part) => `If not: ${words}`,
  caution: (words: Part) => `Caution: ${words}`,
  restsOn: "The expected values rest on",
  breaker: "breaker",
  in: "in",
  rating: "rating",
  ampere: (figure: Part) => `${figure} A`,
  with: "with",
  offLocked: "off, locked",
});

/** Classes of instruction in the order of the work. */
const STAGES = catalogue({
  before: "Before the work",
  breakersOff: "Breakers off",
  current: "Current in the whites",
  takeOut: "Take out and photograph",
  roles: "Roles of the cables",
  box: "The box",
  grounds: "Grounds",
  neutrals: "Neutrals",
  hots: "Hots",
  secondReading: "Second reading",
  fold: "Torque and fold",
  deadTests: "Dead tests",
  closeUp: "Close up",
  energise: "Energise and test",
  labels: "Labels and record",
});

const IN_ORDER: readonly string[] = [
  STAGES.before,
  STAGES.breakersOff,
  STAGES.current,
  STAGES.takeOut,
  STAGES.roles,
  STAGES.box,
  STAGES.grounds,
  STAGES.neutrals,
  STAGES.hots,
  STAGES.secondReading,
  STAGES.fold,
  STAGES.deadTests,
  STAGES.closeUp,
  STAGES.energise,
  STAGES.labels,
];

const wording = catalogue({ stage: (number: Part) => `Stage ${number}` });

export const stageTitle = (stage: number): string => IN_ORDER[stage - 1] ?? wording.stage(stage);

export const FIELD_WORDS: Readonly<Record<SignOff["fields"][number], string>> = catalogue({
  name: "name",
  date: "date",
  time: "time",
  instrument: "instrument",
  signature: "signature",
});
export const USUAL_FIELDS: readonly SignOff["fields"][number][] = ["name", "date", "time", "signature"];

/** Of the lists for writers of tables. */
export const STEP_TABLES = catalogue({
  steps: "Work steps",
  number: "Number",
  hold: "Hold point",
  test: "Test",
  stage: "Stage",
  box: "Box",
  instruction: "Instruction",
  details: "Details",
  ifNot: "If not",
  doneBy: "Done by",
  date: "Date",
  readings: "Expected readings",
  step: "Step",
  what: "What",
  expected: "Expected",
  value: "Value",
  within: "Within",
  unit: "Unit",
  found: "Found",
});
