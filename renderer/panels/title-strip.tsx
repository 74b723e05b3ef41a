import { useEffect, useRef } from "react";
import { EDITIONS } from "../../shared-model/model/project.ts";
import { dispatch, documentStore, isDirty, nextRedo, nextUndo, redo, undo } from "../state/document-store.ts";
import { editionWords } from "../state/edition-words.ts";
import { energiseStore, isEnergised } from "../state/energise/energise-store.ts";
import { ENERGISE_KEY, toggleEnergise } from "../state/energise/energising.ts";
import { shownName } from "../state/file-actions.ts";
import { useStore } from "../state/use-store.ts";
import { CommandField } from "./command/command-field.tsx";
import { EditMenu } from "./edit-menu.tsx";
import { useFetchedAhead } from "./fetch-ahead.ts";
import { Mark } from "./mark.tsx";
import { StateSwitch } from "./state-switch.tsx";
import { DrawingMenu, WindowMenu } from "./window-menus.tsx";

/** The title block of the window: what is open, by which edition it is checked, and the way to every command. */
export function TitleStrip() {
  useFetchedAhead();
  return (
    <header data-region className="strip">
      <div className="strip-mark">
        <Mark />
        <h1>Loadside</h1>
      </div>
      <DocumentCell />
      <div className="strip-state">
        <StateSwitch />
      </div>
      <div className="strip-buttons">
        <DrawingMenu />
        <EditMenu />
        <UndoButtons />
        <WindowMenu />
      </div>
      <EditionCell />
      <div className="strip-energise">
        <EnergiseButton />
      </div>
      <div className="strip-command">
        <CommandField />
      </div>
    </header>
  );
}

function DocumentCell() {
  const name = useStore(documentStore, shownName);
  const saved = useStore(documentStore, savedWords);
  return (
    <div className="strip-document">
      <title>{`${name} (${saved}) - Loadside`}</title>
      <span className="cap">Document</span>
      <span className="val">
        <span className="val-name">{name}</span>
        <small role="status">{saved}</small>
      </span>
    </div>
  );
}

const savedWords = (state: ReturnType<typeof documentStore.get>): string => {
  if (state.readOnly) return "read only";
  if (isDirty(state)) return "not saved";
  return state.fileName === undefined ? "no file yet" : "saved";
};

function UndoButtons() {
  const undoName = useStore(documentStore, nextUndo);
  const redoName = useStore(documentStore, nextRedo);
  return (
    <>
      <StepButton word="Undo" step={undoName} onPress={undo} />
      <StepButton word="Redo" step={redoName} onPress={redo} />
    </>
  );
}

interface StepProps {
  readonly word: string;
  /** Name of the step that would be taken; undefined when there is none. */
  readonly step: string | undefined;
  readonly onPress: () => void;
}

function StepButton({ word, step, onPress }: StepProps) {
  const name = step === undefined ? word : `${word}: ${step}`;
  return (
    <button
      type="button"
      className="button"
      disabled={step === undefined}
      title={name}
      aria-label={name}
      onClick={onPress}
    >
      {word}
    </button>
  );
}

function EditionCell() {
  const edition = useStore(documentStore, ({ project }) => project.edition);
  const readOnly = useStore(documentStore, (state) => state.readOnly);
  return (
    <div className="strip-edition">
      <label className="cap" htmlFor="edition">
        Code edition
      </label>
      <select
        id="edition"
        className="val-select"
        value={edition}
        disabled={readOnly}
        onChange={({ target }) => {
          const chosen = EDITIONS.find((one) => String(one) === target.value);
          if (chosen !== undefined) dispatch({ command: "set-edition", args: { edition: chosen } });
        }}
      >
        {EDITIONS.map((one) => (
          <option key={one} value={one}>
            {editionWords(one)}
          </option>
        ))}
      </select>
    </div>
  );
}

function EnergiseButton() {
  const on = useStore(energiseStore, isEnergised);
  const own = useRef<HTMLButtonElement>(null);
  const was = useRef(on);
  useEffect(() => {
    // What it was left by is gone: the focus goes to where it was begun.
    if (was.current && !on && document.activeElement === document.body) own.current?.focus({ preventScroll: true });
    was.current = on;
  }, [on]);
  return (
    <button
      ref={own}
      type="button"
      className="button"
      aria-pressed={on}
      aria-keyshortcuts={ENERGISE_KEY}
      title={on ? `End it: Escape or ${ENERGISE_KEY}` : `Compute what the circuit does with power on: ${ENERGISE_KEY}`}
      onClick={toggleEnergise}
    >
      Energise
    </button>
  );
}
