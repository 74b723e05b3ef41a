export interface Area {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

const GAP = 14;

/**
 * Where a card of a size stands beside a region so that it covers as little of it as it can: beside it where there is
 * room, else below or above, else in its middle; always whole in the window. Pixels of the window.
 */
export function placeCard(region: Area, card: Pick<Area, "width" | "height">, window: Pick<Area, "width" | "height">) {
  const { left, top, width, height } = region;
  const middle = top + (height - card.height) / 2;
  const centre = left + (width - card.width) / 2;
  const places = [
    { left: left + width + GAP, top: Math.min(middle, top + 80) },
    { left: left - GAP - card.width, top: Math.min(middle, top + 80) },
    { left: centre, top: top + height + GAP },
    { left: centre, top: top - GAP - card.height },
  ];
  const fits = places.find((place, index) =>
    index < 2
      ? place.left >= GAP && place.left + card.width <= window.width - GAP
      : place.top >= GAP && place.top + card.height <= window.height - GAP,
  );
  const { left: x, top: y } = fits ?? { left: centre, top: middle };
  const within = (at: number, size: number, most: number): number => Math.max(GAP, Math.min(at, most - size - GAP));
  return { left: within(x, card.width, window.width), top: within(y, card.height, window.height) };
}
