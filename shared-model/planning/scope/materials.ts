import type {
  ScopeBox,
  ScopeChange,
  ScopeDifference,
  ScopeLabel,
  ScopeMaterial,
  ScopeRemoved,
} from "../../answers/scope.ts";
import { findCableItem } from "../../catalog/cable-items.ts";
import { getDeviceType } from "../../catalog/device-types.ts";
import { COLOUR_WORDS, MATERIAL_WORDS } from "../../catalog/wire-words.ts";
import type { Cable } from "../../model/cable.ts";
import type { Device } from "../../model/device.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { CableId, DeviceId, EntryId, JumperId, RingId, SpliceId } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import { CONNECTOR_PIECES, LIST_WORDS as wording } from "./material-words.ts";
import { boxItemWords, inBoxWords, lengthWords, RING_WORDS, volumeWords } from "./scope-words.ts";

type Wanted = Omit<ScopeMaterial, "key" | "where"> & { readonly where: string };

/**
 * What the work takes, in generic words, from the difference: nothing is on it that the drawing does not say. Alike things
 * are one line with the places that they are for.
 */
export function scopeMaterials(
  proposed: Installation,
  { boxes, elsewhere }: ScopeDifference,
  labels: readonly ScopeLabel[],
): readonly ScopeMaterial[] {
  const wanted = [
    ...boxes.flatMap((box) => boxMaterials(proposed, box)),
    ...elsewhere.flatMap((change) => cableMaterial(proposed, change)),
    ...labels.map(
      ({ kind, wording: text, on }): Wanted => ({
        group: "label",
        what: kind === "reset-slip" ? wording.slip(text) : wording.label(text),
        quantity: 1,
        unit: "piece",
        where: on.name,
      }),
    ),
  ];
  return together(wanted);
}

const GROUPS: readonly ScopeMaterial["group"][] = [
  "device",
  "box",
  "fitting",
  "cable",
  "conductor",
  "connector",
  "label",
];

function together(wanted: readonly Wanted[]): readonly ScopeMaterial[] {
  const lines = new Map<string, { readonly line: Omit<Wanted, "where">; quantity: number; where: Set<string> }>();
  for (const { where, ...line } of wanted) {
    const key = `${line.group} ${line.item ?? ""} ${line.what} ${line.note ?? ""}`;
    const known = lines.get(key) ?? { line, quantity: 0, where: new Set() };
    known.quantity += line.quantity;
    known.where.add(where);
    lines.set(key, known);
  }
  return [...lines]
    .map(([key, { line, quantity, where }]): ScopeMaterial => ({ ...line, key, quantity, where: [...where] }))
    .sort((p, q) => GROUPS.indexOf(p.group) - GROUPS.indexOf(q.group));
}

function boxMaterials(proposed: Installation, box: ScopeBox): readonly Wanted[] {
  const after = proposed.enclosures[box.enclosure];
  if (after === undefined) return [];
  return box.changes.flatMap((change): readonly Wanted[] => {
    switch (change.item.kind) {
      case "device":
        return deviceMaterial(after, change);
      case "enclosure":
        return change.kind === "new" || change.kind === "replaced"
          ? [piece("box", boxItemWords(after), after.name, { item: after.item, note: wording.verify })]
          : [];
      case "ring":
        return ringMaterial(after, change);
      case "entry":
        return entryMaterial(proposed, after, change);
      case "splice":
        return spliceMaterial(box, after, change);
      case "jumper":
        return jumperMaterial(after, change);
      case "end":
        return endMaterial(after, change);
      default:
        return [];
    }
  });
}

const piece = (
  group: ScopeMaterial["group"],
  what: string,
  where: string,
  more: Partial<Pick<Wanted, "item" | "note" | "quantity">> = {},
): Wanted => ({ group, what, quantity: 1, unit: "piece", where, ...more });

function deviceMaterial(box: Enclosure, { kind, item }: ScopeChange): readonly Wanted[] {
  const device = box.devices[item.id as DeviceId];
  if (device === undefined || (kind !== "new" && kind !== "replaced")) return [];
  const type = getDeviceType(device.type);
  const where = inBoxWords(device.name, box);
  return [
    piece("device", deviceTitle(device), where, { item: device.type, note: wording.verify }),
    // One that takes another's place may have another face: common practice.
    ...(type.where === "box" && type.yokes > 0
      ? [piece("fitting", wording.plate(type.caption), where, kind === "new" ? {} : { note: wording.ifNotFitting })]
      : []),
  ];
}

/** With the rating where the type itself does not say it. */
function deviceTitle({ type, breakerRatingA }: Device): string {
  const { title } = getDeviceType(type);
  return breakerRatingA === undefined ? title : wording.rated(title, breakerRatingA);
}

function ringMaterial(box: Enclosure, { kind, item }: ScopeChange): readonly Wanted[] {
  const ring = box.kind === "box" ? box.rings[item.id as RingId] : undefined;
  if (ring === undefined || (kind !== "new" && kind !== "replaced")) return [];
  return [piece("box", `${RING_WORDS[ring.kind]}, ${volumeWords(ring.volume)}`, box.name, { note: wording.verify })];
}

/** A connector for each opening that gets one, by the cables in it. */
function entryMaterial(proposed: Installation, box: Enclosure, { kind, item }: ScopeChange): readonly Wanted[] {
  const entry = box.entries[item.id as EntryId];
  if (entry?.means !== "external-connector" || (kind !== "new" && kind !== "replaced")) return [];
  const cables = cablesInto(proposed.cables, box.id).filter((one) => one.entry === entry.id);
  const sizes = [...new Set(cables.map(({ cable }) => sizeWords(cable)))];
  const what = sizes.length === 0 ? wording.cableConnector : wording.cableConnectorFor(sizes.join(wording.and));
  return [piece("fitting", what, box.name, { note: wording.verify })];
}

const sizeWords = (cable: Cable): string => findCableItem(cable.item)?.sizeText ?? cable.item;

const WITHOUT_CONNECTOR: ReadonlySet<string> = new Set(["none", "taped", "soldered", "unknown"]);

/** A connector of its own for every new joint and every other size; one for a joint that was opened, should the old one not do. */
function spliceMaterial(scope: ScopeBox, box: Enclosure, { kind, item, fields }: ScopeChange): readonly Wanted[] {
  const splice = box.splices[item.id as SpliceId];
  if (splice === undefined || WITHOUT_CONNECTOR.has(splice.connector)) return [];
  const what = connectorTitle(splice.connector);
  const where = inBoxWords(splice.name, box);
  if (kind === "new" || fields?.includes("connector") === true)
    return [piece("connector", what, where, { item: splice.connector, note: wording.verify })];
  const home = scope.homes.find((one) => one.splice === splice.id)?.home?.splice;
  const isOpened = scope.changes.some(
    ({ attach, detach, was, will }) =>
      (attach > 0 && will?.at?.kind === "splice" && will.at.splice === splice.id) ||
      (detach > 0 && was?.at?.kind === "splice" && was.at.splice === home),
  );
  return isOpened
    ? [
        piece("connector", what, where, {
          item: splice.connector,
          note: wording.opened,
        }),
      ]
    : [];
}

/** "twist-on connector, large". */
const connectorTitle = (connector: string): string =>
  PIECES.get(connector) ?? (connector.endsWith("connector") ? connector : wording.connector(connector));

const PIECES = new Map<string, string>(Object.entries(CONNECTOR_PIECES));

function jumperMaterial(box: Enclosure, { kind, item }: ScopeChange): readonly Wanted[] {
  const jumper = box.jumpers[item.id as JumperId];
  if (jumper === undefined || (kind !== "new" && kind !== "replaced")) return [];
  const { awg, colour, material, stranded } = jumper;
  const what = wording.conductor(
    awg,
    MATERIAL_WORDS[material],
    stranded ? wording.stranded : wording.solid,
    COLOUR_WORDS[colour],
    lengthWords(jumper),
  );
  return [piece("conductor", what, inBoxWords(jumper.name, box))];
}

/** A cap for an end that is capped now, tape for one that is marked, a screw for the first on the metal of its box. */
function endMaterial(box: Enclosure, { kind, item, will, was, conductor, fields }: ScopeChange): readonly Wanted[] {
  const found: Wanted[] = [];
  if (will?.at?.kind === "capped" && was?.at?.kind !== "capped")
    found.push(
      piece("connector", wording.cap(conductor?.awg ?? ""), inBoxWords(item.name, box), {
        note: wording.verify,
      }),
    );
  if (conductor?.markedAs !== undefined && (kind === "new" || fields?.includes("markedAs") === true))
    found.push(piece("fitting", wording.tape(COLOUR_WORDS[conductor.markedAs]), inBoxWords(item.name, box)));
  if (will?.at?.kind === "bond" && (kind === "new" || was?.at?.kind !== "bond") && kind !== "kept")
    found.push(piece("fitting", wording.groundScrew, box.name, { note: wording.whereNone }));
  return found;
}

function cableMaterial(proposed: Installation, { kind, item }: ScopeChange): readonly Wanted[] {
  const cable = item.kind === "cable" ? proposed.cables[item.id as CableId] : undefined;
  if (cable === undefined || (kind !== "new" && kind !== "replaced")) return [];
  const what = findCableItem(cable.item)?.title ?? cable.item;
  if (cable.lengthFt === undefined)
    return [piece("cable", what, cable.name, { item: cable.item, note: wording.measureRun })];
  return [
    {
      group: "cable",
      what,
      quantity: cable.lengthFt,
      unit: "ft",
      where: cable.name,
      item: cable.item,
      note: wording.asDrawn,
    },
  ];
}

/** What comes out. */
export function scopeRemoved(asFound: Installation, { boxes, elsewhere }: ScopeDifference): readonly ScopeRemoved[] {
  const lines = new Map<string, ScopeRemoved>();
  const note = (what: string, where: string): void => {
    const known = lines.get(what);
    lines.set(what, {
      key: what,
      what,
      quantity: 1 + (known?.quantity ?? 0),
      where: [...(known?.where ?? []), where],
    });
  };
  for (const { enclosure, name, changes } of boxes) {
    const before = asFound.enclosures[enclosure];
    for (const { item, kind } of changes) {
      if (before === undefined || (kind !== "removed" && kind !== "replaced")) continue;
      const device = item.kind === "device" ? before.devices[(item.was ?? item.id) as DeviceId] : undefined;
      if (device !== undefined) note(deviceTitle(device), inBoxWords(device.name, { name }));
      else if (item.kind === "enclosure") note(boxItemWords(before), name);
      else if (item.kind === "part" || item.kind === "ring") note(item.name, name);
      else if (item.kind === "jumper") note(wording.jumper, inBoxWords(item.name, { name }));
      else if (item.kind === "splice") {
        const connector = before.splices[(item.was ?? item.id) as SpliceId]?.connector ?? "none";
        if (!WITHOUT_CONNECTOR.has(connector)) note(connectorTitle(connector), inBoxWords(item.name, { name }));
      }
    }
  }
  for (const { item, kind } of elsewhere) {
    const cable = item.kind === "cable" ? asFound.cables[item.id as CableId] : undefined;
    if (cable !== undefined && (kind === "removed" || kind === "replaced"))
      note(findCableItem(cable.item)?.title ?? cable.item, cable.name);
  }
  return [...lines.values()];
}
