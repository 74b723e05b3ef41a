import { findConnector } from "../../../shared-model/catalog/connectors.ts";
import { findDeviceType } from "../../../shared-model/catalog/device-types.ts";
import type { Device } from "../../../shared-model/model/device.ts";
import type {
  Enclosure,
  Entry,
  EntryMeans,
  Jumper,
  PassThrough,
  Ring,
  Splice,
} from "../../../shared-model/model/enclosure.ts";
import { cableEnd, type EndKey, jumperEnd, parseOutlet } from "../../../shared-model/model/ids.ts";
import type { Load } from "../../../shared-model/model/load.ts";
import type { Installation, Label } from "../../../shared-model/model/project.ts";
import { type CableIn, cablesInto } from "../../../shared-model/queries/cables-into.ts";
import { findEndFacts, nameOfEnd } from "../../../shared-model/queries/end-facts.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { landedAt, landingsOf, membersOf } from "../../../shared-model/queries/landings.ts";
import { terminalsOf } from "../../../shared-model/queries/terminals-of.ts";
import { conductorKeys } from "../../state/conductor-keys.ts";
import { farSideName } from "../../state/far-side-name.ts";
import { lengthHere } from "../../state/length-here.ts";
import { placeWords } from "../../state/place-words.ts";
import { branch, leaf, type OutlineNode } from "./outline-node.ts";
import { wording } from "./words.ts";

/** Everything in an enclosure: its cables with their ends, devices, splices, jumpers, the bond, and what is fixed to it. */
export function insideOf(installation: Installation, enclosure: Enclosure, key: string): readonly OutlineNode[] {
  const here: Here = { installation, enclosure };
  const entered = cablesInto(installation.cables, enclosure.id);
  const used = new Set(entered.map(({ entry }) => entry));
  return [
    ...entered.map((into) => cableNode(here, key, into)),
    ...inOrder<Entry>(enclosure.entries)
      .filter(({ id }) => !used.has(id))
      .map((entry) => entryNode(here, key, entry)),
    ...inOrder<Device>(enclosure.devices).map((device) => deviceNode(here, key, device)),
    ...inOrder<Splice>(enclosure.splices).map((splice) => spliceNode(here, key, splice)),
    ...inOrder<Jumper>(enclosure.jumpers).map((jumper) => jumperNode(here, key, jumper)),
    bondNode(here, key),
    ...Object.values(enclosure.passThroughs).map((pass) => passNode(here, key, pass)),
    ...(enclosure.kind === "box" ? inOrder<Ring>(enclosure.rings).map((ring) => ringNode(here, key, ring)) : []),
    ...labelNodes(here, key, (on) => "enclosure" in on && on.enclosure === enclosure.id),
  ];
}

interface Here {
  readonly installation: Installation;
  readonly enclosure: Enclosure;
}

function cableNode(here: Here, parent: string, { cable, side, entry }: CableIn): OutlineNode {
  const key = `${parent}/${cable.id}.${side}`;
  const held = here.enclosure.entries[entry];
  return branch(
    {
      key,
      subject: { kind: "cable", id: cable.id },
      name: cable.name,
      kind: "cable",
      note: `${farSideName(here.installation, cable, side)}${cable.lengthFt === undefined ? "" : `, ${lengthHere(cable.lengthFt, "ft")}`}`,
      glyph: "cable",
    },
    [
      ...conductorKeys(cable)
        .map((conductor) => cableEnd(cable.id, conductor, side))
        .map((end) => endNode(here, key, end)),
      ...(held === undefined ? [] : [entryNode(here, key, held)]),
      ...labelNodes(here, key, (on) => "cable" in on && on.cable === cable.id),
    ],
  );
}

/** A conductor end and where it is. */
function endNode({ installation, enclosure }: Here, parent: string, end: EndKey): OutlineNode {
  const colour = findEndFacts(installation, enclosure, end)?.colour;
  const tag = enclosure.places[end]?.tag;
  return leaf({
    key: `${parent}/${end}`,
    subject: { kind: "end", enclosure: enclosure.id, id: end },
    name: nameOfEnd(installation, enclosure, end),
    kind: "end",
    note: `${placeWords(enclosure, end)}${tag === undefined ? "" : wording.tag(tag)}`,
    ...(colour !== undefined && { colour }),
  });
}

const MEANS: Readonly<Record<EntryMeans, string>> = {
  "internal-clamp": wording.internalClamp,
  "external-connector": wording.externalConnector,
  "integral-clamp": wording.integralClamp,
  none: wording.nothingHoldsIt,
};

const entryNode = ({ enclosure }: Here, parent: string, { id, means }: Entry): OutlineNode =>
  leaf({
    key: `${parent}/${id}`,
    subject: { kind: "entry", enclosure: enclosure.id, id },
    name: wording.entry,
    kind: "entry",
    note: MEANS[means],
  });

function deviceNode(here: Here, parent: string, device: Device): OutlineNode {
  const { installation, enclosure } = here;
  const key = `${parent}/${device.id}`;
  const type = findDeviceType(device.type);
  const loads = inOrder<Load>(installation.loads).filter(({ plug }) => parseOutlet(plug).device === device.id);
  const all = terminalsOf(device);
  const terminals = all.map(({ name, group, label }, at): OutlineNode => {
    const own = `${key}/${name}`;
    const landed = landedAt(enclosure, device.id, name).map(({ end }) => end);
    const isTwin = (twin: (typeof all)[number]): boolean => twin.group === group && twin.label === label;
    const twins = all.filter(isTwin).length;
    const which = twins === 1 ? "" : wording.ofWord(all.slice(0, at).filter(isTwin).length + 1, twins);
    return branch(
      {
        key: own,
        subject: { kind: "terminal", enclosure: enclosure.id, device: device.id, id: name },
        name: [group, label].filter(Boolean).join(" "),
        kind: "terminal",
        note: `${which}${landed.length === 0 ? "free" : namesOf(here, landed)}`,
      },
      landed.map((end) => endNode(here, own, end)),
    );
  });
  return branch(
    {
      key,
      subject: { kind: "device", id: device.id },
      name: device.name,
      kind: "device",
      note: type?.caption ?? device.type,
      glyph: type?.glyph ?? "box",
    },
    [
      ...terminals,
      ...loads.map((load) => loadNode(key, load)),
      ...labelNodes(here, key, (on) => "device" in on && on.device === device.id),
    ],
  );
}

const loadNode = (parent: string, { id, name, loadW }: Load): OutlineNode =>
  leaf({
    key: `${parent}/${id}`,
    subject: { kind: "load", id },
    name,
    kind: "load",
    note: loadW === undefined ? wording.pluggedIn : wording.wPluggedIn(loadW),
    glyph: "appliance",
  });

function spliceNode(here: Here, parent: string, { id, name, connector }: Splice): OutlineNode {
  const key = `${parent}/${id}`;
  const members = membersOf(here.enclosure, id);
  return branch(
    {
      key,
      subject: { kind: "splice", id },
      name,
      kind: "splice",
      note: `${members.length}: ${namesOf(here, members)}, ${findConnector(connector)?.word ?? connector}`,
      glyph: "splice",
    },
    members.map((end) => endNode(here, key, end)),
  );
}

function jumperNode(here: Here, parent: string, { id, name, awg, colour }: Jumper): OutlineNode {
  const key = `${parent}/${id}`;
  const ends = [jumperEnd(id, "a"), jumperEnd(id, "b")];
  const [from, to] = ends.map((end) => placeWords(here.enclosure, end));
  return branch(
    {
      key,
      subject: { kind: "jumper", id },
      name,
      kind: "jumper",
      note: wording.awgTo(awg, colour, from ?? "", to ?? ""),
      colour,
    },
    ends.map((end) => endNode(here, key, end)),
  );
}

/** The metal of an enclosure; a nonmetallic box has none, but an end that was put there stays in sight. */
function bondNode(here: Here, parent: string): OutlineNode {
  const { enclosure } = here;
  const key = `${parent}/bond`;
  const { bonded } = landingsOf(enclosure);
  return branch(
    {
      key,
      subject: { kind: "bond", enclosure: enclosure.id },
      name: enclosure.kind === "panel" ? wording.panelBond : wording.boxGroundScrew,
      kind: "grounding screw",
      note: bonded.length === 0 ? wording.nothingOnIt : namesOf(here, bonded),
      glyph: "bond",
    },
    bonded.map((end) => endNode(here, key, end)),
  );
}

function passNode({ installation, enclosure }: Here, parent: string, pass: PassThrough): OutlineNode {
  const { id, cable, conductors, loopLengthIn } = pass;
  const loop = loopLengthIn === undefined ? "straight" : wording.loopOf(lengthHere(loopLengthIn, "in"));
  return leaf({
    key: `${parent}/${id}`,
    subject: { kind: "pass-through", enclosure: enclosure.id, id },
    name: wording.unbroken(installation.cables[cable]?.name ?? ""),
    kind: "runs through",
    note: `${conductors.length} ${conductors.length === 1 ? "conductor" : "conductors"}, ${loop}`,
    glyph: "cable",
  });
}

const RING_WORDS: Readonly<Record<Ring["kind"], string>> = {
  "plaster-ring": wording.plasterRing,
  "raised-cover": wording.raisedCover,
  extension: wording.extension,
};

const ringNode = ({ enclosure }: Here, parent: string, { id, kind, volume }: Ring): OutlineNode =>
  leaf({
    key: `${parent}/${id}`,
    subject: { kind: "ring", enclosure: enclosure.id, id },
    name: RING_WORDS[kind],
    kind: "ring",
    note: volume.kind === "unknown" ? wording.volumeNotKnown : wording.volume(volume.kind),
  });

const labelNodes = (
  { installation }: Here,
  parent: string,
  isOn: (on: Label["on"]) => boolean,
): readonly OutlineNode[] =>
  inOrder<Label>(installation.labels)
    .filter(({ on }) => isOn(on))
    .map(({ id, wording }) =>
      leaf({
        key: `${parent}/${id}`,
        subject: { kind: "label", id },
        name: wording,
        kind: "label",
        note: "label",
        glyph: "label",
      }),
    );

const namesOf = ({ installation, enclosure }: Here, ends: readonly EndKey[]): string =>
  ends.map((end) => nameOfEnd(installation, enclosure, end)).join(", ");
