import { type CSSProperties, type MouseEvent, useRef } from "react";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { documentStore, installationOf } from "../state/document-store.ts";
import { useLooking } from "../state/looking.ts";
import { isScopeShown, scopeStore } from "../state/scope/scope-store.ts";
import { sessionStore } from "../state/session-store.ts";
import { useStore } from "../state/use-store.ts";
import { useCoarse } from "../ui/use-coarse.ts";
import { startRoute } from "./cable-start.ts";
import { setChoosing } from "./choosing.ts";
import { gestureStore, openMenu } from "./gesture-store.ts";
import { laterWording } from "./later-words.ts";
import { closeBox, openStore } from "./open-boxes.ts";
import { stateMarkWidth } from "./sheet-frame.tsx";
import type { Subject } from "./sheet-subject.ts";
import { showOpened } from "./show-opened.ts";
import { type BarStand, useBarSpot } from "./use-bar-spot.ts";
import { wording } from "./words.ts";

const chosenBoxes = ({ selection }: ReturnType<typeof sessionStore.get>): string =>
  selection.flatMap((each) => (each.kind === "enclosure" ? [each.id] : [])).join(" ");

/** What can be done with the selected boxes, by pressing alone, in the corner of the sheet beside its state. */
export function SelectionBar() {
  const chosen = useStore(sessionStore, chosenBoxes);
  const choosing = useStore(gestureStore, (gesture) => gesture.choosing);
  const wholeOnly = useStore(gestureStore, (gesture) => gesture.wholeOnly);
  const state = useStore(documentStore, (document) => document.state);
  const scoped = useStore(scopeStore, isScopeShown);
  const open = useStore(openStore, ({ ids }) => ids);
  const boxes = useStore(documentStore, (document) => installationOf(document).enclosures);
  const readOnly = useLooking();
  const ids = chosen === "" ? [] : (chosen.split(" ") as EnclosureId[]);
  const [first] = ids;
  const box = first && boxes[first];
  const coarse = useCoarse();
  const root = useRef<HTMLFieldSetElement>(null);
  const mark = stateMarkWidth(state, scoped);
  const stand = useBarSpot(root, chosen, mark);
  // Hands without keys find the switch for several whenever there is something to choose.
  const offers = choosing || (coarse && Object.keys(boxes).length > 1);
  if (box === undefined && !offers) return null;
  const allOpen = ids.every((id) => open.includes(id));
  return (
    <fieldset
      ref={root}
      className="sheet-bar"
      data-spot={stand.spot}
      aria-label={laterWording.selectedBoxes2}
      style={placeOf(stand, mark)}
    >
      {(box !== undefined || choosing) && <span className="sheet-bar-words">{wordsOf(ids.length, box?.name)}</span>}
      {box && (
        <>
          <button type="button" onClick={() => openOrClose(ids, !allOpen)}>
            {allOpen ? wording.close2 : wording.open2}
          </button>
          {ids.length === 1 && !readOnly && (
            <button type="button" title={CABLE_TIP} onClick={() => startRoute(box.id)}>
              {laterWording.runACable}
            </button>
          )}
          <MenuButton word={laterWording.arrange} subject={{ kind: "arrange" }} />
          <MenuButton word={laterWording.more} subject={{ kind: "box", enclosure: box.id }} />
        </>
      )}
      <button type="button" aria-pressed={choosing} onClick={() => setChoosing(!choosing)}>
        {choosing ? laterWording.doneChoosing : laterWording.chooseSeveral}
      </button>
      {choosing && (
        <button
          type="button"
          aria-pressed={wholeOnly}
          title={WHOLE_TIP}
          onClick={() => gestureStore.merge({ wholeOnly: !wholeOnly })}
        >
          {laterWording.wholeBoxesOnly}
        </button>
      )}
    </fieldset>
  );
}

const WHOLE_TIP = laterWording.aFrameTakesOnlyTheBoxes;
const CABLE_TIP = laterWording.runACableFromThisBox;

/** Of the frame around the sheet. */
const FRAME = 18;
const placeOf = ({ spot, foot }: BarStand, mark: number): CSSProperties => {
  if (spot === "foot") return { left: FRAME, bottom: FRAME + foot, maxWidth: ALL };
  const maxWidth = `calc(100% - ${2 * FRAME + mark}px)`;
  return spot === "head" ? { top: FRAME, left: FRAME + mark, maxWidth } : { top: FRAME, right: FRAME, maxWidth };
};
const ALL = `calc(100% - ${2 * FRAME}px)`;

function openOrClose(ids: readonly EnclosureId[], open: boolean): void {
  for (const id of ids) {
    if (open) showOpened(id);
    else closeBox(id);
  }
}

function wordsOf(count: number, name: string | undefined): string {
  if (count === 0) return laterWording.pressBoxesOrDragAFrame;
  return count === 1 ? (name ?? "") : laterWording.boxes(count);
}

function MenuButton({ word, subject }: { readonly word: string; readonly subject: Subject }) {
  const open = ({ currentTarget }: MouseEvent<HTMLButtonElement>): void => {
    const { left, bottom } = currentTarget.getBoundingClientRect();
    openMenu({ subject, x: left, y: bottom });
  };
  return (
    <button type="button" aria-haspopup="menu" onClick={open}>
      {word}
      <svg width="9" height="9" viewBox="0 0 14 14" aria-hidden="true">
        <path d="M2 5L7 10L12 5" />
      </svg>
    </button>
  );
}
