import { boxExamples } from "./boxes.ts";
import { circuitExamples } from "./circuits.ts";
import { conductorExamples } from "./conductors.ts";
import type { Examples } from "./example.ts";
import { groundExamples } from "./grounds.ts";
import { protectionExamples } from "./protection.ts";

/** A drawing wrong and a drawing right for the help page of each rule. */
export const ruleExamples: Examples = {
  ...boxExamples,
  ...conductorExamples,
  ...circuitExamples,
  ...protectionExamples,
  ...groundExamples,
};
