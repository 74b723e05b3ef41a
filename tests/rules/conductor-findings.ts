import { inShort } from "./check-drawing.ts";

type Said = Parameters<typeof inShort>[0];

/** Rules about which conductor is what, and what is joined to what. */
const OURS: ReadonlySet<string> = new Set([
  "polarity-swapped",
  "shell-hot",
  "switch-in-neutral",
  "open-hot",
  "open-neutral",
  "neutral-from-other-circuit",
  "neutrals-joined",
  "hot-hot-joined",
  "hot-neutral-joined",
  "neutral-ground-joined",
  "hot-ground-joined",
  "traveller-misused",
  "switch-no-effect",
  "white-hot-unmarked",
  "white-as-switched-return",
  "coloured-as-neutral",
  "green-bare-as-current",
  "insulated-as-ground",
  "no-neutral-at-switch",
  "mwbc-no-common-opening",
  "mwbc-same-phase",
  "mwbc-neutral-through-device",
  "split-yoke-two-circuits",
  "mwbc-hots-not-grouped",
  "downstream-hot-on-line",
  "shared-neutral-upstream-gfci",
  "isolated-route",
  "egc-not-spliced-all",
  "device-egc-missing",
  "metal-box-unbonded",
]);

/** Their findings, "shell-hot L1", sorted. */
export const ofConductors = (said: Said): readonly string[] => inShort(said.filter(({ rule }) => OURS.has(rule)));
