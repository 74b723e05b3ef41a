import { useLayoutEffect, useRef } from "react";
import { findCableItem } from "../../shared-model/catalog/cable-items.ts";
import { findDeviceType } from "../../shared-model/catalog/device-types.ts";
import { findEnclosureItem } from "../../shared-model/catalog/enclosure-items.ts";
import { findLoadItem } from "../../shared-model/catalog/load-items.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { ANY_CABLE } from "../state/cable-kind.ts";
import { documentStore, installationOf, shownInstallation } from "../state/document-store.ts";
import { energiseStore } from "../state/energise/energise-store.ts";
import { isScopeShown, scopeStore } from "../state/scope/scope-store.ts";
import type { Tool } from "../state/selection.ts";
import { sessionStore, takeTool } from "../state/session-store.ts";
import { useStore } from "../state/use-store.ts";
import { applyTool } from "./apply-tool.ts";
import { clearOfHint } from "./clear-of-hint.ts";
import type { HeldThing } from "./gesture-store.ts";
import { putDown, useHeld } from "./hand.ts";
import { wordsOf } from "./hand-layer.tsx";
import { KindField } from "./kind-field.tsx";
import { laterWording } from "./later-words.ts";
import { nextStep } from "./next-step.ts";
import { aimNow } from "./placing/aim.ts";
import { freeSpot } from "./placing/free-spot.ts";
import { useAtWork } from "./use-at-work.ts";
import { useHintSpot } from "./use-hint-spot.ts";
import { wording } from "./words.ts";

/**
 * What is in the hand and what the next press does, beside the title block, where it covers no place that the hand may
 * reach for. What a pointer does can be done here by pressing alone.
 */
export function HandHint() {
  const tool = useStore(sessionStore, (session) => session.tool);
  const held = useHeld();
  useAtWork(held);
  if (held !== undefined) return <HeldHint held={held} />;
  return tool === undefined ? <NextHint /> : <ToolHint tool={tool} />;
}

const stepOf = (document: ReturnType<typeof documentStore.get>) =>
  document.readOnly ? undefined : nextStep(installationOf(document));
const isOn = ({ on }: ReturnType<typeof energiseStore.get>): boolean => on;

/** What comes next in a drawing that was just begun; the first step that is taken takes it away. */
function NextHint() {
  const step = useStore(documentStore, stepOf);
  const scoped = useStore(scopeStore, isScopeShown);
  const energised = useStore(energiseStore, isOn);
  const shown = step !== undefined && !scoped && !energised;
  const root = useRef<HTMLParagraphElement>(null);
  useLayoutEffect(() => {
    if (!shown) return;
    // What was just made is measured a frame after it is drawn.
    let frame = requestAnimationFrame(() => {
      frame = requestAnimationFrame(() => root.current && clearOfHint(root.current));
    });
    return () => cancelAnimationFrame(frame);
  }, [shown]);
  if (!shown) return null;
  return (
    <p ref={root} className="sheet-hint sheet-next">
      <span className="sheet-hint-title">{laterWording.next}</span>
      <span>{step === "land" ? laterWording.pressAnEndThenItsPlace : laterWording.takeACableFromTheStock}</span>
    </p>
  );
}

function HeldHint({ held }: { readonly held: HeldThing }) {
  const enclosure = shownInstallation().enclosures[held.enclosure];
  const root = useRef<HTMLFieldSetElement>(null);
  const spot = useHintSpot(root, held);
  if (enclosure === undefined) return null;
  const { title, note } = wordsOf(held, enclosure);
  return (
    <fieldset ref={root} className="sheet-hint" data-spot={spot} aria-label={laterWording.inTheHand}>
      <span className="sheet-hint-title">{title}</span>
      <span>{note}</span>
      <button type="button" className="button small" onClick={putDown}>
        {laterWording.putBack}
      </button>
    </fieldset>
  );
}

function ToolHint({ tool }: { readonly tool: Tool }) {
  const from = useStore(sessionStore, (session) => session.routeFrom);
  return (
    <fieldset className="sheet-hint" aria-label={laterWording.inTheHand}>
      {tool.id === ANY_CABLE ? <KindField /> : <span className="sheet-hint-title">{titleOf(tool)}</span>}
      <span>{hintOf(tool, from)}</span>
      {tool.kind === "enclosure" && (
        <button type="button" className="button small" onClick={placeFree}>
          {laterWording.placeOnTheSheet}
        </button>
      )}
      {tool.kind === "cable" && from !== undefined && (
        <button type="button" className="button small" onClick={placeFree}>
          {laterWording.leavesThisDrawing}
        </button>
      )}
      <button type="button" className="button small" onClick={() => takeTool(undefined)}>
        {laterWording.putBack}
      </button>
    </fieldset>
  );
}

/** Where the keys have taken it, else on a free place in view. */
function placeFree(): void {
  const aim = aimNow();
  applyTool({ at: aim?.by === "keys" ? aim.at : freeSpot(), enclosure: undefined, device: undefined });
}

function titleOf({ kind, id }: Tool): string {
  if (kind === "enclosure") return findEnclosureItem(id)?.title ?? id;
  if (kind === "cable") return findCableItem(id)?.title ?? id;
  return (kind === "device" ? findDeviceType(id)?.title : findLoadItem(id)?.title) ?? id;
}

function hintOf({ kind }: Tool, from: EnclosureId | undefined): string {
  if (kind === "enclosure") return laterWording.pressTheSheetWhereItGoes;
  if (kind === "device") return laterWording.pressTheBoxItGoesInto;
  if (kind === "load") return wording.pressTheReceptacleItIsPlugged;
  if (from === undefined) return laterWording.pressTheBoxWhereItStarts2;
  const name = shownInstallation().enclosures[from]?.name ?? "";
  return laterWording.fromPressTheBoxWhereIt(name);
}
