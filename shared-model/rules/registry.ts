import { boxOverfull } from "./checks/box-overfull.ts";
import { boxVolumeUnknown } from "./checks/box-volume-unknown.ts";
import { cableEntryUnsecured } from "./checks/cable-entry-unsecured.ts";
import { clampHoleDoubled } from "./checks/clamp-hole-doubled.ts";
import { conductorTooSmall } from "./checks/conductor-too-small.ts";
import { deviceEgcMissing } from "./checks/device-egc-missing.ts";
import { downstreamHotOnLine } from "./checks/downstream-hot-on-line.ts";
import { downstreamNeutralOnLine } from "./checks/downstream-neutral-on-line.ts";
import { egcNotSplicedAll } from "./checks/egc-not-spliced-all.ts";
import { fillNearlyFull } from "./checks/fill-nearly-full.ts";
import { gfciNoNeutral } from "./checks/gfci-no-neutral.ts";
import { hotBothSides } from "./checks/hot-both-sides.ts";
import { hotGroundJoined } from "./checks/hot-ground-joined.ts";
import { hotNeutralJoined } from "./checks/hot-neutral-joined.ts";
import { lineLoadHalfSwapped } from "./checks/line-load-half-swapped.ts";
import { lineLoadSwapped } from "./checks/line-load-swapped.ts";
import { liveLooseEnd } from "./checks/live-loose-end.ts";
import { metalBoxUnbonded } from "./checks/metal-box-unbonded.ts";
import { neutralBothSides } from "./checks/neutral-both-sides.ts";
import { neutralGroundJoined } from "./checks/neutral-ground-joined.ts";
import { openHot } from "./checks/open-hot.ts";
import { openNeutral } from "./checks/open-neutral.ts";
import { outletNotProtected } from "./checks/outlet-not-protected.ts";
import { polaritySwapped } from "./checks/polarity-swapped.ts";
import { pushInGauge } from "./checks/push-in-gauge.ts";
import { spliceNoConnector } from "./checks/splice-no-connector.ts";
import { spliceOverCapacity } from "./checks/splice-over-capacity.ts";
import { switchInNeutral } from "./checks/switch-in-neutral.ts";
import { twoWiresOneScrew } from "./checks/two-wires-one-screw.ts";
import type { Rule } from "./rule.ts";

/** Every rule, in the order of the catalogue of rules. */
export const rules: readonly Rule[] = [
  boxOverfull,
  boxVolumeUnknown,
  fillNearlyFull,
  cableEntryUnsecured,
  spliceNoConnector,
  spliceOverCapacity,
  twoWiresOneScrew,
  clampHoleDoubled,
  pushInGauge,
  conductorTooSmall,
  liveLooseEnd,
  polaritySwapped,
  switchInNeutral,
  openHot,
  openNeutral,
  hotNeutralJoined,
  neutralGroundJoined,
  hotGroundJoined,
  lineLoadSwapped,
  lineLoadHalfSwapped,
  hotBothSides,
  neutralBothSides,
  downstreamNeutralOnLine,
  downstreamHotOnLine,
  outletNotProtected,
  gfciNoNeutral,
  metalBoxUnbonded,
  egcNotSplicedAll,
  deviceEgcMissing,
];

type Scoped<S extends Rule["scope"]> = Extract<Rule, { readonly scope: S }>;
const ofScope = <S extends Rule["scope"]>(scope: S): readonly Scoped<S>[] =>
  rules.filter((rule): rule is Scoped<S> => rule.scope === scope);

export const boxRules = ofScope("box");
export const sectionRules = ofScope("section");
export const projectRules = ofScope("project");
