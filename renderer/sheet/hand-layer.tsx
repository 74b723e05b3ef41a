import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { findEndFacts, nameOfEnd } from "../../shared-model/queries/end-facts.ts";
import { shownInstallation } from "../state/document-store.ts";
import { Strand } from "./draw/conductor-line.tsx";
import { CodePlate } from "./draw/plates.tsx";
import { placeWords } from "./end-words.ts";
import type { HeldThing } from "./gesture-store.ts";
import { spotOf } from "./landing-targets.ts";
import { laterWording } from "./later-words.ts";
import { FOR_EYES_ONLY } from "./svg-roles.ts";

interface Held {
  readonly held: HeldThing;
  readonly enclosure: Enclosure;
  readonly drawing: BoxDrawing;
  /** Where the pointer is, or the place that a key chose, in drawing units of the box. */
  readonly tip: Point | undefined;
}

/** The held conductor above everything, from where it comes to the pointer, with its name at the hand. */
export function HandLayer({ held, enclosure, drawing, tip: wanted }: Held) {
  const root = rootOf(held, drawing);
  if (root === undefined) return null;
  const tip = wanted ?? { x: root.at.x + root.inward * 120, y: root.at.y - 60 };
  const words = wordsOf(held, enclosure);
  const reach = Math.min(90, Math.abs(tip.x - root.at.x) / 2 + 24) * root.inward;
  const path = `M${root.from.x} ${root.from.y}L${root.at.x} ${root.at.y}C${root.at.x + reach} ${root.at.y} ${tip.x - reach * 0.6} ${tip.y + 18} ${tip.x} ${tip.y}`;
  return (
    <g className="sheet-hand" {...FOR_EYES_ONLY}>
      <path d={path} className="sheet-hand-halo" />
      <Strand path={path} colour={words.colour} />
      <path className="sheet-loose-casing" d={bareTip(tip, root.inward)} />
      <path className="sheet-loose-core" d={bareTip(tip, root.inward)} />
      <circle className="sheet-hand-ring" cx={tip.x} cy={tip.y} r={13} />
      <CodePlate plate={{ at: { x: tip.x, y: tip.y - 22 }, text: words.name, vertical: false }} />
    </g>
  );
}

/** The stripped end in the hand. */
const bareTip = ({ x, y }: Point, inward: 1 | -1): string => `M${x} ${y}l${inward * 9} -7`;

interface Root {
  readonly from: Point;
  readonly at: Point;
  /** 1: the conductor leaves to the right. */
  readonly inward: 1 | -1;
}

/** Where the held conductor comes from: its sheath, the other end of its jumper, or the place a new jumper starts at. */
function rootOf(held: HeldThing, drawing: BoxDrawing): Root | undefined {
  const middle = drawing.width / 2;
  if (held.kind === "jumper") {
    const at = spotOf(drawing, held.from)?.at;
    return at && { from: at, at, inward: at.x < middle ? 1 : -1 };
  }
  const conductor = drawing.conductors.find(({ ends }) => ends.includes(held.end));
  if (conductor === undefined) return undefined;
  if (conductor.kind === "jumper") {
    const other = conductor.grips[conductor.ends[0] === held.end ? 1 : 0];
    return other && { from: other, at: other, inward: other.x < middle ? 1 : -1 };
  }
  const from = conductor.points[0];
  const at = conductor.points[Math.max(0, conductor.fanPoints - 1)] ?? from;
  return from && at && { from, at, inward: at.x < middle ? 1 : -1 };
}

/** What is held, in words: its name for the tag at the hand, and where it was, for the line beside the title block. */
export function wordsOf(held: HeldThing, enclosure: Enclosure) {
  const installation = shownInstallation();
  if (held.kind === "jumper") {
    const note = laterWording.beginsPressWhereItEnds(placeWords(enclosure, held.from));
    const name = held.from.kind === "splice" ? "pigtail" : "jumper";
    return { name, title: laterWording.aNew(name), note, colour: held.colour };
  }
  const at = enclosure.places[held.end]?.at;
  const name = nameOfEnd(installation, enclosure, held.end);
  return {
    name,
    title: laterWording.holding(name),
    note: laterWording.wasPressAPlace(at === undefined ? "nowhere" : placeWords(enclosure, at)),
    colour: findEndFacts(installation, enclosure, held.end)?.colour ?? "black",
  };
}
