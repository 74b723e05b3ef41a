import { alCuDirect } from "./checks/al-cu-direct.ts";
import { alOnDevice } from "./checks/al-on-device.ts";
import { alarmBehindGfci } from "./checks/alarm-behind-gfci.ts";
import { armourAssumedGround } from "./checks/armour-assumed-ground.ts";
import { bathCircuitMixed } from "./checks/bath-circuit-mixed.ts";
import { boxNotAccessible } from "./checks/box-not-accessible.ts";
import { boxOverfull } from "./checks/box-overfull.ts";
import { boxSetback } from "./checks/box-setback.ts";
import { boxVolumeUnknown } from "./checks/box-volume-unknown.ts";
import { cableEntryUnsecured } from "./checks/cable-entry-unsecured.ts";
import { canopyHeatOldCable } from "./checks/canopy-heat-old-cable.ts";
import { cappedNeutralForgotten } from "./checks/capped-neutral-forgotten.ts";
import { clampHoleDoubled } from "./checks/clamp-hole-doubled.ts";
import { colouredAsNeutral } from "./checks/coloured-as-neutral.ts";
import { conductorTooSmall } from "./checks/conductor-too-small.ts";
import { continuousLoad } from "./checks/continuous-load.ts";
import { coverMissing } from "./checks/cover-missing.ts";
import { deviceDeeperThanRoom } from "./checks/device-deeper-than-room.ts";
import { deviceEgcMissing } from "./checks/device-egc-missing.ts";
import { deviceNotReadilyAccessible } from "./checks/device-not-readily-accessible.ts";
import { dimmerFeedsReceptacle } from "./checks/dimmer-feeds-receptacle.ts";
import { dimmerLoad } from "./checks/dimmer-load.ts";
import { directoryMismatch } from "./checks/directory-mismatch.ts";
import { downstreamHotOnLine } from "./checks/downstream-hot-on-line.ts";
import { downstreamNeutralOnLine } from "./checks/downstream-neutral-on-line.ts";
import { egcBrokenByRemoval } from "./checks/egc-broken-by-removal.ts";
import { egcEditionDifference } from "./checks/egc-edition-difference.ts";
import { egcMissing } from "./checks/egc-missing.ts";
import { egcNotSplicedAll } from "./checks/egc-not-spliced-all.ts";
import { egcOnwardFromNoGround } from "./checks/egc-onward-from-no-ground.ts";
import { egcTooSmall } from "./checks/egc-too-small.ts";
import { extensionNeedsAfci } from "./checks/extension-needs-afci.ts";
import { fanBoxRequired } from "./checks/fan-box-required.ts";
import { fillNearlyFull } from "./checks/fill-nearly-full.ts";
import { fixedLoadShare } from "./checks/fixed-load-share.ts";
import { freeLengthShort } from "./checks/free-length-short.ts";
import { freezerSharesTrip } from "./checks/freezer-shares-trip.ts";
import { gfciBehindGfci } from "./checks/gfci-behind-gfci.ts";
import { gfciBreakerNeutralOnBar } from "./checks/gfci-breaker-neutral-on-bar.ts";
import { gfciLoadEmptyTape } from "./checks/gfci-load-empty-tape.ts";
import { gfciNoNeutral } from "./checks/gfci-no-neutral.ts";
import { gfciSwitchedSupply } from "./checks/gfci-switched-supply.ts";
import { greenBareAsCurrent } from "./checks/green-bare-as-current.ts";
import { groundingTypeUnprotected } from "./checks/grounding-type-unprotected.ts";
import { halfSwitchedOnGfci } from "./checks/half-switched-on-gfci.ts";
import { hotBothSides } from "./checks/hot-both-sides.ts";
import { hotGroundJoined } from "./checks/hot-ground-joined.ts";
import { hotHotJoined } from "./checks/hot-hot-joined.ts";
import { hotNeutralJoined } from "./checks/hot-neutral-joined.ts";
import { insulatedAsGround } from "./checks/insulated-as-ground.ts";
import { insulationDamaged } from "./checks/insulation-damaged.ts";
import { isolatedRoute } from "./checks/isolated-route.ts";
import { kitchenCircuitLights } from "./checks/kitchen-circuit-lights.ts";
import { knobTubeInInsulation } from "./checks/knob-tube-in-insulation.ts";
import { laundryCircuitMixed } from "./checks/laundry-circuit-mixed.ts";
import { lightingBehindGfciEgress } from "./checks/lighting-behind-gfci-egress.ts";
import { lineLoadHalfSwapped } from "./checks/line-load-half-swapped.ts";
import { lineLoadSwapped } from "./checks/line-load-swapped.ts";
import { liveLooseEnd } from "./checks/live-loose-end.ts";
import { luminaireBoxNotListed } from "./checks/luminaire-box-not-listed.ts";
import { metalBoxUnbonded } from "./checks/metal-box-unbonded.ts";
import { metalPipeGround } from "./checks/metal-pipe-ground.ts";
import { mixedGauge } from "./checks/mixed-gauge.ts";
import { mwbcHotsNotGrouped } from "./checks/mwbc-hots-not-grouped.ts";
import { mwbcNeutralThroughDevice } from "./checks/mwbc-neutral-through-device.ts";
import { mwbcNoCommonOpening } from "./checks/mwbc-no-common-opening.ts";
import { mwbcSamePhase } from "./checks/mwbc-same-phase.ts";
import { neutralBarDoubled } from "./checks/neutral-bar-doubled.ts";
import { neutralBothSides } from "./checks/neutral-both-sides.ts";
import { neutralFromOtherCircuit } from "./checks/neutral-from-other-circuit.ts";
import { neutralGroundJoined } from "./checks/neutral-ground-joined.ts";
import { neutralsJoined } from "./checks/neutrals-joined.ts";
import { noGroundLabel } from "./checks/no-ground-label.ts";
import { noNeutralAtSwitch } from "./checks/no-neutral-at-switch.ts";
import { openHot } from "./checks/open-hot.ts";
import { openKnockout } from "./checks/open-knockout.ts";
import { openNeutral } from "./checks/open-neutral.ts";
import { outletNotProtected } from "./checks/outlet-not-protected.ts";
import { panelBreakerNotListed } from "./checks/panel-breaker-not-listed.ts";
import { parallelSmall } from "./checks/parallel-small.ts";
import { plateMetalNoGround } from "./checks/plate-metal-no-ground.ts";
import { polaritySwapped } from "./checks/polarity-swapped.ts";
import { pushInFeedthrough } from "./checks/push-in-feedthrough.ts";
import { pushInGauge } from "./checks/push-in-gauge.ts";
import { receptacleRating } from "./checks/receptacle-rating.ts";
import { replaceNeedsAfci } from "./checks/replace-needs-afci.ts";
import { replaceNeedsGfci } from "./checks/replace-needs-gfci.ts";
import { ringMissing } from "./checks/ring-missing.ts";
import { ringVolumeUnmarked } from "./checks/ring-volume-unmarked.ts";
import { sharedNeutralUpstreamGfci } from "./checks/shared-neutral-upstream-gfci.ts";
import { sheathNotInside } from "./checks/sheath-not-inside.ts";
import { shellHot } from "./checks/shell-hot.ts";
import { spareFanConductor } from "./checks/spare-fan-conductor.ts";
import { spliceNoConnector } from "./checks/splice-no-connector.ts";
import { spliceOverCapacity } from "./checks/splice-over-capacity.ts";
import { splitYokeTwoCircuits } from "./checks/split-yoke-two-circuits.ts";
import { standingLeakBudget } from "./checks/standing-leak-budget.ts";
import { strandedOnSideScrew } from "./checks/stranded-on-side-screw.ts";
import { switchInNeutral } from "./checks/switch-in-neutral.ts";
import { switchNoEffect } from "./checks/switch-no-effect.ts";
import { switchRating } from "./checks/switch-rating.ts";
import { tabBrokenUnintended } from "./checks/tab-broken-unintended.ts";
import { tamperResistant } from "./checks/tamper-resistant.ts";
import { terminalGauge } from "./checks/terminal-gauge.ts";
import { testRecordMissing } from "./checks/test-record-missing.ts";
import { tooManyCablesInClamp } from "./checks/too-many-cables-in-clamp.ts";
import { travellerMisused } from "./checks/traveller-misused.ts";
import { twoWiresOneScrew } from "./checks/two-wires-one-screw.ts";
import { voltageDropAdvice } from "./checks/voltage-drop-advice.ts";
import { weatherResistant } from "./checks/weather-resistant.ts";
import { wetBoxCover } from "./checks/wet-box-cover.ts";
import { whiteAsSwitchedReturn } from "./checks/white-as-switched-return.ts";
import { whiteHotUnmarked } from "./checks/white-hot-unmarked.ts";
import { wishNotProtected } from "./checks/wish-not-protected.ts";
import type { Rule } from "./rule.ts";

/** Every rule, in the order of the catalogue of rules. */
export const rules: readonly Rule[] = [
  boxOverfull,
  boxVolumeUnknown,
  fillNearlyFull,
  egcEditionDifference,
  deviceDeeperThanRoom,
  cableEntryUnsecured,
  tooManyCablesInClamp,
  sheathNotInside,
  freeLengthShort,
  openKnockout,
  coverMissing,
  ringMissing,
  ringVolumeUnmarked,
  boxNotAccessible,
  boxSetback,
  luminaireBoxNotListed,
  fanBoxRequired,
  spareFanConductor,
  canopyHeatOldCable,
  wetBoxCover,
  spliceNoConnector,
  spliceOverCapacity,
  twoWiresOneScrew,
  clampHoleDoubled,
  pushInGauge,
  pushInFeedthrough,
  terminalGauge,
  conductorTooSmall,
  mixedGauge,
  alCuDirect,
  alOnDevice,
  insulationDamaged,
  strandedOnSideScrew,
  voltageDropAdvice,
  liveLooseEnd,
  cappedNeutralForgotten,
  isolatedRoute,
  parallelSmall,
  knobTubeInInsulation,
  polaritySwapped,
  shellHot,
  switchInNeutral,
  openHot,
  openNeutral,
  neutralFromOtherCircuit,
  neutralsJoined,
  hotHotJoined,
  hotNeutralJoined,
  neutralGroundJoined,
  hotGroundJoined,
  travellerMisused,
  switchNoEffect,
  whiteHotUnmarked,
  whiteAsSwitchedReturn,
  colouredAsNeutral,
  greenBareAsCurrent,
  insulatedAsGround,
  noNeutralAtSwitch,
  mwbcNoCommonOpening,
  mwbcSamePhase,
  mwbcNeutralThroughDevice,
  splitYokeTwoCircuits,
  mwbcHotsNotGrouped,
  neutralBarDoubled,
  tabBrokenUnintended,
  lineLoadSwapped,
  lineLoadHalfSwapped,
  hotBothSides,
  neutralBothSides,
  downstreamNeutralOnLine,
  downstreamHotOnLine,
  outletNotProtected,
  wishNotProtected,
  gfciBehindGfci,
  gfciNoNeutral,
  gfciSwitchedSupply,
  gfciLoadEmptyTape,
  sharedNeutralUpstreamGfci,
  gfciBreakerNeutralOnBar,
  alarmBehindGfci,
  freezerSharesTrip,
  deviceNotReadilyAccessible,
  lightingBehindGfciEgress,
  standingLeakBudget,
  halfSwitchedOnGfci,
  dimmerFeedsReceptacle,
  testRecordMissing,
  metalBoxUnbonded,
  egcMissing,
  egcBrokenByRemoval,
  egcNotSplicedAll,
  deviceEgcMissing,
  egcTooSmall,
  noGroundLabel,
  egcOnwardFromNoGround,
  groundingTypeUnprotected,
  plateMetalNoGround,
  armourAssumedGround,
  metalPipeGround,
  receptacleRating,
  switchRating,
  dimmerLoad,
  replaceNeedsGfci,
  replaceNeedsAfci,
  extensionNeedsAfci,
  tamperResistant,
  weatherResistant,
  bathCircuitMixed,
  kitchenCircuitLights,
  continuousLoad,
  fixedLoadShare,
  panelBreakerNotListed,
  directoryMismatch,
  laundryCircuitMixed,
];

type Scoped<S extends Rule["scope"]> = Extract<Rule, { readonly scope: S }>;
const ofScope = <S extends Rule["scope"]>(scope: S): readonly Scoped<S>[] =>
  rules.filter((rule): rule is Scoped<S> => rule.scope === scope);

export const boxRules = ofScope("box");
export const sectionRules = ofScope("section");
export const projectRules = ofScope("project");
