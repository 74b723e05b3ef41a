import type { ItemRef } from "../../../shared-model/commands/command-args.ts";
import { parseEnd } from "../../../shared-model/model/ids.ts";
import { type Dispatched, dispatch, documentStore } from "../../state/document-store.ts";
import type { ActionSubject } from "../../state/item-actions/subject.ts";
import { selectable } from "../../state/item-actions/subject.ts";
import { isItem, keyOf, type Selected } from "../../state/selection.ts";
import { select, sessionStore } from "../../state/session-store.ts";
import { wording } from "./words.ts";

const refused = (message: string): Dispatched => ({ ok: false, refusal: { code: "not-here", message } });

/** Removes what a row stands for; where it is one of several selected things, all of them. */
export function removeSubject(subject: ActionSubject): Dispatched {
  const { state } = documentStore.get();
  if (subject.kind === "ring")
    return dispatch({ command: "remove-ring", args: { state, enclosure: subject.enclosure, id: subject.id } });
  if (subject.kind === "pass-through")
    return dispatch({ command: "remove-pass-through", args: { state, enclosure: subject.enclosure, id: subject.id } });
  const own = selectable(subject);
  if (own === undefined) return refused(wording.thisCannotBeRemovedItBelongs);
  const { selection } = sessionStore.get();
  const chosen = selection.some((item) => keyOf(item) === keyOf(own)) ? selection : [own];
  const items = chosen.flatMap(itemsOf);
  if (items.length === 0)
    return refused(own.kind === "end" ? wording.aConductorGoesWithItsCable : wording.anEntryStaysWithItsBox);
  const done = dispatch({ command: "remove-items", args: { state, items } });
  if (done.ok) select();
  return done;
}

/** An end of a jumper stands for the jumper; one of a cable cannot go alone. */
function itemsOf(item: Selected): readonly ItemRef[] {
  if (isItem(item)) return [item];
  const parsed = item.kind === "end" ? parseEnd(item.id) : undefined;
  return parsed?.of === "jumper" ? [{ kind: "jumper", id: parsed.jumper }] : [];
}
