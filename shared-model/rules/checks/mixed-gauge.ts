import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import { parseEnd } from "../../model/ids.ts";
import { findEndFacts } from "../../queries/end-facts.ts";
import { METAL_WORDS } from "../../queries/metal-words.ts";
import type { Section } from "../../solver/section.ts";
import { isThicker, thickestOf, type WireSize } from "../../units/wire-size.ts";
import { judgePiece, type Piece, piecesBehind } from "../circuit-pieces.ts";
import { OWN_CHECK } from "../own-check.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  thinner:
    "{breaker} of {rating} A in {panel} shows {shown} AWG at its terminal, and {where} {is} {thin} AWG{material}: that sets the breaker. Tag {breaker} in the panel, so that nobody fits a larger one.",
});

const wording = catalogue({
  andMore: (pieces: Part, more: Part) => `${pieces} and ${more} more`,
  is: (count: number) => (count === 1 ? "is" : "are"),
});

/** How many thinner pieces are named before the rest are counted. */
const NAMED = 4;

/**
 * Where the thin piece is what lands on the breaker, everybody sees it. Nothing is said where the breaker is too large
 * for it already: that is a fault of its own.
 */
export const mixedGauge = defineRule({
  id: "mixed-gauge",
  status: "stable",
  scope: "section",
  severity: "caution",
  summary: "Where a circuit grows thinner on its way, the panel should say so.",
  why: "Whoever looks into the panel sees the conductor at the breaker. If that is 12 AWG and an extension behind it 14 AWG, a 20 A breaker looks right there, and overloads the extension inside the wall. A tag beside the breaker that names the smallest conductor costs nothing.",
  messages,
  sections: everyEdition(OWN_CHECK, "own-rule"),
  values: ["smallConductorAmps"],
  check({ section, edition, report }) {
    const limits = edition.values.smallConductorAmps.value;
    for (const { device: breaker, panel } of section.breakers()) {
      const rating = breaker.breakerRatingA;
      if (rating === undefined) continue;
      const shown = sizeAt(section, breaker);
      if (shown === undefined) continue;
      const pieces = piecesBehind(section, breaker);
      if (!pieces.every((piece) => judgePiece(piece, rating, limits) === "passes")) continue;
      const [thinnest] = [...pieces].sort((a, b) => (isThicker(a.awg, b.awg) ? 1 : isThicker(b.awg, a.awg) ? -1 : 0));
      if (thinnest === undefined || !isThicker(shown, thinnest.awg)) continue;
      const thin = pieces.filter(({ awg }) => awg === thinnest.awg);
      report({
        subjects: [subject("device", breaker), thinnest.subject],
        message: fillIn(messages.thinner, {
          breaker: breaker.name,
          rating,
          panel: panel.name,
          shown,
          where: whereWords(thin),
          is: wording.is(thin.length),
          thin: thinnest.awg,
          material: thinnest.material === "copper" ? "" : ` ${METAL_WORDS[thinnest.material]}`,
        }),
        data: { breakerA: rating, atBreaker: shown, thinnest: thinnest.awg },
        ...basisOf(
          thin.flatMap(({ marks }) => marks),
          marksOn(breaker, "breakerRatingA"),
        ),
      });
    }
  },
});

/** The thickest conductor on the terminals of a breaker. */
function sizeAt(section: Section, breaker: Device): WireSize | undefined {
  const panel = section.breakers().find(({ device }) => device.id === breaker.id)?.panel;
  if (panel === undefined) return undefined;
  const landed = section.circuitOf(breaker.id).hotEnds.filter((end) => {
    const at = panel.places[end]?.at;
    return parseEnd(end) !== undefined && at?.kind === "terminal" && at.device === breaker.id;
  });
  return thickestOf(landed.flatMap((end) => findEndFacts(section.installation, panel, end)?.awg ?? []));
}

function whereWords(thin: readonly Piece[]): string {
  const names = thin.map(({ path }) => path);
  const more = names.length - NAMED;
  return more < 2 ? listed(names) : wording.andMore(names.slice(0, NAMED).join(", "), more);
}
