import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { unfold } from "./folding.ts";
import type { HeldEnd, Selected, Tool } from "./selection.ts";
import { createStore, type Store } from "./store.ts";

export type Pane = "details" | "findings" | "rooms" | "energise" | "make-up" | "survey" | "scope";

/** Says something once, near the place where the person works; errors stay until they are closed. */
export interface Notice {
  readonly kind: "note" | "problem";
  readonly title: string;
  /** Further lines: where it is and what to do. */
  readonly lines: readonly string[];
  readonly serial: number;
}

/** Asks the sheet to bring a thing into view; `serial` tells two requests for the same thing apart. */
export interface GoTo {
  readonly target: Selected;
  /** Whether it is to fill the view also where it is seen already. */
  readonly fill: boolean;
  readonly serial: number;
}

/** State of this window only: never saved in the document, never undone. */
export interface SessionState {
  readonly selection: readonly Selected[];
  readonly pane: Pane;
  readonly held: HeldEnd | undefined;
  readonly tool: Tool | undefined;
  /** First end of a cable that is being routed with the cable tool. */
  readonly routeFrom: EnclosureId | undefined;
  readonly goTo: GoTo | undefined;
  readonly notice: Notice | undefined;
}

const EMPTY: SessionState = {
  selection: [],
  pane: "details",
  held: undefined,
  tool: undefined,
  routeFrom: undefined,
  goTo: undefined,
  notice: undefined,
};

export const sessionStore: Store<SessionState> = createStore(EMPTY);

let serial = 0;

/** Replaces the selection and puts down what is held. */
export function select(...items: readonly Selected[]): void {
  sessionStore.merge({ selection: items, held: undefined });
}

/** Adds an item to the selection, or takes it out. */
export function toggleSelected(item: Selected): void {
  const { selection } = sessionStore.get();
  const rest = selection.filter((other) => !(other.kind === item.kind && other.id === item.id));
  sessionStore.merge({ selection: rest.length === selection.length ? [...selection, item] : rest });
}

/** Selects a thing, shows its details, and asks the sheet to bring it into view. */
export function goTo(target: Selected, pane?: Pane, fill = false): void {
  serial += 1;
  sessionStore.merge({
    selection: [target],
    held: undefined,
    goTo: { target, fill, serial },
    ...(pane !== undefined && { pane }),
  });
}

/** Picks an end up; `undefined` puts it back where it was. */
export function hold(held: HeldEnd | undefined): void {
  if (held === undefined) sessionStore.merge({ held });
  else
    sessionStore.merge({
      held,
      selection: [{ kind: "end", enclosure: held.enclosure, id: held.end }],
      pane: "details",
      tool: undefined,
      routeFrom: undefined,
    });
}

/** Takes something from the stock into the hand, to be placed by a press on the sheet. */
export function takeTool(tool: Tool | undefined): void {
  sessionStore.merge({ tool, routeFrom: undefined, held: undefined });
}

/** Shows a pane to who asks for it, folded or not. */
export function showPane(pane: Pane): void {
  sessionStore.merge({ pane });
  unfold("right");
}

/** Goes to a pane with what else is done; folded, it stays so. */
export const turnTo = (pane: Pane): void => sessionStore.merge({ pane });

export function notify(kind: Notice["kind"], title: string, lines: readonly string[] = []): void {
  serial += 1;
  sessionStore.merge({ notice: { kind, title, lines, serial } });
}

export function closeNotice(): void {
  sessionStore.merge({ notice: undefined });
}

/** For a document that was just opened: nothing of the one before stays in the hand. */
export function resetSession(): void {
  sessionStore.merge({ ...EMPTY, pane: sessionStore.get().pane });
}
