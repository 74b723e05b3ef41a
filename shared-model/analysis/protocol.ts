import type { Patch } from "immer";
import type { BoxRoles, OutletAnswer } from "../answers/circuit.ts";
import type { CommandCall } from "../answers/command-call.ts";
import type { EnergiseAsk, EnergisedNews, Operated } from "../answers/energised.ts";
import type { ExpectedAnswer, WantedTest } from "../answers/expected-test.ts";
import type { FillLedger } from "../answers/fill.ts";
import type { ScopeAnswers, ScopeKey, Severity } from "../answers/finding.ts";
import type { FitAnswer, FitAsk, MakeUpAnswer, MakeUpAsk } from "../answers/make-up.ts";
import type { OutletDropAnswer } from "../answers/outlet-drop.ts";
import type { BookRule } from "../answers/rule-book.ts";
import type { ScopeAnswer, ScopePart, ScopeWork } from "../answers/scope.ts";
import type { SupplyAnswer, SupplyAsk } from "../answers/supply.ts";
import type { CircuitMap, CircuitOrder, SurveyAnswer } from "../answers/survey.ts";
import type { Problem } from "../lib/result.ts";
import type { DeviceId, EnclosureId } from "../model/ids.ts";
import type { Edition, Point, Project, StateName } from "../model/project.ts";

/** Raised when either side must know of a change in these messages. */
export const PROTOCOL_VERSION = 11;

/** What the window sends. `revision` counts document changes in the window; `base` is the revision a patch applies to. */
export type ToWorker =
  | {
      readonly type: "hello";
      readonly version: number;
      /** Rules that are switched off for this session because they did not end in time. */
      readonly disabledRules?: readonly string[];
      /** After a restart: name every rule in a `started` message before it runs, so that the one that hangs is known. */
      readonly watchful?: boolean;
    }
  /** Parses the text of a file; nothing is opened by it. */
  | { readonly type: "parse"; readonly request: number; readonly text: string }
  /**
   * The document is now, unchanged, what `request` read. A worker that holds it no longer, or was replaced since, asks for
   * a snapshot.
   */
  | { readonly type: "opened"; readonly request: number; readonly revision: number }
  | { readonly type: "snapshot"; readonly project: Project; readonly revision: number }
  | { readonly type: "patches"; readonly base: number; readonly revision: number; readonly patches: readonly Patch[] }
  /** What would follow from each command, tried on a copy of revision `base`. */
  | {
      readonly type: "preview";
      readonly request: number;
      readonly base: number;
      readonly state: StateName;
      readonly calls: readonly CommandCall[];
      /** Key of the finding that each call is meant to mend: one that leaves it is objected to. */
      readonly mends?: string;
      /** An enclosure whose box fill is asked for, as it would be then; before anything is drawn, nothing else is told. */
      readonly fillOf?: EnclosureId;
    }
  /** What the circuit of revision `base` does when it is energised so. */
  | {
      readonly type: "energise";
      readonly request: number;
      readonly base: number;
      readonly state: StateName;
      readonly setting: Operated;
      readonly ask: EnergiseAsk;
    }
  /** The rules that run by an edition, with the numbers that a local amendment can replace. */
  | { readonly type: "rule-book"; readonly request: number; readonly edition: Edition }
  /**
   * Where the boxes of revision `base` go when they are arranged. It is worked out in slices, so that other messages are
   * answered meanwhile; of two, the later counts.
   */
  | {
      readonly type: "arrange";
      readonly request: number;
      readonly base: number;
      readonly state: StateName;
      readonly what: ArrangeWhat;
    }
  | { readonly type: "stop-arranging" }
  /** Voltage drop at the outlets of a device of revision `base`. */
  | {
      readonly type: "outlet-drops";
      readonly request: number;
      readonly base: number;
      readonly state: StateName;
      readonly device: DeviceId;
    }
  /** The make-up of a box of revision `base`: what it is to do, or what the drawing knows of that. */
  | { readonly type: "make-up"; readonly request: number; readonly base: number; readonly ask: MakeUpAsk }
  /** A ground-fault device in the place of a receptacle of revision `base`. */
  | { readonly type: "fit"; readonly request: number; readonly base: number; readonly ask: FitAsk }
  /** A panel at the side of a cable of revision `base` that leads out of the drawing. */
  | { readonly type: "supply"; readonly request: number; readonly base: number; readonly ask: SupplyAsk }
  /** What the readings of revision `base` tell of the cables of a box, or of the circuits of the house. */
  | { readonly type: "survey"; readonly request: number; readonly base: number; readonly ask: SurveyAsk }
  /** The difference of the states of revision `base`, with all that it leads to. */
  | { readonly type: "scope"; readonly request: number; readonly base: number }
  /** What revision `base` leads to expect of some tests of the test record. */
  | {
      readonly type: "expected-tests";
      readonly request: number;
      readonly base: number;
      readonly wanted: readonly WantedTest[];
    };

/** What a survey is about; readings and facts stand in the document. */
export type SurveyAsk = { readonly kind: "box"; readonly box: EnclosureId } | { readonly kind: "map" };

/** What a survey tells, of the kind that was asked for. */
export type SurveyReply =
  | { readonly kind: "box"; readonly answer: SurveyAnswer }
  /** Why the box cannot be surveyed, as a sentence. */
  | { readonly kind: "cannot"; readonly why: string }
  | { readonly kind: "map"; readonly map: CircuitMap; readonly order: CircuitOrder };

/** What is arranged, and what the window knows of the boxes. */
export interface ArrangeWhat {
  /** Circuit by circuit or room by room; or the circuit of one box alone. */
  readonly order: "by-circuit" | "by-room" | { readonly circuitOf: EnclosureId };
  /** Absent: all boxes. */
  readonly only?: readonly EnclosureId[];
  /** Where boxes stand that the layout does not name. */
  readonly places: Readonly<Record<EnclosureId, Point>>;
  /** What was drawn of boxes, relative to their places: left, top, width and height in drawing units. */
  readonly sizes: readonly (readonly [EnclosureId, number, number, number, number])[];
}

export interface ArrangeProgress {
  /** Boxes looked at, of so many at most. */
  readonly done: number;
  readonly of: number;
}

export interface ArrangedMove {
  readonly id: EnclosureId;
  readonly to: Point;
}

/** What a command would bring: its refusal, or the findings that would be new and those that would be gone. */
export type PreviewResult =
  | { readonly refused: string }
  | {
      readonly introduces: readonly { readonly rule: string; readonly severity: Severity; readonly message: string }[];
      readonly repairs: number;
      /** Names of outlets that would lose ground-fault protection. */
      readonly unprotects: readonly string[];
      /** Why it is not to be taken for a repair: a sentence; absent when nothing speaks against it. */
      readonly objection?: string;
      /** Only where it was asked for, and the enclosure would be there. */
      readonly fill?: FillLedger;
    };

/** What is different in the answers about one state. Scopes and enclosures that are not named keep their answers. */
export interface StateAnswers {
  readonly state: StateName;
  /** Everything that is not named here is gone. */
  readonly whole: boolean;
  readonly scopes: readonly { readonly key: ScopeKey; readonly answers: ScopeAnswers }[];
  readonly removed: readonly ScopeKey[];
  readonly ledgers: Readonly<Record<EnclosureId, FillLedger | null>>;
  readonly roles: Readonly<Record<EnclosureId, BoxRoles | null>>;
  /** Outlet answers of the checked enclosures; null when an enclosure is gone. */
  readonly outlets: Readonly<Record<EnclosureId, readonly OutletAnswer[] | null>>;
  readonly checksRun: number;
}

/**
 * The answers about one revision, of both states at once, because how a finding of one stands depends on the other. A
 * state that is in `states` and not in `changed` was not touched: what was said of it holds for this revision too.
 */
export interface AnswersMessage {
  readonly type: "answers";
  readonly revision: number;
  /** The states that the document has: as found, and proposed once it was started. */
  readonly states: readonly StateName[];
  readonly changed: readonly StateAnswers[];
  readonly tookMs: number;
}

/** What the worker answers. */
export type FromWorker =
  | { readonly type: "hello"; readonly version: number }
  /** The text is JSON within the limits, of a version that can be read; whether it is a document is still being judged. */
  | { readonly type: "readable"; readonly request: number }
  /** The text is a document. The window reads it again itself, which takes a third of the time of carrying it over. */
  | { readonly type: "parsed"; readonly request: number; readonly readOnly: boolean }
  | { readonly type: "not-parsed"; readonly request: number; readonly problems: readonly Problem[] }
  | AnswersMessage
  /** The base of a patch is not what the worker holds. */
  | { readonly type: "need-snapshot"; readonly have: number }
  | {
      readonly type: "previewed";
      readonly request: number;
      readonly base: number;
      readonly results: readonly PreviewResult[];
    }
  /**
   * No answer where the worker does not hold that revision, or it has no such state. An answer continues the one that this
   * worker sent before it.
   */
  | { readonly type: "energised"; readonly request: number; readonly base: number; readonly answer?: EnergisedNews }
  | ({ readonly type: "arranging"; readonly request: number } & ArrangeProgress)
  /** None where the worker does not hold that revision, or a later one came between. */
  | {
      readonly type: "arranged";
      readonly request: number;
      readonly base: number;
      readonly moves?: readonly ArrangedMove[];
    }
  | { readonly type: "rule-book"; readonly request: number; readonly rules: readonly BookRule[] }
  /** None where the worker does not hold that revision, or it has no such box. */
  | { readonly type: "made-up"; readonly request: number; readonly base: number; readonly answer?: MakeUpAnswer }
  /** None where the worker does not hold that revision, or nothing is proposed. */
  | { readonly type: "scoped"; readonly request: number; readonly base: number; readonly answer?: ScopeAnswer }
  /** The difference, where the work that it leads to takes a while: that comes as `scope-work`. */
  | { readonly type: "scope-part"; readonly request: number; readonly base: number; readonly part: ScopePart }
  /** None where an edit came between. */
  | { readonly type: "scope-work"; readonly request: number; readonly base: number; readonly work?: ScopeWork }
  /** None where the worker does not hold that revision, or it has no such outlet. */
  | { readonly type: "fitted"; readonly request: number; readonly base: number; readonly answer?: FitAnswer }
  | { readonly type: "supplied"; readonly request: number; readonly base: number; readonly answer?: SupplyAnswer }
  /** None where the worker does not hold that revision, or as found has no such box. */
  | { readonly type: "surveyed"; readonly request: number; readonly base: number; readonly reply?: SurveyReply }
  /** None where the worker does not hold that revision. */
  | {
      readonly type: "outlet-drops";
      readonly request: number;
      readonly base: number;
      readonly drops?: readonly OutletDropAnswer[];
    }
  /** None where the worker does not hold that revision. */
  | {
      readonly type: "expected-tests";
      readonly request: number;
      readonly base: number;
      readonly answers?: readonly ExpectedAnswer[];
    }
  /**
   * The worker began a job, or it is at one that takes long and goes on, or, when it was asked to be watchful, it began a
   * rule. The client restarts the worker when no message follows within the deadline.
   */
  | { readonly type: "started"; readonly revision: number; readonly rule?: string };
