import { useCallback } from "react";
import type { FillLedger } from "../../shared-model/answers/fill.ts";
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import { WALL } from "../../shared-model/geometry/metrics.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EnclosureChange } from "../../shared-model/queries/changed-between-states.ts";
import { documentStore } from "../state/document-store.ts";
import { useStore } from "../state/use-store.ts";
import { BoxMiddle } from "./box-middle.tsx";
import { levelOf, unitOf } from "./detail.ts";
import { CHANGE_WORDS } from "./difference.ts";
import { SeveritySign } from "./draw/severity-sign.tsx";
import { type FindingMark, worstOf } from "./finding-marks.ts";
import { roomBelow } from "./room-below.ts";
import { asButton } from "./svg-roles.ts";
import { wording } from "./words.ts";

interface Away {
  readonly step: number;
  readonly enclosure: Enclosure;
  readonly drawing: BoxDrawing;
  readonly ledger: FillLedger | undefined;
  readonly change: EnclosureChange | undefined;
  readonly marks: readonly FindingMark[];
  readonly selected: boolean;
}

const SIGN = 17;
/** Of the word that opens a box, under its fill. */
const OPEN_WIDTH = 29;

/** A box from middle distance, with its worst finding; a selected one offers to open. */
export function BoxAway({ step, enclosure, drawing, ledger, change, marks, selected }: Away) {
  const unit = unitOf(step);
  const below = useStore(
    documentStore,
    useCallback((document) => roomBelow(document, enclosure.id), [enclosure.id]),
  );
  return (
    <>
      <BoxMiddle
        drawing={drawing}
        ledger={ledger}
        note={enclosure.note ?? ""}
        change={change && CHANGE_WORDS[change]}
        marked={marks.length > 0}
        below={below}
        unit={unit}
      />
      {marks.length > 0 && (
        <SeveritySign
          kind={worstOf(marks)}
          x={drawing.width}
          y={0}
          size={Math.min(SIGN * unit, drawing.height * 0.5)}
        />
      )}
      {selected && (
        <TextButton
          words={wording.open2}
          name={wording.openTheBox(enclosure.name)}
          right={OPEN_WIDTH * unit - WALL}
          y={drawing.height + WALL + 46 * unit}
          pixel={unit}
        />
      )}
    </>
  );
}

/** A word that is pressed, its baseline at `y`; the area that takes the press is 24 pixels high. */
function TextButton({
  words,
  name,
  right,
  y,
  pixel,
}: {
  readonly words: string;
  readonly name: string;
  readonly right: number;
  readonly y: number;
  readonly pixel: number;
}) {
  const width = OPEN_WIDTH * pixel;
  return (
    <g {...asButton(name)} className="sheet-text-button nodrag nopan" data-open="">
      <rect
        className="sheet-hit"
        x={right - width}
        y={y - 17 * pixel}
        width={width}
        height={26 * pixel}
        rx={2 * pixel}
      />
      <text x={right} y={y} fontSize={12 * pixel}>
        {words}
      </text>
      <path d={`M${right - 29 * pixel} ${y + 2.5 * pixel}H${right}`} strokeWidth={pixel} />
    </g>
  );
}

/**
 * The sheet of paper that an opened box is drawn on, over its neighbours. The button that puts it back stands at
 * its beginning: where the plate is larger than the view, that is what is seen of it.
 */
export function OpenPlate({ drawing, pixel }: { readonly drawing: BoxDrawing; readonly pixel: number }) {
  const { bounds, header } = drawing;
  const band = 30 * pixel;
  const left = bounds.x - 12;
  return (
    <>
      <rect
        className="sheet-open-plate"
        x={left}
        y={bounds.y - band}
        width={bounds.width + 24}
        height={bounds.height + band + 12}
        rx={3 * pixel}
        style={{ strokeWidth: 1.5 * pixel }}
      />
      <g {...asButton(wording.close(header.name))} className="sheet-text-button nodrag nopan" data-open="">
        <rect
          className="sheet-hit"
          x={left + 4 * pixel}
          y={bounds.y - band + 2 * pixel}
          width={48 * pixel}
          height={26 * pixel}
          rx={2 * pixel}
        />
        <text x={left + 41 * pixel} y={bounds.y - band + 19 * pixel} fontSize={12 * pixel}>
          {wording.close2}
        </text>
        <path d={`M${left + 10 * pixel} ${bounds.y - band + 21.5 * pixel}H${left + 41 * pixel}`} strokeWidth={pixel} />
      </g>
    </>
  );
}

/** In pixels: the lines above and below a box that say its name and its fill, inside the frame of a selected one. */
const WORDS = { above: 22, change: 16, below: 28 } as const;

/**
 * Frame of a selected box; away it stands clear of the outline of what is opened, and has corners to be seen. From the
 * middle distance it goes around the words of the box too.
 */
export function SelectedFrame({
  drawing,
  step,
  changed,
}: {
  readonly drawing: BoxDrawing;
  readonly step: number;
  /** Whether a further line above says what the work does to the box. */
  readonly changed: boolean;
}) {
  const unit = step === 0 ? 0 : unitOf(step);
  const words = levelOf(step) === "middle" ? unit : 0;
  const away = Math.max(8, 7 * unit);
  const above = Math.max(away, (WORDS.above + (changed ? WORDS.change : 0)) * words);
  const below = Math.max(away, WORDS.below * words);
  const [left, right] = [-WALL - away, drawing.width + WALL + away];
  const [top, bottom] = [-WALL - above, drawing.height + WALL + below];
  const corner = 3.5 * unit;
  const corners = [left, right].flatMap((x) => [top, bottom].map((y) => ({ x, y })));
  return (
    <g className="sheet-box-frame" style={{ strokeWidth: Math.max(2, 2 * unit) }}>
      <rect x={left} y={top} width={right - left} height={bottom - top} />
      {unit > 0 &&
        corners.map(({ x, y }) => (
          <rect
            key={`${x} ${y}`}
            className="sheet-box-corner"
            x={x - corner}
            y={y - corner}
            width={2 * corner}
            height={2 * corner}
          />
        ))}
    </g>
  );
}
