import {
  type FocusEvent,
  type KeyboardEvent,
  type MouseEvent,
  type PointerEvent,
  type RefObject,
  useEffect,
  useMemo,
  useRef,
} from "react";
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import type { DeviceId, EnclosureId } from "../../shared-model/model/ids.ts";
import { documentStore, shownInstallation } from "../state/document-store.ts";
import { keyOf, type Selected } from "../state/selection.ts";
import { goTo, select, sessionStore, showPane, toggleSelected } from "../state/session-store.ts";
import { findSubject } from "../state/subject-target.ts";
import { removeSelected } from "./action.ts";
import { applyTool } from "./apply-tool.ts";
import { type BoxItem, type Direction, neighbour } from "./box-items.ts";
import { isLeadInHand, pressLit } from "./energise/lit-events.ts";
import type { FindingMark } from "./finding-marks.ts";
import { type HeldThing, openMenu } from "./gesture-store.ts";
import { landOn, pickUp, putDown } from "./hand.ts";
import type { LandingTarget } from "./landing-targets.ts";
import { anyTerminalUnder, glow, lineUnder, noGlow, subjectOfLine, terminalUnder } from "./line-events.ts";
import { closeBox, isOpen } from "./open-boxes.ts";
import { beginJumperDrag, beginPickUp, targetAt } from "./pick-up.ts";
import { type Subject, selectedOf } from "./sheet-subject.ts";
import { toSheet } from "./sheet-view.ts";
import { showOpened } from "./show-opened.ts";
import { beginSpliceMove } from "./splice-move.ts";

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

const ARROWS: Readonly<Record<string, Direction>> = {
  ArrowLeft: "left",
  ArrowRight: "right",
  ArrowUp: "up",
  ArrowDown: "down",
};

/** Presses and keys inside a box, answered in one place for all of its things. */
export function useBoxEvents(box: InBox) {
  const latest = useRef(box);
  useEffect(() => {
    latest.current = box;
  });
  return useMemo(() => {
    const found = (event: { readonly target: EventTarget }) => hit(latest.current, event.target);
    return {
      onPointerMove: (event: PointerEvent<SVGSVGElement>) => glow(latest.current, event),
      onPointerLeave: () => noGlow(),
      onPointerDown: (event: PointerEvent<SVGSVGElement>) => press(latest, found(event), event),
      onClick: (event: MouseEvent<SVGSVGElement>) => {
        if (click(latest.current, found(event), event)) event.stopPropagation();
      },
      onKeyDown: (event: KeyboardEvent<SVGSVGElement>) => {
        if (!key(latest.current, found(event), event)) return;
        event.preventDefault();
        event.stopPropagation();
      },
      onContextMenu: (event: MouseEvent<SVGSVGElement>) => {
        event.preventDefault();
        event.stopPropagation();
        const { item } = found(event);
        const box = latest.current;
        const line = item === undefined ? lineUnder(box, event) : undefined;
        const subject: Subject = item?.subject ??
          (line && subjectOfLine(box.id, line)) ?? { kind: "box", enclosure: box.id };
        choose(subject, false);
        openMenu({ subject, x: event.clientX, y: event.clientY });
      },
      onFocus: (event: FocusEvent<SVGSVGElement>) => {
        const { item, target } = found(event);
        const focused = item?.key ?? target?.key;
        if (focused !== undefined) latest.current.setFocused(focused);
      },
    };
  }, []);
}

interface Hit {
  readonly item?: BoxItem | undefined;
  readonly target?: LandingTarget | undefined;
  readonly mark?: FindingMark | undefined;
}

/** What of the box an event is about. */
function hit(box: InBox, on: EventTarget): Hit {
  if (!(on instanceof Element)) return {};
  const found = on.closest<SVGElement>("[data-item],[data-target],[data-mark]")?.dataset ?? {};
  return {
    item: box.items.find((item) => item.key === found.item),
    target: box.targets.find((target) => target.key === found.target),
    mark: box.marks.find((mark) => mark.key === found.mark),
  };
}

function press(latest: { readonly current: InBox }, { item }: Hit, event: PointerEvent): void {
  const box = latest.current;
  const { tool } = sessionStore.get();
  if (event.button !== 0 || item === undefined || box.held !== undefined || tool !== undefined) return;
  if (documentStore.get().readOnly || isLeadInHand()) return;
  if (item.subject.kind === "end" && !event.shiftKey) beginPickUp(event.nativeEvent, box.id, item.subject.id);
  else if (item.subject.kind === "splice")
    beginSpliceMove(event.nativeEvent, {
      enclosure: box.id,
      id: item.subject.id,
      area: item.area,
      scale: box.scale,
      isOnTerminal: (at) => anyTerminalUnder(latest.current, at),
      targets: () => latest.current.targets,
    });
  else if (item.subject.kind === "device" && !event.shiftKey) {
    const from = terminalUnder(box, item.subject.id, event);
    if (from !== undefined) beginJumperDrag(event.nativeEvent, box.id, from, () => latest.current.targets);
  }
}

/** @returns True when the click was for something in the box, so that it is not a press on the box itself. */
function click(box: InBox, { item, target: on, mark }: Hit, event: MouseEvent): boolean {
  // What is held goes where a drag would drop it: the screw beside the hole and the body of a splice are meant too. Things
  // rest meanwhile: a click on one is the end of the press that picked it up.
  const near = box.held === undefined || item !== undefined ? undefined : targetAt(event.clientX, event.clientY);
  const target = on ?? box.targets.find(({ key }) => key === near);
  if (target !== undefined) {
    landOn(target);
    return true;
  }
  if (event.target instanceof Element && event.target.closest("[data-open]") !== null) {
    if (isOpen(box.id)) closeBox(box.id);
    else showOpened(box.id);
    return true;
  }
  if (sessionStore.get().tool !== undefined) {
    const device = item?.subject.kind === "device" ? (item.subject.id as DeviceId) : undefined;
    return applyTool({ at: toSheet(event), enclosure: box.id, device });
  }
  if (mark !== undefined) {
    showFinding(mark);
    return true;
  }
  if (item === undefined) return chooseLine(box, event);
  const onDevice = item.subject.kind === "device" ? item.subject.id : undefined;
  if (pressLit(item, onDevice && terminalUnder(box, onDevice, event))) return true;
  // A press on an end picked it up when the button came up.
  if (item.subject.kind !== "end" || event.shiftKey || documentStore.get().readOnly)
    choose(item.subject, event.shiftKey || event.ctrlKey || event.metaKey);
  return true;
}

/**
 * A press on the line of a conductor selects it: a jumper whole, a conductor of a cable by its end in this box. The focus
 * goes to that end, from where a key takes it in the hand.
 */
function chooseLine(box: InBox, event: MouseEvent): boolean {
  const line = lineUnder(box, event);
  const subject = line && subjectOfLine(box.id, line);
  if (line === undefined || subject === undefined) return false;
  const { jumper } = line.conductor;
  const more = event.shiftKey || event.ctrlKey || event.metaKey;
  if (jumper === undefined) choose(subject, more);
  else chooseItem({ kind: "jumper", id: jumper }, more);
  if (subject.kind === "end") focusOn(box, `end ${subject.id}`);
  return true;
}

function showFinding(mark: FindingMark): void {
  const found = findSubject(documentStore.get().project, shownInstallation(), mark.subject);
  if (found !== undefined) goTo(found, "findings");
  else showPane("findings");
}

/** Selects a thing; what is selected already stays when it only gets a menu. */
function choose(subject: Subject, more: boolean): void {
  const selected = selectedOf(subject);
  if (selected !== undefined) chooseItem(selected, more);
}

function chooseItem(selected: Selected, more: boolean): void {
  if (more) toggleSelected(selected);
  else if (!sessionStore.get().selection.some((each) => keyOf(each) === keyOf(selected))) select(selected);
  if (!more) sessionStore.merge({ pane: "details" });
}

/** @returns True when the key meant something here. */
function key(box: InBox, { item, target, mark }: Hit, event: KeyboardEvent): boolean {
  const direction = ARROWS[event.key];
  const from = target ?? item;
  if (box.held !== undefined && target === undefined && (direction !== undefined || event.key === "Enter")) {
    focusFirstTarget(box);
    return true;
  }
  if (direction !== undefined && from !== undefined && !event.altKey && !event.ctrlKey && !event.metaKey) {
    const next = target
      ? neighbour(box.targets, target.at, direction)
      : item && neighbour(box.items, item.at, direction);
    if (next !== undefined) focusOn(box, next.key);
    return true;
  }
  if (event.key === "Escape") return letGo(box) || shut(box);
  if (event.key === "Enter" || event.key === " ") {
    if (target !== undefined) return land(box, target);
    if (mark !== undefined) showFinding(mark);
    else if (item !== undefined) act(box, item);
    return mark !== undefined || item !== undefined;
  }
  if (item === undefined) return false;
  if (event.key === "ContextMenu" || (event.key === "F10" && event.shiftKey)) {
    const around = box.root.current?.querySelector(`[data-item="${CSS.escape(item.key)}"]`)?.getBoundingClientRect();
    choose(item.subject, false);
    openMenu({ subject: item.subject, x: around?.right ?? 0, y: around?.bottom ?? 0 });
    return true;
  }
  if (event.key === "Delete" || event.key === "Backspace") {
    choose(item.subject, false);
    removeSelected();
    return true;
  }
  return false;
}

/** Enter: an end is picked up and the first place gets the focus; another thing is selected. */
function act(box: InBox, item: BoxItem): void {
  const { subject } = item;
  const { tool } = sessionStore.get();
  if (tool === undefined && pressLit(item, undefined)) return;
  if (tool !== undefined) {
    const device = subject.kind === "device" ? subject.id : undefined;
    applyTool({ at: { x: 0, y: 0 }, enclosure: box.id, device });
  } else if (subject.kind === "end" && !documentStore.get().readOnly) {
    pickUp(box.id, subject.id);
    afterRender(() => focusFirstTarget(box));
  } else choose(subject, false);
}

function land(box: InBox, target: LandingTarget): boolean {
  const back = box.held?.kind === "end" ? `end ${box.held.end}` : undefined;
  if (landOn(target) && back !== undefined) afterRender(() => focusOn(box, back));
  return true;
}

function letGo(box: InBox): boolean {
  if (box.held === undefined) return false;
  const back = box.held.kind === "end" ? `end ${box.held.end}` : undefined;
  putDown();
  if (back !== undefined) afterRender(() => focusOn(box, back));
  return true;
}

/** Escape in an opened box closes it, and leaves the focus on the box. */
function shut(box: InBox): boolean {
  if (!isOpen(box.id)) return false;
  box.root.current?.closest<HTMLElement>(".react-flow__node")?.focus(STILL);
  closeBox(box.id);
  return true;
}

/** The sheet brings what has the focus into view itself. */
const STILL = { preventScroll: true } as const;

const focusFirstTarget = (box: InBox): void =>
  box.root.current?.querySelector<SVGElement>("[data-target]")?.focus(STILL);

function focusOn(box: InBox, wanted: string): void {
  const text = CSS.escape(wanted);
  box.root.current?.querySelector<SVGElement>(`[data-target="${text}"],[data-item="${text}"]`)?.focus(STILL);
}

/** Stores tell React at once, React paints at the end of the event: what a gesture brings up can be focused after that. */
const afterRender = (then: () => void): void => void requestAnimationFrame(then);
