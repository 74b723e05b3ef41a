import { type Dispatched, dispatch, documentStore, shownInstallation } from "../document-store.ts";
import type { Selected } from "../selection.ts";
import { type ActionSubject, selectable } from "./subject.ts";
import { wording } from "./words.ts";

/** What is changed in place: a name, the words of a label, the tag on an end. */
export interface Nameable {
  readonly label: string;
  readonly value: string;
  readonly rename: (text: string) => Dispatched;
}

/** How the name of a thing is changed; undefined for what has none. */
export function nameable(subject: ActionSubject, name: string): Nameable | undefined {
  const { state, readOnly } = documentStore.get();
  const item = selectable(subject);
  if (item === undefined || readOnly || item.kind === "entry") return undefined;
  if (item.kind === "end")
    return {
      label: wording.tagOf(name),
      value: tagOf(item),
      rename: (text) =>
        dispatch({
          command: "set-property",
          args: { state, target: item, field: "tag", value: text === "" ? null : text },
        }),
    };
  if (item.kind === "label")
    return {
      label: wording.wordsOfTheLabel,
      value: name,
      rename: (text) =>
        dispatch({ command: "set-property", args: { state, target: item, field: "wording", value: text } }),
    };
  return {
    label: wording.nameOf(name),
    value: name,
    rename: (text) => dispatch({ command: "rename-item", args: { state, item, name: text } }),
  };
}

const tagOf = ({ enclosure, id }: Extract<Selected, { kind: "end" }>): string =>
  shownInstallation().enclosures[enclosure]?.places[id]?.tag ?? "";
