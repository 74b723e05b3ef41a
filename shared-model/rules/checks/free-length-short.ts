import type { Fix } from "../../answers/finding.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Box } from "../../model/enclosure.ts";
import { type CableId, type EndKey, parseEnd } from "../../model/ids.ts";
import type { Installation, StateName } from "../../model/project.ts";
import { nameOfEnd } from "../../queries/end-facts.ts";
import { landedAt, membersOf } from "../../queries/landings.ts";
import { inchWords } from "../../units/inch-words.ts";
import type { EditionData } from "../editions/edition-data.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  short:
    "Too little free length in {box}: {ends}. At least {least} must be free of the sheath{opening}. A piece spliced on with a listed connector is the usual repair; only the 2023 edition says outright that it counts, so ask before you rely on it elsewhere.",
});

const wording = catalogue({
  endHas: (end: Part, lengths: Part) => `${end} has ${lengths}`,
  free: (length: Part) => `${length} free`,
  longerPiece: (end: Part, box: Part) => `Splice a longer piece onto ${end} in ${box}`,
  longerPieces: (ends: Part, box: Part) => `Splice longer pieces onto ${ends} in ${box}`,
  opening: (length: Part) => `, and ${length} reach past the opening`,
  pastOpening: (length: Part) => `${length} past the opening`,
});

interface Short {
  readonly end: EndKey;
  readonly words: string;
}

/** Ends of cables that are spliced or end there, where somebody measured them. Jumpers are cut to length. */
export const freeLengthShort = defineRule({
  id: "free-length-short",
  status: "stable",
  scope: "box",
  severity: "violation",
  summary: "A conductor must reach far enough out of its box to be worked on.",
  why: "Short conductors are made up inside the box with long-nose pliers: joints are bad, insulation is skinned at the edge, and the next device cannot be pulled out to be tested without breaking one. It is what old boxes have most, since every exchange of a device cost half an inch. Conductors that pass through unbroken, and capped ones, are not asked. An end that has a pigtail of its own spliced on counts as long enough. Without a measured length nothing is said.",
  messages,
  sections: everyEdition("300.14", "sourced"),
  values: ["freeLengthIn", "outsideOpeningIn", "smallOpeningIn"],
  check({ enclosure, installation, edition, state, report }) {
    if (enclosure.kind !== "box") return;
    const short = new Map<CableId, Short[]>();
    for (const key in enclosure.places) {
      const end = key as EndKey;
      const words = tooShort(enclosure, end, edition);
      const parsed = words === undefined ? undefined : parseEnd(end);
      if (words === undefined || parsed?.of !== "cable" || isExtended(enclosure, end)) continue;
      const list = short.get(parsed.cable) ?? [];
      list.push({ end, words });
      short.set(parsed.cable, list);
    }
    const { freeLengthIn: free, outsideOpeningIn: outside } = edition.values;
    for (const ends of short.values()) {
      ends.sort((a, b) => (a.end < b.end ? -1 : 1));
      const named = ends.map(({ end, words }) => ({ end, words, name: nameOfEnd(installation, enclosure, end) }));
      const offer = pigtailOffer(
        installation,
        enclosure,
        state,
        named.map(({ end }) => end),
      );
      report({
        subjects: named.map(({ end, name }) => subject("end", { id: end, name })),
        message: fillIn(messages.short, {
          box: enclosure.name,
          ends: listed(named.map(({ name, words }) => wording.endHas(name, words))),
          least: inchWords(free.value),
          opening: isSmall(enclosure, edition) ? wording.opening(inchWords(outside.value)) : "",
        }),
        data: { conductors: ends.length },
        ...basisOf(
          ends.flatMap(({ end }) => marksOn(enclosure.places[end] ?? {}, "freeLengthIn", "outsideOpeningIn", "at")),
        ),
        ...(offer !== undefined && { offers: [offer] }),
      });
    }
  },
});

/** Outlet and switch boxes of dwellings have small openings; only a recorded one of 8 in. and more is none. */
const isSmall = ({ openingMinIn }: Box, { values }: EditionData): boolean =>
  openingMinIn === undefined || openingMinIn < values.smallOpeningIn.value;

/** What is too short of an end, in words; undefined where it is long enough, not measured, or not made up there. */
function tooShort(box: Box, end: EndKey, edition: EditionData): string | undefined {
  const place = box.places[end];
  if (place?.freeLengthIn === undefined && place?.outsideOpeningIn === undefined) return undefined;
  if (place.at.kind === "capped" || place.at.kind === "loose") return undefined;
  const { freeLengthIn: free, outsideOpeningIn: outside } = place;
  const { values } = edition;
  const parts = [
    ...(free !== undefined && free < values.freeLengthIn.value ? [wording.free(inchWords(free))] : []),
    ...(outside !== undefined && outside < values.outsideOpeningIn.value && isSmall(box, edition)
      ? [wording.pastOpening(inchWords(outside))]
      : []),
  ];
  return parts.length === 0 ? undefined : listed(parts);
}

/** Alone in its splice with jumpers: a piece was spliced on. */
function isExtended(box: Box, end: EndKey): boolean {
  const at = box.places[end]?.at;
  if (at?.kind !== "splice") return false;
  const members = membersOf(box, at.splice);
  return members.length > 1 && members.every((member) => member === end || parseEnd(member)?.of === "jumper");
}

/** A pigtail for each, where each has its terminal to itself. In a joint nobody can say what is spliced to what. */
function pigtailOffer(
  installation: Installation,
  box: Box,
  state: StateName,
  ends: readonly EndKey[],
): Fix | undefined {
  const plan = new MakeUpPlan(installation, box, state);
  for (const end of ends) {
    const at = box.places[end]?.at;
    if (at?.kind !== "terminal" || landedAt(box, at.device, at.terminal).length !== 1) return undefined;
    plan.pigtail(at.device, at.terminal);
  }
  const names = listed(ends.map((end) => nameOfEnd(installation, box, end)));
  return plan.fix(() => (ends.length === 1 ? wording.longerPiece : wording.longerPieces)(names, box.name));
}
