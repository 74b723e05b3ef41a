import type { CircuitMap } from "../../answers/survey.ts";
import { findDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { DeviceId, OutletKey } from "../../model/ids.ts";
import type { Installation, Project, Reading } from "../../model/project.ts";
import type { SurveyTold } from "../../model/survey.ts";
import { inOrder } from "../../queries/in-order.ts";
import { outletsOf } from "../../queries/outlets-of.ts";
import { directoryLine } from "../../rules/directory-words.ts";
import type { OutletStanding } from "../../solver/section.ts";
import { allSections } from "../../solver/sections.ts";
import { listWords } from "./survey-words.ts";

const wording = catalogue({
  and: " and ",
  beside: (breaker: Part, outlets: Part, count: Part) =>
    `With ${breaker} off, ${outlets} ${count === 1 ? "stays" : "stay"} live beside what went dead: a second circuit in the box, or half a receptacle. Prove every wire dead there.`,
  breakerGone: "a breaker that is gone",
  drawnOn: (outlet: Part, breakers: Part, found: Part) => `${outlet} is drawn on ${breakers}; it ${found}.`,
  drawnOnNone: (outlet: Part, found: Part) => `${outlet} is drawn on no breaker; it ${found}.`,
  halves: (upper: Part, lower: Part) =>
    `${upper} and ${lower} are on different breakers: both must be off before it is touched.`,
  more: (names: Part, count: Part) => `${names} and ${count} more`,
  notLookedAt: (breaker: Part, outlets: Part, count: Part) =>
    `With ${breaker} off nobody looked at ${outlets}: ${count === 1 ? "it" : "they"} may hang on it.`,
  outletGone: "an outlet that is gone",
  stayedLive: (breakers: Part) => `stayed live with ${breakers} off`,
  two: (outlet: Part, breakers: Part) =>
    `${outlet} goes dead with ${breakers}: it has two circuits, or one breaker feeds through the other.`,
  wentDead: (breakers: Part) => `went dead with ${breakers}`,
});

/** What was seen with one breaker off. */
export type BreakerOff = Omit<Extract<SurveyTold, { readonly kind: "breaker-off" }>, "kind">;

/** Observations that the document keeps, in their order. */
export const keptBreakersOff = ({ readings }: Pick<Project, "readings">): readonly BreakerOff[] =>
  inOrder<Reading>(readings).flatMap(({ survey, computed }) =>
    survey?.test.kind === "breaker-off" && computed !== true ? [survey.test] : [],
  );

/**
 * Which outlet hangs on which breaker as found, by what went dead with one breaker off at a time; where that is not what
 * the drawing shows it is said, and a directory line proposed. The last observation of a breaker counts.
 */
export function mapCircuits(project: Project, observations: readonly BreakerOff[]): CircuitMap {
  const { asFound } = project;
  const breakers = breakersIn(asFound);
  const nameOf = (id: DeviceId): string => breakers.find((one) => one.id === id)?.name ?? wording.breakerGone;
  const named = (ids: readonly DeviceId[]) => ids.map((id) => ({ id: id as string, name: nameOf(id) }));
  const seen = new Map(observations.map((one) => [one.breaker, one]));
  const drawn = drawnBreakers(asFound);
  const outlets = inOrder(asFound.enclosures).flatMap(({ devices }) => inOrder<Device>(devices).flatMap(outletsOf));
  const rows = outlets.map(({ key, name }): Row => {
    const those = (is: (one: BreakerOff) => boolean): readonly DeviceId[] =>
      [...seen.values()].flatMap((one) => (is(one) ? [one.breaker] : []));
    const dead = those((one) => one.dead.includes(key));
    const live = those((one) => one.stillLive?.includes(key) === true && !one.dead.includes(key));
    const notLookedAt = those((one) => !one.dead.includes(key) && one.stillLive?.includes(key) !== true);
    const inDrawing = drawn.get(key) ?? [];
    // What nobody looked at is no evidence, neither of dead nor of live.
    const differs = dead.some((id) => !inDrawing.includes(id)) || live.some((id) => inDrawing.includes(id));
    return {
      outlet: key as string,
      name,
      breakers: named(dead),
      live: named(live),
      notLookedAt: named(notLookedAt),
      drawn: named(inDrawing),
      differs,
    };
  });
  const homes = new Map(
    inOrder(asFound.enclosures).flatMap(({ id, devices }) =>
      inOrder<Device>(devices).flatMap((device) => outletsOf(device).map(({ key }) => [key, id] as const)),
    ),
  );
  const nameOfOutlet = (key: OutletKey): string =>
    rows.find(({ outlet }) => outlet === key)?.name ?? wording.outletGone;
  return {
    outlets: rows,
    remarks: [
      ...rows.flatMap((row) => (row.differs ? [mismatch(row)] : [])),
      ...rows.flatMap(({ name, breakers: on }) =>
        on.length > 1 ? [wording.two(name, listWords(on.map((one) => one.name)))] : [],
      ),
      ...[...seen.values()].flatMap(({ breaker, dead, stillLive = [] }) => {
        const opened = new Set(dead.map((key) => homes.get(key)));
        const beside = stillLive.filter((key) => homes.has(key) && opened.has(homes.get(key)));
        return beside.length > 0
          ? [wording.beside(nameOf(breaker), listWords(beside.map(nameOfOutlet)), beside.length)]
          : [];
      }),
      ...[...seen.values()].flatMap(({ breaker }) => {
        const open = rows.filter(({ notLookedAt }) => notLookedAt.some(({ id }) => id === breaker));
        return open.length > 0
          ? [wording.notLookedAt(nameOf(breaker), someOf(open.map(({ name }) => name)), open.length)]
          : [];
      }),
      ...halves(rows),
    ],
    directory: directoryOf(project, [...seen.values()], breakers, rows),
    notObserved: breakers.flatMap(({ id, name }) => (seen.has(id) ? [] : [{ id: id as string, name }])),
  };
}

type Row = CircuitMap["outlets"][number];

const names = (list: readonly { readonly name: string }[]): string => listWords(list.map(({ name }) => name));

function mismatch({ name, breakers, live, drawn }: Row): string {
  const stayed = live.filter(({ id }) => drawn.some((one) => one.id === id));
  const found = [
    ...(breakers.length > 0 ? [wording.wentDead(names(breakers))] : []),
    ...(stayed.length > 0 ? [wording.stayedLive(names(stayed))] : []),
  ];
  const words = found.join(wording.and);
  return drawn.length === 0 ? wording.drawnOnNone(name, words) : wording.drawnOn(name, names(drawn), words);
}

/** More are counted, not named. */
const MOST_NAMED = 6;
const someOf = (all: readonly string[]): string =>
  all.length <= MOST_NAMED
    ? listWords(all)
    : wording.more(all.slice(0, MOST_NAMED - 1).join(", "), all.length - MOST_NAMED + 1);

/** Halves of one receptacle on different breakers. */
function halves(rows: readonly Row[]): readonly string[] {
  const found: string[] = [];
  for (const upper of rows) {
    if (!upper.outlet.endsWith("/upper")) continue;
    const device = upper.outlet.slice(0, -"/upper".length);
    const lower = rows.find(({ outlet }) => outlet === `${device}/lower`);
    if (lower === undefined || upper.breakers.length === 0 || lower.breakers.length === 0) continue;
    const [one, other] = [upper, lower].map(({ breakers }) => breakers.map(({ id }) => id).join());
    if (one !== other) found.push(wording.halves(upper.name, lower.name));
  }
  return found;
}

function directoryOf(
  project: Project,
  seen: readonly BreakerOff[],
  breakers: readonly Device[],
  rows: readonly Row[],
): CircuitMap["directory"] {
  const { asFound } = project;
  const standings = new Map<OutletKey, OutletStanding>();
  for (const section of allSections(asFound))
    for (const standing of section.outlets()) standings.set(standing.outlet.key, standing);
  return seen.flatMap(({ breaker, dead }) => {
    const found = breakers.find(({ id }) => id === breaker);
    if (found === undefined) return [];
    const fed = dead.flatMap((key) => standings.get(key) ?? []);
    const words = fed.length === 0 ? "" : directoryLine(project, asFound, fed);
    const was = asFound.directory[breaker] ?? "";
    const notLookedAt = rows.filter((row) => row.notLookedAt.some(({ id }) => id === breaker)).length;
    return words === "" || words === was
      ? []
      : [{ breaker: breaker as string, name: found.name, was, words, notLookedAt }];
  });
}

/** Breakers and fuses of all panels, in their order. */
const breakersIn = ({ enclosures }: Installation): readonly Device[] =>
  inOrder(enclosures).flatMap(({ kind, devices }) =>
    kind === "panel"
      ? inOrder<Device>(devices).filter(({ type }) => {
          const family = findDeviceType(type)?.family;
          return family === "breaker" || family === "fuse";
        })
      : [],
  );

/** Breakers that feed an outlet in the drawing. */
function drawnBreakers(installation: Installation): ReadonlyMap<OutletKey, readonly DeviceId[]> {
  const found = new Map<OutletKey, DeviceId[]>();
  for (const section of allSections(installation))
    for (const { device } of section.breakers())
      for (const outlet of section.circuitOf(device.id).outlets)
        found.set(outlet, [...(found.get(outlet) ?? []), device.id]);
  return found;
}
