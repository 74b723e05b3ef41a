import type { Difference } from "../lib/differences.ts";
import type { EnclosureId } from "../model/ids.ts";
import type { Project } from "../model/project.ts";
import type { BoxRoles } from "./circuit.ts";
import type { FillLedger } from "./fill.ts";
import type { Finding } from "./finding.ts";

/** A box of an example with what the checks say of it. */
export interface ExampleBox {
  readonly id: EnclosureId;
  readonly ledger?: FillLedger;
  readonly roles?: BoxRoles;
  /** Outlets that its devices protect elsewhere: "d1 R2, R3", a device a line. */
  readonly protects: string;
}

/** What a sign on the drawing needs of a finding; it stands at the first subject. */
export type ExampleFinding = Pick<Finding, "severity" | "subjects">;

export interface ExampleSide {
  /** The boxes to show, in their order. */
  readonly boxes: readonly ExampleBox[];
  /** What the rule of the example says; nothing where it is kept. */
  readonly findings: readonly ExampleFinding[];
}

export interface PackedExample {
  /** Place of its right drawing in the list. */
  readonly drawing: number;
  /** What the wrong one has otherwise. */
  readonly changes: readonly Difference[];
  readonly wrong: ExampleSide;
  readonly right: ExampleSide;
}

/** A drawing wrong and a drawing right for each rule, by its id; all that is looked at is as found. */
export interface RuleExamples {
  readonly drawings: readonly Project[];
  readonly examples: Readonly<Record<string, PackedExample>>;
}
