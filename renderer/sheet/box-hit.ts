import type { RefObject } from "react";
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { documentStore, shownInstallation } from "../state/document-store.ts";
import { keyOf, type Selected } from "../state/selection.ts";
import { goTo, select, sessionStore, showPane, toggleSelected } from "../state/session-store.ts";
import { findSubject } from "../state/subject-target.ts";
import type { BoxItem } from "./box-items.ts";
import type { FindingMark } from "./finding-marks.ts";
import type { HeldThing } from "./gesture-store.ts";
import type { LandingTarget } from "./landing-targets.ts";
import { type Subject, selectedOf } from "./sheet-subject.ts";

export interface InBox {
  readonly id: EnclosureId;
  readonly drawing: BoxDrawing | undefined;
  /** How many times larger than the sheet it is drawn. */
  readonly scale: number;
  readonly items: readonly BoxItem[];
  readonly targets: readonly LandingTarget[];
  readonly marks: readonly FindingMark[];
  readonly held: HeldThing | undefined;
  readonly root: RefObject<SVGSVGElement | null>;
  readonly setFocused: (key: string | undefined) => void;
}

export interface Hit {
  readonly item?: BoxItem | undefined;
  readonly target?: LandingTarget | undefined;
  readonly mark?: FindingMark | undefined;
}

/** What of the box an event is about. */
export function hit(box: InBox, on: EventTarget): Hit {
  if (!(on instanceof Element)) return {};
  const found = on.closest<SVGElement>("[data-item],[data-target],[data-mark]")?.dataset ?? {};
  return {
    item: box.items.find((item) => item.key === found.item),
    target: box.targets.find((target) => target.key === found.target),
    mark: box.marks.find((mark) => mark.key === found.mark),
  };
}

/** Shows what the checks say at a sign, in its pane. */
export function showFinding(mark: FindingMark): void {
  const found = findSubject(documentStore.get().project, shownInstallation(), mark.subject);
  showPane("findings");
  if (found !== undefined) goTo(found);
}

/** Selects a thing; what is selected already stays when it only gets a menu. */
export function choose(subject: Subject, more: boolean): void {
  const selected = selectedOf(subject);
  if (selected !== undefined) chooseItem(selected, more);
}

/** As `choose`, by what is selected. */
export function chooseItem(selected: Selected, more: boolean): void {
  if (more) toggleSelected(selected);
  else if (!sessionStore.get().selection.some((each) => keyOf(each) === keyOf(selected))) select(selected);
  if (!more) sessionStore.merge({ pane: "details" });
}

/** The sheet brings what has the focus into view itself. */
export const STILL = { preventScroll: true } as const;

/** Gives a thing or a place of the box the focus. */
export function focusOn(box: InBox, wanted: string): void {
  const text = CSS.escape(wanted);
  box.root.current?.querySelector<SVGElement>(`[data-target="${text}"],[data-item="${text}"]`)?.focus(STILL);
}
