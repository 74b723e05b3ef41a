import type { Severity } from "../../shared-model/answers/finding.ts";
import type { TypedCall } from "../../shared-model/commands/command-args.ts";
import type { DeviceId, EnclosureId } from "../../shared-model/model/ids.ts";
import { dispatch } from "./document-store.ts";
import type { Tool } from "./selection.ts";
import { notify } from "./session-store.ts";
import { createStore, type Store } from "./store.ts";
import { wording } from "./words.ts";

/** What choosing a line would put where, so that the sheet can show it before. */
export interface PickAim {
  readonly tool: Tool;
  readonly enclosure: EnclosureId;
  readonly device?: DeviceId;
  /** Of a cable: the box it begins at; without it, it is to begin at `enclosure`. */
  readonly from?: EnclosureId;
}

/** One line of a list to choose from. */
export interface PickLine {
  readonly key: string;
  readonly title: string;
  readonly note?: string;
  /** Worst finding that choosing it would bring. */
  readonly severity?: Severity;
  /** Why it cannot be chosen, where that is known without asking. */
  readonly refusal?: string;
  /** The command it runs, so that its refusal can be asked for when the line is shown. */
  readonly call?: TypedCall;
  readonly aim?: PickAim;
  readonly run: () => void;
  /** The list stays open, for steps that are taken several times. */
  readonly stay?: boolean;
}

/** A choice that a command waits for: one list, searched by typing, worked by keys or by presses alone. */
export interface Pick {
  /** What is being done: "Land C1 BK". */
  readonly title: string;
  readonly hint?: string;
  /** Asked again after every change of the document. */
  readonly lines: () => readonly PickLine[];
  /** Where words of the person's own are taken, not only those of the list. */
  readonly typed?: {
    readonly label: string;
    readonly line: (text: string) => PickLine | undefined;
  };
  /** Called when it is closed without a choice. */
  readonly cancelled?: () => void;
}

export interface PickState {
  readonly pick: Pick | undefined;
  /** Tells a choice from the one before it. */
  readonly serial: number;
  /** The command field asks for it, where the command was given; else a dialog does. */
  readonly inField: boolean;
}

export const pickStore: Store<PickState> = createStore<PickState>({ pick: undefined, serial: 0, inField: false });

/** Where the line of a choice that a person has come to would put something. */
export const pickAimStore: Store<{ readonly aim?: PickAim }> = createStore<{ readonly aim?: PickAim }>({});

/** The lines are made anew each time: the same place is no news. */
export function aimPick(aim: PickAim | undefined): void {
  const before = pickAimStore.get().aim;
  if (JSON.stringify(before) !== JSON.stringify(aim)) pickAimStore.set(aim === undefined ? {} : { aim });
}

let inField = false;

export function openPick(pick: Pick): void {
  pickStore.set({ pick, serial: pickStore.get().serial + 1, inField });
}

/** Runs what may ask for a choice; the command field asks for it then. @returns Whether it did. */
export function askInField(run: () => void): boolean {
  inField = true;
  try {
    run();
  } finally {
    inField = false;
  }
  const { pick, inField: asked } = pickStore.get();
  return asked && pick !== undefined;
}

/** Runs a line of the choice that is open. A line may ask for the next choice. */
export function choosePicked(line: PickLine): void {
  if (line.stay !== true) pickStore.merge({ pick: undefined });
  line.run();
}

export function cancelPick(): void {
  const { pick } = pickStore.get();
  pickStore.merge({ pick: undefined });
  pick?.cancelled?.();
}

/** Runs a command; a refusal is told in words. @returns Whether it was done. */
export function runOrTell(call: TypedCall): boolean {
  const done = dispatch(call);
  if (!done.ok) notify("problem", wording.notDone2, [done.refusal.message]);
  return done.ok;
}

/** A line that runs one command. */
export const lineFor = (title: string, call: TypedCall, note?: string): PickLine => ({
  key: title,
  title,
  call,
  run: () => runOrTell(call),
  ...(note !== undefined && { note }),
});
