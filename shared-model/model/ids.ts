/** Opaque, branded identities. Minted by the caller of a command, never shown to a person, equal in both states. */
export type EnclosureId = string & { readonly __id: "enclosure" };
export type EntryId = string & { readonly __id: "entry" };
export type RingId = string & { readonly __id: "ring" };
export type CableId = string & { readonly __id: "cable" };
/** Key of a conductor inside its cable: "bk", "wh", "rd", "cu"; not an id of its own. */
export type ConductorKey = string & { readonly __id: "conductor" };
export type DeviceId = string & { readonly __id: "device" };
/** Name of a terminal inside its device type: "LINE_H", "N1"; not an id of its own. */
export type TerminalName = string & { readonly __id: "terminal" };
export type SpliceId = string & { readonly __id: "splice" };
export type JumperId = string & { readonly __id: "jumper" };
export type PassThroughId = string & { readonly __id: "pass-through" };
export type LoadId = string & { readonly __id: "load" };
export type RoomId = string & { readonly __id: "room" };
export type LabelId = string & { readonly __id: "label" };
export type ReadingId = string & { readonly __id: "reading" };
export type AttachmentId = string & { readonly __id: "attachment" };

/** Which side of a cable or jumper an end belongs to. */
export type Side = "a" | "b";

/** One end of a cable conductor ("c1.bk.a") or of a jumper ("j1.a"): key of the `places` table of its enclosure. */
export type EndKey = string & { readonly __id: "end" };

/** An outlet: a device, or one half of a duplex whose tab is off ("d5/upper"). */
export type OutletKey = string & { readonly __id: "outlet" };

export type AnyId =
  | EnclosureId
  | EntryId
  | RingId
  | CableId
  | DeviceId
  | SpliceId
  | JumperId
  | PassThroughId
  | LoadId
  | RoomId
  | LabelId
  | ReadingId
  | AttachmentId;

const LONGEST_ID = 40;

/** By character code: true for what an id is made of, so that an end key can be taken apart and a path in an error stays readable. */
const IN_IDS: readonly boolean[] = Array.from({ length: 128 }, (_, code) =>
  /[A-Za-z0-9_-]/.test(String.fromCharCode(code)),
);

/** Names that every object inherits are no ids, or `id in table` would find them in every table. */
const RESERVED: ReadonlySet<string> = new Set([...Object.getOwnPropertyNames(Object.prototype), "prototype"]);

/** Ids are 1 to 40 letters, digits, `_` or `-`. Judged a character at a time: a large file asks some 100,000 times. */
export const isId = (text: string): boolean => isIdBetween(text, 0, text.length);

/** Brands a text as an id. Throws on a malformed one: check with `isId` at a border. */
export function asId<T extends AnyId | ConductorKey>(text: string): T {
  if (!isId(text)) throw new Error(`Not an id: ${JSON.stringify(text)}`);
  return text as T;
}

export type ParsedEnd =
  | { readonly of: "cable"; readonly cable: CableId; readonly conductor: ConductorKey; readonly side: Side }
  | { readonly of: "jumper"; readonly jumper: JumperId; readonly side: Side };

export const cableEnd = (cable: CableId, conductor: ConductorKey, side: Side): EndKey =>
  `${cable}.${conductor}.${side}` as EndKey;

export const jumperEnd = (jumper: JumperId, side: Side): EndKey => `${jumper}.${side}` as EndKey;

/** Takes an end key apart; undefined when the text is not one. */
export function parseEnd(text: string): ParsedEnd | undefined {
  const side = text.slice(-1);
  if ((side !== "a" && side !== "b") || text.charAt(text.length - 2) !== ".") return undefined;
  const owner = text.slice(0, -2);
  const dot = owner.indexOf(".");
  if (dot < 0) return isId(owner) ? { of: "jumper", jumper: owner as JumperId, side } : undefined;
  const cable = owner.slice(0, dot);
  const conductor = owner.slice(dot + 1);
  if (!isId(cable) || !isId(conductor)) return undefined;
  return { of: "cable", cable: cable as CableId, conductor: conductor as ConductorKey, side };
}

const LEAST_RESERVED = Math.min(...[...RESERVED].map(({ length }) => length));

/** Whether `parseEnd` can take it apart; makes no texts, since a large file asks some 10,000 times. */
export function isEnd(text: string): boolean {
  const last = text.length - 2;
  if (last < 1 || text[last] !== "." || (text[last + 1] !== "a" && text[last + 1] !== "b")) return false;
  const dot = text.indexOf(".");
  return isIdBetween(text, 0, dot) && (dot === last || isIdBetween(text, dot + 1, last));
}

function isIdBetween(text: string, from: number, to: number): boolean {
  if (to <= from || to - from > LONGEST_ID) return false;
  for (let at = from; at < to; at++) if (IN_IDS[text.charCodeAt(at)] !== true) return false;
  return to - from < LEAST_RESERVED || !RESERVED.has(text.slice(from, to));
}

export const otherSide = (side: Side): Side => (side === "a" ? "b" : "a");

/** Half of a duplex; a face has one outlet and no half. */
export type Half = "upper" | "lower";

export const outletKey = (device: DeviceId, half?: Half): OutletKey =>
  (half === undefined ? device : `${device}/${half}`) as string as OutletKey;

export function parseOutlet(key: OutletKey): { readonly device: DeviceId; readonly half?: Half } {
  const [device = "", half] = key.split("/");
  return half === "upper" || half === "lower" ? { device: device as DeviceId, half } : { device: device as DeviceId };
}
