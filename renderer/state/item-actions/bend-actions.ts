import { PITCH } from "../../../shared-model/geometry/metrics.ts";
import { acrossLeg, bendLeg } from "../../../shared-model/geometry/roads/bends.ts";
import { cableEnds } from "../../../shared-model/geometry/roads/cable-ends.ts";
import { looseRoad } from "../../../shared-model/geometry/roads/lay-roads.ts";
import { NEAR_ROADS } from "../../../shared-model/geometry/roads/road.ts";
import type { Cable } from "../../../shared-model/model/cable.ts";
import type { CableId } from "../../../shared-model/model/ids.ts";
import type { Point } from "../../../shared-model/model/project.ts";
import { BEND_WORDS } from "../arrange-words.ts";
import { documentStore, shownInstallation } from "../document-store.ts";
import { lineFor, openPick, type PickLine } from "../pick-store.ts";
import type { ItemAction } from "./subject.ts";
import { wording } from "./words.ts";

/** Leading a cable by hand, for one that runs between two boxes. */
export function bendActions({ id, name, sides }: Cable): readonly ItemAction[] {
  if (!("enclosure" in sides.a && "enclosure" in sides.b)) return [];
  return [{ title: BEND_WORDS.action(name), run: () => bendByHand(id, name) }];
}

/** How far aside a new bend leads a cable: clear of its own width. */
const ASIDE = 4 * PITCH;

/** Asks for bends of a cable, one step after the other. The list stays open. */
function bendByHand(id: CableId, name: string): void {
  openPick({
    title: BEND_WORDS.title(name),
    hint: BEND_WORDS.hint,
    lines() {
      const bends = documentStore.get().project.layout.cables[id] ?? [];
      const to = (title: string, next: readonly Point[]): PickLine => ({
        ...lineFor(title, { command: "bend-cable", args: { cable: id, bends: next } }),
        stay: true,
      });
      const added = furtherBend(id);
      return [
        added === undefined
          ? { key: BEND_WORDS.add, title: BEND_WORDS.add, refusal: BEND_WORDS.noRoom, run: () => {} }
          : to(BEND_WORDS.add, added),
        ...bends.flatMap((bend, i) => [
          ...STEPS.map(([way, x, y]) =>
            to(
              BEND_WORDS.move(i + 1, way),
              bends.map((each) => (each === bend ? { x: bend.x + x, y: bend.y + y } : each)),
            ),
          ),
          to(
            BEND_WORDS.remove(i + 1),
            bends.filter((each) => each !== bend),
          ),
        ]),
        ...(bends.length > 0 ? [to(BEND_WORDS.straighten, [])] : []),
      ];
    },
  });
}

const STEPS: readonly (readonly [way: string, x: number, y: number])[] = (
  [
    ["right", 1, 0],
    ["left", -1, 0],
    ["down", 0, 1],
    ["up", 0, -1],
  ] as const
).flatMap(([word, x, y]) => [
  [wording.byAStep(word), x * PITCH, y * PITCH] as const,
  [wording.byTenSteps(word), x * 10 * PITCH, y * 10 * PITCH] as const,
]);

/** The bends of a cable with one more, in the middle of the longest stretch that has room for it. */
function furtherBend(id: CableId): readonly Point[] | undefined {
  const ends = cableEnds(documentStore.get().project, shownInstallation(), id);
  if (ends === undefined) return undefined;
  const points = looseRoad(ends, NEAR_ROADS);
  const legs = points.slice(1).map((b, i) => {
    const a = points[i] ?? b;
    return { i, long: Math.abs(a.x - b.x) + Math.abs(a.y - b.y), from: a[acrossLeg(a, b)] };
  });
  legs.sort((p, q) => q.long - p.long || p.i - q.i);
  for (const { i, from } of legs) {
    const bends = bendLeg(ends, points, i, from + ASIDE, NEAR_ROADS);
    if (bends !== undefined) return bends;
  }
  return undefined;
}
