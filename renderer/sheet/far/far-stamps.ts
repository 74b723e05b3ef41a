import { SIGN_SHAPES, type SignKind } from "../../../shared-model/geometry/sign-shapes.ts";
import { findSymbol } from "../../../shared-model/geometry/symbols/find-symbol.ts";
import { SYMBOL_SIZE, SYMBOL_STROKE, type SymbolKind } from "../../../shared-model/geometry/symbols/plan-symbol.ts";
import { symbolPaths } from "../../../shared-model/geometry/symbols/symbol-lines.ts";
import type { SymbolSet } from "../../../shared-model/model/symbol-set.ts";
import type { FarInk } from "./far-ink.ts";
import { wording } from "./words.ts";

/** A small picture that is drawn once and put down many times. */
export interface Stamp {
  readonly picture: ImageBitmap;
  /** Side of its square, in pixels of the screen. */
  readonly side: number;
}

/** Stamps of one theme on one screen, made when they are first needed. */
export class Stamps {
  readonly #ink: FarInk;
  readonly #dots: number;
  readonly #made = new Map<string, Stamp>();

  /** @param dots Pixels of the screen in a pixel of the page. */
  constructor(ink: FarInk, dots: number) {
    this.#ink = ink;
    this.#dots = dots;
  }

  /** @param size In pixels of the page. */
  symbol(set: SymbolSet, kind: SymbolKind, size: number): Stamp {
    return this.#stamp(`${set} ${kind}`, size, SYMBOL_SIZE, (context, drawn) => {
      const { strokes, areas } = symbolPaths(findSymbol(set, kind));
      context.strokeStyle = this.#ink.ink;
      context.fillStyle = this.#ink.ink;
      // A line thinner than a pixel of the screen would only be grey.
      context.lineWidth = Math.max(SYMBOL_STROKE, (SYMBOL_SIZE / drawn) * (1.1 / Math.sqrt(this.#dots)));
      context.lineCap = "round";
      context.lineJoin = "round";
      context.stroke(new Path2D(strokes));
      context.fill(new Path2D(areas));
    });
  }

  /** @param size Of the sign, in pixels of the page; its ring of paper is wider by a quarter. */
  sign(kind: SignKind, size: number): Stamp {
    return this.#stamp(`sign ${kind}`, size * RING, 20, (context, drawn) => {
      const { letter, y, path, dash } = SIGN_SHAPES[kind];
      const { fill, line, letter: ink } = this.#ink.signs[kind];
      context.translate(10, 10);
      context.fillStyle = this.#ink.paper;
      context.beginPath();
      context.arc(0, 0, 10, 0, 2 * Math.PI);
      context.fill();
      const shape = new Path2D(path);
      context.fillStyle = fill;
      context.fill(shape);
      context.strokeStyle = line;
      context.lineWidth = 1.5;
      context.lineJoin = "round";
      if (dash !== undefined) context.setLineDash([...dash]);
      if (kind !== "danger") context.stroke(shape);
      if (drawn / RING < LEAST_LETTER) return;
      context.fillStyle = ink;
      context.textAlign = "center";
      context.font = wording.n800Px(kind === "danger" ? 11 : 10, this.#ink.face);
      context.fillText(letter, 0, y);
    });
  }

  /** @param draw Is told the size in whole pixels of the screen, so that a stamp is the same whoever needs it first. */
  #stamp(
    key: string,
    size: number,
    units: number,
    draw: (context: OffscreenCanvasRenderingContext2D, drawn: number) => void,
  ): Stamp {
    const side = Math.max(1, Math.round(size * this.#dots));
    const name = `${key} ${side}`;
    let stamp = this.#made.get(name);
    if (stamp === undefined) {
      const canvas = new OffscreenCanvas(side, side);
      const context = canvas.getContext("2d");
      if (context !== null) {
        context.scale(side / units, side / units);
        draw(context, side / this.#dots);
      }
      if (this.#made.size > MOST) this.#made.clear();
      // A canvas would be copied anew each time that it is put down.
      stamp = { picture: canvas.transferToImageBitmap(), side };
      this.#made.set(name, stamp);
    }
    return stamp;
  }
}

/** Of a sign, with the paper around it. */
const RING = 1.25;
/** A smaller sign is told by its outline. */
const LEAST_LETTER = 10;
/** Kinds times the sizes of a long zoom. */
const MOST = 600;
