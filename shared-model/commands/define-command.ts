import type { Draft } from "immer";
import type { Project } from "../model/project.ts";
import type { Check } from "./args-shape.ts";

/** Why a command does not apply now: a permanent id, and a kind sentence that says what to do instead. */
export interface Refusal {
  readonly code: string;
  readonly message: string;
}

/**
 * One thing a person can do to a document. Arguments are plain data: ids, not objects; new ids and times are minted by
 * the caller, so that a command is repeatable. `refuse` must say no wherever `apply` could break an invariant.
 */
export interface Command<A> {
  readonly id: string;
  /** Form of the arguments. Callers may be scripts, planners and old messages, so nothing is taken on trust. */
  readonly args: Check;
  /** Past-tense-free name of the step for undo: "Land C1 BK on R1 H". Called only where `refuse` had nothing to say. */
  label(project: Project, args: A): string;
  refuse(project: Project, args: A): Refusal | undefined;
  /** Writes the draft; searches the frozen state `before`. */
  apply(draft: Draft<Project>, args: A, before: Project): void;
  /** Equal keys of steps that follow each other quickly make one undo step; left out where every step counts. */
  mergeKey?(args: A): string;
}

export const defineCommand = <A>(command: Command<A>): Command<A> => command;

export const refusal = (code: string, message: string): Refusal => ({ code, message });
