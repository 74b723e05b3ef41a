import { type NodeProps, useStore as useFlowStore } from "@xyflow/react";
import { memo, useCallback, useRef } from "react";
import { farBox } from "../../../shared-model/geometry/far-box.ts";
import { WALL } from "../../../shared-model/geometry/metrics.ts";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { findingsStore } from "../../state/findings-store.ts";
import { sameList, useStore } from "../../state/use-store.ts";
import { SelectedFrame } from "../box-away.tsx";
import { BoxWords } from "../box-words.tsx";
import { stepNow, unitOf } from "../detail.ts";
import { useDifference } from "../difference.ts";
import { useDrawing } from "../drawings.ts";
import { answersAbout, answersBySubject } from "../finding-marks.ts";
import type { BoxFlowNode } from "../to-flow.ts";
import { useBoxEvents } from "../use-box-events.ts";

const NONE: readonly never[] = [];
const ignore = (): void => {};
/** Height of the line that a name stands in, and how far its baseline lies above its foot, in pixels. */
const NAME_LINE = { height: 15, foot: 3 } as const;

/**
 * A box whose picture is painted elsewhere: what takes presses, the focus and the frame of a selected one. It is told
 * by the same name as any box.
 */
export const BoxShell = memo(function BoxShell({ data, selected }: Pick<NodeProps<BoxFlowNode>, "data" | "selected">) {
  const id = data.enclosure;
  const step = useFlowStore(stepNow);
  const enclosure = useStore(documentStore, (document) => installationOf(document).enclosures[id]);
  const drawing = useDrawing(id);
  const about = useCallback(
    ({ findings, couldNotTell }: ReturnType<typeof findingsStore.get>) =>
      enclosure ? answersAbout(enclosure, answersBySubject(findings, couldNotTell)) : NONE,
    [enclosure],
  );
  const answers = useStore(findingsStore, about, sameList);
  const { change } = useDifference(id);
  const root = useRef<SVGSVGElement>(null);
  const events = useBoxEvents({
    id,
    drawing,
    scale: 1,
    items: NONE,
    targets: NONE,
    marks: NONE,
    held: undefined,
    root,
    setFocused: ignore,
  });
  if (enclosure === undefined || drawing === undefined) return null;
  const { bounds, width, height } = drawing;
  const unit = unitOf(step);
  const { name } = farBox({
    width: width / unit,
    height: height / unit,
    name: enclosure.name,
    symbols: 0,
    ratio: undefined,
    marked: answers.length > 0,
  });
  return (
    <svg
      ref={root}
      role="presentation"
      className={selected ? "sheet-box sheet-far sheet-box-selected" : "sheet-box sheet-far"}
      viewBox={`${bounds.x} ${bounds.y} ${bounds.width} ${bounds.height}`}
      width={bounds.width}
      height={bounds.height}
      {...events}
    >
      <BoxWords enclosure={enclosure} change={change} answers={answers} />
      <rect
        className="sheet-wall-outer sheet-far-wall"
        x={-WALL}
        y={-WALL}
        width={width + 2 * WALL}
        height={height + 2 * WALL}
      />
      {name && (
        <rect
          className="sheet-far-name"
          x={name.centred ? 0 : name.x * unit}
          y={(name.y + NAME_LINE.foot - NAME_LINE.height) * unit}
          width={name.centred ? width : width - name.x * unit}
          height={NAME_LINE.height * unit}
        />
      )}
      {selected && <SelectedFrame drawing={drawing} step={step} changed={change !== undefined} />}
    </svg>
  );
});
