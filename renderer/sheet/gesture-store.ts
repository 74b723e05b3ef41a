import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import type { Gap } from "../../shared-model/geometry/even-gaps.ts";
import type { Guide } from "../../shared-model/geometry/snap.ts";
import type { EnclosureId, EndKey, JumperId } from "../../shared-model/model/ids.ts";
import type { At } from "../../shared-model/model/place.ts";
import type { Point } from "../../shared-model/model/project.ts";
import type { Colour } from "../../shared-model/units/colour.ts";
import type { WireSize } from "../../shared-model/units/wire-size.ts";
import { createStore, type Store } from "../state/store.ts";
import type { Subject } from "./sheet-subject.ts";

/** What hangs on the pointer: a conductor end, or a jumper whose first end is placed. */
export type HeldThing =
  | { readonly kind: "end"; readonly enclosure: EnclosureId; readonly end: EndKey }
  | {
      readonly kind: "jumper";
      readonly enclosure: EnclosureId;
      readonly jumper: JumperId;
      readonly from: At;
      readonly awg: WireSize;
      readonly colour: Colour;
    };

/** A menu of actions, at a place of the window. */
export interface OpenMenu {
  readonly subject: Subject;
  readonly x: number;
  readonly y: number;
  /** What had the focus, and gets it back. */
  readonly from: Element | null;
}

export interface TargetTip {
  readonly x: number;
  readonly y: number;
  readonly words: string;
}

/** What the hands do on the sheet right now. Gone when the gesture ends; never in the document, never undone. */
export interface GestureState {
  /** Second end of a jumper that is being placed; a held conductor end is in the session. */
  readonly jumper: Extract<HeldThing, { kind: "jumper" }> | undefined;
  /** Pointer in drawing units of the sheet, while something is held or a cable is drawn. */
  readonly pointer: Point | undefined;
  /** Boxes on the move: where their origin is now. */
  readonly moving: ReadonlyMap<EnclosureId, Point>;
  /** Outline of a splice on the move, in drawing units of its box. */
  readonly ghost: (Rect & { readonly enclosure: EnclosureId }) | undefined;
  /** Lines that boxes on the move have come to lie on. */
  readonly guides: readonly Guide[];
  /** Gaps between them and their neighbours that are even now. */
  readonly gaps: readonly Gap[];
  /** Frame that is drawn around boxes to select them, in drawing units of the sheet. */
  readonly marquee: Rect | undefined;
  /** Presses add boxes to the selection or take them out, and dragging over the empty sheet draws a frame. */
  readonly choosing: boolean;
  /** A frame takes only boxes that are wholly in it. */
  readonly wholeOnly: boolean;
  readonly menu: OpenMenu | undefined;
  /** Conductor under the pointer; see `lineKey`. */
  readonly line: { readonly enclosure: EnclosureId; readonly key: string } | undefined;
  /** A place for what is held that the pointer or the focus is on, in pixels of the window, and what is known of it. */
  readonly tip: TargetTip | undefined;
  /** Last thing worth saying aloud. */
  readonly said: string;
}

const NONE: ReadonlyMap<EnclosureId, Point> = new Map();

export const gestureStore: Store<GestureState> = createStore<GestureState>({
  jumper: undefined,
  pointer: undefined,
  moving: NONE,
  ghost: undefined,
  guides: [],
  gaps: [],
  marquee: undefined,
  choosing: false,
  wholeOnly: false,
  menu: undefined,
  line: undefined,
  tip: undefined,
  said: "",
});

export const stopMoving = (): void => gestureStore.merge({ moving: NONE, guides: [], gaps: [] });

/** Ends every gesture: what it was about need not be in the state that is shown now. */
export const dropGestures = (): void =>
  gestureStore.merge({
    jumper: undefined,
    pointer: undefined,
    moving: NONE,
    ghost: undefined,
    guides: [],
    gaps: [],
    marquee: undefined,
    menu: undefined,
    line: undefined,
    tip: undefined,
  });

/** Puts a sentence into the live region of the sheet. */
export const say = (said: string): void => gestureStore.merge({ said });

export const openMenu = (menu: Omit<OpenMenu, "from">): void =>
  gestureStore.merge({ menu: { ...menu, from: document.activeElement } });

export const closeMenu = (): void => gestureStore.merge({ menu: undefined });
