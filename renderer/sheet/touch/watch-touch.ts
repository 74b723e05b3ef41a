import type { Point } from "../../../shared-model/model/project.ts";
import { currentView, MAX_ZOOM, MIN_ZOOM, setView, viewCorner } from "../sheet-view.ts";
import { abandonMoves } from "../use-box-moves.ts";
import type { Viewport } from "../view-fit.ts";
import { interrupt } from "./interrupt.ts";
import { isPalm, notePen } from "./pen.ts";
import { type Grasp, graspOf, viewAfter } from "./pinch.ts";

/** How long a finger rests before it asks for the menu of what it is on, in milliseconds. A value of judgement. */
const LONG_MS = 500;
/** Pixels that a resting finger may wander. */
const REST = 10;
/** Systems send their own word of a long press, some only when the finger is lifted; milliseconds. */
const ECHO_MS = 700;

const LIMITS = { least: MIN_ZOOM, most: MAX_ZOOM };
const POINTER_KINDS = ["pointerdown", "pointermove", "pointerup", "pointercancel"] as const;
const LATER_KINDS = ["touchmove", "touchend", "touchcancel"] as const;
const FIRM = { capture: true, passive: false } as const;

/**
 * Touch on the sheet. One finger does what a mouse does: it drags a thing, pans the bare sheet, or draws a frame while
 * several are chosen; resting, it opens the menu of what it is on. From the second finger on, wherever they are, fingers
 * pan and zoom, and what the first had begun is undone. The palm of a hand with a pen does nothing at all.
 * @returns Ends it.
 */
export function watchTouch(host: HTMLElement): () => void {
  const fingers = new Fingers(host);
  const { onPointer, onStart, onMenu } = fingers;
  for (const kind of POINTER_KINDS) window.addEventListener(kind, onPointer, true);
  window.addEventListener("touchstart", onStart, FIRM);
  window.addEventListener("contextmenu", onMenu, true);
  return () => {
    fingers.forget();
    for (const kind of POINTER_KINDS) window.removeEventListener(kind, onPointer, true);
    window.removeEventListener("touchstart", onStart, FIRM);
    window.removeEventListener("contextmenu", onMenu, true);
  };
}

/** "one": as a mouse; "many": pan and zoom; "spent": down, and nothing more until all are lifted. */
type Mode = "none" | "one" | "many" | "spent";

class Fingers {
  readonly #host: HTMLElement;
  #mode: Mode = "none";
  #first: Touch | undefined;
  #grasp: { readonly view: Viewport; readonly from: Grasp } | undefined;
  #rest: ReturnType<typeof setTimeout> | undefined;
  #menuAt = Number.NEGATIVE_INFINITY;
  /** Fingers on the sheet by their pointers; of some nobody else hears. */
  readonly #pointers = new Set<number>();
  readonly #muted = new Set<number>();
  /** The same by their touches. */
  readonly #down = new Set<number>();
  readonly #palms = new Set<number>();
  readonly #followed = new Set<EventTarget>();
  #heard: Event | undefined;

  constructor(host: HTMLElement) {
    this.#host = host;
  }

  forget(): void {
    this.#leave();
    clearTimeout(this.#rest);
  }

  readonly onPointer = (event: PointerEvent): void => {
    notePen(event);
    if (event.pointerType === "pen" && event.type === "pointerdown" && this.#mode !== "none") this.#spend();
    if (event.pointerType !== "touch" || !event.isTrusted) return;
    const { type, pointerId } = event;
    if (type === "pointerdown") {
      if (!this.#isOn(event)) return;
      this.#pointers.add(pointerId);
      if (isPalm(event) || this.#pointers.size > 1 || this.#mode !== "none") this.#muted.add(pointerId);
    }
    if (this.#muted.has(pointerId)) event.stopImmediatePropagation();
    if (type === "pointerup" || type === "pointercancel") {
      this.#pointers.delete(pointerId);
      this.#muted.delete(pointerId);
    }
  };

  readonly onStart = (event: TouchEvent): void => {
    if (!this.#isOn(event)) return;
    this.#follow(event);
    const palm = isPalm(event);
    for (const { identifier } of event.changedTouches) (palm ? this.#palms : this.#down).add(identifier);
    if (palm) {
      swallow(event);
      return;
    }
    clearTimeout(this.#rest);
    if (this.#mode === "none" && this.#down.size === 1) {
      this.#mode = "one";
      [this.#first] = event.changedTouches;
      this.#rest = setTimeout(() => this.#openMenu(), LONG_MS);
      return;
    }
    swallow(event);
    if (this.#mode === "one") {
      this.#drop();
      this.#mode = "many";
    }
    if (this.#mode === "many") this.#take(event);
  };

  /** A touch is told where it began, even when what was there is drawn no more: the window does not hear of it then. */
  #follow({ target }: TouchEvent): void {
    if (target === null || this.#followed.has(target)) return;
    this.#followed.add(target);
    for (const kind of LATER_KINDS) target.addEventListener(kind, this.#onLater as EventListener, FIRM);
  }

  #leave(): void {
    for (const target of this.#followed)
      for (const kind of LATER_KINDS) target.removeEventListener(kind, this.#onLater as EventListener, FIRM);
    this.#followed.clear();
  }

  readonly #onLater = (event: TouchEvent): void => {
    // What this window makes up itself ends gestures of others; one place of a touch may stand in that of another.
    if (!event.isTrusted || this.#heard === event) return;
    this.#heard = event;
    if (event.type === "touchmove") this.#moved(event);
    else this.#lifted(event);
  };

  #moved(event: TouchEvent): void {
    const now = [...event.touches].find(({ identifier }) => identifier === this.#first?.identifier);
    if (now !== undefined && this.#first !== undefined)
      if (Math.hypot(now.clientX - this.#first.clientX, now.clientY - this.#first.clientY) > REST)
        clearTimeout(this.#rest);
    const palm = [...event.changedTouches].every(({ identifier }) => this.#palms.has(identifier));
    if (this.#mode !== "one" || palm) swallow(event);
    if (this.#mode !== "many" || this.#grasp === undefined || palm) return;
    setView(viewAfter(this.#grasp.view, this.#grasp.from, graspOf(this.#places(event)), LIMITS));
  }

  #lifted(event: TouchEvent): void {
    const palm = [...event.changedTouches].every(({ identifier }) => this.#palms.has(identifier));
    for (const { identifier } of event.changedTouches) {
      this.#down.delete(identifier);
      this.#palms.delete(identifier);
    }
    if (palm || this.#mode !== "one") swallow(event);
    if (palm) {
      if (this.#down.size === 0 && this.#palms.size === 0) this.#leave();
      return;
    }
    clearTimeout(this.#rest);
    // What the system takes away leaves nothing half done.
    if (event.type === "touchcancel") abandonMoves();
    if (this.#down.size > 0) {
      if (this.#mode === "many") this.#take(event);
      return;
    }
    this.#mode = "none";
    this.#first = undefined;
    this.#grasp = undefined;
    if (this.#palms.size === 0) this.#leave();
  }

  readonly onMenu = (event: Event): void => {
    const echo = this.#mode !== "none" || performance.now() - this.#menuAt < ECHO_MS;
    if (event.isTrusted && echo && this.#isOn(event)) swallow(event);
  };

  #openMenu(): void {
    const touch = this.#first;
    if (touch === undefined) return;
    this.#menuAt = performance.now();
    this.#spend();
    const { clientX, clientY } = touch;
    touch.target.dispatchEvent(new MouseEvent("contextmenu", { bubbles: true, cancelable: true, clientX, clientY }));
  }

  /** What the first finger has begun ends as if it had never touched. */
  #drop(): void {
    clearTimeout(this.#rest);
    interrupt(this.#first === undefined ? [] : [this.#first], this.#pointers);
    for (const id of this.#pointers) this.#muted.add(id);
  }

  #spend(): void {
    this.#drop();
    this.#mode = "spent";
    this.#grasp = undefined;
  }

  #take(event: TouchEvent): void {
    const view = currentView();
    this.#grasp = view && { view, from: graspOf(this.#places(event)) };
  }

  /** Where the fingers are, in pixels from the corner of the view. */
  #places(event: TouchEvent): readonly Point[] {
    const corner = viewCorner();
    return [...event.touches]
      .filter(({ identifier }) => this.#down.has(identifier))
      .map(({ clientX, clientY }) => ({ x: clientX - corner.x, y: clientY - corner.y }));
  }

  #isOn({ target }: Event): boolean {
    return target instanceof Element && this.#host.contains(target) && target.closest(".sheet-flow") !== null;
  }
}

function swallow(event: Event): void {
  event.stopImmediatePropagation();
  if (event.cancelable) event.preventDefault();
}
