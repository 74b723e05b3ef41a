import type { CircuitMap } from "../../answers/survey.ts";
import { findDeviceType } from "../../catalog/device-types.ts";
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
  const nameOf = (id: DeviceId): string => breakers.find((one) => one.id === id)?.name ?? "a breaker that is gone";
  const named = (ids: readonly DeviceId[]) => ids.map((id) => ({ id: id as string, name: nameOf(id) }));
  const seen = new Map(observations.map((one) => [one.breaker, one]));
  const drawn = drawnBreakers(asFound);
  const outlets = inOrder(asFound.enclosures).flatMap(({ devices }) => inOrder<Device>(devices).flatMap(outletsOf));
  const rows = outlets.map(({ key, name }) => {
    const measured = [...seen.values()].flatMap(({ breaker, dead }) => (dead.includes(key) ? [breaker] : []));
    const inDrawing = drawn.get(key) ?? [];
    // Nothing is told of a breaker that nobody has switched off yet.
    const expected = inDrawing.filter((id) => seen.has(id));
    const differs = measured.some((id) => !inDrawing.includes(id)) || expected.some((id) => !measured.includes(id));
    return { outlet: key as string, name, breakers: named(measured), drawn: named(inDrawing), differs };
  });
  const nameOfOutlet = (key: OutletKey): string =>
    rows.find(({ outlet }) => outlet === key)?.name ?? "an outlet that is gone";
  return {
    outlets: rows,
    remarks: [
      ...rows.flatMap((row) => (row.differs ? [mismatch(row)] : [])),
      ...rows.flatMap(({ name, breakers: on }) =>
        on.length > 1
          ? [
              `${name} goes dead with ${listWords(on.map((one) => one.name))}: it has two circuits, or one breaker feeds through the other.`,
            ]
          : [],
      ),
      ...[...seen.values()].flatMap(({ breaker, stillLive = [] }) =>
        stillLive.length > 0
          ? [
              `With ${nameOf(breaker)} off, ${listWords(stillLive.map(nameOfOutlet))} stays live beside what went dead: a second circuit in the box, or half a receptacle. Prove every wire dead there.`,
            ]
          : [],
      ),
      ...halves(rows),
    ],
    directory: directoryOf(project, [...seen.values()], breakers),
    notObserved: breakers.flatMap(({ id, name }) => (seen.has(id) ? [] : [{ id: id as string, name }])),
  };
}

type Row = CircuitMap["outlets"][number];

function mismatch({ name, breakers, drawn }: Row): string {
  const shown = drawn.length === 0 ? "on no breaker" : `on ${listWords(drawn.map((one) => one.name))}`;
  const found =
    breakers.length === 0 ? "it stayed live" : `it went dead with ${listWords(breakers.map((one) => one.name))}`;
  return `${name} is drawn ${shown}; ${found}.`;
}

/** Halves of one receptacle on different breakers. */
function halves(rows: readonly Row[]): readonly string[] {
  const found: string[] = [];
  for (const upper of rows) {
    if (!upper.outlet.endsWith("/upper")) continue;
    const device = upper.outlet.slice(0, -"/upper".length);
    const lower = rows.find(({ outlet }) => outlet === `${device}/lower`);
    if (lower === undefined || upper.breakers.length === 0 || lower.breakers.length === 0) continue;
    const [one, other] = [upper, lower].map(({ breakers }) => breakers.map(({ id }) => id).join());
    if (one !== other)
      found.push(`${upper.name} and ${lower.name} are on different breakers: both must be off before it is touched.`);
  }
  return found;
}

function directoryOf(
  project: Project,
  seen: readonly BreakerOff[],
  breakers: readonly Device[],
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
    return words === "" || words === was ? [] : [{ breaker: breaker as string, name: found.name, was, words }];
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
