import type { PreviewResult } from "../../shared-model/analysis/protocol.ts";
import { type Dispatched, dispatch, documentStore, followDocument, shownInstallation } from "./document-store.ts";
import { type LandingChoice, landingChoices } from "./landing-choices.ts";
import type { HeldEnd } from "./selection.ts";
import { hold, sessionStore } from "./session-store.ts";
import { createStore, type Store } from "./store.ts";

/** Where the held end may go, and what would follow; Details lists it and the sheet marks its targets from it. */
export interface LandingState {
  readonly held: HeldEnd | undefined;
  readonly choices: readonly LandingChoice[];
  /** By key of the choice; missing while the checks are being asked. */
  readonly previews: ReadonlyMap<string, PreviewResult>;
}

const NOTHING: LandingState = { held: undefined, choices: [], previews: new Map() };

export const landingStore: Store<LandingState> = createStore(NOTHING);

/** Asks what would follow from some choices; undefined when the document moved on meanwhile. */
export type AskPreview = (choices: readonly LandingChoice[]) => Promise<readonly PreviewResult[] | undefined>;

/** Keeps the landing store true to what is held, until the returned function is called. */
export function watchHeldEnd(ask: AskPreview): () => void {
  const renew = (): void => {
    const { held } = sessionStore.get();
    if (held === undefined) {
      landingStore.set(NOTHING);
      return;
    }
    const choices = landingChoices(shownInstallation(), documentStore.get().state, held);
    landingStore.set({ held, choices, previews: new Map() });
    const open = choices.filter((choice) => choice.refusal === undefined);
    ask(open).then((results) => {
      if (results === undefined || landingStore.get().choices !== choices) return;
      const previews = new Map(open.flatMap(({ key }, index) => (results[index] ? [[key, results[index]]] : [])));
      landingStore.merge({ previews });
    });
  };
  const stopSession = sessionStore.subscribe(() => {
    if (sessionStore.get().held !== landingStore.get().held) renew();
  });
  const stopDocument = followDocument(() => {
    if (sessionStore.get().held !== undefined) renew();
  });
  return () => {
    stopSession();
    stopDocument();
  };
}

/** Puts the held end where a choice says and opens the hand. */
export function landHeld(choice: LandingChoice): Dispatched {
  const done = dispatch(choice.call);
  if (done.ok) hold(undefined);
  return done;
}
