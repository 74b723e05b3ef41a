import type { Point } from "../../model/project.ts";
import type { RoadEnds } from "./road.ts";

/** Where a road left its wall, and the lane that it turned into. */
interface Stub {
  readonly at: number;
  readonly lane: number;
}

/** The wall that a road leaves; boxes whose walls stand in one line share their lanes. */
export const wallOf = ({ a }: RoadEnds): string => `${a.at.x} ${a.out}`;

/** What is known of the roads that left each wall before. */
export function openStubs() {
  const walls = new Map<string, Stub[]>();
  return {
    /**
     * The outermost lane of those whose stubs a road passes on its way up or down: nearer to the wall it would cross
     * them, free as a lane there may be. Undefined where it passes none.
     */
    passedBy(ends: RoadEnds): number | undefined {
      const { a, b } = ends;
      let outermost: number | undefined;
      for (const { at, lane } of walls.get(wallOf(ends)) ?? [])
        if ((at - a.at.y) * (at - b.at.y) < 0 && (outermost === undefined || (lane - outermost) * a.out > 0))
          outermost = lane;
      return outermost;
    },
    take(ends: RoadEnds, [, corner, next]: readonly Point[]): void {
      // A road of two points is straight and turns into no lane.
      if (corner === undefined || next === undefined) return;
      const stub = { at: ends.a.at.y, lane: corner.x };
      const before = walls.get(wallOf(ends));
      if (before === undefined) walls.set(wallOf(ends), [stub]);
      else before.push(stub);
    },
  };
}
