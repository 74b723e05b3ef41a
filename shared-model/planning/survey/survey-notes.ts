import type { SurveyCaution, SurveyedCable, SurveyProposal, SurveyRole } from "../../answers/survey.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { BoxAtHand } from "./box-at-hand.ts";
import { leadsLeft } from "./harm.ts";
import type { Inference } from "./inference.ts";
import { isSource } from "./lead.ts";
import type { SortedReadings } from "./sort-readings.ts";
import { CLOSED_BELOW_OHM } from "./survey-values.ts";
import { CAUTIONS, HOLDS, itemWords, listWords } from "./survey-words.ts";

const wording = catalogue({
  drawnFromPanel: (cable: Part, measured: Part) => `${cable} is drawn from a panel; measured, it ${measured}.`,
  drawnTo: (cable: Part, items: Part, measured: Part) => `${cable} is drawn to ${items}; measured, it ${measured}.`,
  isSupply: (role: Part) => `is the ${role}`,
  isThis: (role: Part) => `is this: ${role}`,
  liveOneBreaker: (cables: Part) =>
    `${cables} are live and one breaker kills them: a loop, or two branches of a supply that is split upstream. Open the box upstream to tell.`,
  liveTwo: (cables: Part) =>
    `${cables} are live: two circuits, a loop, or two branches of one supply. Switch off one breaker at a time before anything is joined.`,
  may: (cable: Part, roles: Part) => `${cable}: ${roles}.`,
  mayMore: (cable: Part, roles: Part, count: Part) => `${cable}: ${roles}, or ${count} more.`,
  noneLive: "No cable is live yet: the breaker may be off, or the supply broken upstream.",
  onOneCable: (items: Part) =>
    `${items} hang on one cable; which of them comes first is proved only by opening a box between them.`,
  openReading: "An open reading proves nothing: an LED lamp, a switch that is off and nothing plugged in read alike.",
  or: ", or ",
  shorted: (cables: Part) =>
    `${cables}: about 0 ohms from hot to white each time. It may be a short and no loop: find it before it gets power.`,
  spare: (cables: Part) =>
    `${cables}: one of its three wires reads dead. It may be a traveller: turn the switches elsewhere over and read it again.`,
  tagLine: (cable: Part) => `${cable} LINE`,
  tagLineReversed: (cable: Part) => `${cable} LINE, white is hot`,
  tagNotKnown: (cable: Part) => `${cable} not known`,
  tagRole: (cable: Part, role: Part) => `${cable} ${role}`,
  tagTo: (cable: Part, items: Part) => `${cable} to ${items}`,
  tagTravels: (cable: Part) => `${cable} LINE by travellers`,
  weak: (cables: Part) =>
    `${cables}: read by a high-impedance meter only, which never settles. Read again by low-impedance meter.`,
});

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
    const roles = shown.join(wording.or);
    const more = may.length - shown.length;
    said.push(more > 0 ? wording.mayMore(name, roles, more) : wording.may(name, roles));
  }
  for (const { role } of cables)
    if (role !== undefined && role.items.length > 1) said.push(wording.onOneCable(itemWords(role.items)));
  const reads = sorted.atCable.flat();
  if (
    reads.some(
      (read) => read.kind === "figure" && read.probe.kind === "ohms" && read.value === Number.POSITIVE_INFINITY,
    )
  )
    said.push(wording.openReading);
  const shorted = box.cables.flatMap(({ name }, place) => {
    const ohms = ohmsAcross(sorted, place);
    return ohms.length > 0 && ohms.every((ohm) => ohm <= CLOSED_BELOW_OHM) ? [name] : [];
  });
  if (shorted.length > 0) said.push(wording.shorted(listWords(shorted)));
  const spare = cables.flatMap(({ name, role }, place) =>
    role?.kind === "supply" && role.off !== true && box.cables[place]?.isThreeWire === true ? [name] : [],
  );
  if (spare.length > 0) said.push(wording.spare(listWords(spare)));
  const weak = weaklyRead(box, sorted);
  if (weak.length > 0) said.push(wording.weak(listWords(weak)));
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
    said.push(wording.noneLive);
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
    return wording.liveOneBreaker(listWords(names));
  return wording.liveTwo(listWords(names));
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
  if (role === undefined) return wording.tagNotKnown(name);
  const { kind, items } = role;
  if (role.travels === true) return wording.tagTravels(name);
  if (kind === "supply" || kind === "multiwire-supply" || kind === "switched-supply")
    return role.reversed === true ? wording.tagLineReversed(name) : wording.tagLine(name);
  if (items.length > 0) return wording.tagTo(name, items.map((item) => item.name).join(", "));
  return wording.tagRole(name, role.words);
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
    const measuredWords = role.kind.endsWith("supply")
      ? wording.isSupply(role.words)
      : role.kind === "feeds"
        ? role.words
        : wording.isThis(role.words);
    const words =
      drawnTo === "panel"
        ? wording.drawnFromPanel(name, measuredWords)
        : wording.drawnTo(name, itemWords(items), measuredWords);
    return [{ cable: id, words }];
  });
