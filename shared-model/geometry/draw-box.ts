import type { Enclosure } from "../model/enclosure.ts";
import type { EnclosureId, SpliceId } from "../model/ids.ts";
import type { Installation, Project } from "../model/project.ts";
import { getEnclosure } from "../queries/find-item.ts";
import type { BoxDrawing } from "./box-drawing.ts";
import { PITCH } from "./metrics.ts";
import { type BoxPlan, type NeutralWay, type Pins, planLayers } from "./near/box-plan.ts";
import { buildNets } from "./near/build-nets.ts";
import { chooseRows } from "./near/choose-rows.ts";
import { chooseRuns } from "./near/choose-runs.ts";
import { drawingBasis } from "./near/drawing-basis.ts";
import { type Frame, frameBox, planChannels } from "./near/frame.ts";
import { likelyMadeUp } from "./near/likely-joints.ts";
import type { Net } from "./near/net.ts";
import { allLikely, onlyThere } from "./near/only-there.ts";
import { placeLoose } from "./near/place-loose.ts";
import { reachForRuns } from "./near/reach-for-runs.ts";
import { whatToMove } from "./near/what-to-move.ts";
import { passes } from "./near/wishes.ts";
import { writeDrawing } from "./near/write-drawing.ts";

interface Kept {
  readonly basis: readonly unknown[];
  readonly drawing: BoxDrawing;
}

/** The last two drawings of a box: a layout is tried, taken back and made again, and the cables change sides with it. */
const kept = new WeakMap<Enclosure, readonly Kept[]>();

/**
 * The near drawing of one enclosure, laid out and routed: sheaths on the wall facing the other end of their cable,
 * splices in a column before the wall where most of their members enter, devices between, conductors level on rows and
 * upright on lanes, one pitch apart. The same box always gives the same drawing, whatever the order of its records; an
 * edit elsewhere that shows nothing here gives the same object.
 */
export function boxDrawing(project: Project, installation: Installation, enclosure: EnclosureId): BoxDrawing {
  const box = getEnclosure(installation, enclosure);
  const basis = drawingBasis(project, installation, box);
  const before = kept.get(box) ?? [];
  const known = before.find((each) => isSame(each.basis, basis));
  if (known !== undefined) return known.drawing;
  const drawing = drawAnew(project, installation, box);
  kept.set(box, [{ basis, drawing }, ...before.slice(0, 1)]);
  return drawing;
}

/** The drawing of an enclosure that was made last, as long as it is kept; nothing is drawn for this. */
export const lastDrawing = (enclosure: Enclosure): BoxDrawing | undefined => kept.get(enclosure)?.[0]?.drawing;

const isSame = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((item, index) => item === b[index]);

function drawAnew(project: Project, installation: Installation, box: Enclosure): BoxDrawing {
  const plain = better((neutrals) => layOut(project, installation, box, neutrals, new Map()));
  const dragged = (Object.keys(box.splices) as SpliceId[]).filter((id) => project.layout.splices[id] !== undefined);
  if (dragged.length === 0) return plain.drawing;
  // Where a splice was dragged to is known inside the box as it is drawn by itself; where it then grows upward, anew.
  const pinned = (zero: number): LaidOut => {
    const pins = pinsOf(project, dragged, plain.frame.width, zero);
    return layOut(project, installation, box, plain.plan.neutrals, pins, zero);
  };
  const first = pinned(plain.frame.zero);
  return first.frame.zero === plain.frame.zero ? first.drawing : pinned(first.frame.zero).drawing;
}

/** Column and row of each dragged splice, in a box whose row 0 lies at `zero`. */
function pinsOf(project: Project, dragged: readonly SpliceId[], width: number, zero: number): Pins {
  const pins = new Map<string, { side: 1 | -1; row: number }>();
  for (const id of dragged) {
    const point = project.layout.splices[id];
    if (point === undefined) continue;
    pins.set(id, { side: point.x < width / 2 ? -1 : 1, row: Math.round((point.y - zero) / PITCH) });
  }
  return pins;
}

interface LaidOut {
  readonly plan: BoxPlan;
  readonly frame: Frame;
  /** What is there. */
  readonly drawing: BoxDrawing;
  /** The box as it will probably be made up, by which ways are chosen. */
  readonly whole: () => BoxDrawing;
}

/** Lets neutrals pass the other way only where that is clearly better, so that a small edit seldom changes it. */
const CLEARLY = 12;

function better(draw: (neutrals: NeutralWay) => LaidOut): LaidOut {
  const first = draw("under");
  if (!first.plan.nets.some((net) => mayPassEitherWay(first.plan, net))) return first;
  const drawn = first.whole();
  if (crossingCost(drawn) <= CLEARLY) return first;
  const second = draw("beside");
  return costOf(second.whole()) + CLEARLY < costOf(drawn) ? second : first;
}

const mayPassEitherWay = (plan: BoxPlan, net: Net): boolean =>
  net.kind === 1 &&
  net.a.what !== "hole" &&
  net.b.what !== "hole" &&
  plan.centre.some((layer) => layer.kind !== "free" && passes(net, layer));

/** A crossing of two insulated conductors costs 8, with a ground 3, a bend 1, a hundred units of width or height 1. */
const costOf = (drawing: BoxDrawing): number =>
  crossingCost(drawing) + drawing.measure.bends + (drawing.width + drawing.height) / 100;

const crossingCost = ({ measure: { crossings, insulatedCrossings } }: BoxDrawing): number =>
  8 * insulatedCrossings + 3 * (crossings - insulatedCrossings);

/**
 * Tries at rows that bind no two lanes against each other; the first nearly always does. After the last, conductors that
 * change places on the same rows take a second lane.
 */
const TRIES = 4;

function layOut(
  project: Project,
  installation: Installation,
  box: Enclosure,
  neutrals: NeutralWay,
  pins: Pins,
  leastZero = Number.NEGATIVE_INFINITY,
): LaidOut {
  const likely = likelyMadeUp(installation, box);
  const plan = buildNets(planLayers(project, installation, likely, pins, neutrals), box);
  placeLoose(plan);
  const avoid = new Set<string>();
  for (let left = TRIES; ; left -= 1) {
    chooseRows(plan, avoid);
    reachForRuns(plan, chooseRuns(plan, avoid));
    const channels = planChannels(plan, left === 0);
    const conflicts = channels.flatMap((channel) => channel.conflicts);
    if (conflicts.length === 0 || left === 0) {
      const frame = frameBox(plan, channels, leastZero);
      const drawing = writeDrawing(likely === box ? plan : onlyThere(plan), frame);
      const whole = (): BoxDrawing => (likely === box ? drawing : writeDrawing(allLikely(plan), frame));
      return { plan, frame, drawing, whole };
    }
    for (const conflict of conflicts) avoid.add(whatToMove(plan, conflict));
  }
}
