import type { ScopeBox, ScopeKind, ScopeMaterial } from "../../answers/scope.ts";

export const SCOPE = "Scope";
export const NO_CHANGE = "As found and proposed are alike: there is nothing to do.";

export const KIND_WORDS: Readonly<Record<ScopeKind, string>> = {
  kept: "kept",
  moved: "moved",
  removed: "removed",
  new: "new",
  replaced: "new in its place",
  relabelled: "relabelled",
  changed: "changed",
};

export const LEGEND = [
  ["kept", "kept", "kept"],
  ["moved", "moved", "moved, new place"],
  ["moved", "old-way", "moved, old place"],
  ["removed", "removed", "removed"],
  ["new", "new", "new"],
] as const;
export const CHANGED_LEGEND = "changed, C; marked otherwise, L: it stays and is set or worded otherwise.";

export const COUNT_WORDS = {
  boxes: "boxes",
  detach: "detach",
  attach: "attach",
  newJoints: "joints",
  devices: "devices",
} as const;

export const MOVES =
  "A move is one conductor end taken off or put on. Cutting of tails is not counted; both ends of a new jumper are.";

export const WORK_WORDS: Readonly<Record<ScopeBox["work"], string>> = {
  new: "new box",
  removed: "taken out",
  opened: "opened",
  "not-opened": "not opened",
};

export const breakersOff = (names: readonly string[]): string =>
  names.length === 0 ? "" : `breaker ${names.join(", ")} off`;

export const ELSEWHERE = "Cables and what lies in no box";
export const LABELS_RECORD = "Labels, record";
export const FROM_PROOF = "from the proof";
export const slips = (count: number): string => (count === 1 ? "1 slip" : `${count} slips`);
export const pieces = (count: number): string => (count === 1 ? "1 label" : `${count} labels`);

export const FINDINGS_TITLE = "Findings";
export const FINDING_GROUPS = {
  repaired: "repaired",
  introduced: "introduced",
  inheritedTouched: "inherited, touched",
  inherited: "inherited",
} as const;

export const MATERIALS = "Materials";
export const NO_MATERIALS = "The work needs no material.";
export const MATERIAL_NOTE =
  "Generic items: verify that each is listed for its use. Lengths are those of the drawing; add what is usual for waste.";
export const TAKEN_OUT = "Taken out";
export const TAKEN_OUT_NOTE = "keep or discard with the customer";

export const MATERIAL_GROUPS: Readonly<Record<ScopeMaterial["group"], string>> = {
  device: "Devices",
  box: "Boxes",
  cable: "Cable",
  connector: "Connectors",
  conductor: "Conductors",
  fitting: "Fittings",
  label: "Labels",
};

export const UNIT_WORDS: Readonly<Record<ScopeMaterial["unit"], string>> = { piece: "", ft: " ft", in: " in." };
export const UNIT_NAMES: Readonly<Record<ScopeMaterial["unit"], string>> = { piece: "piece", ft: "ft", in: "in" };
