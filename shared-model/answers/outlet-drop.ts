import type { CableId, OutletKey } from "../model/ids.ts";

/** Voltage drop of an outlet under its load, in words and figures; or why it is not known. */
export type OutletDropAnswer = { readonly outlet: OutletKey; readonly name: string } & (
  | {
      readonly known: true;
      readonly dropV: number;
      /** Of its voltage without load. */
      readonly percent: number;
      /** Per cent past which advice is given. */
      readonly limit: number;
      readonly isPast: boolean;
      /** What is taken to be on: "12 A (80 % of the 15 A of Q1) and nothing else on". */
      readonly load: string;
      /** Behind a feeder: how much of it is lost from the panel on. */
      readonly fromPanel?: { readonly name: string; readonly dropV: number; readonly percent: number };
      readonly longest?: NamedCable & { readonly words: string };
      /** "the joint of C1 BK in A, 2 Ω", where one costs more than a little. */
      readonly joint?: string;
    }
  | { readonly known: false; readonly why: "no-length"; readonly cables: readonly NamedCable[] }
  | { readonly known: false; readonly why: "no-rating"; readonly breaker: string }
  | { readonly known: false; readonly why: "not-fed" }
);

export interface NamedCable {
  readonly id: CableId;
  readonly name: string;
}
