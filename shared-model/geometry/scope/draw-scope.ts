import type { ScopeBox, ScopeChange, ScopeItemKind } from "../../answers/scope.ts";
import type { DeviceId, SpliceId } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import type { BoxDrawing, ConductorDrawing, Rect } from "../box-drawing.ts";
import { hull } from "../free-group-place.ts";
import { type Flagged, flagSpots } from "./flag-spots.ts";
import { layAside } from "./lay-aside.ts";
import { oldWays } from "./old-ways.ts";
import {
  type FlagSpot,
  type OldWay,
  type ScopeDrawing,
  type ScopeSign,
  type SpliceMark,
  signOf,
} from "./scope-drawing.ts";
import { clearLegs, grown, type Leg, legsOf, thingAreas, wordAreas } from "./taken-areas.ts";

/** Between the way of what is moved and the name of what is laid aside: they would read as one. */
const CLEAR_OF_WORDS = 10;

const kept = new WeakMap<ScopeBox, { readonly drawing: BoxDrawing; readonly scope: ScopeDrawing }>();

/**
 * What the difference of the states shows over the near drawing of a box in proposed. Kept with the answer: the same box
 * drawn the same gives the same object.
 */
export function scopeDrawing(drawing: BoxDrawing, box: ScopeBox, asFound: Installation): ScopeDrawing {
  const steps = scopeSteps(drawing, box, asFound);
  for (let step = steps.next(); ; step = steps.next()) if (step.done === true) return step.value;
}

/** The drawing that was made of a box, as long as it is kept. */
export function knownScope(drawing: BoxDrawing, box: ScopeBox): ScopeDrawing | undefined {
  const known = kept.get(box);
  return known?.drawing === drawing ? known.scope : undefined;
}

/** As `scopeDrawing`, in steps of which each costs little. */
export function* scopeSteps(
  drawing: BoxDrawing,
  box: ScopeBox,
  asFound: Installation,
): Generator<undefined, ScopeDrawing, undefined> {
  const known = knownScope(drawing, box);
  if (known !== undefined) return known;
  const signs = scopeSigns(drawing, box);
  yield undefined;
  const aside = layAside(drawing, box, asFound.enclosures[box.enclosure], asFound.cables);
  const asides = aside.map(({ area }) => area);
  const { ways, ports, capsules } = yield* oldWays(
    drawing,
    box,
    asides.map((area) => grown(area, CLEAR_OF_WORDS)),
  );
  yield undefined;
  const scope: ScopeDrawing = {
    ...signs,
    flags: flagsOf(drawing, signs, ways, [...asides, ...capsules]),
    ways,
    ports,
    capsules,
    aside,
    bounds: hull([drawing.bounds, ...asides.map(margin)]),
  };
  kept.set(box, { drawing, scope });
  return scope;
}

/** The drawing without what has to be laid out first: how each line and thing is drawn. */
export function scopeSigns(drawing: BoxDrawing, box: ScopeBox): ScopeDrawing {
  const changes = changesByItem(box);
  const isNew = box.work === "new";
  return {
    lines: drawing.conductors.map((conductor) => lineSign(conductor, changes, isNew)),
    splices: spliceMarks(drawing, box, changes),
    devices: new Map<DeviceId, ScopeSign>(
      drawing.devices.map(({ device }) => [device, signIn(changes, "device", device, isNew)]),
    ),
    flags: [],
    ways: [],
    ports: [],
    capsules: [],
    aside: [],
    bounds: drawing.bounds,
  };
}

function flagsOf(
  drawing: BoxDrawing,
  { lines, splices }: ScopeDrawing,
  ways: readonly OldWay[],
  more: readonly Rect[],
): readonly FlagSpot[] {
  const own = drawing.conductors.map(clearLegs);
  const old = ways.map(({ points }) => legsOf(points));
  const wanted: readonly Flagged[] = [
    ...flaggedLines(drawing, own, lines, splices),
    ...old.map((legs): Flagged => ({ sign: "moved", legs })),
  ];
  // They may be drawn larger than they are.
  const words = wordAreas(drawing).map((area) => grown(area, 6));
  return flagSpots(wanted, [...thingAreas(drawing), ...words, ...more], [...own.flat(), ...old.flat()]);
}

const margin = ({ x, y, width, height }: Rect): Rect => ({
  x: x - 6,
  y: y - 6,
  width: width + 12,
  height: height + 12,
});

type Changes = ReadonlyMap<string, ScopeChange>;

const changesByItem = ({ changes }: ScopeBox): Changes =>
  new Map(changes.map((change) => [`${change.item.kind} ${change.item.id}`, change]));

function signIn(changes: Changes, kind: ScopeItemKind, id: string, isNewBox: boolean): ScopeSign {
  const change = changes.get(`${kind} ${id}`);
  return change === undefined ? (isNewBox ? "new" : "kept") : signOf(change.kind);
}

/** A jumper of which one end moves is moved as a whole; a conductor that runs through has no end here and stays. */
function lineSign({ ends, passThrough }: ConductorDrawing, changes: Changes, isNewBox: boolean): ScopeSign {
  if (passThrough !== undefined) return signIn(changes, "pass-through", passThrough, isNewBox);
  const signs = ends.map((end) => signIn(changes, "end", end, isNewBox));
  return signs.find((sign) => sign !== "kept") ?? "kept";
}

function spliceMarks(
  drawing: BoxDrawing,
  { homes, work }: ScopeBox,
  changes: Changes,
): ReadonlyMap<SpliceId, SpliceMark> {
  const was = new Map(homes.map(({ splice, home }) => [splice, home?.name]));
  return new Map(
    drawing.splices.map(({ splice, name }) => {
      const old = was.get(splice);
      const sign = signIn(changes, "splice", splice, work === "new");
      return [splice, { sign, ...(old !== undefined && old !== name && { was: old }) }];
    }),
  );
}

const FIRST: readonly ScopeSign[] = ["new", "moved", "kept"];

/** Kept lines into a splice that is kept say so by its flag: as many flags as lines would only be noise. */
function flaggedLines(
  drawing: BoxDrawing,
  own: readonly (readonly Leg[])[],
  lines: readonly ScopeSign[],
  splices: ReadonlyMap<SpliceId, SpliceMark>,
): readonly Flagged[] {
  const told = new Set(
    drawing.splices
      .filter(({ splice }) => splices.get(splice)?.sign === "kept")
      .flatMap(({ rows }) => rows.map(({ end }) => end)),
  );
  return drawing.conductors
    .map((conductor, i): Flagged & { readonly isTold: boolean } => {
      const sign = lines[i] ?? "kept";
      const isTold = sign === "kept" && conductor.ends.some((end) => told.has(end));
      return { sign, legs: own[i] ?? [], isTold };
    })
    .filter(({ isTold }) => !isTold)
    .sort((a, b) => FIRST.indexOf(a.sign) - FIRST.indexOf(b.sign));
}
