import type { DeviceDrawing } from "../../../shared-model/geometry/box-drawing.ts";
import { textWidth } from "../../../shared-model/geometry/text-width.ts";

/** As the name of a breaker is written. */
const NAME = { size: 11, weight: 700 } as const;
const GAP = 3;
const SCREW = 7;
/** No word is pressed together more than that. */
const LEAST = 20;

export interface Span {
  readonly x: number;
  readonly width: number;
}

/** Where the plate that says how a breaker stands lies: between its name and its screw, over the letter of its pole. */
export function standsOnBreaker({ body, name, labelAt, terminals }: DeviceDrawing, wanted: number): Span {
  const screw = terminals[0]?.screw.x ?? body.x + body.width;
  const out = screw > body.x + body.width / 2 ? 1 : -1;
  const from = labelAt.x + out * (textWidth(name, NAME.size, NAME.weight) / 2 + GAP);
  const room = (screw - out * SCREW - from) * out;
  const width = Math.max(LEAST, Math.min(wanted, room));
  return { x: out > 0 ? from : from - width, width };
}
