import type {
  Act,
  ActDone,
  DeviceSaid,
  Energised,
  LeadPlace,
  MeterReading,
  Operated,
  OutletTested,
} from "../../../shared-model/answers/energised.ts";
import type { OutletKey, ReadingId } from "../../../shared-model/model/ids.ts";
import type { Reading, StateName } from "../../../shared-model/model/project.ts";
import { documentStore } from "../document-store.ts";
import { createStore, type Store } from "../store.ts";

/** The leads of the meter: red and black. */
export type LeadName = "V" | "COM";

/** Something done, and what followed. */
export interface LastAct {
  readonly act: Act;
  /** "TEST of R1b". */
  readonly title: string;
  readonly at: number;
  readonly done: ActDone;
  readonly opened: readonly DeviceSaid[];
  readonly mayOpen: readonly DeviceSaid[];
  readonly otherwise: readonly string[];
}

/** A line of the log. */
export interface LogLine {
  readonly serial: number;
  /** Milliseconds since 1970. */
  readonly at: number;
  readonly title: string;
  readonly value: string;
  /** What was not as drawn, on and in use when it was read or done, in words. */
  readonly setting?: string;
  /** What it would be as evidence; absent for what no instrument read. */
  readonly reading?: Omit<Reading, "id" | "order">;
  /** It was kept: the reading in the document. */
  readonly kept?: ReadingId;
}

/** What an answer was asked of: instruments read nothing else. */
export interface AnswerAbout {
  readonly state: StateName;
  /** Of the drawing. */
  readonly revision: number;
  /** With what opened by itself. */
  readonly setting: Operated;
  readonly leads: EnergiseState["leads"];
}

/** How this window has energised its drawing. Never saved in the document and never undone. */
export interface EnergiseState {
  readonly on: boolean;
  readonly setting: Operated;
  readonly leads: Readonly<Partial<Record<LeadName, LeadPlace>>>;
  /** The lead that the next press on a place puts there. */
  readonly inHand: LeadName | undefined;
  /** The outlet that the plug-in tester is in. */
  readonly outlet: OutletKey | undefined;
  readonly answer: Energised | undefined;
  /** What the answer is about; there as long as the answer is. */
  readonly about: AnswerAbout | undefined;
  /** Something is being computed. */
  readonly busy: boolean;
  readonly trouble: string | undefined;
  readonly last: LastAct | undefined;
  readonly log: readonly LogLine[];
}

export const ALL_ON: Operated = { off: [], positions: {}, tripped: [], idle: [] };

const OFF: EnergiseState = {
  on: false,
  setting: ALL_ON,
  leads: {},
  inHand: undefined,
  outlet: undefined,
  answer: undefined,
  about: undefined,
  busy: false,
  trouble: undefined,
  last: undefined,
  log: [],
};

export const energiseStore: Store<EnergiseState> = createStore(OFF);

/** Off, with nothing set and nothing read but what is to be kept. */
export function resetEnergise(keep: Partial<EnergiseState> = {}): void {
  energiseStore.set({ ...OFF, ...keep });
}

export const isEnergised = ({ on }: EnergiseState): boolean => on;

/** The answer while the drawing is energised. */
export const shownAnswer = ({ on, answer }: EnergiseState): Energised | undefined => (on ? answer : undefined);

/** The answer while instruments may be read in it: it is about the drawing and the setting as they are now. */
function readAnswer({ answer, about, setting }: EnergiseState): Energised | undefined {
  const { state, revision } = documentStore.get();
  const holds = about?.state === state && about.revision === revision && about.setting === setting;
  return holds ? answer : undefined;
}

/** What the meter shows; undefined while an answer for its leads where they are now is still to come. */
export const readMeter = (state: EnergiseState): MeterReading | undefined =>
  isMeterRead(state) ? state.answer?.meter : undefined;

/** Whether the answer is about the leads where they are now, be they on metal or on nothing. */
export const isMeterRead = (state: EnergiseState): boolean =>
  state.about?.leads === state.leads && readAnswer(state) !== undefined;

/** What is found at the outlet that the tester is in; undefined while the answer is still to come. */
export function readTester(state: EnergiseState): OutletTested | undefined {
  const tested = readAnswer(state)?.outlet;
  return tested?.outlet === state.outlet ? tested : undefined;
}

/** Whether the answer is about the drawing and the setting as they are now. */
export const isAnswered = (state: EnergiseState): boolean => readAnswer(state) !== undefined;
