import type { CableId, ConductorKey, EnclosureId, ReadingId } from "../model/ids.ts";
import type { SurveyArrangement, SurveyInstrument, SurveyItem, SurveyTest } from "../model/survey.ts";
import type { CommandCall } from "./command-call.ts";
import type { HoldPoint } from "./scope.ts";

/** What a cable is to the box that is surveyed. */
export type SurveyRoleKind =
  /** Brings hot and neutral from the panel. */
  | "supply"
  /** Brings two hots and one neutral. */
  | "multiwire-supply"
  /** Is live only while a switch elsewhere is on. */
  | "switched-supply"
  /** Feeds outlets, or lights with switches of their own, beyond. */
  | "feeds"
  /** Goes to a light that a switch of this box is to control. */
  | "leg"
  /** Two wires to a switch elsewhere. */
  | "loop"
  /** This box is the switch end of a loop: white brings the hot from the luminaire, black returns to the lamp. */
  | "loop-fed"
  /** Travellers to another three-way switch. */
  | "travellers"
  /** Abandoned. */
  | "dead"
  /** Carries only the neutral of another circuit. */
  | "other-neutral";

/** A role of one cable with what it implies. Two roles with one `key` are the same. */
export interface SurveyRole {
  readonly key: string;
  readonly kind: SurveyRoleKind;
  /** "supply, hot on black", "feeds R2 and R3". */
  readonly words: string;
  /** Outlets and lights beyond; empty where there are none or they are not told apart. */
  readonly items: readonly SurveyItem[];
  /** Of a supply: hot on white, neutral on black. */
  readonly reversed?: true;
  /** Of a supply: its neutral is broken upstream. */
  readonly openNeutral?: true;
  /** Of a supply: it is dead now, as with a breaker off. */
  readonly off?: true;
  /** Of a switched supply: hot on one of two travellers or the other. */
  readonly travels?: true;
}

/** One assignment of roles to all cables that is not ruled out. */
export interface SurveyHypothesis {
  /** Share of all that is not ruled out, 0 to 1. */
  readonly weight: number;
  /** Role of every cable, in the order of `SurveyAnswer.cables`. */
  readonly roles: readonly SurveyRole[];
  /** "C1 supply; C2 feeds R2 and R3; C3 feeds R4". */
  readonly words: string;
}

/** What one cable still may be. */
export interface SurveyedCable {
  readonly id: CableId;
  readonly name: string;
  /** Its insulated conductors, and its ground where it has one. */
  readonly conductors: readonly {
    readonly key: ConductorKey;
    readonly code: string;
    readonly words: string;
    readonly grounding: boolean;
  }[];
  /** Its roles that are not ruled out, most likely first; weights add up to 1. */
  readonly may: readonly { readonly role: SurveyRole; readonly weight: number }[];
  /** The one role that is left; absent while there are several. */
  readonly role?: SurveyRole;
  /** Readings that ruled the others out, as sentences: the evidence of the role. */
  readonly evidence: readonly string[];
  /** Its role rests on what a person said and on no reading. */
  readonly isTold?: true;
  /** For the tag at the box: "C1 LINE", "C2 to R2, R3", "C3 not known". */
  readonly tag: string;
}

/** A role that a reading rules out. */
export interface SurveyRejection {
  readonly cable: CableId;
  readonly role: SurveyRole;
  /** "C3 cannot be supply: 0 V black to white by low-impedance meter in A2." */
  readonly reason: string;
  /** The reading that did it; absent where it follows from the others, as for the last cable left. */
  readonly reading?: ReadingId;
}

/** One step of doing a test, in the order of doing. */
export interface SurveyStep {
  readonly arrangement: SurveyArrangement;
  readonly words: string;
  /** The hold point that it is: done and ticked on its own before anything that follows. */
  readonly hold?: HoldPoint;
}

/** How dangerous it is to take the reading. */
export type SurveyExposure = "dead" | "outlet" | "open-box-live";

/** What to enter once a test is done: the form that the window opens and the command line explains. */
export interface SurveyWanted {
  readonly arrangement: SurveyArrangement;
  readonly instrument: SurveyInstrument;
  readonly joined?: readonly CableId[];
  readonly nothingPlugged?: true;
  /** The tests whose results are asked for; of "works", "look" and others the result in it is a blank to fill in. */
  readonly tests: readonly SurveyTest[];
}

/** A test that could be done next. */
export interface SurveyProposal {
  readonly key: string;
  /** "Join C2 and C4 to the supply C1 and list what works." */
  readonly words: string;
  /** Why this one: what it tells apart, and against what. */
  readonly why: string;
  /** Expected gain, for programs: people read `why` and `atMost`. */
  readonly bits: number;
  /** Assignments that are left at most, whatever comes of it; absent where it only shows what is likelier. */
  readonly atMost?: number;
  /** Minutes, plus 5 for each time the power goes off and on, plus 20 for each class of exposure. */
  readonly cost: number;
  readonly minutes: number;
  readonly powerCycles: number;
  readonly exposure: SurveyExposure;
  readonly steps: readonly SurveyStep[];
  readonly wanted: SurveyWanted;
}

/** A test that is not proposed because it could do harm or cannot be done. */
export interface SurveyRefusedTest {
  readonly key: string;
  readonly words: string;
  /** "Not this: if C2 is a supply with hot and neutral reversed, the switch would close a short of 1,200 A." */
  readonly reason: string;
  readonly because: "short" | "double-voltage" | "back-feed" | "needs-reference";
}

/** A reading that did not count, and why. */
export interface SurveySetAside {
  readonly reading?: ReadingId;
  /** Its place among the readings of the survey, from 0. */
  readonly index: number;
  readonly reason: string;
}

/** Readings that fit nothing. */
export interface SurveyContradiction {
  /** "These readings fit no arrangement known to the tool." */
  readonly words: string;
  /** The smallest sets of readings without which the others fit, the likeliest slips first; empty where no few do. */
  readonly doubt: readonly (readonly string[])[];
  /** The two least bad, each with the readings that speak against it. */
  readonly leastBad: readonly { readonly words: string; readonly against: readonly string[] }[];
  /** What to repeat and what to look for. */
  readonly lookFor: readonly string[];
}

/** A standing order about danger, or a point at which work stops until it is ticked on its own; the hold points of the work steps. */
export interface SurveyCaution {
  readonly id: string;
  readonly words: string;
}

/** Settled roles as one command on as found: one step to undo, and nothing until a person asks for it. */
export interface SurveyTakeOver {
  readonly call: CommandCall;
  /** What it changes, as sentences. */
  readonly words: readonly string[];
}

/** What a survey of a box tells: a pure function of drawing, facts and readings. */
export interface SurveyAnswer {
  readonly box: { readonly id: EnclosureId; readonly name: string };
  readonly cables: readonly SurveyedCable[];
  /** What a person knows without a reading, as it was said. */
  readonly known: readonly { readonly cable: CableId; readonly words: string }[];
  /** What the cables may lead to: from the drawing, or as a person listed it. */
  readonly items: readonly SurveyItem[];
  /** Which of them hang on one cable, by id. */
  readonly groups: readonly (readonly string[])[];
  readonly itemsFrom: "drawing" | "person" | "nowhere";
  /** How many assignments there were at the start and are left. */
  readonly atStart: number;
  readonly left: number;
  /** What is left to be found out. */
  readonly bits: number;
  /** Most likely first; at most 24 of `left`. */
  readonly surviving: readonly SurveyHypothesis[];
  readonly rejected: readonly SurveyRejection[];
  readonly contradiction?: SurveyContradiction;
  /** Every cable has one role left. */
  readonly settled: boolean;
  readonly notProved: readonly string[];
  /** Absent when all is settled, contradicted, or nothing that may be done tells more. */
  readonly next?: SurveyProposal;
  /** Other tests that would tell something, best first. */
  readonly others: readonly SurveyProposal[];
  readonly refused: readonly SurveyRefusedTest[];
  readonly setAside: readonly SurveySetAside[];
  readonly holdPoints: readonly SurveyCaution[];
  readonly cautions: readonly SurveyCaution[];
  /** Absent while no cable is settled. */
  readonly takeOver?: SurveyTakeOver;
  /** Where what was measured differs from the drawing: "C2 is drawn to B2 (R2, R3); it feeds R4." */
  readonly mismatches: readonly { readonly cable: CableId; readonly words: string }[];
}

/** Which outlet hangs on which breaker, from observations alone, compared with the drawing. */
export interface CircuitMap {
  readonly outlets: readonly {
    readonly outlet: string;
    readonly name: string;
    /** Breakers with which it went dead; several are a finding, none is not known. */
    readonly breakers: readonly { readonly id: string; readonly name: string }[];
    /** Breakers with which it was seen to stay live. */
    readonly live: readonly { readonly id: string; readonly name: string }[];
    /** Breakers that were off while nobody looked at it: it may hang on any of them. */
    readonly notLookedAt: readonly { readonly id: string; readonly name: string }[];
    /** Breakers that feed it in the drawing. */
    readonly drawn: readonly { readonly id: string; readonly name: string }[];
    readonly differs: boolean;
  }[];
  /** Plain sentences: mismatches with the drawing, two circuits in one box, a half that stayed live. */
  readonly remarks: readonly string[];
  /** A directory line for each breaker that was observed, where another stands there or none. */
  readonly directory: readonly {
    readonly breaker: string;
    readonly name: string;
    readonly was: string;
    readonly words: string;
    /** Outlets that nobody looked at with this breaker off: the line may lack them. */
    readonly notLookedAt: number;
  }[];
  /** Breakers not observed yet. */
  readonly notObserved: readonly { readonly id: string; readonly name: string }[];
}

/** Order along a circuit, as far as it is known. */
export interface CircuitOrder {
  /** "R2 is fed through R1": the nearer first. */
  readonly before: readonly {
    readonly near: string;
    readonly far: string;
    readonly proved: boolean;
    readonly why: string;
  }[];
  /** Outlets that nothing is upstream of: where protection would reach all that follow. */
  readonly first: readonly string[];
  readonly contradictions: readonly string[];
  readonly notKnown: readonly string[];
}
