import type { Fix } from "../../answers/finding.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import { type JumperId, jumperEnd, parseOutlet } from "../../model/ids.ts";
import type { StateName } from "../../model/project.ts";
import { METAL_WORDS } from "../../queries/metal-words.ts";
import { findTerminal } from "../../queries/terminals-of.ts";
import type { Section } from "../../solver/section.ts";
import type { Amps } from "../../units/quantity.ts";
import { compareWireSize, type WireSize } from "../../units/wire-size.ts";
import { judgePiece, type Piece, piecesBehind } from "../circuit-pieces.ts";
import type { SmallConductorLimits } from "../editions/edition-data.ts";
import { BREAKER_RATINGS } from "../editions/product-values.ts";
import { fixBy } from "../fix-parts.ts";
import { titled } from "../line-load-fixes.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { defineRule, type Report } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  small:
    "{awg} AWG {material} in {path} is behind {breaker} of {rating} A in {panel}: at most {limit} A. Fit a breaker of {limit} A or less, or replace the conductor.",
  ratingUnknown:
    "Cannot tell whether the conductors behind {breaker} in {panel} are thick enough: its rating is not recorded. Read it off the handle.",
  limitUnknown:
    "Cannot tell whether {awg} AWG {material} in {path} is thick enough for {breaker} of {rating} A in {panel}: the limits held end before this size. Look its ampacity up.",
});

const wording = catalogue({
  ampacityOf: (awg: Part, metal: Part) => `the ampacity of ${awg} AWG ${metal}`,
  breaker: (amps: Part, breaker: Part) => `Fit a breaker of ${amps} A at ${breaker}`,
  jumper: (jumper: Part, awg: Part) => `Make jumper ${jumper} of ${awg} AWG`,
  lookUp: "Look it up and judge it by hand.",
  ratingOf: (breaker: Part, panel: Part) => `the rating of ${breaker} in ${panel}`,
});

/** Every conductor of a circuit counts: cables, switch legs, returns and jumpers. Grounds have a table of their own. */
export const conductorTooSmall = defineRule({
  id: "conductor-too-small",
  status: "stable",
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
          missing: wording.ratingOf(breaker.name, panel.name),
        });
        continue;
      }
      const offers = state === "proposed" ? breakerOffers(breaker, pieces, rating, limits, state) : [];
      // Jumpers alone are made anew: where a cable is too thin as well, the breaker is what is wrong.
      const areCablesRight = pieces.every(
        (piece) => piece.box !== undefined || judgePiece(piece, rating, limits) === "passes",
      );
      const tooSmall = pieces.filter((piece) => typeof judgePiece(piece, rating, limits) === "object");
      const root = tooSmall.find(({ box }) => box === undefined);
      for (const piece of pieces) {
        const verdict = judgePiece(piece, rating, limits);
        if (verdict === "passes") continue;
        const subjects = [piece.subject, subject("device", breaker)];
        const shown = {
          ...behind,
          awg: piece.awg,
          material: METAL_WORDS[piece.material],
          path: piece.path,
          rating,
        };
        if (verdict === "cannot-tell") {
          cannotTell({
            subjects,
            message: fillIn(messages.limitUnknown, shown),
            missing: wording.ampacityOf(piece.awg, shown.material),
            toDo: wording.lookUp,
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
            ...(piece === root && { hides: ofBreaker(section, breaker, tooSmall, piece) }),
          });
        }
      }
    }
  },
});

/** A cable is too thin: the breaker is what is wrong, and all that it is too large for is told by the first cable. */
function ofBreaker(
  section: Section,
  breaker: Device,
  tooSmall: readonly Piece[],
  root: Piece,
): NonNullable<Report["hides"]> {
  const others = tooSmall.filter((piece) => piece !== root).map((piece) => piece.subject.id);
  const outlets = section.circuitOf(breaker.id).outlets.map((key) => parseOutlet(key).device);
  return [
    { rule: "conductor-too-small", subjects: others },
    { rule: "egc-too-small", subjects: tooSmall.map((piece) => piece.subject.id) },
    { rule: "receptacle-rating", subjects: [...new Set(outlets)] },
  ];
}

/** The greatest breaker that every conductor behind it allows. */
function breakerOffers(
  breaker: Device,
  pieces: readonly Piece[],
  rating: Amps,
  limits: SmallConductorLimits,
  state: StateName,
): readonly Fix[] {
  const allowed = BREAKER_RATINGS.filter(
    (one) => one < rating && pieces.every((piece) => judgePiece(piece, one, limits) === "passes"),
  );
  const best = allowed[allowed.length - 1];
  if (best === undefined) return [];
  const target = { kind: "device", id: breaker.id };
  return [
    fixBy(wording.breaker(best, breaker.name), "set-property", {
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
  const fix = plan.fix((words) => titled(wording.jumper(name, thinnest), words));
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
