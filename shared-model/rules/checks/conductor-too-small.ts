import type { Fix, Subject } from "../../answers/finding.ts";
import type { Material } from "../../model/cable.ts";
import type { Device } from "../../model/device.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { EvidenceMark } from "../../model/evidence.ts";
import { type EndKey, type JumperId, jumperEnd, parseEnd } from "../../model/ids.ts";
import type { StateName } from "../../model/project.ts";
import { findTerminal } from "../../queries/terminals-of.ts";
import type { Section } from "../../solver/section.ts";
import type { Amps } from "../../units/quantity.ts";
import { compareWireSize, type WireSize } from "../../units/wire-size.ts";
import type { SmallConductorLimits } from "../editions/edition-data.ts";
import { BREAKER_RATINGS } from "../editions/product-values.ts";
import { fixBy } from "../fix-parts.ts";
import { titled } from "../line-load-fixes.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";

const messages = {
  small:
    "{awg} AWG {material} in {path} is behind {breaker} of {rating} A in {panel}: at most {limit} A. Fit a breaker of {limit} A or less, or replace the conductor.",
  ratingUnknown:
    "Cannot tell whether the conductors behind {breaker} in {panel} are thick enough: its rating is not recorded. Read it off the handle.",
  limitUnknown:
    "Cannot tell whether {awg} AWG {material} in {path} is thick enough for {breaker} of {rating} A in {panel}: the limits held end before this size. Look its ampacity up.",
};

/** Every conductor of a circuit counts: cables, switch legs, returns and jumpers. Grounds have a table of their own. */
export const conductorTooSmall = defineRule({
  id: "conductor-too-small",
  status: "draft",
  scope: "section",
  severity: "danger",
  summary: "Every conductor of a circuit must be thick enough for the breaker ahead of it.",
  why: "A breaker that is too large lets a thin conductor overheat inside the wall before it opens. The thinnest piece sets the breaker, and it is often the shortest: a 14 AWG jumper in a box of 12 AWG cables.",
  messages,
  sections: everyEdition("240.4(D), 334.80", "from-memory"),
  values: ["smallConductorAmps"],
  check({ section, edition, state, report, cannotTell }) {
    const limits = edition.values.smallConductorAmps.value;
    for (const { device: breaker, panel } of section.breakers()) {
      const pieces = piecesBehind(section, breaker);
      if (pieces.length === 0) continue;
      const behind = { breaker: breaker.name, panel: panel.name };
      const rating = breaker.breakerRatingA;
      if (rating === undefined) {
        cannotTell({
          subjects: [subject("device", breaker)],
          message: fillIn(messages.ratingUnknown, behind),
          missing: `the rating of ${breaker.name} in ${panel.name}`,
        });
        continue;
      }
      const offers = state === "proposed" ? breakerOffers(breaker, pieces, rating, limits, state) : [];
      // Jumpers alone are made anew: where a cable is too thin as well, the breaker is what is wrong.
      const areCablesRight = pieces.every(
        ({ box, ...piece }) => box !== undefined || judge(piece, rating, limits) === "passes",
      );
      for (const piece of pieces) {
        const verdict = judge(piece, rating, limits);
        if (verdict === "passes") continue;
        const subjects = [piece.subject, subject("device", breaker)];
        const shown = {
          ...behind,
          awg: piece.awg,
          material: piece.material.replaceAll("-", " "),
          path: piece.path,
          rating,
        };
        if (verdict === "cannot-tell") {
          cannotTell({
            subjects,
            message: fillIn(messages.limitUnknown, shown),
            missing: `the ampacity of ${piece.awg} AWG ${shown.material}`,
            toDo: "Look it up and judge it by hand.",
          });
        } else {
          report({
            subjects,
            message: fillIn(messages.small, { ...shown, limit: verdict.limit }),
            data: { awg: piece.awg, breakerA: rating, limitA: verdict.limit },
            ...(state === "proposed" && {
              offers: [...offers, ...(areCablesRight ? jumperOffers(section, piece, rating, limits, state) : [])],
            }),
            ...basisOf(piece.marks, marksOn(breaker, "breakerRatingA")),
          });
        }
      }
    }
  },
});

/** The greatest breaker that every conductor behind it allows. */
function breakerOffers(
  breaker: Device,
  pieces: readonly Piece[],
  rating: Amps,
  limits: SmallConductorLimits,
  state: StateName,
): readonly Fix[] {
  const allowed = BREAKER_RATINGS.filter(
    (one) => one < rating && pieces.every((piece) => judge(piece, one, limits) === "passes"),
  );
  const best = allowed[allowed.length - 1];
  if (best === undefined) return [];
  const target = { kind: "device", id: breaker.id };
  return [
    fixBy(`Fit a breaker of ${best} A at ${breaker.name}`, "set-property", {
      state,
      target,
      field: "breakerRatingA",
      value: best,
    }),
  ];
}

/** A jumper is easily made anew, of the thinnest size that the breaker allows. */
function jumperOffers(
  section: Section,
  { box, subject: { id, name }, material }: Piece,
  rating: Amps,
  limits: SmallConductorLimits,
  state: StateName,
): readonly Fix[] {
  if (box === undefined || material !== "copper" || isPushedIn(box, id as JumperId)) return [];
  const [thinnest] = (Object.entries(limits[material]) as [WireSize, Amps][])
    .filter(([, limit]) => rating <= limit)
    .sort(([one], [other]) => compareWireSize(one, other))
    .map(([size]) => size);
  if (thinnest === undefined) return [];
  const jumper = id as JumperId;
  const plan = new MakeUpPlan(section.installation, box, state).resize(jumper, thinnest);
  const fix = plan.fix((words) => titled(`Make jumper ${name} of ${thinnest} AWG`, words));
  return fix === undefined ? [] : [fix];
}

/** Push-in entries of devices take no thicker conductor. */
const isPushedIn = (box: Enclosure, jumper: JumperId): boolean =>
  (["a", "b"] as const).some((side) => {
    const at = box.places[jumperEnd(jumper, side)]?.at;
    const device = at?.kind === "terminal" ? box.devices[at.device] : undefined;
    return (
      at?.kind === "terminal" && device !== undefined && findTerminal(device, at.terminal)?.entryKind === "push-in"
    );
  });

/** A cable or jumper with its thinnest conductor in the circuit. */
interface Piece {
  readonly subject: Subject;
  readonly path: string;
  readonly awg: WireSize;
  readonly material: Material;
  readonly marks: readonly EvidenceMark[];
  /** Enclosure of a jumper. */
  readonly box?: Enclosure;
}

function piecesBehind(section: Section, breaker: Device): readonly Piece[] {
  const boxOfJumper = new Map<string, Enclosure>();
  for (const box of [...section.breakers().map(({ panel }) => panel), ...section.enclosures])
    for (const id of Object.keys(box.jumpers)) boxOfJumper.set(id, box);
  const { hotEnds, neutralEnds } = section.circuitOf(breaker.id);
  const pieces = new Map<string, Piece>();
  for (const end of [...hotEnds, ...neutralEnds]) {
    const piece = pieceOf(section, end, boxOfJumper);
    if (piece === undefined) continue;
    const known = pieces.get(piece.subject.id);
    if (known === undefined || compareWireSize(piece.awg, known.awg) < 0) pieces.set(piece.subject.id, piece);
  }
  return [...pieces.values()].sort((a, b) => (a.subject.id < b.subject.id ? -1 : 1));
}

function pieceOf(
  { installation }: Section,
  end: EndKey,
  boxOfJumper: ReadonlyMap<string, Enclosure>,
): Piece | undefined {
  const parsed = parseEnd(end);
  if (parsed === undefined) return undefined;
  if (parsed.of === "cable") {
    const cable = installation.cables[parsed.cable];
    const conductor = cable?.conductors[parsed.conductor];
    if (cable === undefined || conductor === undefined) return undefined;
    const { awg, material } = conductor;
    return {
      subject: subject("cable", cable),
      path: cable.name,
      awg,
      material,
      marks: marksOn(cable, "item", "conductors"),
    };
  }
  const box = boxOfJumper.get(parsed.jumper);
  const jumper = box?.jumpers[parsed.jumper];
  if (box === undefined || jumper === undefined) return undefined;
  const { awg, material } = jumper;
  return {
    subject: subject("jumper", jumper),
    path: `jumper ${jumper.name} in ${box.name}`,
    awg,
    material,
    marks: marksOn(jumper, "awg", "material"),
    box,
  };
}

type Verdict = "passes" | "cannot-tell" | { readonly limit: Amps };

/**
 * The table names small sizes only. A thicker conductor carries at least what a thinner one does, so a size without a row
 * passes where a thinner row passes, and fails where a thicker row fails; between the two nothing is known.
 */
function judge({ awg, material }: Piece, rating: Amps, limits: SmallConductorLimits): Verdict {
  const rows = Object.entries(limits[material]) as [WireSize, Amps][];
  const own = limits[material][awg];
  if (own !== undefined) return rating > own ? { limit: own } : "passes";
  if (rows.some(([size, limit]) => compareWireSize(size, awg) < 0 && rating <= limit)) return "passes";
  const above = rows.filter(([size]) => compareWireSize(size, awg) > 0).map(([, limit]) => limit);
  const least = Math.min(...above) as Amps;
  return above.length > 0 && rating > least ? { limit: least } : "cannot-tell";
}
