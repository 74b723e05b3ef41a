import type { ScopeChange, ScopeItem, ScopeKind } from "../../answers/scope.ts";
import type { Device } from "../../model/device.ts";
import type { Enclosure, Splice } from "../../model/enclosure.ts";
import type { DeviceId } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { fieldWords } from "../../queries/field-words.ts";
import { inOrder } from "../../queries/in-order.ts";
import type { EditionData } from "../../rules/editions/edition-data.ts";
import { fillLedger } from "../../rules/fill/fill-ledger.ts";
import { asBox, type BoxPair, boxFields, deviceFields, differentFields } from "./box-pair.ts";
import { fieldAndValue, PARTS, partValueWords } from "./field-words.ts";
import { openingChanges } from "./opening-changes.ts";
import { change } from "./part-change.ts";
import { boxItemWords, connectorWords, cubicInchWords, deviceWords, volumeWords } from "./scope-words.ts";

/** Devices of a box. One that another takes the place of is told with that one; one that comes from another box is moved. */
export function deviceChanges(pair: BoxPair): readonly ScopeChange[] {
  const { before, after, former, elsewhere } = pair;
  const gone = new Map(Object.entries(before?.devices ?? {}) as [DeviceId, Device][]);
  const changes = inOrder<Device>(after?.devices ?? {}).map((device) => {
    const item: ScopeItem = { kind: "device", id: device.id, name: device.name };
    const same = gone.get(device.id);
    gone.delete(device.id);
    if (same !== undefined) return sameDevice(pair, same, device, item);
    const home = elsewhere.asFound.get(device.id);
    if (home !== undefined)
      return change(pair, { kind: "moved", item, was: nameOfBox(pair.asFound, home), will: after?.name });
    const old = former.get(device.id);
    const replaced = old === undefined ? undefined : gone.get(old);
    if (old === undefined || replaced === undefined)
      return change(pair, { kind: "new", item, will: deviceWords(device) });
    gone.delete(old);
    const linked = { ...item, was: old };
    return change(pair, { kind: "replaced", item: linked, was: deviceWords(replaced), will: deviceWords(device) });
  });
  const left = inOrder(Object.fromEntries(gone)).map((device) => {
    const item: ScopeItem = { kind: "device", id: device.id, name: device.name };
    const home = elsewhere.proposed.get(device.id);
    if (home === undefined) return change(pair, { kind: "removed", item, was: deviceWords(device) });
    return change(pair, { kind: "moved", item, was: before?.name, will: nameOfBox(pair.proposed, home) });
  });
  return [...changes, ...left];
}

function sameDevice(pair: BoxPair, was: Device, is: Device, item: ScopeItem): ScopeChange {
  const fields = deviceFields(was, is);
  const kind: ScopeKind = fields.includes("type")
    ? "replaced"
    : fields.length > 0
      ? "changed"
      : was.name !== is.name
        ? "relabelled"
        : "kept";
  const tiedTo = ({ tiedTo: id }: Device): string | undefined =>
    id && (pair.after?.devices[id] ?? pair.before?.devices[id])?.name;
  const values = (device: Device): string =>
    fields
      .map((field) => fieldAndValue(field, field === "tiedTo" ? tiedTo(device) : device[field as keyof Device]))
      .join(", ");
  const isPlain = kind !== "changed";
  return change(pair, {
    kind,
    item,
    was: isPlain ? deviceWords(was) : values(was),
    will: isPlain ? deviceWords(is) : values(is),
    fields,
  });
}

const nameOfBox = ({ enclosures }: Installation, id: Enclosure["id"]): string => enclosures[id]?.name ?? id;

/** The joints of a box: kept under this name or another, fitted with another connector, new, or gone. */
export function spliceChanges(pair: BoxPair): readonly ScopeChange[] {
  const { before, after, homes } = pair;
  const seen = new Set<string>();
  const changes = inOrder<Splice>(after?.splices ?? {}).map((splice) => {
    const home = homes.splices.get(splice.id);
    const was = home === undefined ? undefined : before?.splices[home];
    const item: ScopeItem = {
      kind: "splice",
      id: splice.id,
      name: splice.name,
      ...(home !== undefined && home !== splice.id && { was: home }),
    };
    if (was === undefined) return change(pair, { kind: "new", item, will: connectorWords(splice.connector) });
    seen.add(was.id);
    const fields = differentFields(was, splice);
    if (fields.length === 0) return change(pair, { kind: "kept", item, was: was.name, will: splice.name });
    const [old, now] = [connectorWords(was.connector), connectorWords(splice.connector)];
    return change(pair, { kind: "changed", item, was: `${was.name}, ${old}`, will: `${splice.name}, ${now}`, fields });
  });
  const gone = inOrder<Splice>(before?.splices ?? {}).filter(({ id }) => !seen.has(id));
  return [
    ...changes,
    ...gone.map(({ id, name, connector }) =>
      change(pair, { kind: "removed", item: { kind: "splice", id, name }, was: connectorWords(connector) }),
    ),
  ];
}

/** The box itself, its parts, its openings and its rings. */
export function boxChanges(pair: BoxPair, edition: EditionData | undefined): readonly ScopeChange[] {
  return [...ownChanges(pair, edition), ...openingChanges(pair)];
}

/** Fields in which another value is another box; the others are parts of it or facts about it. */
const OTHER_BOX: ReadonlySet<string> = new Set(["item", "material", "shape"]);

function ownChanges(pair: BoxPair, edition: EditionData | undefined): readonly ScopeChange[] {
  const { id, before, after } = pair;
  const item: ScopeItem = { kind: "enclosure", id, name: (after ?? before)?.name ?? id };
  if (before === undefined && after !== undefined)
    return [change(pair, { kind: "new", item, will: boxItemWords(after) })];
  if (before !== undefined && after === undefined)
    return [change(pair, { kind: "removed", item, was: boxItemWords(before) })];
  if (before === undefined || after === undefined) return [];
  const fields = boxFields(before, after);
  const changes: ScopeChange[] = [];
  if (fields.some((field) => OTHER_BOX.has(field)))
    changes.push(change(pair, { kind: "replaced", item, was: boxWords(before), will: boxWords(after), fields }));
  else if (before.name !== after.name)
    changes.push(change(pair, { kind: "relabelled", item, was: before.name, will: after.name }));
  const isExchanged = changes.some(({ kind }) => kind === "replaced");
  for (const field of fields) {
    if (OTHER_BOX.has(field) || (isExchanged && !PARTS.has(field))) continue;
    changes.push(partChange(pair, before, after, field, edition));
  }
  return changes;
}

function boxWords(enclosure: Enclosure): string {
  const box = asBox(enclosure);
  return box === undefined ? boxItemWords(enclosure) : `${boxItemWords(box)}, ${volumeWords(box.volume)}`;
}

function partChange(
  pair: BoxPair,
  before: Enclosure,
  after: Enclosure,
  field: string,
  edition: EditionData | undefined,
): ScopeChange {
  const value = (enclosure: Enclosure): unknown => (enclosure as unknown as Readonly<Record<string, unknown>>)[field];
  const [was, is] = [value(before), value(after)];
  const item: ScopeItem = {
    kind: "part",
    id: `${pair.id}:${field}`,
    name: fieldWords(field),
  };
  const isThere = (one: unknown): boolean => one === "present" || (Array.isArray(one) && one.length > 0);
  const kind: ScopeKind =
    field !== "internalClamps" && !Array.isArray(was ?? is)
      ? "changed"
      : isThere(was) && !isThere(is)
        ? "removed"
        : !isThere(was) && isThere(is)
          ? "new"
          : "changed";
  const words = (one: unknown, enclosure: Enclosure): string => {
    const box = asBox(enclosure);
    return field === "volume" && box !== undefined ? volumeWords(box.volume) : partValueWords(field, one);
  };
  const allowance =
    field === "internalClamps" && kind === "removed" ? clampAllowance(pair, before, edition) : undefined;
  return change(pair, {
    kind,
    item,
    was: allowance ?? words(was, before),
    will: kind === "removed" && field === "internalClamps" ? undefined : words(is, after),
    fields: [field],
  });
}

/** What the clamps take of the volume as found: "2.25 in³". */
function clampAllowance({ asFound }: BoxPair, box: Enclosure, edition: EditionData | undefined): string | undefined {
  if (edition === undefined) return undefined;
  const line = fillLedger(asFound, box, edition).lines.find(({ item }) => item === "clamps");
  return line && cubicInchWords(line.volume);
}
