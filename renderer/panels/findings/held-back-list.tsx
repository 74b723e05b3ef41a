import type { HeldBack } from "../../../shared-model/model/project.ts";
import { dispatch, documentStore } from "../../state/document-store.ts";
import { notify } from "../../state/session-store.ts";
import { goToIn } from "../../state/shown-state.ts";
import { findSubject } from "../../state/subject-target.ts";
import { useStore } from "../../state/use-store.ts";
import { nextFocusAfter } from "./next-focus.ts";
import { wording } from "./words.ts";

const NONE: readonly HeldBack[] = [];

/**
 * While as found is shown: its edits that proposed could not take over, each until a person has looked at it. Proposed
 * has a finding about each.
 */
export function HeldBackList() {
  const list = useStore(documentStore, ({ project }) => project.heldBack ?? NONE);
  const found = useStore(documentStore, ({ state }) => state === "as-found");
  if (!found || list.length === 0) return null;
  return (
    <section aria-label={wording.notCarriedOver}>
      <h3 className="findings-kind">
        <span className="findings-title">{wording.notCarriedOverToProposed}</span>
        <span className="fig findings-count">{list.length}</span>
      </h3>
      <ul>
        {list.map((held) => (
          <HeldBackRow key={held.id} held={held} />
        ))}
      </ul>
    </section>
  );
}

function HeldBackRow({ held: { id, title, items, because } }: { readonly held: HeldBack }) {
  const readOnly = useStore(documentStore, (state) => state.readOnly);
  const settle = (button: HTMLElement): void => {
    const focusNext = nextFocusAfter(button);
    const done = dispatch({ command: "settle-held-back", args: { id } });
    if (done.ok) focusNext();
    else notify("problem", wording.notDone, [done.refusal.message]);
  };
  return (
    <li className="finding">
      <p className="finding-who">
        {items.map((item) => (
          <ItemButton key={`${item.kind} ${item.id}`} item={item} />
        ))}
      </p>
      <p className="finding-message">
        <strong>{title}</strong>
        {wording.doneAsFoundStaysOutOf(because)}
      </p>
      {!readOnly && (
        <button
          type="button"
          className="button small finding-settle"
          onClick={({ currentTarget }) => settle(currentTarget)}
        >
          {wording.iHaveLooked}
          <span className="unseen">{wording.at(title)}</span>
        </button>
      )}
    </li>
  );
}

/** Leads to the thing in proposed, where there is something to look at, else in as found. */
function ItemButton({ item }: { readonly item: HeldBack["items"][number] }) {
  const go = (): void => {
    const { project } = documentStore.get();
    const { proposed, asFound } = project;
    const inProposed = proposed && findSubject(project, proposed, item);
    const target = inProposed ?? findSubject(project, asFound, item);
    if (target !== undefined) goToIn(inProposed === undefined ? "as-found" : "proposed", target);
  };
  return (
    <button type="button" className="link subject" onClick={go}>
      {item.name}
    </button>
  );
}
