import type { EnclosureId } from "../model/ids.ts";
import type { Project, ReadingInstrument, StateName } from "../model/project.ts";
import type { RecordStage, RecordTest } from "../model/test-record.ts";
import type { BoxRoles } from "./circuit.ts";
import type { CircuitFeeds } from "./circuit-feeds.ts";
import type { FillLedger } from "./fill.ts";
import type { CannotTell, Finding, SectionPointer } from "./finding.ts";
import type { ScopeAnswer } from "./scope.ts";

/** Every kind of sheet, as the command line names it. */
export const SHEET_KINDS = [
  "drawing",
  "make-up",
  "box-fill",
  "protection",
  "findings",
  "scope",
  "steps",
  "test-record",
  "labels",
  "directory",
  "reset-slips",
  "as-found",
  "materials",
] as const;
export type SheetKind = (typeof SHEET_KINDS)[number];

export const PAPERS = ["letter", "a4", "tabloid", "a3"] as const;
export type PaperName = (typeof PAPERS)[number];

/** How an answer of the protection proof stands. */
export type ProofVerdict = "pass" | "fail" | "cannot-tell";

/** One outlet of the protection schedule, in words. */
export interface ProtectionRow {
  readonly outlet: { readonly id: string; readonly name: string };
  readonly enclosure: { readonly id: EnclosureId; readonly name: string };
  readonly room?: string;
  /** A section of the code, "wish", "room not entered", or absent where nobody asks. */
  readonly requiredBy?: string;
  /** A section or a wish asks for it. */
  readonly isAsked: boolean;
  readonly isProtected: boolean;
  /** Names, with the boxes in which they stand. */
  readonly protectedBy: readonly { readonly id: string; readonly name: string; readonly enclosure?: string }[];
  /** By one or another of `protectedBy`, as switches stand. */
  readonly bySetting: boolean;
  /** The device that `tests` are told of. */
  readonly told?: string;
  readonly tests: Readonly<Record<"P1" | "P2" | "P3" | "P4" | "P5" | "P6", ProofVerdict>>;
  /** The proof in words: whole sentences. */
  readonly reason: string;
}

export interface ProtectionAnswers {
  /** The edition names the places in which protection is asked; without it only wishes are known. */
  readonly isListHeld: boolean;
  readonly rows: readonly ProtectionRow[];
}

/** Box fill of one enclosure of one state. Panels have none. */
export interface FillRow {
  readonly enclosure: EnclosureId;
  readonly ledger: FillLedger;
}

/** One line of the test record of a box or panel, as printed. */
export interface RecordLine {
  readonly test: RecordTest;
  /** What it is done at: "R1b", "breaker 14". */
  readonly at: string;
  /** What stood there before the work, where that is another: "R1". */
  readonly was?: string;
  readonly cells: Readonly<Partial<Record<RecordStage, RecordCellLine>>>;
}

export interface RecordCellLine {
  /** In words with units; absent where the drawing does not lead to expect one thing. */
  readonly expected?: string;
  /** What was found, in words with units; absent where nothing was measured yet: a blank to write in. */
  readonly found?: string;
  readonly outcome?: "agrees" | "differs" | "not-compared";
  readonly instrument?: ReadingInstrument;
  /** What a person wrote to tell it from others of its kind. */
  readonly instrumentId?: string;
  readonly takenAt?: string;
  readonly by?: string;
  readonly remark?: string;
}

export interface RecordLines {
  readonly enclosure?: EnclosureId;
  /** Name of the box or panel. */
  readonly name: string;
  readonly lines: readonly RecordLine[];
}

/** How far the data of the rules have been looked over. */
export interface RuleData {
  /** "2020", "CSA C22.1". */
  readonly edition: string;
  /** Set once a licensed person has signed for them; absent: the amber line is printed. */
  readonly reviewedBy?: string;
  readonly checksRun: number;
  /** Where the edition at hand says how a panel directory is worded; absent where it is not known to. */
  readonly directory?: SectionPointer;
}

/**
 * All that a sheet may tell, as data: sheets never solve or judge. `analysis/sheet-input.ts` gathers it; the window has it
 * made in its worker. Everything is there, whatever sheet is made.
 */
export interface SheetInput {
  readonly project: Project;
  readonly state: StateName;
  /** Day of printing, "2026-05-04": given from outside, so that the same input makes the same file. */
  readonly date: string;
  readonly paper: PaperName;
  /** One box alone, where a sheet is made box by box. */
  readonly box?: EnclosureId;
  /** Name of the file that it was made from. */
  readonly fileName?: string;
  readonly rules: RuleData;
  /** Findings of the states, sorted as the list of findings is. `proposed` is absent where nothing is proposed. */
  readonly findings: StateAnswers<readonly Finding[]>;
  readonly couldNotTell: StateAnswers<readonly CannotTell[]>;
  readonly fill: StateAnswers<readonly FillRow[]>;
  /** Of `state`. */
  readonly protection: ProtectionAnswers;
  readonly record: readonly RecordLines[];
  /** What each breaker of `state` feeds. */
  readonly circuits: readonly CircuitFeeds[];
  /** Roles of ends and splices as found, by enclosure. */
  readonly roles: Readonly<Record<EnclosureId, BoxRoles>>;
  /** The same of `state`. */
  readonly shownRoles: Readonly<Record<EnclosureId, BoxRoles>>;
  /** The difference as found to proposed with steps, labels and materials; absent where nothing is proposed. */
  readonly scope?: ScopeAnswer;
}

export interface StateAnswers<T> {
  readonly asFound: T;
  readonly proposed?: T;
}
