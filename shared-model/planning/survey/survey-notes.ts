import type { SurveyCaution, SurveyedCable, SurveyProposal, SurveyRole } from "../../answers/survey.ts";
import type { BoxAtHand } from "./box-at-hand.ts";
import { leadsLeft } from "./harm.ts";
import type { Inference } from "./inference.ts";
import { isSource } from "./lead.ts";
import type { SortedReadings } from "./sort-readings.ts";
import { CLOSED_BELOW_OHM } from "./survey-values.ts";
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
  const shorted = box.cables.flatMap(({ name }, place) => {
    const ohms = ohmsAcross(sorted, place);
    return ohms.length > 0 && ohms.every((ohm) => ohm <= CLOSED_BELOW_OHM) ? [name] : [];
  });
  if (shorted.length > 0)
    said.push(
      `${listWords(shorted)}: about 0 ohms from hot to white each time. It may be a short and no loop: find it before it gets power.`,
    );
  const spare = cables.flatMap(({ name, role }, place) =>
    role?.kind === "supply" && role.off !== true && box.cables[place]?.isThreeWire === true ? [name] : [],
  );
  if (spare.length > 0)
    said.push(
      `${listWords(spare)}: one of its three wires reads dead. It may be a traveller: turn the switches elsewhere over and read it again.`,
    );
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

/** Ohms from the first hot to the white of a cable. */
const ohmsAcross = ({ atCable }: SortedReadings, place: number): readonly number[] =>
  (atCable[place] ?? []).flatMap((read) =>
    read.kind === "figure" && read.probe.kind === "ohms" && read.probe.from !== "ground" && read.probe.to !== "ground"
      ? [read.value]
      : [],
  );

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

/** Points at which work stops before and during the next test; before anything is parted where there is none. */
export function holdPointsOf(next: SurveyProposal | undefined): readonly SurveyCaution[] {
  const held = next?.steps.flatMap(({ hold }) => hold ?? []) ?? [HOLDS.dead.id, HOLDS.current.id];
  return Object.values(HOLDS)
    .filter(({ id }) => held.includes(id))
    .sort((p, q) => held.indexOf(p.id) - held.indexOf(q.id));
}

/** Standing orders: a neutral of another circuit may come in any cable, and every test begins with proving dead. */
export function cautionsOf({ taken }: SortedReadings, next: SurveyProposal | undefined): readonly SurveyCaution[] {
  const weak = taken.some(({ instrument }) => instrument === "meter" || instrument === "noncontact");
  const isRead = next?.exposure === "open-box-live";
  return [
    CAUTIONS.off,
    CAUTIONS.circuits,
    CAUTIONS.white,
    CAUTIONS.neutral,
    CAUTIONS.open,
    CAUTIONS.join,
    ...(weak || isRead ? [CAUTIONS.proof] : []),
    CAUTIONS.condition,
  ];
}

/** Words for the tag of a cable at the box. */
export function tagOf(name: string, role: SurveyRole | undefined): string {
  if (role === undefined) return `${name} not known`;
  const { kind, items } = role;
  if (role.travels === true) return `${name} LINE by travellers`;
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
