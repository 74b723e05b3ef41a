import { Fragment } from "react";
import { windowCommands } from "../../shared-model/commands/catalog/commands.ts";
import { documentStore, hasProposed, nextRedo, nextUndo } from "../state/document-store.ts";
import { makeUpOffers } from "../state/make-up/make-up-offers.ts";
import { layOutLines } from "../state/menu-lines/arrange-lines.ts";
import { stateLines } from "../state/menu-lines/state-lines.ts";
import { isScopeShown, scopeStore } from "../state/scope/scope-store.ts";
import { sessionStore } from "../state/session-store.ts";
import { useStore } from "../state/use-store.ts";
import { MenuGroup, MenuItem, MenuLine, WordMenu } from "../ui/word-menu.tsx";
import { CommandItem } from "./command-item.tsx";
import { wording } from "./words.ts";

/** What is done with what is selected, and with the plan as a whole. */
export function EditMenu() {
  return (
    <WordMenu word={wording.edit}>
      <EditItems />
      <MenuLine />
      <LayOutItems />
      <MenuLine />
      <MakeUpItems />
      <ProposedItems />
    </WordMenu>
  );
}

function EditItems() {
  const steps: Readonly<Record<string, string | undefined>> = {
    undo: useStore(documentStore, nextUndo),
    redo: useStore(documentStore, nextRedo),
  };
  return windowCommands
    .filter(({ group }) => group === "edit")
    .map(({ id, title }) => {
      const isStep = id === "undo" || id === "redo";
      return (
        <Fragment key={id}>
          {id === "cut" && <MenuLine />}
          <CommandItem id={id} disabled={isStep && steps[id] === undefined}>
            <span className="menu-words">{steps[id] === undefined ? title : `${title}: ${steps[id]}`}</span>
          </CommandItem>
        </Fragment>
      );
    });
}

/** Layouts of the sheet: the circuit of the selected box, and everything. */
function LayOutItems() {
  return layOutLines().map(({ title, run }) => (
    <MenuItem key={title} onChoose={run}>
      {title}
    </MenuItem>
  ));
}

/** The make-up of a box, and a ground-fault device where there is a receptacle. */
function MakeUpItems() {
  return makeUpOffers().map(({ title, run }) => (
    <MenuItem key={title} onChoose={run}>
      {title}
    </MenuItem>
  ));
}

/** Start, show, reset and discard of the second account of the wiring. */
function ProposedItems() {
  const document = useStore(documentStore, (state) => state);
  const selection = useStore(sessionStore, (state) => state.selection);
  const scoped = useStore(scopeStore, isScopeShown);
  return (
    <MenuGroup caption={hasProposed(document) ? wording.proposed : wording.proposedNotStarted}>
      {hasProposed(document) && (
        <CommandItem id="show-scope">{scoped ? wording.leaveScope : wording.showScope}</CommandItem>
      )}
      {stateLines(document, selection).map(({ title, keys, run }) => (
        <MenuItem key={title} onChoose={run} {...(keys !== undefined && { keys })}>
          {title}
        </MenuItem>
      ))}
    </MenuGroup>
  );
}
