import type { ScopeBreaker } from "../../answers/scope.ts";
import { findDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { Enclosure, Panel } from "../../model/enclosure.ts";
import { cableEnd, type DeviceId, type EnclosureId, type EndKey, otherSide, parseEnd } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { isBreakerFound, ratingRead } from "../../queries/breaker-read.ts";
import type { Circuit, Section } from "../../solver/section.ts";
import { feederCables } from "../../solver/section-walk.ts";
import { sectionOf } from "../../solver/sections.ts";

const wording = catalogue({
  notFound: (name: Part) => `${name} (not identified)`,
});

const nameToFind = (breaker: Device): string =>
  isBreakerFound(breaker) ? breaker.name : wording.notFound(breaker.name);

/** A rating that was assumed leads to no breaker that nobody has found. */
const ratingToOpen = (breaker: Device): Device["breakerRatingA"] =>
  isBreakerFound(breaker) ? breaker.breakerRatingA : ratingRead(breaker);

/** A circuit as it comes to one box. */
interface Coming {
  readonly breaker: Device;
  readonly panel: Enclosure;
  readonly circuit: Circuit;
}

/**
 * Breakers, fuses and disconnects whose circuits come to a box or pass through it, hot or neutral, in either account: all
 * of them are opened before a hand goes in. With each stand the poles that share its neutral and those tied to it, which open together.
 * In a panel they are those of the cables that are touched, and those of another panel that feed it. Sorted by panel and space.
 */
export function breakersAt(
  asFound: Installation,
  proposed: Installation,
  id: EnclosureId,
  movedInPanel: ReadonlySet<EndKey>,
): readonly ScopeBreaker[] {
  const found = new Map<DeviceId, ScopeBreaker>();
  for (const installation of [asFound, proposed])
    for (const one of breakersIn(installation, id, movedInPanel))
      if (!found.has(one.device)) found.set(one.device, one);
  return [...found.values()].sort(
    (p, q) => (p.panel.name < q.panel.name ? -1 : p.panel.name > q.panel.name ? 1 : 0) || byName(p.name, q.name),
  );
}

/** "Q2" before "Q14". */
export const byName = (one: string, other: string): number => one.localeCompare(other, "en", { numeric: true });

function breakersIn(
  installation: Installation,
  id: EnclosureId,
  movedInPanel: ReadonlySet<EndKey>,
): readonly ScopeBreaker[] {
  const enclosure = installation.enclosures[id];
  if (enclosure === undefined) return [];
  const passing = passingThrough(installation, enclosure);
  const panel = enclosure.kind === "panel" ? enclosure : undefined;
  const touched = panel === undefined ? undefined : touchedIn(installation, panel, movedInPanel);
  const own = new Set([...(touched?.ends ?? Object.keys(enclosure.places)), ...passing.ends]);
  const from = [...(touched?.from ?? [id]), ...passing.from];
  const sections = new Set(from.flatMap((each) => sectionOf(installation, each) ?? []));
  const told = [...sections].flatMap((section) => {
    const all = circuitsOf(section);
    return all.filter(({ circuit }) => comesTo(circuit, own)).map((one) => tell(one, all));
  });
  if (panel === undefined) return [...told, ...passing.breakers];
  return [...told, ...passing.breakers, ...breakersUnder(panel, movedInPanel), ...feeding(installation, panel)];
}

/** Of the cables whose ends are touched in a panel: all their ends there, a white that moves names no breaker by itself. */
function touchedIn(
  installation: Installation,
  panel: Panel,
  moved: ReadonlySet<EndKey>,
): Pick<Passing, "ends" | "from"> {
  const ends: EndKey[] = [];
  const from = new Set<EnclosureId>();
  for (const key of moved) {
    const end = parseEnd(key);
    const cable = end?.of === "cable" ? installation.cables[end.cable] : undefined;
    if (end?.of !== "cable" || cable === undefined) continue;
    const here = cable.sides[end.side];
    if (!("enclosure" in here) || here.enclosure !== panel.id) continue;
    for (const one in cable.conductors) ends.push(cableEnd(cable.id, one as typeof end.conductor, end.side));
    const far = cable.sides[otherSide(end.side)];
    if ("enclosure" in far) from.add(far.enclosure);
  }
  return { ends, from: [...from] };
}

/** The breakers of other panels that feed this one, as far as a cable leads straight from there. */
function feeding(installation: Installation, panel: Panel): readonly ScopeBreaker[] {
  if (panel.supply !== "feeder") return [];
  return feederCables(installation, panel).flatMap(({ id, conductors, sides }) =>
    (["a", "b"] as const).flatMap((side) => {
      const at = sides[side];
      const home = "enclosure" in at && at.enclosure !== panel.id ? installation.enclosures[at.enclosure] : undefined;
      if (home?.kind !== "panel") return [];
      const ends = Object.keys(conductors).map((key) => cableEnd(id, key as keyof typeof conductors, side));
      return breakersUnder(home, new Set(ends));
    }),
  );
}

interface Passing {
  /** Of conductors that pass through without an end in the box: their ends at both sides of the cable. */
  readonly ends: readonly EndKey[];
  /** Where their cables end: another section than that of the box may feed them. */
  readonly from: readonly EnclosureId[];
  /** On which they end in a panel: of a feeder no section tells. */
  readonly breakers: readonly ScopeBreaker[];
}

/** What only passes through a box is live in it all the same: a loop left whole is nicked as easily as an end. */
function passingThrough(installation: Installation, { passThroughs }: Enclosure): Passing {
  const ends: EndKey[] = [];
  const from = new Set<EnclosureId>();
  const breakers: ScopeBreaker[] = [];
  for (const { cable: id, conductors } of Object.values(passThroughs)) {
    const cable = installation.cables[id];
    if (cable === undefined) continue;
    for (const side of ["a", "b"] as const) {
      const own = conductors.map((key) => cableEnd(id, key, side));
      ends.push(...own);
      const at = cable.sides[side];
      if (!("enclosure" in at)) continue;
      from.add(at.enclosure);
      const enclosure = installation.enclosures[at.enclosure];
      if (enclosure?.kind === "panel") breakers.push(...breakersUnder(enclosure, new Set(own)));
    }
  }
  return { ends, from: [...from], breakers };
}

const comesTo = ({ hotEnds, neutralEnds }: Circuit, own: ReadonlySet<string>): boolean =>
  hotEnds.some((end) => own.has(end)) || neutralEnds.some((end) => own.has(end));

const kept = new WeakMap<Section, readonly Coming[]>();

function circuitsOf(section: Section): readonly Coming[] {
  let all = kept.get(section);
  if (all === undefined) {
    all = section
      .breakers()
      .map(({ device, panel }) => ({ breaker: device, panel, circuit: section.circuitOf(device.id) }));
    kept.set(section, all);
  }
  return all;
}

function tell({ breaker, panel, circuit }: Coming, all: readonly Coming[]): ScopeBreaker {
  const neutrals = new Set(circuit.neutralEnds);
  const sharing = all.filter(
    (other) => other.breaker.id !== breaker.id && other.circuit.neutralEnds.some((end) => neutrals.has(end)),
  );
  const tied = all.filter(
    (other) =>
      other.breaker.id !== breaker.id && (other.breaker.tiedTo === breaker.id || breaker.tiedTo === other.breaker.id),
  );
  const withPoles = [...new Map([...sharing, ...tied].map((one) => [one.breaker.id, one.breaker])).values()];
  return asBreaker(breaker, panel, withPoles, sharing.length > 0 || (breaker.legs?.length ?? 1) > 1);
}

function asBreaker(breaker: Device, panel: Enclosure, withPoles: readonly Device[], multiwire: boolean): ScopeBreaker {
  const ratingA = ratingToOpen(breaker);
  return {
    device: breaker.id,
    name: nameToFind(breaker),
    panel: { id: panel.id, name: panel.name },
    ...(ratingA !== undefined && { ratingA }),
    ...(findDeviceType(breaker.type)?.family === "fuse" && { isFuse: true }),
    ...(!isBreakerFound(breaker) && { notFound: true }),
    withPoles: withPoles
      .map((pole) => ({ device: pole.id, name: nameToFind(pole) }))
      .sort((p, q) => byName(p.name, q.name)),
    multiwire,
  };
}

/** In a panel: those on which one of these ends lies. Its supply side stays live whatever is opened in it. */
function breakersUnder(panel: Enclosure, ends: ReadonlySet<EndKey>): readonly ScopeBreaker[] {
  const found = new Set<DeviceId>();
  for (const end of ends) {
    const at = panel.places[end]?.at;
    if (at?.kind === "terminal") found.add(at.device);
  }
  return [...found].flatMap((id) => {
    const device = panel.devices[id];
    return device?.breakerRatingA === undefined ? [] : [asBreaker(device, panel, [], (device.legs?.length ?? 1) > 1)];
  });
}
