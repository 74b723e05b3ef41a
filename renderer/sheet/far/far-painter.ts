import type { SymbolSet } from "../../../shared-model/model/symbol-set.ts";

import type { RoomSign } from "../room-signs.ts";
import type { Road } from "../sheet-roads.ts";
import { type FarInk, readInk, watchInk } from "./far-ink.ts";
import { type Ground, paintBoxes } from "./far-paint.ts";
import { paintRoads, type RoadTraits } from "./far-paint-roads.ts";
import { paintRooms } from "./far-paint-rooms.ts";
import type { FarItem } from "./far-scene.ts";
import { Stamps } from "./far-stamps.ts";

/** What is painted; nothing at all where there is neither box nor cable. */
export interface FarScene {
  readonly items: readonly FarItem[];
  readonly roads: readonly Road[];
  readonly rooms: readonly RoomSign[];
  readonly traits: RoadTraits;
  readonly set: SymbolSet;
  /** Drawing units that the names of rooms were laid for as a pixel. */
  readonly unit: number;
}

interface Seen {
  readonly transform: readonly [x: number, y: number, zoom: number];
  readonly width: number;
  readonly height: number;
}

/** Pixels around the view that are painted too, so that panning a little only moves the picture. */
const MARGIN = 128;

/** Paints a scene as the flow is seen, at most once a frame; while it is only panned, the painted picture is moved. */
export class FarPainter {
  readonly #canvas: HTMLCanvasElement;
  readonly #seen: () => Seen;
  readonly #stopWatching: () => void;
  #scene: FarScene | undefined;
  #ink: FarInk | undefined;
  #stamps: Stamps | undefined;
  #painted: { readonly scene: FarScene; readonly seen: Seen; readonly ink: FarInk } | undefined;
  #frame = 0;

  constructor(canvas: HTMLCanvasElement, seen: () => Seen) {
    this.#canvas = canvas;
    this.#seen = seen;
    this.#stopWatching = watchInk(() => {
      this.#ink = undefined;
      this.look();
    });
  }

  end(): void {
    cancelAnimationFrame(this.#frame);
    this.#stopWatching();
  }

  /** Paints another scene at once. */
  show(scene: FarScene): void {
    this.#scene = scene;
    this.#paint();
  }

  /** The flow may be seen otherwise now. */
  readonly look = (): void => {
    if (this.#frame === 0) this.#frame = requestAnimationFrame(() => this.#paint());
  };

  #paint(): void {
    cancelAnimationFrame(this.#frame);
    this.#frame = 0;
    const scene = this.#scene;
    if (scene === undefined) return;
    if (scene.items.length === 0 && scene.roads.length === 0) {
      if (this.#painted !== undefined) this.#canvas.hidden = true;
      this.#painted = undefined;
      return;
    }
    const { transform, width, height } = this.#seen();
    const seen = { transform, width, height };
    this.#ink ??= this.#renew();
    if (this.#painted?.scene === scene && this.#painted.ink === this.#ink && this.#moved(seen)) return;
    this.#repaint(scene, seen, this.#ink);
  }

  #renew(): FarInk {
    const ink = readInk(this.#canvas);
    this.#stamps = new Stamps(ink, devicePixelRatio);
    return ink;
  }

  /** Moves what was painted. @returns False where that does not show all that is in view now. */
  #moved({ transform: [x, y, zoom], width, height }: Seen): boolean {
    const before = this.#painted?.seen;
    if (before === undefined || before.width !== width || before.height !== height) return false;
    const [fromX, fromY, fromZoom] = before.transform;
    const [right, down] = [x - fromX, y - fromY];
    if (fromZoom !== zoom || Math.abs(right) > MARGIN || Math.abs(down) > MARGIN) return false;
    // By whole pixels of the screen: fingers and glides pan by fractions of one, between which every line would be blurred.
    const whole = (by: number): number => Math.round(by * devicePixelRatio) / devicePixelRatio - MARGIN;
    this.#canvas.style.transform = `translate(${whole(right)}px, ${whole(down)}px)`;
    return true;
  }

  #repaint(scene: FarScene, seen: Seen, ink: FarInk): void {
    const canvas = this.#canvas;
    const context = canvas.getContext("2d");
    if (context === null || this.#stamps === undefined) return;
    const dots = devicePixelRatio;
    const [width, height] = [seen.width + 2 * MARGIN, seen.height + 2 * MARGIN];
    const [wide, high] = [Math.round(width * dots), Math.round(height * dots)];
    if (canvas.width !== wide || canvas.height !== high) {
      canvas.width = wide;
      canvas.height = high;
      canvas.style.width = `${wide / dots}px`;
      canvas.style.height = `${high / dots}px`;
    }
    canvas.hidden = false;
    canvas.style.transform = `translate(${-MARGIN}px, ${-MARGIN}px)`;
    context.setTransform(1, 0, 0, 1, 0, 0);
    context.clearRect(0, 0, wide, high);
    const [x, y, zoom] = seen.transform;
    const ground: Ground = {
      context,
      x: x + MARGIN,
      y: y + MARGIN,
      zoom,
      width,
      height,
      dots,
      ink,
      stamps: this.#stamps,
    };
    paintRooms(ground, scene.rooms);
    paintRoads(ground, scene.roads, scene.traits);
    paintBoxes(ground, scene.items, scene.set);
    this.#painted = { scene, seen, ink };
  }
}
