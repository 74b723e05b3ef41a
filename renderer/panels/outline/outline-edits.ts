import type { ItemRef } from "../../../shared-model/commands/command-args.ts";
import { parseEnd } from "../../../shared-model/model/ids.ts";
import { type Dispatched, dispatch, documentStore, shownInstallation } from "../../state/document-store.ts";
import type { ActionSubject } from "../../state/item-actions/subject.ts";
import { selectable } from "../../state/item-actions/subject.ts";
import { isItem, keyOf, type Selected } from "../../state/selection.ts";
import { select, sessionStore } from "../../state/session-store.ts";

const refused = (message: string): Dispatched => ({ ok: false, refusal: { code: "not-here", message } });

/** Removes what a row stands for; where it is one of several selected things, all of them. */
export function removeSubject(subject: ActionSubject): Dispatched {
  const { state } = documentStore.get();
  if (subject.kind === "ring")
    return dispatch({ command: "remove-ring", args: { state, enclosure: subject.enclosure, id: subject.id } });
  if (subject.kind === "pass-through")
    return dispatch({ command: "remove-pass-through", args: { state, enclosure: subject.enclosure, id: subject.id } });
  const own = selectable(subject);
  if (own === undefined) return refused("This cannot be removed: it belongs to what it stands in.");
  const { selection } = sessionStore.get();
  const chosen = selection.some((item) => keyOf(item) === keyOf(own)) ? selection : [own];
  const items = chosen.flatMap(itemsOf);
  if (items.length === 0)
    return refused(
      own.kind === "end"
        ? "A conductor goes with its cable: remove the cable."
        : "An entry stays with its box: move or remove the cable.",
    );
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

/** What is changed in place in a row: a name, the words of a label, the tag on an end. */
export interface Nameable {
  readonly label: string;
  readonly value: string;
  readonly rename: (text: string) => Dispatched;
}

/** How a row's name is changed; undefined for what has none. */
export function nameable(subject: ActionSubject, name: string): Nameable | undefined {
  const { state, readOnly } = documentStore.get();
  const item = selectable(subject);
  if (item === undefined || readOnly || item.kind === "entry") return undefined;
  if (item.kind === "end")
    return {
      label: `Tag of ${name}`,
      value: tagOf(item),
      rename: (text) =>
        dispatch({
          command: "set-property",
          args: { state, target: item, field: "tag", value: text === "" ? null : text },
        }),
    };
  if (item.kind === "label")
    return {
      label: "Words of the label",
      value: name,
      rename: (text) =>
        dispatch({ command: "set-property", args: { state, target: item, field: "wording", value: text } }),
    };
  return {
    label: `Name of ${name}`,
    value: name,
    rename: (text) => dispatch({ command: "rename-item", args: { state, item, name: text } }),
  };
}

const tagOf = ({ enclosure, id }: Extract<Selected, { kind: "end" }>): string =>
  shownInstallation().enclosures[enclosure]?.places[id]?.tag ?? "";
