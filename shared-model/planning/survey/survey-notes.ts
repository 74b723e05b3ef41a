import type { SurveyCaution, SurveyedCable, SurveyProposal, SurveyRole } from "../../answers/survey.ts";
import type { BoxAtHand } from "./box-at-hand.ts";
import { leadsLeft } from "./harm.ts";
import type { Inference } from "./inference.ts";
import { isSource } from "./lead.ts";
import type { SortedReadings } from "./sort-readings.ts";
import { CAUTIONS, HOLDS, itemWords, listWords } from "./survey-words.ts";

/** What stays open after all readings, as sentences. */
export function notProvedOf(
  box: BoxAtHand,
  sorted: SortedReadings,
  inference: Inference,
  cables: readonly SurveyedCable[],
): readonly string[] {
  if (inference.isContradicted) return [];
  const said: string[] = [];
  for (const { name, may, role } of cables) {
    if (role !== undefined) continue;
    const shown = may.slice(0, MOST_ROLES).map((one) => one.role.words);
    const more = may.length > shown.length ? `, or ${may.length - shown.length} more` : "";
    said.push(`${name}: ${shown.join(", or ")}${more}.`);
  }
  for (const { role } of cables)
    if (role !== undefined && role.items.length > 1)
      said.push(
        `${itemWords(role.items)} hang on one cable; which of them comes first is proved only by opening a box between them.`,
      );
  const reads = sorted.atCable.flat();
  if (
    reads.some(
      (read) => read.kind === "figure" && read.probe.kind === "ohms" && read.value === Number.POSITIVE_INFINITY,
    )
  )
    said.push("An open reading proves nothing: an LED lamp, a switch that is off and nothing plugged in read alike.");
  const weak = weaklyRead(box, sorted);
  if (weak.length > 0)
    said.push(
      `${listWords(weak)}: read by a high-impedance meter only, which never settles. Read again by low-impedance meter.`,
    );
  const sources = cables.filter((_, cable) => {
    const left = leadsLeft(inference, cable);
    return left.length > 0 && left.every((lead) => isSource(lead) && lead.off !== true);
  });
  if (sources.length > 1)
    said.push(
      twoLive(
        sources.map(({ name }) => name),
        sorted,
      ),
    );
  const read = reads.filter((one) => one.kind === "figure" && one.probe.kind === "volts" && !one.weak);
  if (
    sources.length === 0 &&
    read.length > 0 &&
    cables.every((_, cable) => !leadsLeft(inference, cable).every(isSource))
  )
    said.push("No cable is live yet: the breaker may be off, or the supply broken upstream.");
  return said;
}

const MOST_ROLES = 4;

function weaklyRead(box: BoxAtHand, { atCable }: SortedReadings): readonly string[] {
  return box.cables.flatMap(({ name }, place) => {
    const volts = (atCable[place] ?? []).filter((read) => read.kind === "figure" && read.probe.kind === "volts");
    return volts.length > 0 && volts.every((read) => read.kind === "figure" && read.weak) ? [name] : [];
  });
}

function twoLive(names: readonly string[], { breakers }: SortedReadings): string {
  const killed = new Set(breakers.flatMap(({ breaker, wentDead }) => (wentDead ? [breaker] : [])));
  if (killed.size === 1 && breakers.filter(({ wentDead }) => wentDead).length >= names.length)
    return `${listWords(names)} are live and one breaker kills them: a loop, or two branches of a supply that is split upstream. Open the box upstream to tell.`;
  return `${listWords(names)} are live: two circuits, a loop, or two branches of one supply. Switch off one breaker at a time before anything is joined.`;
}

/** Points at which work stops before and during the next test. */
export const holdPointsOf = (next: SurveyProposal | undefined): readonly SurveyCaution[] => [
  HOLDS.dead,
  HOLDS.current,
  ...(next !== undefined && next.powerCycles > 0 ? [HOLDS.deadAgain] : []),
];

export function cautionsOf({ cables }: BoxAtHand, { taken, atCable }: SortedReadings): readonly SurveyCaution[] {
  const weak = taken.some(({ instrument }) => instrument === "meter" || instrument === "noncontact");
  const flows = atCable.flat().some((read) => read.kind === "current" && read.flows);
  return [
    CAUTIONS.off,
    CAUTIONS.circuits,
    CAUTIONS.white,
    ...(flows || cables.some(({ isThreeWire }) => isThreeWire) ? [CAUTIONS.neutral] : []),
    CAUTIONS.open,
    CAUTIONS.join,
    ...(weak ? [CAUTIONS.proof] : []),
    CAUTIONS.condition,
  ];
}

/** Words for the tag of a cable at the box. */
export function tagOf(name: string, role: SurveyRole | undefined): string {
  if (role === undefined) return `${name} not known`;
  const { kind, items } = role;
  if (kind === "supply" || kind === "multiwire-supply" || kind === "switched-supply")
    return role.reversed === true ? `${name} LINE, white is hot` : `${name} LINE`;
  if (items.length > 0) return `${name} to ${items.map((item) => item.name).join(", ")}`;
  return `${name} ${role.words}`;
}

/** Where a settled role is not what the drawing shows. */
export const mismatchesOf = (
  box: BoxAtHand,
  cables: readonly SurveyedCable[],
): readonly { readonly cable: SurveyedCable["id"]; readonly words: string }[] =>
  cables.flatMap(({ id, name, role }, place) => {
    const drawnTo = box.cables[place]?.drawnTo;
    if (role === undefined || drawnTo === undefined) return [];
    const items = drawnTo === "panel" ? [] : (box.groups[drawnTo] ?? []);
    const measured = new Set(role.items.map((item) => item.id));
    const isSame =
      drawnTo === "panel"
        ? role.kind.endsWith("supply")
        : items.length === measured.size && items.every((item) => measured.has(item.id));
    if (isSame) return [];
    const drawn = drawnTo === "panel" ? "from a panel" : `to ${itemWords(items)}`;
    const measuredWords = role.kind.endsWith("supply")
      ? `is the ${role.words}`
      : role.kind === "feeds"
        ? role.words
        : `is this: ${role.words}`;
    return [{ cable: id, words: `${name} is drawn ${drawn}; measured, it ${measuredWords}.` }];
  });
