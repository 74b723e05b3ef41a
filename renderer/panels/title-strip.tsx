import { EDITIONS } from "../../shared-model/model/project.ts";
import { dispatch, documentStore, isDirty, nextRedo, nextUndo, redo, undo } from "../state/document-store.ts";
import { editionWords } from "../state/edition-words.ts";
import { toggleEnergise } from "../state/energise/door.ts";
import { energiseStore, isEnergised } from "../state/energise/energise-store.ts";
import { shownName } from "../state/file-actions.ts";
import { useKeys, useKeysForReaders, withKeys } from "../state/keys/keys.ts";
import { useStore } from "../state/use-store.ts";
import { CommandField } from "./command/command-field.tsx";
import { EditMenu } from "./edit-menu.tsx";
import { useFetchedAhead } from "./fetch-ahead.ts";
import { Mark } from "./mark.tsx";
import { StateSwitch } from "./state-switch.tsx";
import { useFocusBack } from "./use-focus-back.ts";
import { DrawingMenu, WindowMenu } from "./window-menus.tsx";
import { wording } from "./words.ts";

/** The title block of the window: what is open, by which edition it is checked, and the way to every command. */
export function TitleStrip() {
  useFetchedAhead();
  return (
    <header data-region className="strip">
      <div className="strip-mark">
        <Mark />
        <h1>{wording.loadside}</h1>
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
      <span className="cap">{wording.document}</span>
      <span className="val val-name" title={name}>
        {name}
      </span>
      <small role="status">{saved}</small>
    </div>
  );
}

const savedWords = (state: ReturnType<typeof documentStore.get>): string => {
  if (state.readOnly) return wording.readOnly;
  if (isDirty(state)) return wording.notSaved;
  return state.fileName === undefined ? wording.noFileYet : wording.saved;
};

function UndoButtons() {
  const undoName = useStore(documentStore, nextUndo);
  const redoName = useStore(documentStore, nextRedo);
  return (
    <>
      <StepButton id="undo" word={wording.undo} step={undoName} onPress={undo} />
      <StepButton id="redo" word={wording.redo} step={redoName} onPress={redo} />
    </>
  );
}

interface StepProps {
  readonly id: "undo" | "redo";
  readonly word: string;
  /** Name of the step that would be taken; undefined when there is none. */
  readonly step: string | undefined;
  readonly onPress: () => void;
}

function StepButton({ id, word, step, onPress }: StepProps) {
  const keys = useKeys(id);
  const forReaders = useKeysForReaders(id);
  const name = step === undefined ? word : `${word}: ${step}`;
  return (
    <button
      type="button"
      className="button"
      disabled={step === undefined}
      title={withKeys(name, keys)}
      aria-label={name}
      aria-keyshortcuts={forReaders}
      onClick={onPress}
    >
      <span className="step-word">{word}</span>
      <svg className="step-sign" width="16" height="16" viewBox="0 0 16 16" aria-hidden="true">
        <path d={SIGNS[id]} />
      </svg>
    </button>
  );
}

/** Stands for the word where the window is narrow. */
const SIGNS = {
  undo: "M6 2.5L2.5 6L6 9.5M2.5 6H9.5A4 4 0 0 1 9.5 14H6",
  redo: "M10 2.5L13.5 6L10 9.5M13.5 6H6.5A4 4 0 0 0 6.5 14H10",
} as const;

function EditionCell() {
  const edition = useStore(documentStore, ({ project }) => project.edition);
  const readOnly = useStore(documentStore, (state) => state.readOnly);
  return (
    <div className="strip-edition">
      <label className="cap" htmlFor="edition">
        {wording.codeEdition}
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
  const keys = useKeys("energise");
  const forReaders = useKeysForReaders("energise");
  const own = useFocusBack(on);
  return (
    <button
      ref={own}
      type="button"
      className="button"
      aria-pressed={on}
      aria-keyshortcuts={forReaders}
      title={withKeys(on ? wording.endItEscape : wording.computeWhatTheCircuitDoesWith, keys)}
      onClick={toggleEnergise}
    >
      {wording.energise}
    </button>
  );
}
