import fc from "fast-check";
import type { CommandCall } from "../../shared-model/answers/command-call.ts";
import { amendableRules } from "../../shared-model/catalog/amendable-rules.ts";
import { cableItems } from "../../shared-model/catalog/cable-items.ts";
import { deviceTypes } from "../../shared-model/catalog/device-types.ts";
import { enclosureItems } from "../../shared-model/catalog/enclosure-items.ts";
import { loadItems } from "../../shared-model/catalog/load-items.ts";
import type { CommandId } from "../../shared-model/commands/command-args.ts";
import { commands, isCommandId } from "../../shared-model/commands/registry.ts";
import type { ConductorKey } from "../../shared-model/model/ids.ts";
import { EDITIONS, type Project, type StateName } from "../../shared-model/model/project.ts";
import { ROOM_KINDS } from "../../shared-model/model/room.ts";
import { COLOURS } from "../../shared-model/units/colour.ts";
import { WIRE_SIZES } from "../../shared-model/units/wire-size.ts";
import { Picker } from "./picker.ts";
import { randomPaste } from "./random-paste.ts";
import { randomProperty } from "./random-property.ts";
import {
  boxAndEnd,
  breakers,
  connector,
  deviceId,
  enclosureAt,
  enclosureId,
  endIn,
  everyDevice,
  fresh,
  idsIn,
  installation,
  item,
  outletIn,
  place,
  point,
  type Scene,
  side,
} from "./random-scene.ts";
import { randomSurveyed, randomTest, readingId } from "./random-test.ts";
import { TINY_JPEG } from "./tiny-jpeg.ts";

/** One step of a random sequence: which command, and a number that picks its arguments from the drawing as it is then. */
export interface RandomStep {
  readonly command: CommandId;
  readonly seed: number;
}

const IDS = Object.keys(commands).filter(isCommandId);
/** Building and landing come more often, so that there is something to take apart. */
const OFTEN: readonly CommandId[] = [
  "place-enclosure",
  "place-device",
  "route-cable",
  "route-cable",
  "land-end",
  "land-end",
  "splice-ends",
  "join-splice",
  "add-jumper",
  "set-property",
  "set-property",
];

/** Sequences of a length; a failing one shrinks to the steps that matter. */
export const randomSteps = (length: number): fc.Arbitrary<readonly RandomStep[]> =>
  fc.array(
    fc.record({
      command: fc.constantFrom(...IDS, ...OFTEN),
      seed: fc.integer({ min: 0, max: 0x7fff_ffff }),
    }),
    { minLength: 1, maxLength: length, size: "max" },
  );

/**
 * The call of a step on a drawing: its arguments name things of the drawing, most of them sensibly. Some are refused,
 * which is part of the game. `index` makes its new ids.
 */
export function callOf(project: Project, step: RandomStep, index: number): CommandCall {
  const pick = new Picker(step.seed);
  const state: StateName = pick.chance(project.proposed === undefined ? 0.03 : 0.4) ? "proposed" : "as-found";
  const scene: Scene = { project, pick, state, index };
  return { command: step.command, args: MAKERS[step.command](scene) };
}

const MAKERS: { readonly [I in CommandId]: (scene: Scene) => unknown } = {
  "place-enclosure": (scene) => {
    const { pick, state, project, index } = scene;
    const chosen = pick.from(enclosureItems, undefined);
    const room = pick.from(idsIn(project.rooms), undefined);
    return {
      state,
      id: fresh(scene, ""),
      item: chosen?.id ?? "",
      name: `N${index}`,
      at: point(scene),
      ...(room !== undefined && pick.chance(0.5) && { roomId: room }),
      ...(chosen?.make.kind === "panel" && { bars: { neutral: fresh(scene, "n"), ground: fresh(scene, "g") } }),
    };
  },
  "move-enclosures": (scene) => ({
    moves: scene.pick.some(idsIn(installation(scene).enclosures), 3).map((id) => ({ id, to: point(scene) })),
  }),
  "pin-enclosures": (scene) => ({
    enclosures: scene.pick.some(idsIn(installation(scene).enclosures), 3),
    pinned: scene.pick.chance(0.6),
  }),
  "rename-item": (scene) => ({ state: scene.state, item: item(scene), name: `Name ${scene.index}` }),
  "remove-items": (scene) => ({
    state: scene.state,
    items: [item(scene), ...(scene.pick.chance(0.4) ? [item(scene)] : [])],
  }),
  "place-device": (scene) => {
    const enclosure = enclosureId(scene);
    const kind = enclosureAt(scene, enclosure)?.kind;
    const fitting = deviceTypes.filter((type) => type.where === kind || scene.pick.chance(0.02));
    const type = scene.pick.from(fitting, undefined)?.id ?? "receptacle-15";
    return { state: scene.state, enclosure, id: fresh(scene, ""), type, name: `D${scene.index}` };
  },
  "move-device": (scene) => {
    const id = deviceId(scene);
    const home = Object.values(installation(scene).enclosures).find((one) => id in one.devices);
    const enclosure = scene.pick.chance(0.4) ? (home?.id ?? "gone") : enclosureId(scene);
    const before = scene.pick.from(idsIn(enclosureAt(scene, enclosure)?.devices ?? {}), undefined);
    const to = { ...(before !== undefined && scene.pick.chance(0.5) && { before }) };
    return { state: scene.state, id, enclosure, ...to };
  },
  "replace-device": (scene) => {
    const { pick, state } = scene;
    const device = pick.from(everyDevice(scene), undefined);
    const where = deviceTypes.find((type) => type.id === device?.type)?.where;
    const fitting = deviceTypes.filter((type) => type.where === where || pick.chance(0.02));
    const type = pick.from(fitting, undefined)?.id ?? "receptacle-15";
    return { state, device: device?.id ?? "gone", id: fresh(scene, ""), type, name: `D${scene.index}` };
  },
  "paste-items": randomPaste,
  "place-load": (scene) => ({
    state: scene.state,
    id: fresh(scene, ""),
    item: scene.pick.from(loadItems, undefined)?.id ?? "",
    name: `L${scene.index}`,
    plug: outletIn(scene),
  }),
  "move-load": (scene) => ({
    state: scene.state,
    id: scene.pick.from(idsIn(installation(scene).loads), "gone"),
    plug: outletIn(scene),
  }),
  "route-cable": (scene) => ({
    state: scene.state,
    id: fresh(scene, ""),
    item: scene.pick.from(cableItems, undefined)?.id ?? "",
    name: `C${scene.index}`,
    a: side(scene, "a"),
    b: side(scene, "b"),
    ...(scene.pick.chance(0.5) && { lengthFt: scene.pick.below(100) }),
  }),
  "move-cable-side": (scene) => ({
    state: scene.state,
    cable: scene.pick.from(idsIn(installation(scene).cables), "gone"),
    side: scene.pick.from(["a", "b"], "a"),
    to: side(scene, "e"),
  }),
  "bend-cable": (scene) => ({
    cable: scene.pick.from(idsIn(installation(scene).cables), "gone"),
    bends: scene.pick.chance(0.3) ? [] : [point(scene), point(scene)],
  }),
  "land-end": (scene) => {
    const { enclosure, end, box } = boxAndEnd(scene);
    return { state: scene.state, enclosure, end, at: place(scene, box) };
  },
  "lift-end": (scene) => endArgs(scene),
  "cap-end": (scene) => endArgs(scene),
  "mark-spare": (scene) => ({ ...endArgs(scene), spare: scene.pick.chance(0.7) }),
  "splice-ends": (scene) => {
    const { enclosure, box } = boxAndEnd(scene);
    return {
      state: scene.state,
      enclosure,
      splice: fresh(scene, ""),
      name: `S${scene.index}`,
      connector: connector(scene),
      connectorAssumed: scene.pick.chance(0.5),
      ends: scene.pick.some(idsIn(box?.places ?? {}), 4),
    };
  },
  "join-splice": (scene) => {
    const spliced = Object.values(installation(scene).enclosures).filter((one) => Object.keys(one.splices).length > 0);
    const box = scene.pick.from(spliced, undefined);
    return {
      state: scene.state,
      enclosure: box?.id ?? "gone",
      end: endIn(scene, box),
      splice: scene.pick.from(idsIn(box?.splices ?? {}), "gone"),
    };
  },
  "leave-splice": (scene) => {
    const wired = Object.values(installation(scene).enclosures).flatMap((one) =>
      Object.entries(one.places).flatMap(([end, { at }]) => (at.kind === "splice" ? [{ enclosure: one.id, end }] : [])),
    );
    return { state: scene.state, ...(scene.pick.from(wired, undefined) ?? { enclosure: "gone", end: "gone.a" }) };
  },
  "change-connector": (scene) => {
    const enclosure = enclosureId(scene);
    const splice = scene.pick.from(idsIn(enclosureAt(scene, enclosure)?.splices ?? {}), "gone");
    return { state: scene.state, enclosure, splice, connector: connector(scene) };
  },
  "add-jumper": (scene) => {
    const enclosure = enclosureId(scene);
    const box = enclosureAt(scene, enclosure);
    return {
      state: scene.state,
      enclosure,
      jumper: fresh(scene, ""),
      name: `j${scene.index}`,
      awg: scene.pick.from(WIRE_SIZES, "12"),
      colour: scene.pick.from(COLOURS, "black"),
      from: place(scene, box),
      to: place(scene, box),
    };
  },
  "pigtail-terminal": (scene) => {
    const { box } = boxAndEnd(scene);
    const landed = Object.values(box?.places ?? {}).flatMap(({ at }) => (at.kind === "terminal" ? [at] : []));
    const at = scene.pick.from(landed, undefined);
    return {
      state: scene.state,
      enclosure: box?.id ?? "gone",
      device: at?.device ?? deviceId(scene),
      terminal: at?.terminal ?? "H1",
      splice: fresh(scene, "s"),
      spliceName: `S${scene.index}`,
      connector: connector(scene),
      connectorAssumed: scene.pick.chance(0.5),
      jumper: fresh(scene, "j"),
      jumperName: `j${scene.index}`,
    };
  },
  "set-property": ({ project, state, pick }) => ({ state, ...randomProperty(project, state, pick) }),
  "mark-evidence": ({ project, state, pick }) => {
    const { target, field } = randomProperty(project, state, pick);
    return { state, target, field, evidence: pick.from(["seen", "measured", "assumed", null] as const, null) };
  },
  "add-ring": (scene) => ({
    state: scene.state,
    enclosure: enclosureId(scene),
    id: fresh(scene, ""),
    kind: scene.pick.from(["plaster-ring", "raised-cover", "extension"], "extension"),
    volume: scene.pick.from(
      [{ kind: "unknown" }, { kind: "marked", volumeIn3: 30_000 }, { kind: "table", size: "4x1-1/2 square" }],
      undefined,
    ),
  }),
  "remove-ring": (scene) => {
    const ringed = Object.values(installation(scene).enclosures).filter(
      (one) => one.kind === "box" && Object.keys(one.rings).length > 0,
    );
    const box = scene.pick.from(ringed, undefined);
    const rings = box?.kind === "box" ? idsIn(box.rings) : [];
    return { state: scene.state, enclosure: box?.id ?? enclosureId(scene), id: scene.pick.from(rings, "gone") };
  },
  "add-pass-through": (scene) => {
    const cable = scene.pick.from(Object.values(installation(scene).cables), undefined);
    const ends = Object.values(cable?.sides ?? {}).flatMap((one) => ("enclosure" in one ? [one.enclosure] : []));
    const others = idsIn(installation(scene).enclosures).filter((id) => !ends.includes(id) || scene.pick.chance(0.05));
    return {
      state: scene.state,
      enclosure: scene.pick.from(others, "gone"),
      id: fresh(scene, ""),
      cable: cable?.id ?? "gone",
      conductors: scene.pick.some(idsIn(cable?.conductors ?? {}), 3) as readonly ConductorKey[],
      entryIn: { newEntry: fresh(scene, "i"), means: "none" },
      entryOut: { newEntry: fresh(scene, "o"), means: "none" },
      ...(scene.pick.chance(0.5) && { loopLengthIn: scene.pick.below(30) }),
    };
  },
  "remove-pass-through": (scene) => {
    const passed = Object.values(installation(scene).enclosures).filter(
      (one) => Object.keys(one.passThroughs).length > 0,
    );
    const box = scene.pick.from(passed, undefined);
    const id = scene.pick.from(idsIn(box?.passThroughs ?? {}), "gone");
    return { state: scene.state, enclosure: box?.id ?? enclosureId(scene), id };
  },
  "set-box-intent": (scene) => {
    const { enclosure, box } = boxAndEnd(scene);
    const here = Object.values(installation(scene).cables).filter((cable) =>
      Object.values(cable.sides).some(
        (one) => "enclosure" in one && (one.enclosure === box?.id || scene.pick.chance(0.02)),
      ),
    );
    const [supply, ...rest] = scene.pick.some(here, 3).map((cable) => cable.id);
    const protect = Object.fromEntries(rest.map((id) => [id, scene.pick.chance(0.5)]));
    const intent = scene.pick.chance(0.1) ? null : { ...(supply !== undefined && { supply }), protect };
    return { state: scene.state, enclosure, intent };
  },
  "set-outlet-wish": (scene) => ({
    state: scene.state,
    outlet: outletIn(scene),
    wish: scene.pick.from([{ wish: "protect" }, { wish: "decided-not", by: "the owner", reason: "cost" }, null], null),
  }),
  "set-directory-line": (scene) => ({
    state: scene.state,
    device: scene.pick.from(breakers(scene), undefined)?.id ?? "gone",
    text: scene.pick.from(["laundry", "kitchen, hall", "", null], null),
  }),
  "add-room": (scene) => ({
    id: fresh(scene, ""),
    name: `Room ${scene.index}`,
    kinds: scene.pick.some(ROOM_KINDS, 3),
  }),
  "assign-room": (scene) => ({
    state: scene.state,
    enclosures: scene.pick.some(idsIn(installation(scene).enclosures), 3),
    room: scene.pick.chance(0.3) ? null : scene.pick.from(idsIn(scene.project.rooms), "gone"),
  }),
  "set-edition": ({ pick }) => ({ edition: pick.from(EDITIONS, 2020) }),
  "set-amendment": ({ pick }) => {
    const rule = pick.from(Object.keys(amendableRules), "gone");
    const name = pick.from(amendableRules[rule] ?? [], "gone");
    return {
      rule,
      change: pick.chance(0.5) ? { kind: "off" } : { kind: "value", name, value: pick.below(30) },
      reason: pick.from(["By-law 12", " "], "By-law 12"),
      by: "the authority",
    };
  },
  "remove-amendment": ({ pick, project }) => {
    const known = pick.from(project.amendments, undefined);
    if (known === undefined) return { rule: "box-overfull" };
    return { rule: known.rule, ...(known.change.kind === "value" && { value: known.change.name }) };
  },
  "move-splice": (scene) => {
    const splices = Object.values(installation(scene).enclosures).flatMap((one) => idsIn(one.splices));
    return { splice: scene.pick.from(splices, "gone"), to: scene.pick.chance(0.2) ? null : point(scene) };
  },
  "add-label": (scene) => {
    const { kind, id } = item(scene);
    const on =
      kind === "cable" ? { cable: id } : kind === "enclosure" ? { enclosure: id } : { device: deviceId(scene) };
    return { state: scene.state, id: fresh(scene, ""), wording: "No equipment ground", on };
  },
  "add-reading": (scene) => ({
    id: fresh(scene, ""),
    reading: scene.pick.chance(0.5)
      ? (scene.pick.chance(0.3) ? randomSurveyed : randomTest)(scene)
      : {
          instrument: "meter",
          points: [boxAndEnd(scene).end],
          value: "121.8",
          unit: "V",
          evidence: { value: "measured" },
        },
  }),
  "change-reading": (scene) => ({ id: readingId(scene), reading: randomTest(scene) }),
  "remove-reading": (scene) => ({ id: readingId(scene) }),
  "attach-photo": (scene) => ({
    id: fresh(scene, ""),
    enclosure: enclosureId(scene),
    name: `Photo ${scene.index}`,
    base64: TINY_JPEG,
    ...(scene.pick.chance(0.5) && { caption: "As opened." }),
  }),
  "describe-photo": ({ pick, project }) => ({
    id: pick.from(idsIn(project.attachments), "gone"),
    caption: pick.from(["Marked 20.3 in³", "", null], null),
    ...(pick.chance(0.5) && { takenAt: "2026-05-04", by: pick.from(["the owner", null], null) }),
  }),
  "remove-photo": ({ pick, project }) => ({ id: pick.from(idsIn(project.attachments), "gone") }),
  "start-proposed": () => ({}),
  "reset-proposed": (scene) => resetArgs(scene),
  "discard-proposed": ({ pick }) => (pick.chance(0.2) ? {} : { not: "now" }),
  "settle-held-back": ({ pick, project }) => ({ id: pick.from(project.heldBack ?? [], undefined)?.id ?? "1" }),
  "acknowledge-finding": (scene) => ({
    ...acknowledgement(scene),
    by: scene.pick.from(["the owner", " "], " "),
    reason: "agreed with the owner",
    at: "2026-05-04T10:20:30Z",
    said: "B1 is overfull.",
    severity: "violation",
  }),
  "withdraw-acknowledgement": (scene) => acknowledgement(scene),
  "run-together": (scene) => ({ title: `Several ${scene.index}`, calls: callsTogether(scene) }),
};

/** Whole is rare, because it ends what the sequence was about. */
function resetArgs({ pick, project }: Scene) {
  const enclosures = [...idsIn(project.asFound.enclosures), ...idsIn(project.proposed?.enclosures ?? {})];
  const enclosure = pick.from(enclosures, undefined);
  return pick.chance(0.2) || enclosure === undefined ? {} : { enclosure };
}

function acknowledgement({ pick, state, project }: Scene) {
  const known = pick.from(project.acknowledgements, undefined);
  if (known !== undefined && pick.chance(0.5)) return { finding: known.finding, state: known.state };
  return { finding: `box-overfull|enclosure:${pick.from(idsIn(project.asFound.enclosures), "gone")}`, state };
}

/** Few of the commands that name things by picking from the drawing as it is before the first of them. */
function callsTogether(scene: Scene): readonly CommandCall[] {
  const { pick, project, index } = scene;
  const ids = IDS.filter((id) => id !== "run-together" || pick.chance(0.01));
  return Array.from({ length: 1 + pick.below(3) }, (_, place) => {
    const command = pick.from([...OFTEN, ...ids], "add-room");
    return callOf(project, { command, seed: pick.below(0x7fff_ffff) }, index * 1_000 + 100 + place);
  });
}

function endArgs(scene: Scene) {
  const { enclosure, end } = boxAndEnd(scene);
  return { state: scene.state, enclosure, end };
}
