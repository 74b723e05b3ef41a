import "@xyflow/react/dist/base.css";
import "./css/page.css";
import "./css/box.css";
import "./css/wiring.css";
import "./css/marks.css";
import "./css/hand.css";
import { type NodeTypes, ReactFlow, ReactFlowProvider } from "@xyflow/react";
import { useEffect, useRef, useState } from "react";
import { documentStore, installationOf } from "../state/document-store.ts";
import { findingsStore } from "../state/findings-store.ts";
import { sessionStore } from "../state/session-store.ts";
import { useStore } from "../state/use-store.ts";
import { BoxNode } from "./box-node.tsx";
import { WallPatterns } from "./draw/walls.tsx";
import { EmptySheet } from "./empty-sheet.tsx";
import { EnergiseOverlay } from "./energise/energise-overlay.tsx";
import { dropGestures, gestureStore } from "./gesture-store.ts";
import { HandHint } from "./hand-hint.tsx";
import { LayingOutHint } from "./laying-out-hint.tsx";
import { closeWithDocument } from "./open-boxes.ts";
import { OverBoxes } from "./over-boxes.tsx";
import { PressesAdd } from "./presses-add.tsx";
import { revealChanged } from "./reveal-changed.ts";
import { Roads } from "./roads.tsx";
import { RouteLine } from "./route-line.tsx";
import { SelectionBar } from "./selection-bar.tsx";
import { useSheetDrawings } from "./sheet-drawings.ts";
import { sheetEvents } from "./sheet-events.ts";
import { SheetFrame } from "./sheet-frame.tsx";
import { SheetMenu } from "./sheet-menu.tsx";
import { attachSheet, MAX_ZOOM, MIN_ZOOM } from "./sheet-view.ts";
import { TargetTip } from "./target-tip.tsx";
import { TitleBlock } from "./title-block.tsx";
import { useBoxMoves } from "./use-box-moves.ts";
import { BeforePaint, useFirstView } from "./use-first-view.ts";
import { useFlowNodes } from "./use-flow-nodes.ts";
import { useGoTo } from "./use-go-to.ts";

const NODE_TYPES: NodeTypes = { box: BoxNode };
const PAN_BUTTONS = [0, 1];
/** With a cable in the hand, dragging draws it; while boxes are chosen it draws a frame. */
const MIDDLE_BUTTON = [1];
const HIDDEN_ATTRIBUTION = { hideAttribution: true };
const STALE_AFTER_MS = 200;
const MORE_KEYS = ["Shift", "Control", "Meta"];

/** The drawing: boxes down to their conductor ends, the cables between them, and everything a hand does there. */
export function Sheet() {
  return (
    <ReactFlowProvider>
      <SheetBody />
    </ReactFlowProvider>
  );
}

function SheetBody() {
  const host = useRef<HTMLDivElement>(null);
  const room = useRef<HTMLDivElement>(null);
  const shown = useSheetDrawings();
  const nodes = useFlowNodes(shown);
  const moves = useBoxMoves();
  const first = useFirstView(room, shown.missing === 0);
  const tool = useStore(sessionStore, (session) => session.tool?.kind);
  const choosing = useStore(gestureStore, (gesture) => gesture.choosing);
  const stale = useStale();
  const empty = useStore(documentStore, (document) => Object.keys(installationOf(document).enclosures).length === 0);
  useGoTo(shown, first);
  useEffect(() => sheetEvents.attach(host.current), []);
  useEffect(() => dropGesturesOnSwitch(), []);
  useEffect(() => closeWithDocument(), []);
  useEffect(() => revealChanged(), []);
  useEffect(() => () => attachSheet(undefined), []);
  return (
    <div
      ref={host}
      className={stale ? "sheet sheet-stale" : "sheet"}
      data-tool={tool}
      data-choosing={choosing || undefined}
    >
      <WallPatterns />
      <div ref={room} className="sheet-flow">
        {first && (
          <ReactFlow
            nodes={nodes}
            nodeTypes={NODE_TYPES}
            onInit={attachSheet}
            {...moves}
            {...sheetEvents.flow}
            onlyRenderVisibleElements
            nodesFocusable={false}
            nodesConnectable={false}
            disableKeyboardA11y
            deleteKeyCode={null}
            selectionKeyCode={null}
            multiSelectionKeyCode={MORE_KEYS}
            nodesDraggable={tool === undefined}
            panOnDrag={tool === "cable" || choosing ? MIDDLE_BUTTON : PAN_BUTTONS}
            zoomOnDoubleClick={false}
            minZoom={MIN_ZOOM}
            maxZoom={MAX_ZOOM}
            nodeDragThreshold={1}
            paneClickDistance={4}
            nodeClickDistance={4}
            defaultViewport={first}
            elevateNodesOnSelect={false}
            proOptions={HIDDEN_ATTRIBUTION}
          >
            <Roads shown={shown} />
            <RouteLine shown={shown} />
            <OverBoxes />
            <PressesAdd />
            <BeforePaint />
          </ReactFlow>
        )}
      </div>
      {empty && <EmptySheet />}
      <SheetFrame />
      <SelectionBar />
      <TitleBlock />
      <HandHint />
      <EnergiseOverlay />
      <LayingOutHint />
      <SheetMenu />
      <TargetTip />
      <Said />
    </div>
  );
}

/** The other account of the wiring is another drawing: no gesture goes on in it. */
function dropGesturesOnSwitch(): () => void {
  let { state } = documentStore.get();
  return documentStore.subscribe(() => {
    const now = documentStore.get().state;
    if (now !== state) dropGestures();
    state = now;
  });
}

/** Whether the shown findings belong to an older drawing; not before a wait that a person would notice. */
function useStale(): boolean {
  const revision = useStore(documentStore, (document) => document.revision);
  const checked = useStore(findingsStore, (found) => found.revision);
  const [late, setLate] = useState(false);
  const behind = checked < revision;
  useEffect(() => {
    const timer = setTimeout(() => setLate(behind), behind ? STALE_AFTER_MS : 0);
    return () => clearTimeout(timer);
  }, [behind]);
  return behind && late;
}

/** What just happened, for people who hear the sheet. */
function Said() {
  const said = useStore(gestureStore, (gesture) => gesture.said);
  return (
    <p role="status" className="unseen">
      {said}
    </p>
  );
}
