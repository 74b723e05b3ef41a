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
import { offerPictures } from "../state/picture-maker.ts";
import { isScopeShown, scopeStore } from "../state/scope/scope-store.ts";
import { needForScope } from "../state/scope/scoping.ts";
import { sessionStore } from "../state/session-store.ts";
import { useStore } from "../state/use-store.ts";
import { PinMarks } from "./bend/pin-marks.tsx";
import { BoxNode } from "./box-node.tsx";
import { WallPatterns } from "./draw/walls.tsx";
import { EmptySheet } from "./empty-sheet.tsx";
import { EnergiseOverlayHost } from "./energise/overlay-host.tsx";
import { dropGestures, gestureStore } from "./gesture-store.ts";
import { Later } from "./later.ts";
import { MakeUpPreviewHost } from "./make-up/preview-host.tsx";
import { closeWithDocument } from "./open-boxes.ts";
import { OverBoxes } from "./over-boxes.tsx";
import { PressesAdd } from "./presses-add.tsx";
import { Roads } from "./roads.tsx";
import { fetchScopeParts, scopeParts } from "./scope/scope-view.ts";
import { useSheetDrawings } from "./sheet-drawings.ts";
import { sheetEvents } from "./sheet-events.ts";
import { SheetFrame } from "./sheet-frame.tsx";
import { SheetMenuPlace } from "./sheet-menu-place.tsx";
import { attachSheet, MAX_ZOOM, MIN_ZOOM } from "./sheet-view.ts";
import { showUndone } from "./show-undone.ts";
import { TitleBlock } from "./title-block.tsx";
import { useArranged } from "./use-arranged.ts";
import { useBoxMoves } from "./use-box-moves.ts";
import { BeforePaint, useFirstView } from "./use-first-view.ts";
import { useFlowNodes } from "./use-flow-nodes.ts";
import { useGoTo } from "./use-go-to.ts";
import { useStayPut } from "./use-stay-put.ts";
import { wording } from "./words.ts";

const NODE_TYPES: NodeTypes = { box: BoxNode };
const PAN_BUTTONS = [0, 1];
/** With a cable in the hand, dragging draws it; while boxes are chosen it draws a frame. */
const MIDDLE_BUTTON = [1];
const HIDDEN_ATTRIBUTION = { hideAttribution: true };
/** The sheet says itself what its keys do; what the library would say of them is not so here. */
const UNSAID = { "node.a11yDescription.default": "", "edge.a11yDescription.default": "" };
const STALE_AFTER_MS = 200;
const MORE_KEYS = ["Shift", "Control", "Meta"];

/** The drawing: boxes down to their conductor ends, the cables between them, and everything a hand does there. */
export function Sheet() {
  return (
    <ReactFlowProvider>
      <div className="sheet-and-beside">
        <SheetBody />
        <div className="sheet-beside" />
      </div>
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
  const arranged = useArranged();
  const scope = useStore(scopeStore, isScopeShown) ? scopeParts() : undefined;
  const empty = useStore(documentStore, (document) => Object.keys(installationOf(document).enclosures).length === 0);
  useStayPut(room);
  useGoTo(shown, first);
  useEffect(() => sheetEvents.attach(host.current), []);
  useEffect(() => dropGesturesOnSwitch(), []);
  useEffect(() => closeWithDocument(), []);
  useEffect(() => showUndone(), []);
  useEffect(() => offerPictures(() => import("./copy-picture.tsx")), []);
  useEffect(() => needForScope(fetchScopeParts), []);
  useEffect(() => () => attachSheet(undefined), []);
  return (
    <div
      ref={host}
      className={`sheet${stale ? " sheet-stale" : ""}${arranged ? " sheet-arranged" : ""}`}
      data-tool={tool}
      data-waiting={shown.missing || undefined}
      data-choosing={choosing || undefined}
    >
      <WallPatterns />
      <div ref={room} className="sheet-flow">
        {first && (
          <ReactFlow
            nodes={nodes}
            nodeTypes={NODE_TYPES}
            aria-label={wording.drawing}
            aria-roledescription={wording.drawing2}
            tabIndex={0}
            data-sheet-stop=""
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
            nodesDraggable={tool === undefined && scope === undefined}
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
            ariaLabelConfig={UNSAID}
          >
            <Roads shown={shown} />
            <Later show={({ PlacingGhost }) => <PlacingGhost shown={shown} />} />
            <Later show={({ RouteLine }) => <RouteLine shown={shown} />} />
            <MakeUpPreviewHost />
            <OverBoxes />
            <Later show={({ BendLayer }) => <BendLayer shown={shown} />} />
            <PinMarks shown={shown} />
            <Later show={({ CableKnob }) => <CableKnob shown={shown} />} />
            <PressesAdd />
            {scope && <scope.ScopeGone />}
            {scope && <scope.ScopeFar shown={shown} />}
            <BeforePaint />
          </ReactFlow>
        )}
      </div>
      {empty && <EmptySheet />}
      <SheetFrame />
      <Later show={({ BackToDrawing }) => <BackToDrawing />} />
      <Later show={({ SelectionBar }) => <SelectionBar />} />
      <TitleBlock />
      <Later show={({ Legend }) => <Legend />} />
      <Later show={({ HandHint }) => <HandHint />} />
      <Later show={({ RenameField }) => <RenameField />} />
      <EnergiseOverlayHost />
      {scope && <scope.ScopeOverlay />}
      <Later show={({ LayingOutHint }) => <LayingOutHint />} />
      <Later show={({ OverviewHost }) => <OverviewHost shown={shown} />} />
      <SheetMenuPlace />
      <Later show={({ TargetTip }) => <TargetTip />} />
      <Later show={({ FullWords }) => <FullWords />} />
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
