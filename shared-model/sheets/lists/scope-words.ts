import type { ScopeBox, ScopeCounts, ScopeItemKind, ScopeKind } from "../../answers/scope.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";

export const SCOPE = catalogue({
  title: "Scope",
  noChange: "As found and proposed are alike: there is nothing to do.",
  changedLegend: "changed, C; marked otherwise, L: it stays and is set or worded otherwise.",
  moves:
    "A move is one conductor end taken off or put on. Cutting of tails is not counted; both ends of a new jumper are.",
  elsewhere: "Cables and what lies in no box",
  labelsRecord: "Labels, record",
  fromProof: "from the proof",
  findings: "Findings",
  what: "what",
  asFound: "as found",
  proposed: "proposed",
  at: "at",
});

export const KIND_WORDS: Readonly<Record<ScopeKind, string>> = catalogue({
  kept: "kept",
  moved: "moved",
  removed: "removed",
  new: "new",
  replaced: "new in its place",
  relabelled: "relabelled",
  changed: "changed",
});

const DRAWN = catalogue({
  kept: "kept",
  moved: "moved, new place",
  oldWay: "moved, old place",
  removed: "removed",
  new: "new",
});

export const LEGEND = [
  ["kept", "kept", DRAWN.kept],
  ["moved", "moved", DRAWN.moved],
  ["moved", "old-way", DRAWN.oldWay],
  ["removed", "removed", DRAWN.removed],
  ["new", "new", DRAWN.new],
] as const;

export const COUNT_WORDS = catalogue({
  boxes: "boxes",
  detach: "detach",
  attach: "attach",
  newJoints: "joints",
  devices: "devices",
});

export const SHOWN_COUNTS = ["detach", "attach", "newJoints", "devices"] as const satisfies (keyof ScopeCounts)[];

const SOME: Readonly<Record<(typeof SHOWN_COUNTS)[number], (count: Part) => string>> = catalogue({
  detach: (count: Part) => `${count} detach`,
  attach: (count: Part) => `${count} attach`,
  newJoints: (count: Part) => `${count} joints`,
  devices: (count: Part) => `${count} devices`,
});

const wording = catalogue({
  breakersOff: (names: Part) => `breaker ${names} off`,
  label: "1 label",
  labels: (count: Part) => `${count} labels`,
  labelsOn: (count: Part, names: Part) => `${count}: ${names}`,
  oneDevice: "1 device",
  oneJoint: "1 joint",
  quoted: (words: Part) => `“${words}”`,
  slip: "1 slip",
  slips: (count: Part) => `${count} slips`,
});

/** "1 joint", "3 devices"; detach and attach are the same of one. */
export function countWords(key: (typeof SHOWN_COUNTS)[number], count: number): string {
  if (count === 1 && key === "newJoints") return wording.oneJoint;
  if (count === 1 && key === "devices") return wording.oneDevice;
  return SOME[key](count);
}

export const WORK_WORDS: Readonly<Record<ScopeBox["work"], string>> = catalogue({
  new: "new box",
  removed: "taken out",
  opened: "opened",
  "not-opened": "not opened",
});

export const breakersOff = (names: readonly string[]): string =>
  names.length === 0 ? "" : wording.breakersOff(names.join(", "));

export const slips = (count: number): string => (count === 1 ? wording.slip : wording.slips(count));
export const pieces = (count: number): string => (count === 1 ? wording.label : wording.labels(count));
export const { labelsOn, quoted } = wording;

export const FINDING_GROUPS = catalogue({
  repaired: "repaired",
  introduced: "introduced",
  inheritedTouched: "inherited, touched",
  inherited: "inherited",
});

/** Of the lists for writers of tables. */
export const SCOPE_TABLES = catalogue({
  scope: "Scope",
  counts: "Scope counts",
  changes: "Scope changes",
  box: "Box",
  kind: "Kind",
  what: "What",
  asFound: "As found",
  proposed: "Proposed",
  work: "Work",
  detach: "Detach",
  attach: "Attach",
  newJoints: "New joints",
  devices: "Devices",
  newJumpers: "New jumpers",
  newCables: "New cables",
  thing: "Thing",
  name: "Name",
  was: "Was",
  willBe: "Will be",
  key: "Key",
});

/** What a change is about. */
export const THING_WORDS: Readonly<Record<ScopeItemKind, string>> = catalogue({
  enclosure: "enclosure",
  cable: "cable",
  end: "end",
  jumper: "jumper",
  splice: "splice",
  device: "device",
  entry: "entry",
  ring: "ring",
  "pass-through": "pass-through",
  part: "part",
  load: "load",
  label: "label",
  directory: "directory",
});
