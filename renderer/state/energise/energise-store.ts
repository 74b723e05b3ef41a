import type {
  Act,
  ActDone,
  DeviceSaid,
  Energised,
  LeadPlace,
  Operated,
} from "../../../shared-model/answers/energised.ts";
import type { OutletKey, ReadingId } from "../../../shared-model/model/ids.ts";
import type { Reading } from "../../../shared-model/model/project.ts";
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
  /** What it would be as evidence; absent for what no instrument read. */
  readonly reading?: Omit<Reading, "id" | "order">;
  /** It was kept: the reading in the document. */
  readonly kept?: ReadingId;
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
  /** Of the drawing that the answer is about. */
  readonly revision: number;
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
  revision: -1,
  busy: false,
  trouble: undefined,
  last: undefined,
  log: [],
};

export const energiseStore: Store<EnergiseState> = createStore(OFF);

/** Off, with the setting as it was set. The log stays as long as the document does. */
export function resetEnergise(keep: Partial<EnergiseState> = {}): void {
  energiseStore.set({ ...OFF, ...keep });
}

export const isEnergised = ({ on }: EnergiseState): boolean => on;

/** The answer while the drawing is energised. */
export const shownAnswer = ({ on, answer }: EnergiseState): Energised | undefined => (on ? answer : undefined);
