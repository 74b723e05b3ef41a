import { useMemo } from "react";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EnclosureId, EndKey, JumperId } from "../../shared-model/model/ids.ts";
import type { At } from "../../shared-model/model/place.ts";
import { nameOfEnd } from "../../shared-model/queries/end-facts.ts";
import { landingsOf } from "../../shared-model/queries/landings.ts";
import { dispatch, documentStore, shownInstallation } from "../state/document-store.ts";
import { usualMake } from "../state/jumper-make.ts";
import { refuseWhileScoped } from "../state/looking.ts";
import { mintId } from "../state/mint-id.ts";
import { hold, notify, select, sessionStore } from "../state/session-store.ts";
import { useStore } from "../state/use-store.ts";
import { placeWords } from "./end-words.ts";
import { gestureStore, type HeldThing, say } from "./gesture-store.ts";
import type { LandingTarget } from "./landing-targets.ts";
import { wording } from "./words.ts";

/** What is in the hand: a conductor end of the session, or the second end of a jumper. */
export function heldThing(): HeldThing | undefined {
  const { held } = sessionStore.get();
  return held === undefined ? gestureStore.get().jumper : { kind: "end", enclosure: held.enclosure, end: held.end };
}

/** Picks an end up; it stays in the hand until it is put on a place or back. */
export function pickUp(enclosure: EnclosureId, end: EndKey): void {
  const box = shownInstallation().enclosures[enclosure];
  if (box === undefined || documentStore.get().readOnly || refuseWhileScoped()) return;
  gestureStore.merge({ jumper: undefined, pointer: undefined, menu: undefined });
  hold({ enclosure, end });
  say(wording.holdingArrowKeysChooseAPlace(nameOfEnd(shownInstallation(), box, end)));
}

/** Begins a jumper at a place, made as one from there usually is: bare from a ground screw, white from a neutral. */
export function startJumper(enclosure: EnclosureId, from: At): void {
  const box = shownInstallation().enclosures[enclosure];
  if (box === undefined) return;
  select();
  gestureStore.merge({
    jumper: {
      kind: "jumper",
      enclosure,
      jumper: mintId<JumperId>("j"),
      from,
      ...usualMake(shownInstallation(), box, from, from),
    },
    pointer: undefined,
    menu: undefined,
  });
  say(wording.newJumperChooseWhereItsOther(placeWords(box, from)));
}

/** Ends that share a place, those of the same terminal included. */
export function endsAt(box: Enclosure, at: At): readonly EndKey[] {
  const landings = landingsOf(box);
  if (at.kind === "splice") return landings.bySplice.get(at.splice) ?? [];
  if (at.kind === "terminal")
    return (landings.byTerminal.get(`${at.device}.${at.terminal}`) ?? []).map((landing) => landing.end);
  return at.kind === "bond" ? landings.bonded : [];
}

/** Lands what is held; where that is not possible, says why and keeps holding. */
export function landOn(target: Pick<LandingTarget, "call" | "name">): boolean {
  const thing = heldThing();
  const done = dispatch(target.call);
  if (!done.ok) {
    say(done.refusal.message);
    notify("problem", wording.notPossible2(target.name), [done.refusal.message]);
    return false;
  }
  putDown();
  if (thing?.kind === "end") select({ kind: "end", enclosure: thing.enclosure, id: thing.end });
  say(wording.done(target.name));
  return true;
}

/** Puts back what is held; the document was never touched. */
export function putDown(): void {
  if (sessionStore.get().held !== undefined) hold(undefined);
  if (gestureStore.get().jumper !== undefined || gestureStore.get().pointer !== undefined)
    gestureStore.merge({ jumper: undefined, pointer: undefined });
}

/** What is held in one box; undefined in all others, so that only one box renders for it. */
export function useHeldIn(enclosure: EnclosureId): HeldThing | undefined {
  const held = useStore(sessionStore, (session) => (session.held?.enclosure === enclosure ? session.held : undefined));
  const jumper = useStore(gestureStore, ({ jumper: each }) => (each?.enclosure === enclosure ? each : undefined));
  return useMemo(
    () => (held === undefined ? jumper : { kind: "end", enclosure: held.enclosure, end: held.end }),
    [held, jumper],
  );
}

/** What is held anywhere on the sheet. */
export function useHeld(): HeldThing | undefined {
  const held = useStore(sessionStore, (session) => session.held);
  const jumper = useStore(gestureStore, (gesture) => gesture.jumper);
  return useMemo(
    () => (held === undefined ? jumper : { kind: "end", enclosure: held.enclosure, end: held.end }),
    [held, jumper],
  );
}
