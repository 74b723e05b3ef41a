import { boxOverfull } from "./checks/box-overfull.ts";
import { boxVolumeUnknown } from "./checks/box-volume-unknown.ts";
import { conductorTooSmall } from "./checks/conductor-too-small.ts";
import { downstreamNeutralOnLine } from "./checks/downstream-neutral-on-line.ts";
import { hotBothSides } from "./checks/hot-both-sides.ts";
import { lineLoadSwapped } from "./checks/line-load-swapped.ts";
import { openNeutral } from "./checks/open-neutral.ts";
import { outletNotProtected } from "./checks/outlet-not-protected.ts";
import { polaritySwapped } from "./checks/polarity-swapped.ts";
import { spliceNoConnector } from "./checks/splice-no-connector.ts";
import { spliceOverCapacity } from "./checks/splice-over-capacity.ts";
import { twoWiresOneScrew } from "./checks/two-wires-one-screw.ts";
import type { Rule } from "./rule.ts";

/** Every rule, in the order of the catalogue of rules. */
export const rules: readonly Rule[] = [
  boxOverfull,
  boxVolumeUnknown,
  spliceNoConnector,
  spliceOverCapacity,
  twoWiresOneScrew,
  conductorTooSmall,
  polaritySwapped,
  openNeutral,
  lineLoadSwapped,
  hotBothSides,
  downstreamNeutralOnLine,
  outletNotProtected,
];

type Scoped<S extends Rule["scope"]> = Extract<Rule, { readonly scope: S }>;
const ofScope = <S extends Rule["scope"]>(scope: S): readonly Scoped<S>[] =>
  rules.filter((rule): rule is Scoped<S> => rule.scope === scope);

export const boxRules = ofScope("box");
export const sectionRules = ofScope("section");
export const projectRules = ofScope("project");
