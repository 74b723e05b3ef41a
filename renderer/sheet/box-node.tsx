import { type NodeProps, useStore as useFlowStore } from "@xyflow/react";
import { memo, useCallback, useMemo, useRef, useState } from "react";
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import { WALL } from "../../shared-model/geometry/metrics.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { documentStore, installationOf, shownInstallation } from "../state/document-store.ts";
import { findingsStore } from "../state/findings-store.ts";
import { keyOf, type Selected } from "../state/selection.ts";
import { sessionStore } from "../state/session-store.ts";
import { sameList, useStore } from "../state/use-store.ts";
import { BoxFar, farSign } from "./box-far.tsx";
import { BoxHeader } from "./box-header.tsx";
import { BoxInside } from "./box-inside.tsx";
import { boxItems } from "./box-items.ts";
import { useDifference } from "./difference.ts";
import { ChangeOutline } from "./draw/change-outline.tsx";
import { SeveritySign } from "./draw/severity-sign.tsx";
import { Walls } from "./draw/walls.tsx";
import { useDrawing } from "./drawings.ts";
import { answersAbout, answersBySubject, findingMarks, worstOf } from "./finding-marks.ts";
import { gestureStore } from "./gesture-store.ts";
import { useHeldIn } from "./hand.ts";
import { HandLayer } from "./hand-layer.tsx";
import { ItemsLayer } from "./items-layer.tsx";
import { MarksLayer } from "./marks-layer.tsx";
import { placesOf } from "./places.ts";
import { protectsText } from "./protection.ts";
import { NEAR_FROM } from "./sheet-view.ts";
import { TargetLayer } from "./target-layer.tsx";
import type { BoxFlowNode } from "./to-flow.ts";
import { useBoxEvents } from "./use-box-events.ts";
import { useTargets } from "./use-targets.ts";

const isNear = (flow: { readonly transform: readonly [number, number, number] }): boolean =>
  flow.transform[2] >= NEAR_FROM;

const EMPTY: readonly never[] = [];

/** One enclosure on the sheet. */
export const BoxNode = memo(function BoxNode({ data, selected }: NodeProps<BoxFlowNode>) {
  const id = data.enclosure;
  const near = useFlowStore(isNear);
  const enclosure = useStore(documentStore, (document) => installationOf(document).enclosures[id]);
  const drawing = useDrawing(id);
  const ledger = useStore(findingsStore, (found) => found.ledgers[id]);
  const about = useCallback(
    ({ findings, couldNotTell }: ReturnType<typeof findingsStore.get>) =>
      enclosure ? answersAbout(enclosure, answersBySubject(findings, couldNotTell)) : EMPTY,
    [enclosure],
  );
  const answers = useStore(findingsStore, about, sameList);
  const chosen = useStore(sessionStore, ({ selection }) =>
    selection
      .filter((each) => isInBox(each, enclosure, drawing))
      .map(keyOf)
      .join("\n"),
  );
  const difference = useDifference(id);
  const roles = useStore(findingsStore, (found) => found.roles[id]);
  const protects = useStore(findingsStore, (found) => (enclosure ? protectsText(enclosure, found.outlets) : ""));
  const held = useHeldIn(id);
  const targets = useTargets(enclosure, drawing, held);
  const items = useMemo(
    // What the items are called changes only with the drawing: it carries the names of cables too.
    () => (near && enclosure && drawing ? boxItems(shownInstallation(), enclosure, drawing, roles) : EMPTY),
    [near, enclosure, drawing, roles],
  );
  const marks = useMemo(() => (drawing ? findingMarks(drawing, answers) : EMPTY), [drawing, answers]);
  const root = useRef<SVGSVGElement>(null);
  const [focused, setFocused] = useState<string>();
  const events = useBoxEvents({ id, items, targets, marks, held, root, setFocused });
  const origin = useOrigin(id);

  if (enclosure === undefined || drawing === undefined) return null;
  const { bounds } = drawing;
  const lifted = held?.kind === "end" ? held.end : undefined;
  const active = items.some((item) => item.key === focused) ? focused : items[0]?.key;
  const activeTarget = targets.some((target) => target.key === focused) ? focused : targets[0]?.key;
  return (
    <svg
      ref={root}
      role="presentation"
      className={selected ? "sheet-box sheet-box-selected" : "sheet-box"}
      viewBox={`${bounds.x} ${bounds.y} ${bounds.width} ${bounds.height}`}
      width={bounds.width}
      height={bounds.height}
      {...events}
    >
      <Walls width={drawing.width} height={drawing.height} material={drawing.material} far={!near} />
      <ChangeOutline drawing={drawing} change={difference.change} far={!near} />
      {selected && (
        <rect
          className="sheet-box-frame"
          x={-WALL - 8}
          y={-WALL - 8}
          width={drawing.width + 2 * WALL + 16}
          height={drawing.height + 2 * WALL + 16}
        />
      )}
      {near ? (
        <>
          <BoxHeader
            drawing={drawing}
            ledger={ledger}
            marked={marks.some((mark) => mark.onHeader)}
            change={difference.change}
          />
          <BoxInside
            drawing={drawing}
            chosen={chosen}
            lifted={lifted}
            growing={held !== undefined}
            difference={difference}
            roles={roles}
            protects={protects}
          />
          <ItemsLayer items={items} active={active} resting={held !== undefined} />
          <MarksLayer marks={marks} />
          <Ghost id={id} />
          {held && <TargetLayer targets={targets} active={activeTarget} />}
          {held && (
            <HandLayer
              held={held}
              enclosure={enclosure}
              drawing={drawing}
              origin={origin}
              aim={targets.find((target) => target.key === focused)?.at}
            />
          )}
        </>
      ) : (
        <>
          <BoxFar drawing={drawing} ledger={ledger} />
          {marks.length > 0 && (
            <SeveritySign
              kind={worstOf(marks)}
              x={drawing.width - farSign(drawing) * 0.62}
              y={farSign(drawing) * 0.62}
              size={farSign(drawing)}
            />
          )}
        </>
      )}
    </svg>
  );
});

/** Outline of a splice of this box on the move. */
function Ghost({ id }: { readonly id: EnclosureId }) {
  const ghost = useStore(gestureStore, (gesture) => (gesture.ghost?.enclosure === id ? gesture.ghost : undefined));
  if (ghost === undefined) return null;
  const { x, y, width, height } = ghost;
  return <rect className="sheet-ghost" x={x} y={y} width={width} height={height} rx={12} />;
}

/** Whether a selected thing shows inside this box; the box itself has its own frame. */
function isInBox(item: Selected, enclosure: Enclosure | undefined, drawing: BoxDrawing | undefined): boolean {
  if (enclosure === undefined || drawing === undefined) return false;
  switch (item.kind) {
    case "end":
      return item.enclosure === enclosure.id;
    case "device":
      return item.id in enclosure.devices;
    case "splice":
      return item.id in enclosure.splices;
    case "jumper":
      return item.id in enclosure.jumpers;
    case "cable":
      return drawing.sheaths.some(({ cable }) => cable === item.id);
    default:
      return false;
  }
}

const ORIGIN = { x: 0, y: 0 };

/** Where the inside of the box begins on the sheet. */
const useOrigin = (id: EnclosureId): Point => useStore(documentStore, (document) => placesOf(document)[id] ?? ORIGIN);
