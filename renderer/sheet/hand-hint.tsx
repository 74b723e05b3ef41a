import { findCableItem } from "../../shared-model/catalog/cable-items.ts";
import { findDeviceType } from "../../shared-model/catalog/device-types.ts";
import { findEnclosureItem } from "../../shared-model/catalog/enclosure-items.ts";
import { findLoadItem } from "../../shared-model/catalog/load-items.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { ANY_CABLE } from "../state/cable-kind.ts";
import { documentStore, shownInstallation } from "../state/document-store.ts";
import type { Tool } from "../state/selection.ts";
import { sessionStore, takeTool } from "../state/session-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { useStore } from "../state/use-store.ts";
import { applyTool } from "./apply-tool.ts";
import type { HeldThing } from "./gesture-store.ts";
import { putDown, useHeld } from "./hand.ts";
import { wordsOf } from "./hand-layer.tsx";
import { KindField } from "./kind-field.tsx";
import { toSheet } from "./sheet-view.ts";
import { wording } from "./words.ts";

/**
 * What is in the hand and what the next press does, beside the title block, where it covers no place that the hand may
 * reach for. What a pointer does can be done here by pressing alone.
 */
export function HandHint() {
  const tool = useStore(sessionStore, (session) => session.tool);
  const held = useHeld();
  if (held !== undefined) return <HeldHint held={held} />;
  return tool === undefined ? null : <ToolHint tool={tool} />;
}

function HeldHint({ held }: { readonly held: HeldThing }) {
  const enclosure = shownInstallation().enclosures[held.enclosure];
  if (enclosure === undefined) return null;
  const { title, note } = wordsOf(held, enclosure);
  return (
    <fieldset className="sheet-hint" aria-label={wording.inTheHand}>
      <span className="sheet-hint-title">{title}</span>
      <span>{note}</span>
      <button type="button" className="button small" onClick={putDown}>
        {wording.putBack}
      </button>
    </fieldset>
  );
}

function ToolHint({ tool }: { readonly tool: Tool }) {
  const from = useStore(sessionStore, (session) => session.routeFrom);
  return (
    <fieldset className="sheet-hint" aria-label={wording.inTheHand}>
      {tool.id === ANY_CABLE ? <KindField /> : <span className="sheet-hint-title">{titleOf(tool)}</span>}
      <span>{hintOf(tool, from)}</span>
      {tool.kind === "enclosure" && (
        <button type="button" className="button small" onClick={placeFree}>
          {wording.placeOnTheSheet}
        </button>
      )}
      {tool.kind === "cable" && from !== undefined && (
        <button type="button" className="button small" onClick={placeFree}>
          {wording.leavesThisDrawing}
        </button>
      )}
      <button type="button" className="button small" onClick={() => takeTool(undefined)}>
        {wording.putBack}
      </button>
    </fieldset>
  );
}

/** A spot in view where no box stands yet, tried from the upper left in rows. */
function freeSpot(): Point {
  const host = document.querySelector(".sheet-flow")?.getBoundingClientRect();
  const from = toSheet({ clientX: (host?.left ?? 0) + 60, clientY: (host?.top ?? 0) + 70 });
  const taken = Object.values(placesOf(documentStore.get()));
  for (let i = 0; ; i++) {
    const spot = { x: from.x + (i % 3) * APART.x, y: from.y + Math.floor(i / 3) * APART.y };
    if (taken.every(({ x, y }) => Math.abs(x - spot.x) >= APART.x || Math.abs(y - spot.y) >= APART.y)) return spot;
  }
}

/** Room for a box with its cable stubs. */
const APART = { x: 900, y: 800 };

const placeFree = (): void => void applyTool({ at: freeSpot(), enclosure: undefined, device: undefined });

function titleOf({ kind, id }: Tool): string {
  if (kind === "enclosure") return findEnclosureItem(id)?.title ?? id;
  if (kind === "cable") return findCableItem(id)?.title ?? id;
  return (kind === "device" ? findDeviceType(id)?.title : findLoadItem(id)?.title) ?? id;
}

function hintOf({ kind }: Tool, from: EnclosureId | undefined): string {
  if (kind === "enclosure") return wording.pressTheSheetWhereItGoes;
  if (kind === "device") return wording.pressTheBoxItGoesInto;
  if (kind === "load") return wording.pressTheReceptacleItIsPlugged;
  if (from === undefined) return wording.pressTheBoxWhereItStarts2;
  const name = shownInstallation().enclosures[from]?.name ?? "";
  return wording.fromPressTheBoxWhereIt(name);
}
