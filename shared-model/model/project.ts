import type { Cable } from "./cable.ts";
import type { Enclosure } from "./enclosure.ts";
import type { Evidence, WithEvidence } from "./evidence.ts";
import type {
  AttachmentId,
  CableId,
  DeviceId,
  EnclosureId,
  EndKey,
  LabelId,
  LoadId,
  OutletKey,
  ReadingId,
  RoomId,
  SpliceId,
} from "./ids.ts";
import type { Load } from "./load.ts";
import type { Room } from "./room.ts";
import type { Severity } from "./severity.ts";
import type { SurveyedReading } from "./survey.ts";
import type { SymbolSet } from "./symbol-set.ts";
import type { RecordedTest } from "./test-record.ts";

export const FORMAT = "loadside";
/** Version of the file format that this code writes, and the oldest reader that may open it. */
export const FORMAT_VERSION = 1;
export const FORMAT_MIN_READER = 1;

/** Editions of NFPA 70, dated sets of tables and clauses. 2026 answers with the 2023 text, not verified. */
export const DATED_EDITIONS = [2011, 2014, 2017, 2020, 2023, 2026] as const;
/** What a drawing can be judged by; CSA C22.1 is held for the count of box fill only. */
export const EDITIONS = [...DATED_EDITIONS, "CSA-C22.1"] as const;
export type Edition = (typeof EDITIONS)[number];

export type StateName = "as-found" | "proposed";

/** A label fixed to something, with the words that stand on it. */
export interface Label extends WithEvidence {
  readonly id: LabelId;
  readonly wording: string;
  readonly on: { readonly device: DeviceId } | { readonly enclosure: EnclosureId } | { readonly cable: CableId };
  readonly requiredBy?: string;
  readonly order: number;
}

/** What an enclosure is meant to do, said by a person; roles are derived, never stored. */
export interface BoxIntent {
  readonly supply?: CableId;
  /** By cable: meant to be behind the ground-fault device here, or meant not to be. */
  readonly protect?: Readonly<Record<CableId, boolean>>;
}

/** A person's decision about one outlet: a wish for protection, or a decision against a wish, with who and why. */
export interface OutletWish {
  readonly wish: "protect" | "decided-not";
  readonly by?: string;
  readonly reason?: string;
}

export interface Intent {
  readonly boxes: Readonly<Record<EnclosureId, BoxIntent>>;
  readonly outlets: Readonly<Record<OutletKey, OutletWish>>;
}

/** One complete account of the wiring: as it was found, or as it will be. */
export interface Installation {
  readonly enclosures: Readonly<Record<EnclosureId, Enclosure>>;
  readonly cables: Readonly<Record<CableId, Cable>>;
  readonly loads: Readonly<Record<LoadId, Load>>;
  readonly labels: Readonly<Record<LabelId, Label>>;
  readonly intent: Intent;
  /** What the panel directory says, by breaker. */
  readonly directory: Readonly<Record<DeviceId, string>>;
}

export const READING_INSTRUMENTS = [
  "meter",
  "low-impedance-meter",
  "plug-in-tester",
  "noncontact",
  "continuity",
  "insulation",
  // What was done, and what followed: TEST and RESET of a device, the button of a plug-in tester, a leak.
  "own-test",
  "reset",
  "plug-in-button",
  "leak",
  "clamp-meter",
  // A lamp of about 60 W on a fused lead.
  "test-lamp",
  // Looked at, without an instrument.
  "by-eye",
] as const;
export type ReadingInstrument = (typeof READING_INSTRUMENTS)[number];

/** A measurement or a test as evidence: what was measured where, in which arrangement, when and by whom. */
export interface Reading extends WithEvidence {
  readonly id: ReadingId;
  readonly instrument: ReadingInstrument;
  /** One or two points, as ends, terminals ("d1.LINE_H"), or outlets. */
  readonly points: readonly string[];
  readonly value: string;
  readonly unit?: string;
  readonly state?: StateName;
  readonly arrangement?: {
    readonly switches?: Readonly<Record<DeviceId, string>>;
    readonly off?: readonly DeviceId[];
    readonly capped?: readonly EndKey[];
    /** What was unplugged or not in use. */
    readonly idle?: readonly (LoadId | DeviceId)[];
  };
  readonly computed?: boolean;
  readonly takenAt?: string;
  readonly by?: string;
  /** What tells the instrument from others of its kind, as its serial number. */
  readonly instrumentId?: string;
  readonly remark?: string;
  /** Absent on evidence that is no line of the test record. */
  readonly record?: RecordedTest;
  /** Absent on a reading that is no part of a survey of unknown cables or of the map of circuits. */
  readonly survey?: SurveyedReading;
  readonly order: number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Where things stand on the sheet. It never enters an answer about the wiring. Lengths are drawing units. */
export interface Layout {
  readonly enclosures: Readonly<Record<EnclosureId, Point>>;
  /** Splices dragged to a place of their own, relative to the inside of their box. */
  readonly splices: Readonly<Record<SpliceId, Point>>;
  /** Bends set by a person along a cable. */
  readonly cables: Readonly<Record<CableId, readonly Point[]>>;
  readonly rooms: Readonly<Record<RoomId, Point & { readonly width: number; readonly height: number }>>;
  /** Boxes and panels that stay where they are when the drawing is arranged; absent where there are none. */
  readonly pinned?: Readonly<Record<EnclosureId, true>>;
}

export interface Supply {
  readonly system: "120/240" | "208Y/120";
  /** Volts to neutral at the source; absent means 120. */
  readonly nominalV?: number;
}

/** A local change to the rules, with the reason that is printed. */
export interface Amendment {
  readonly rule: string;
  readonly change: { readonly kind: "off" } | { readonly kind: "value"; readonly name: string; readonly value: number };
  readonly reason: string;
  /** Who asks for it: the authority, the by-law, the person. Older files do not tell. */
  readonly by?: string;
}

/** A person's word that a finding is known and accepted. Dangers stay visible. */
export interface Acknowledgement {
  readonly finding: string;
  readonly state: StateName;
  readonly by: string;
  readonly reason: string;
  readonly at: string;
  /** What the finding said then: when it says something else now, the word given does not cover it. */
  readonly said?: string;
  /** How grave it was then: a word given to a caution does not cover a violation. */
  readonly severity?: Severity;
}

/** An as-found edit that could not be carried over into proposed, kept until a person has settled it. */
export interface HeldBack {
  /** Counts up within a document. */
  readonly id: string;
  /** Name of the edit: "Remove C5". */
  readonly title: string;
  readonly items: readonly {
    readonly kind: "enclosure" | "cable" | "device";
    readonly id: string;
    readonly name: string;
  }[];
  /** What would have been broken, as a sentence. */
  readonly because: string;
}

/** A photo as evidence of what was seen. Its picture stands in the file itself, so that a drawing stays one piece. */
export interface Attachment {
  readonly id: AttachmentId;
  readonly name: string;
  readonly mediaType: "image/png" | "image/jpeg";
  readonly base64: string;
  /** Absent once its box was removed from both states. */
  readonly enclosure?: EnclosureId;
  /** What it shows, in the words of whoever was there. */
  readonly caption?: string;
  readonly takenAt?: string;
  readonly by?: string;
  readonly order: number;
}

/** A document. Unknown fields of a file stay on the objects that carried them. */
export interface Project {
  readonly format: typeof FORMAT;
  readonly version: number;
  readonly minReader: number;
  readonly title: string;
  readonly edition: Edition;
  readonly amendments: readonly Amendment[];
  readonly supply: Supply;
  readonly rooms: Readonly<Record<RoomId, Room>>;
  readonly asFound: Installation;
  readonly proposed?: Installation;
  readonly layout: Layout;
  readonly readings: Readonly<Record<ReadingId, Reading>>;
  readonly acknowledgements: readonly Acknowledgement[];
  /** Absent when every as-found edit was carried over. */
  readonly heldBack?: readonly HeldBack[];
  readonly attachments: Readonly<Record<AttachmentId, Attachment>>;
  /** Load for which voltage drop is told, per cent of the rating of the breaker; absent: the usual share. */
  readonly statedLoadPercent?: number;
  /** Voltage drop past which advice is given, per cent: from the panel of the breaker, and from the service; absent: as recommended. */
  readonly branchDropPercent?: number;
  readonly totalDropPercent?: number;
  /** Drawing symbols seen from afar and printed; absent: the US ones. */
  readonly symbols?: SymbolSet;
  /** The work that proposed shows has been done, so that its tests are due. Absent is not recorded. */
  readonly workDone?: boolean;
  readonly tariff?: Readonly<Record<string, number>>;
  readonly notes: string;
  readonly evidence?: Evidence;
}

export const emptyInstallation: Installation = {
  enclosures: {},
  cables: {},
  loads: {},
  labels: {},
  intent: { boxes: {}, outlets: {} },
  directory: {},
};

/** A new document with nothing drawn. */
export const emptyProject = (title: string, edition: Edition): Project => ({
  format: FORMAT,
  version: FORMAT_VERSION,
  minReader: FORMAT_MIN_READER,
  title,
  edition,
  amendments: [],
  supply: { system: "120/240" },
  rooms: {},
  asFound: emptyInstallation,
  layout: { enclosures: {}, splices: {}, cables: {}, rooms: {} },
  readings: {},
  acknowledgements: [],
  attachments: {},
  notes: "",
});
