import type { CableSide } from "../model/cable.ts";
import type { EntryMeans, Ring, VolumeFact } from "../model/enclosure.ts";
import type { EvidenceMark } from "../model/evidence.ts";
import type {
  AttachmentId,
  CableId,
  ConductorKey,
  DeviceId,
  EnclosureId,
  EndKey,
  EntryId,
  JumperId,
  LabelId,
  LoadId,
  OutletKey,
  PassThroughId,
  ReadingId,
  RingId,
  RoomId,
  SpliceId,
} from "../model/ids.ts";
import type { At } from "../model/place.ts";
import type {
  Amendment,
  BoxIntent,
  Edition,
  Installation,
  Label,
  Layout,
  OutletWish,
  Point,
  Reading,
  StateName,
} from "../model/project.ts";
import type { Room, RoomKind } from "../model/room.ts";
import type { Severity } from "../model/severity.ts";
import type { Colour } from "../units/colour.ts";
import type { WireSize } from "../units/wire-size.ts";

type InState = { readonly state: StateName };
type InBox = InState & { readonly enclosure: EnclosureId };

/** An entry of a known enclosure: one that exists, or a new one to make. */
export type EntryTarget = { readonly entry: EntryId } | { readonly newEntry: EntryId; readonly means: EntryMeans };

/** Where a new or moved cable side goes: an entry that exists, a new entry to make, or open country. */
export type SideTarget =
  | { readonly enclosure: EnclosureId; readonly entry: EntryId }
  | { readonly enclosure: EnclosureId; readonly newEntry: EntryId; readonly means: EntryMeans }
  | Extract<CableSide, { outside: string }>;

export type ItemRef =
  | { readonly kind: "enclosure"; readonly id: EnclosureId }
  | { readonly kind: "cable"; readonly id: CableId }
  | { readonly kind: "device"; readonly id: DeviceId }
  | { readonly kind: "splice"; readonly id: SpliceId }
  | { readonly kind: "jumper"; readonly id: JumperId }
  | { readonly kind: "load"; readonly id: LoadId }
  | { readonly kind: "label"; readonly id: LabelId }
  | { readonly kind: "room"; readonly id: RoomId };

/** What `set-property` may be told to change; the field decides which values are taken. */
export type PropertyTarget =
  | ItemRef
  | { readonly kind: "entry"; readonly enclosure: EnclosureId; readonly id: EntryId }
  | { readonly kind: "ring"; readonly enclosure: EnclosureId; readonly id: RingId }
  | { readonly kind: "pass-through"; readonly enclosure: EnclosureId; readonly id: PassThroughId }
  | { readonly kind: "conductor"; readonly cable: CableId; readonly id: ConductorKey }
  | { readonly kind: "end"; readonly enclosure: EnclosureId; readonly id: EndKey }
  | { readonly kind: "project" };

/**
 * Null clears an optional field. A volume fact holds its volume as in the model, in 1/10 000 in³ (`cubicInches(30.3)`);
 * every other number is in the unit that `catalog/properties.ts` names.
 */
export type PropertyValue =
  | string
  | number
  | boolean
  | readonly string[]
  | { readonly [key: string]: string | number | boolean }
  | null;

/** Arguments of every command, by its id. */
export interface CommandArgs {
  "place-enclosure": InState & {
    readonly id: EnclosureId;
    readonly item: string;
    readonly name: string;
    readonly at: Point;
    readonly roomId?: RoomId;
    readonly note?: string;
    /** Bars of a panel; required for a panel item. */
    readonly bars?: { readonly neutral: DeviceId; readonly ground: DeviceId };
  };
  /** Bends of cables whose both boxes move by the same go along. */
  "move-enclosures": { readonly moves: readonly { readonly id: EnclosureId; readonly to: Point }[] };
  /** Pinned boxes stay where they are when the drawing is arranged. */
  "pin-enclosures": { readonly enclosures: readonly EnclosureId[]; readonly pinned: boolean };
  "rename-item": InState & { readonly item: ItemRef; readonly name: string };
  /** Removes items with what depends on them: a box with its cables' other ends, a device with its loads and labels. */
  "remove-items": InState & { readonly items: readonly ItemRef[] };
  "place-device": InBox & { readonly id: DeviceId; readonly type: string; readonly name: string };
  /** To another place among the devices of its enclosure, or, with nothing landed on it, to another enclosure. */
  "move-device": InState & { readonly id: DeviceId; readonly enclosure: EnclosureId; readonly before?: DeviceId };
  "place-load": InState & {
    readonly id: LoadId;
    readonly item: string;
    readonly name: string;
    readonly plug: OutletKey;
  };
  "move-load": InState & { readonly id: LoadId; readonly plug: OutletKey };
  /** Every end arrives capped. */
  "route-cable": InState & {
    readonly id: CableId;
    readonly item: string;
    readonly name: string;
    readonly a: SideTarget;
    readonly b: SideTarget;
    readonly lengthFt?: number;
  };
  /** The ends of the moved side arrive capped. */
  "move-cable-side": InState & { readonly cable: CableId; readonly side: "a" | "b"; readonly to: SideTarget };
  /** Bends from side a to side b, on the sheet; none: the cable finds its own way. */
  "bend-cable": { readonly cable: CableId; readonly bends: readonly Point[] };
  /** Puts an end anywhere: on a terminal, in a splice, on the bond, capped or loose. */
  "land-end": InBox & { readonly end: EndKey; readonly at: At };
  "lift-end": InBox & { readonly end: EndKey };
  "cap-end": InBox & { readonly end: EndKey };
  "mark-spare": InBox & { readonly end: EndKey; readonly spare: boolean };
  /** Joins two or more ends of one enclosure in a new splice. */
  "splice-ends": InBox & {
    readonly splice: SpliceId;
    readonly name: string;
    readonly connector: string;
    /** Nobody picked the connector: it is the usual one for these ends, and gives way to the next when more join. */
    readonly connectorAssumed?: boolean;
    readonly ends: readonly EndKey[];
  };
  "join-splice": InBox & { readonly end: EndKey; readonly splice: SpliceId };
  /** Takes an end out and caps it; a splice left with no member goes. */
  "leave-splice": InBox & { readonly end: EndKey };
  "change-connector": InBox & { readonly splice: SpliceId; readonly connector: string };
  "add-jumper": InBox & {
    readonly jumper: JumperId;
    readonly name: string;
    readonly awg: WireSize;
    readonly colour: Colour;
    readonly from: At;
    readonly to: At;
  };
  /** Moves all ends on a terminal into a new splice and brings one jumper from it to the terminal. */
  "pigtail-terminal": InBox & {
    readonly device: DeviceId;
    readonly terminal: string;
    readonly splice: SpliceId;
    readonly spliceName: string;
    readonly connector: string;
    /** As for "splice-ends". */
    readonly connectorAssumed?: boolean;
    readonly jumper: JumperId;
    readonly jumperName: string;
  };
  "set-property": InState & {
    readonly target: PropertyTarget;
    readonly field: string;
    readonly value: PropertyValue;
    readonly evidence?: EvidenceMark;
  };
  /** Says how a fact is known without changing it; `field` is a property, or "at" for where an end is. */
  "mark-evidence": InState & {
    readonly target: PropertyTarget;
    readonly field: string;
    readonly evidence: EvidenceMark | null;
  };
  /** A raised ring, cover or extension on a box. */
  "add-ring": InBox & { readonly id: RingId; readonly kind: Ring["kind"]; readonly volume: VolumeFact };
  "remove-ring": InBox & { readonly id: RingId };
  /** Conductors of a cable that run through this box unbroken, from one entry to another. */
  "add-pass-through": InBox & {
    readonly id: PassThroughId;
    readonly cable: CableId;
    readonly conductors: readonly ConductorKey[];
    readonly entryIn: EntryTarget;
    readonly entryOut: EntryTarget;
    readonly loopLengthIn?: number;
  };
  "remove-pass-through": InBox & { readonly id: PassThroughId };
  "set-box-intent": InState & { readonly enclosure: EnclosureId; readonly intent: BoxIntent | null };
  "set-outlet-wish": InState & { readonly outlet: OutletKey; readonly wish: OutletWish | null };
  /** What the panel directory says about a breaker or fuse; null or an empty text takes the line away. */
  "set-directory-line": InState & { readonly device: DeviceId; readonly text: string | null };
  "add-room": { readonly id: RoomId; readonly name: string; readonly kinds: readonly RoomKind[] };
  "assign-room": InState & { readonly enclosures: readonly EnclosureId[]; readonly room: RoomId | null };
  "set-edition": { readonly edition: Edition };
  /** Makes a local amendment, or takes the place of the one that changes the same. */
  "set-amendment": {
    readonly rule: string;
    readonly change: Amendment["change"];
    readonly reason: string;
    /** Who asks for it. */
    readonly by: string;
  };
  /** Takes back the amendment of a value, or without `value` the one that switches the rule off. */
  "remove-amendment": { readonly rule: string; readonly value?: string };
  "move-splice": { readonly splice: SpliceId; readonly to: Point | null };
  "add-label": InState & {
    readonly id: LabelId;
    readonly wording: string;
    readonly on: Label["on"];
    readonly requiredBy?: string;
  };
  /** Makes the second account of the wiring, equal to as found. */
  "start-proposed": Record<never, never>;
  /** Makes proposed, or one enclosure of it, equal to as found again. */
  "reset-proposed": { readonly enclosure?: EnclosureId };
  "discard-proposed": Record<never, never>;
  /** A person has looked at an as-found edit that was not carried over. */
  "settle-held-back": { readonly id: string };
  "acknowledge-finding": {
    /** Key of the finding. */
    readonly finding: string;
    readonly state: StateName;
    readonly by: string;
    readonly reason: string;
    /** Time as an ISO 8601 text. */
    readonly at: string;
    /** Message and severity of the finding. */
    readonly said: string;
    readonly severity: Severity;
  };
  "withdraw-acknowledgement": { readonly finding: string; readonly state: StateName };
  /** Several commands as one step, each on what the one before made of the document; all of them or none. */
  "run-together": { readonly title: string; readonly calls: readonly TypedCall[] };
  /**
   * Another device in the place of one: conductors stay where terminals correspond and are capped elsewhere. In proposed
   * it is linked to the device of as found that it replaces.
   */
  "replace-device": InState & {
    readonly device: DeviceId;
    readonly id: DeviceId;
    readonly type: string;
    readonly name: string;
  };
  /**
   * Puts copies of some wiring into the drawing, with new ids for everything. `from` stands by itself, with its rooms and
   * the places of its boxes on the sheet relative to `at`. A room joins one of the same name and kinds.
   */
  "paste-items": InState & {
    readonly from: Installation;
    readonly rooms: Readonly<Record<RoomId, Room>>;
    readonly layout: Pick<Layout, "enclosures" | "splices" | "cables">;
    /** New id of everything in `from`, by its old one; of a room where it does not join one. */
    readonly ids: Readonly<Record<string, string>>;
    /** New names by old id; what is left out keeps its name. */
    readonly names: Readonly<Record<string, string>>;
    readonly at: Point;
    /** The box or panel that what is inside the one enclosure of `from` goes into; that enclosure itself does not come. */
    readonly into?: EnclosureId;
    /** How the step is called; "paste" unless told. */
    readonly as?: "paste" | "duplicate";
  };
  /** A JPEG in base64, brought down to `PHOTO_LIMITS` by whoever took it in. */
  "attach-photo": {
    readonly id: AttachmentId;
    readonly enclosure: EnclosureId;
    readonly name: string;
    readonly base64: string;
    readonly caption?: string;
    readonly takenAt?: string;
    readonly by?: string;
  };
  /** What is left out stays; null takes it away. */
  "describe-photo": {
    readonly id: AttachmentId;
    readonly caption?: string | null;
    readonly takenAt?: string | null;
    readonly by?: string | null;
  };
  "remove-photo": { readonly id: AttachmentId };
  "add-reading": { readonly id: ReadingId; readonly reading: Omit<Reading, "id" | "order"> };
  /** What a person entered is replaced as a whole; a field that is left out goes. */
  "change-reading": { readonly id: ReadingId; readonly reading: Omit<Reading, "id" | "order"> };
  "remove-reading": { readonly id: ReadingId };
}

export type CommandId = keyof CommandArgs;

/** A command with arguments of its own type. */
export type TypedCall<I extends CommandId = CommandId> = {
  [K in I]: { readonly command: K; readonly args: CommandArgs[K] };
}[I];
