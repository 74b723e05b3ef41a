import type { Fix } from "../answers/finding.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import { UnionFind } from "../lib/union-find.ts";
import type { Device } from "../model/device.ts";
import type { EvidenceMark } from "../model/evidence.ts";
import type { StateName } from "../model/project.ts";
import { type NeutralNet, type NeutralReturn, neutralNetsOf } from "../solver/neutral-shares.ts";
import type { Pole } from "../solver/poles.ts";
import type { Section } from "../solver/section.ts";
import { fixBy, fixTogether } from "./fix-parts.ts";
import { listed, marksOn } from "./rule-parts.ts";

const wording = catalogue({
  tie: (breakers: Part) => `Tie the handles of ${breakers}`,
  tieIf: (breakers: Part) => `Tie the handles of ${breakers}, if they stand one above the other`,
});

/** Poles that share the neutral of one cable, or of single conductors that run together. */
export interface Multiwire {
  readonly net: NeutralNet;
  /** The shared neutral where it comes back to the panel. */
  readonly back: NeutralReturn;
  /** At least two, each feeding something that returns by it. */
  readonly poles: readonly Pole[];
}

/** Multiwire circuits of a section, as wired. Where poles are joined, or a hot is on the neutral, nothing is said. */
export const multiwiresOf = (section: Section): readonly Multiwire[] =>
  neutralNetsOf(section)
    .filter(({ spoilt }) => !spoilt)
    .flatMap((net) =>
      net.returns
        .map((back) => ({ net, back, poles: back.partners.filter((pole) => net.poles.includes(pole)) }))
        .filter(({ poles }) => poles.length > 1),
    );

/** A leg that the catalogue gave, and nobody has looked at, is none. */
export const isLegKnown = ({ breaker }: Pole): boolean => breaker.evidence?.legs !== "assumed";

/** Whether two poles are known to stand on the same leg, or on different ones; undefined where neither is known. */
export function areOnSameLeg(one: Pole, other: Pole): boolean | undefined {
  if (one.breaker.id === other.breaker.id || one.leg !== other.leg) return one.leg === other.leg;
  return isLegKnown(one) && isLegKnown(other) ? true : undefined;
}

/** Breakers that open together: one device, or handles that are tied to each other, one after the other. */
export function groupsByHandle(poles: readonly Pole[]): readonly (readonly Device[])[] {
  const breakers = breakersOf(poles);
  const sets = new UnionFind();
  breakers.forEach(({ tiedTo }, index) => {
    const other = breakers.findIndex(({ id }) => id === tiedTo);
    if (other >= 0) sets.join(index, other);
  });
  const groups = new Map<number, Device[]>();
  breakers.forEach((breaker, index) => {
    const root = sets.find(index);
    groups.set(root, [...(groups.get(root) ?? []), breaker]);
  });
  return [...groups.values()];
}

/** Handle ties in a panel go between breakers that stand one above the other, two spaces apart. Common practice, from memory. */
const SPACES_APART = 2;

/**
 * Ties the handles of breakers that do not open together yet. Only plain one-pole breakers of one panel; `certain` where
 * their spaces are recorded and lie one above the other.
 */
export function tieOf(
  poles: readonly Pole[],
  state: StateName,
): { readonly fix: Fix; readonly certain: boolean } | undefined {
  const firsts = groupsByHandle(poles).flatMap(([first]) => first ?? []);
  const breakers = [...new Set(poles.map(({ breaker }) => breaker))];
  const isPlain = ({ type, listedForPanel }: Device): boolean => {
    const { family, sensing, paths } = getDeviceType(type);
    return family === "breaker" && sensing === undefined && paths.length === 1 && listedForPanel !== false;
  };
  const [first, ...others] = firsts;
  if (first === undefined || others.length === 0 || !breakers.every(isPlain)) return undefined;
  if (new Set(poles.map(({ panel }) => panel.id)).size > 1) return undefined;
  const slots = breakers.flatMap(({ slot }) => slot ?? []).sort((a, b) => a - b);
  const known = slots.length === breakers.length;
  const adjacent = slots.every((slot, index) => index === 0 || slot - (slots[index - 1] ?? 0) === SPACES_APART);
  if (known && !adjacent) return undefined;
  const calls = others.map(({ id }) => ({
    command: "set-property",
    args: { state, target: { kind: "device", id }, field: "tiedTo", value: first.id },
  }));
  const names = listed(firsts.map(({ name }) => name));
  const title = (known ? wording.tie : wording.tieIf)(names);
  const [only] = calls;
  const fix =
    calls.length === 1 && only !== undefined ? fixBy(title, only.command, only.args) : fixTogether(title, calls);
  return { fix, certain: known };
}

/** A fix where the tie is certain to fit, an offer where a person has to look; both in proposed only. */
export function tieIn(
  poles: readonly Pole[],
  state: StateName,
): { readonly fix?: Fix; readonly offers?: readonly Fix[] } {
  const tie = state === "proposed" ? tieOf(poles, state) : undefined;
  if (tie === undefined) return {};
  return tie.certain ? { fix: tie.fix } : { offers: [tie.fix] };
}

/** Who says what is on a pole. */
export const marksOfPoles = (poles: readonly Pole[]): readonly EvidenceMark[] =>
  poles.flatMap(({ breaker, panel }) => [
    ...marksOn(breaker, "type", "tiedTo"),
    ...Object.values(panel.places).flatMap((place) =>
      place.at.kind === "terminal" && place.at.device === breaker.id ? marksOn(place, "at") : [],
    ),
  ]);

export const breakersOf = (poles: readonly Pole[]): readonly Device[] => [
  ...new Set(poles.map(({ breaker }) => breaker)),
];
