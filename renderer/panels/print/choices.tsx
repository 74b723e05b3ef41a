import { useId } from "react";
import { PAPERS, type PaperName } from "../../../shared-model/answers/sheet-input.ts";
import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import type { StateName } from "../../../shared-model/model/project.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { documentStore, hasProposed, installationOf } from "../../state/document-store.ts";
import { sheetsOfBoxes } from "../../state/print/print-choice.ts";
import { printStore } from "../../state/print/print-store.ts";
import { choose, sceneNow } from "../../state/print/printing.ts";
import { STATE_WORDS } from "../../state/shown-state.ts";
import { useStore } from "../../state/use-store.ts";
import { SheetTicks } from "./sheet-ticks.tsx";
import { wording } from "./words.ts";

const PAPER_WORDS: Readonly<Record<PaperName, string>> = {
  letter: wording.letter,
  a4: wording.a4,
  tabloid: wording.tabloid,
  a3: wording.a3,
};
const STATES: readonly StateName[] = ["as-found", "proposed"];

/** What is printed, of which state and boxes, on which paper. */
export function Choices() {
  // A file that is being written is of what was chosen when it was begun.
  const isSaving = useStore(printStore, ({ work }) => work !== undefined && work.kind !== "lay-out");
  return (
    <fieldset className="print-choices" disabled={isSaving} aria-label={wording.whatIsPrinted}>
      <SheetTicks />
      <div className="print-facts">
        <StateChoice />
        <BoxesChoice />
        <PaperChoice />
        <DateChoice />
      </div>
    </fieldset>
  );
}

function StateChoice() {
  const started = useStore(documentStore, hasProposed);
  const state = useStore(printStore, ({ choice }) => choice.state);
  const name = useId();
  if (!started) return null;
  return (
    <fieldset className="print-state">
      <legend>{wording.state}</legend>
      {STATES.map((one) => (
        <label key={one}>
          <input type="radio" name={name} checked={one === state} onChange={() => choose({ state: one })} />
          {STATE_WORDS[one]}
        </label>
      ))}
    </fieldset>
  );
}

function PaperChoice() {
  const id = useId();
  const paper = useStore(printStore, ({ choice }) => choice.paper);
  return (
    <>
      <label htmlFor={id}>{wording.paper}</label>
      <select
        id={id}
        className="field"
        value={paper}
        onChange={({ target }) => {
          const chosen = PAPERS.find((one) => one === target.value);
          if (chosen !== undefined) choose({ paper: chosen });
        }}
      >
        {PAPERS.map((one) => (
          <option key={one} value={one}>
            {PAPER_WORDS[one]}
          </option>
        ))}
      </select>
    </>
  );
}

function BoxesChoice() {
  const id = useId();
  const choice = useStore(printStore, (state) => state.choice);
  const offers = useStore(printStore, (state) => state.offers);
  const enclosures = useStore(documentStore, (document) => installationOf(document).enclosures);
  const scene = sceneNow();
  if (offers === undefined) return null;
  const concerned = sheetsOfBoxes(choice, scene);
  const boxes = inOrder(enclosures).filter(({ kind }) => kind === "box");
  return (
    <>
      <label htmlFor={id}>{wording.boxes}</label>
      <span>
        <select
          id={id}
          className="field"
          value={choice.boxes}
          onChange={({ target }) => choose({ boxes: target.value as EnclosureId })}
        >
          <option value="all">{wording.allBoxes}</option>
          {scene.selected.length > 0 && (
            <option value="selected">{wording.selectedBoxes(scene.selected.length)}</option>
          )}
          {boxes.map((box) => (
            <option key={box.id} value={box.id}>
              {box.name}
            </option>
          ))}
        </select>
        {choice.boxes !== "all" && <small>{boxesWords(concerned.map(({ title }) => title))}</small>}
      </span>
    </>
  );
}

const boxesWords = (titles: readonly string[]): string =>
  titles.length === 0 ? wording.noSheetOfBoxes : wording.boxesOnly(titles.join(", "));

function DateChoice() {
  const id = useId();
  const date = useStore(printStore, ({ choice }) => choice.date);
  return (
    <>
      <label htmlFor={id}>{wording.date}</label>
      <input
        id={id}
        type="date"
        className="field"
        value={date}
        onChange={({ target }) => target.value !== "" && choose({ date: target.value })}
      />
    </>
  );
}
