import type { SignKind } from "../../../shared-model/geometry/sign-shapes.ts";
import type { Ground } from "../far/far-paint.ts";
import { paintRoads, type RoadTraits } from "../far/far-paint-roads.ts";
import type { FarItem } from "../far/far-scene.ts";
import type { Road } from "../sheet-roads.ts";

/** In pixels: a box of a large building is still seen, and in quieter ink, since so many stand there. */
const LEAST_PLATE = 1.5;
const SMALL = 4;
const SIGN = { most: 13, least: 8 } as const;
/** The less serious lie under the more serious, and only those that must not be overlooked are shown of a crowd. */
const WEIGHT: Readonly<Record<SignKind, number>> = { unknown: 0, advice: 1, caution: 2, violation: 3, danger: 4 };
const CROWD = 120;

/** Paints the whole drawing: cables as thin lines, boxes as plates, and the worst finding of each. */
export function paintOverview(
  ground: Ground,
  items: readonly FarItem[],
  roads: readonly Road[],
  traits: RoadTraits,
): void {
  paintRoads(ground, roads, traits);
  const { context, x, y, zoom, dots, ink } = ground;
  context.setTransform(1, 0, 0, 1, 0, 0);
  const line = Math.max(1, Math.round(dots));
  const plates = items.map(({ rect, sign }) => {
    const wide = Math.round(Math.max(LEAST_PLATE, rect.width * zoom) * dots);
    const high = Math.round(Math.max(LEAST_PLATE, rect.height * zoom) * dots);
    const left = Math.round((rect.x + rect.width / 2) * zoom * dots + x * dots - wide / 2);
    const top = Math.round((rect.y + rect.height / 2) * zoom * dots + y * dots - high / 2);
    return { left, top, wide, high, sign };
  });
  for (const { left, top, wide, high } of plates) {
    context.fillStyle = wide < SMALL * dots ? ink.faint : ink.ink;
    context.fillRect(left, top, wide, high);
  }
  context.fillStyle = ink.paper;
  for (const { left, top, wide, high } of plates) {
    if (wide >= 5 * line && high >= 5 * line)
      context.fillRect(left + line, top + line, wide - 2 * line, high - 2 * line);
  }
  const few = items.length <= CROWD;
  const signed = plates
    .flatMap(({ sign, ...plate }) =>
      sign !== undefined && (few || WEIGHT[sign] >= WEIGHT.violation) ? [{ ...plate, sign }] : [],
    )
    .sort((a, b) => WEIGHT[a.sign] - WEIGHT[b.sign]);
  for (const { left, top, wide, high, sign } of signed) {
    const size = Math.min(SIGN.most, Math.max(SIGN.least, (Math.min(wide, high) / dots) * 0.95));
    const { picture, side } = ground.stamps.sign(sign, size);
    context.drawImage(picture, Math.round(left + wide / 2 - side / 2), Math.round(top + high / 2 - side / 2));
  }
}
