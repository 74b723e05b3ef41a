import { ViewportPortal } from "@xyflow/react";
import { useEffect, useMemo } from "react";
import type { MadeUp } from "../../../shared-model/answers/make-up.ts";
import { boxDrawing } from "../../../shared-model/geometry/draw-box.ts";
import { scopeDrawing } from "../../../shared-model/geometry/scope/draw-scope.ts";
import type { DocumentState } from "../../state/document-store.ts";
import { documentStore } from "../../state/document-store.ts";
import { madeProject } from "../../state/make-up/made-project.ts";
import { madeOf, makeUpStore } from "../../state/make-up/make-up-store.ts";
import { placesOf } from "../../state/sheet-places.ts";
import { useStore } from "../../state/use-store.ts";
import { BoxHeader } from "../box-header.tsx";
import { Walls } from "../draw/walls.tsx";
import { ScopeInside } from "../scope/scope-inside.tsx";
import { showWhole } from "../sheet-view.ts";
import { wording } from "./words.ts";

/** Around the box on its plate of paper. */
const PLATE = 28;

/**
 * The box as it would be over the box as it is: what moves by its new way and its old, what comes, and what is taken out.
 * It is drawn from a copy; the document knows nothing of it.
 */
export default function MakeUpPreview() {
  const made = useStore(makeUpStore, madeOf);
  const document = useStore(documentStore, (state) => state);
  const shown = useMemo(() => (made === undefined ? undefined : drawn(made, document)), [made, document]);
  const { x, y, width, height } = shown?.area ?? NOWHERE;
  useEffect(() => {
    if (width === 0) return;
    showWhole({ x, y, width, height });
    // In a narrow window the sheet stands above the questions.
    globalThis.document.querySelector(".sheet-region")?.scrollIntoView({ block: "nearest" });
  }, [x, y, width, height]);
  if (shown === undefined || made === undefined) return null;
  const { drawing, bounds, at } = shown;
  return (
    <ViewportPortal>
      <svg
        className="sheet-box make-up-preview"
        style={{ left: at.x + bounds.x, top: at.y + bounds.y }}
        width={bounds.width}
        height={bounds.height}
        viewBox={`${bounds.x} ${bounds.y} ${bounds.width} ${bounds.height}`}
        role="img"
      >
        <title>{wording.asItWouldBe(drawing.header.name)}</title>
        <rect
          className="make-up-plate"
          x={bounds.x + 1}
          y={bounds.y + 1}
          width={bounds.width - 2}
          height={bounds.height - 2}
        />
        <text className="make-up-tag" x={bounds.x + bounds.width / 2} y={bounds.y + 18}>
          {wording.preview}
        </text>
        <Walls width={drawing.width} height={drawing.height} material={drawing.material} line={0} />
        <ScopeInside drawing={drawing} box={made.scope} chosen="" />
        <BoxHeader drawing={drawing} ledger={made.fill.after} marked={false} change={undefined} growth={1} />
      </svg>
    </ViewportPortal>
  );
}

const NOWHERE = { x: 0, y: 0, width: 0, height: 0 };

/** Drawing of the box then, and the part of the sheet that it takes; undefined where it would not be run any more. */
function drawn(made: MadeUp, document: DocumentState) {
  const then = madeProject(made);
  const proposed = then?.proposed;
  if (then === undefined || proposed?.enclosures[made.box] === undefined) return undefined;
  const at = placesOf({ ...document, project: then, state: "proposed" })[made.box];
  if (at === undefined) return undefined;
  const drawing = boxDrawing(then, proposed, made.box);
  const whole =
    made.scope === undefined ? drawing.bounds : scopeDrawing(drawing, made.scope, document.project.asFound).bounds;
  const bounds = {
    x: whole.x - PLATE,
    y: whole.y - PLATE,
    width: whole.width + 2 * PLATE,
    height: whole.height + 2 * PLATE,
  };
  const area = { x: at.x + bounds.x, y: at.y + bounds.y, width: bounds.width, height: bounds.height };
  return { drawing, bounds, at, area };
}
