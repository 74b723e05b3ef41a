import type { CommandCall } from "../../shared-model/answers/command-call.ts";
import { connectors } from "../../shared-model/catalog/connectors.ts";
import { getDeviceType } from "../../shared-model/catalog/device-types.ts";
import { refusalOf, runCommand } from "../../shared-model/commands/run-command.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EndKey } from "../../shared-model/model/ids.ts";
import type { At } from "../../shared-model/model/place.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { getInstallation } from "../../shared-model/queries/installation-of.ts";
import { terminalsOf } from "../../shared-model/queries/terminals-of.ts";
import type { Picker } from "./picker.ts";

const STATE = "proposed";

/** Which mistakes were made, in the order made. */
export interface Wrong {
  readonly project: Project;
  readonly mistakes: readonly CommandCall[];
}

/** Makes up to `most` mistakes in the proposed wiring of a drawing, such as hands in a crowded box make. */
export function withMistakes(start: Project, pick: Picker, most: number): Wrong {
  let project = start;
  const mistakes: CommandCall[] = [];
  const wanted = 1 + pick.below(most);
  for (let tries = 0; mistakes.length < wanted && tries < 40; tries += 1) {
    const calls = pick.from(MISTAKES, MISTAKES[0] as Mistake)(project, pick, tries);
    for (const call of calls) {
      if (refusalOf(project, call) !== undefined) break;
      const done = runCommand(project, call);
      if (!done.ok || done.patches.length === 0) break;
      project = done.project;
      mistakes.push(call);
    }
  }
  return { project, mistakes };
}

type Mistake = (project: Project, pick: Picker, index: number) => readonly CommandCall[];

const MISTAKES: readonly Mistake[] = [
  // One conductor somewhere else: the commonest, so it stands here more than once.
  moveOneEnd,
  moveOneEnd,
  moveOneEnd,
  exchangeTwoEnds,
  exchangeTwoEnds,
  exchangeLineAndLoad,
  removeJumper,
  addJumper,
  changeConnector,
  changeBreaker,
  thinJumper,
  fitClamps,
  openEntry,
  pushIn,
];

function wired(project: Project, pick: Picker): Enclosure | undefined {
  const all = Object.values(getInstallation(project, STATE).enclosures);
  return pick.from(
    all.filter(({ places }) => Object.keys(places).length > 1),
    undefined,
  );
}

const endsOf = (enclosure: Enclosure): readonly EndKey[] => Object.keys(enclosure.places) as EndKey[];

function somePlace(enclosure: Enclosure, pick: Picker): At {
  const places: At[] = [{ kind: "capped" }, { kind: "loose" }, { kind: "bond" }];
  for (const splice of Object.values(enclosure.splices)) {
    const at: At = { kind: "splice", splice: splice.id };
    places.push(at, at);
  }
  for (const device of Object.values(enclosure.devices)) {
    for (const terminal of terminalsOf(device)) {
      const hole = 1 + pick.below(terminal.holes);
      places.push({ kind: "terminal", device: device.id, terminal: terminal.name, hole });
    }
  }
  return pick.from(places, { kind: "capped" });
}

const land = (enclosure: Enclosure, end: EndKey, at: At): CommandCall => ({
  command: "land-end",
  args: { state: STATE, enclosure: enclosure.id, end, at },
});

function moveOneEnd(project: Project, pick: Picker): readonly CommandCall[] {
  const enclosure = wired(project, pick);
  const end = enclosure && pick.from(endsOf(enclosure), undefined);
  return enclosure === undefined || end === undefined ? [] : [land(enclosure, end, somePlace(enclosure, pick))];
}

function exchangeTwoEnds(project: Project, pick: Picker): readonly CommandCall[] {
  const enclosure = wired(project, pick);
  if (enclosure === undefined) return [];
  const [one, other] = pick.some(endsOf(enclosure), 2);
  if (one === undefined || other === undefined) return [];
  const [here, there] = [enclosure.places[one]?.at, enclosure.places[other]?.at];
  return here === undefined || there === undefined ? [] : [land(enclosure, one, there), land(enclosure, other, here)];
}

function exchangeLineAndLoad(project: Project, pick: Picker): readonly CommandCall[] {
  const all = Object.values(getInstallation(project, STATE).enclosures);
  const sensing = all.flatMap((enclosure) =>
    Object.values(enclosure.devices).flatMap((device) => {
      const points = getDeviceType(device.type).sensing;
      return points === undefined || enclosure.kind === "panel" ? [] : [{ enclosure, device, points }];
    }),
  );
  const chosen = pick.from(sensing, undefined);
  if (chosen === undefined) return [];
  const { enclosure, device, points } = chosen;
  const pairs = [
    [points.line.hot[0], points.load.hot[0]],
    [points.line.neutral, points.load.neutral],
  ].filter(() => pick.chance(0.7));
  return endsOf(enclosure).flatMap((end) => {
    const at = enclosure.places[end]?.at;
    if (at?.kind !== "terminal" || at.device !== device.id) return [];
    const terminal = pairs.map(([a, b]) => (at.terminal === a ? b : at.terminal === b ? a : undefined)).find(Boolean);
    return terminal === undefined ? [] : [land(enclosure, end, { ...at, terminal } as At)];
  });
}

function removeJumper(project: Project, pick: Picker): readonly CommandCall[] {
  const jumpers = Object.values(getInstallation(project, STATE).enclosures).flatMap(({ jumpers: all }) =>
    Object.values(all),
  );
  const jumper = pick.from(jumpers, undefined);
  if (jumper === undefined) return [];
  return [{ command: "remove-items", args: { state: STATE, items: [{ kind: "jumper", id: jumper.id }] } }];
}

function addJumper(project: Project, pick: Picker, index: number): readonly CommandCall[] {
  const enclosure = wired(project, pick);
  if (enclosure === undefined) return [];
  const args = {
    state: STATE,
    enclosure: enclosure.id,
    jumper: `wrong${index}-${pick.below(1_000_000)}`,
    name: `w${index}`,
    awg: "12",
    colour: pick.from(["black", "white", "bare"], "black"),
    from: somePlace(enclosure, pick),
    to: somePlace(enclosure, pick),
  };
  return [{ command: "add-jumper", args }];
}

function changeConnector(project: Project, pick: Picker): readonly CommandCall[] {
  const enclosure = wired(project, pick);
  const splice = enclosure && pick.from(Object.values(enclosure.splices), undefined);
  if (enclosure === undefined || splice === undefined) return [];
  const connector = pick.from(["taped", "none", ...connectors.map(({ id }) => id)], "taped");
  return [
    { command: "change-connector", args: { state: STATE, enclosure: enclosure.id, splice: splice.id, connector } },
  ];
}

const set = (target: object, field: string, value: unknown): CommandCall => ({
  command: "set-property",
  args: { state: STATE, target, field, value },
});

function changeBreaker(project: Project, pick: Picker): readonly CommandCall[] {
  const breakers = Object.values(getInstallation(project, STATE).enclosures).flatMap(({ devices }) =>
    Object.values(devices).filter(({ breakerRatingA }) => breakerRatingA !== undefined),
  );
  const breaker = pick.from(breakers, undefined);
  return breaker === undefined
    ? []
    : [set({ kind: "device", id: breaker.id }, "breakerRatingA", pick.from([15, 20, 30, 40], 30))];
}

function thinJumper(project: Project, pick: Picker): readonly CommandCall[] {
  const jumpers = Object.values(getInstallation(project, STATE).enclosures).flatMap(({ jumpers: all }) =>
    Object.values(all),
  );
  const jumper = pick.from(jumpers, undefined);
  return jumper === undefined ? [] : [set({ kind: "jumper", id: jumper.id }, "awg", pick.from(["14", "10"], "14"))];
}

function fitClamps(project: Project, pick: Picker): readonly CommandCall[] {
  const box = wired(project, pick);
  return box?.kind !== "box" ? [] : [set({ kind: "enclosure", id: box.id }, "internalClamps", "present")];
}

function openEntry(project: Project, pick: Picker): readonly CommandCall[] {
  const box = wired(project, pick);
  const entry = box && pick.from(Object.values(box.entries), undefined);
  return box?.kind !== "box" || entry === undefined
    ? []
    : [set({ kind: "entry", enclosure: box.id, id: entry.id }, "means", "none")];
}

function pushIn(project: Project, pick: Picker): readonly CommandCall[] {
  const box = wired(project, pick);
  const device = box && pick.from(Object.values(box.devices), undefined);
  return device === undefined ? [] : [set({ kind: "device", id: device.id }, "entryKind", "push-in")];
}
