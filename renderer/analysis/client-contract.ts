import type {
  AnswersMessage,
  ArrangedMove,
  ArrangeProgress,
  ArrangeWhat,
  PreviewResult,
  SurveyAsk,
  SurveyReply,
} from "../../shared-model/analysis/protocol.ts";
import type { CommandCall } from "../../shared-model/answers/command-call.ts";
import type { EnergiseAsk, Energised, Operated } from "../../shared-model/answers/energised.ts";
import type { ExpectedAnswer, WantedTest } from "../../shared-model/answers/expected-test.ts";
import type { FitAnswer, FitAsk, MakeUpAnswer, MakeUpAsk } from "../../shared-model/answers/make-up.ts";
import type { OutletDropAnswer } from "../../shared-model/answers/outlet-drop.ts";
import type { BookRule } from "../../shared-model/answers/rule-book.ts";
import type { ScopeAnswer, ScopePart } from "../../shared-model/answers/scope.ts";
import type { SupplyAnswer, SupplyAsk } from "../../shared-model/answers/supply.ts";
import type { Problem } from "../../shared-model/lib/result.ts";
import type { DeviceId, EnclosureId } from "../../shared-model/model/ids.ts";
import type { Edition, Project, StateName } from "../../shared-model/model/project.ts";
import type { DocumentChange } from "../state/document-store.ts";

export type ParseOutcome =
  | {
      readonly ok: true;
      readonly project: Project;
      readonly readOnly: boolean;
      /** It may be shown already while it is judged: what is wrong with it. Absent where nothing is. */
      readonly verdict?: Promise<readonly Problem[]>;
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** What the client needs of its surroundings; tests put stand-ins here. */
export interface Surroundings {
  createWorker(): Pick<Worker, "postMessage" | "terminate" | "onmessage" | "onerror" | "onmessageerror">;
  document(): { readonly project: Project; readonly revision: number };
  deliver(answers: AnswersMessage): void;
  /** A sentence while checking is hindered; undefined once it works again. */
  trouble(sentence: string | undefined): void;
}

export interface WorkerClient {
  /** Starts the worker, once. */
  start(): void;
  /**
   * The window has read a document from this text itself. When it becomes the document, the worker gets the text: it reads
   * it again in less time than carrying the document over takes. Where the window did not judge all of it, `judged` is
   * told what the worker finds wrong, or undefined when no worker can.
   */
  readHere(text: string, project: Project, judged?: (problems: readonly Problem[] | undefined) => void): void;
  /** Sends a change on; call it after every change of the document. */
  follow(change: DocumentChange): void;
  /** Reads the text of a file; nothing is opened by it. */
  parse(text: string): Promise<ParseOutcome>;
  /**
   * What each call would bring in a state; undefined when the document has moved on, has no such state, or checking is
   * not running. `mends` is the key of the finding that the calls are to mend, `fillOf` an enclosure whose box fill is
   * asked for.
   */
  preview(
    state: StateName,
    calls: readonly CommandCall[],
    mends?: string,
    fillOf?: EnclosureId,
  ): Promise<readonly PreviewResult[] | undefined>;
  /**
   * What the circuit of a state does when it is energised so, with the revision that it is about; undefined when checking
   * is not running, or the document has no such state.
   */
  energise(state: StateName, setting: Operated, ask: EnergiseAsk): Promise<EnergisedAt | undefined>;
  /** Voltage drop at the outlets of a device; undefined when the document has moved on or checking is not running. */
  outletDrops(state: StateName, device: DeviceId): Promise<readonly OutletDropAnswer[] | undefined>;
  /** What the document leads to expect of some tests; undefined when nobody can answer now. */
  expectedTests(wanted: readonly WantedTest[]): Promise<readonly ExpectedAnswer[] | undefined>;
  /** The make-up of a box; undefined when the document has moved on, has no such box, or nobody can answer now. */
  makeUp(ask: MakeUpAsk): Promise<MakeUpAnswer | undefined>;
  /** A ground-fault device in the place of a receptacle; undefined as for a make-up. */
  fit(ask: FitAsk): Promise<FitAnswer | undefined>;
  /** A panel for a cable that leads out of the drawing; undefined when the document has moved on or nobody can answer now. */
  supply(ask: SupplyAsk): Promise<SupplyAnswer | undefined>;
  /**
   * The difference of the states; undefined when the document has moved on, nothing is proposed, or nobody can answer. Where
   * the work that it leads to takes a while, `first` is told the difference before.
   */
  scope(first?: (part: ScopePart) => void): Promise<ScopeAnswer | undefined>;
  /** What a survey tells; undefined when the document has moved on, has no such box, or nobody can answer now. */
  survey(ask: SurveyAsk): Promise<SurveyReply | undefined>;
  /** The rules that run by an edition; undefined when checking is not running. */
  ruleBook(edition: Edition): Promise<readonly BookRule[] | undefined>;
  /**
   * Where boxes of a state go when they are arranged; undefined when the document has moved on, it was stopped, or checking
   * is not running.
   */
  arrange(state: StateName, what: ArrangeWhat, tell: (progress: ArrangeProgress) => void): Arranging;
  /** Tries once more after checking has stopped. */
  retry(): void;
}

/** Boxes that are being arranged in the worker. */
export interface Arranging {
  readonly moves: Promise<readonly ArrangedMove[] | undefined>;
  /** Leaves it off; it comes to nothing. */
  stop(): void;
}

export interface EnergisedAt {
  readonly revision: number;
  readonly answer: Energised;
}
