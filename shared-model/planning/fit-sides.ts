import { UnionFind } from "../lib/union-find.ts";
import type { Device } from "../model/device.ts";
import type { Box } from "../model/enclosure.ts";
import { type CableId, type DeviceId, type EndKey, parseEnd } from "../model/ids.ts";
import type { Project } from "../model/project.ts";
import { landedAt } from "../queries/landings.ts";
import { terminalsOf } from "../queries/terminals-of.ts";
import type { EditionData } from "../rules/editions/edition-data.ts";
import { getEdition } from "../rules/editions/editions.ts";
import { requirementOf } from "../rules/required-protection.ts";
import { PRIORITY_WORDS, prioritiesAt } from "../rules/shared-trip.ts";
import { sectionProof } from "../solver/circuit/section-proof.ts";
import type { OutletStanding, PathStep, Section } from "../solver/section.ts";
import { type BoxNet, pointKey } from "./box-nets.ts";
import type { GroupRole } from "./joint-group.ts";
import { SIDE_WORDS } from "./side-words.ts";

/** What hangs on the joint of a receptacle beside its supply, hot and neutral together, and why it goes to which side. */
export interface FitSide {
  readonly ends: readonly EndKey[];
  /** Terminals of other devices of the box, as "device.TERMINAL". */
  readonly terminals: readonly string[];
  readonly cables: readonly CableId[];
  readonly outlets: readonly OutletStanding[];
  readonly side: "LINE" | "LOAD";
  readonly why: string;
  /** Outlets that need protection by the code or a wish, and are left to a device of their own. */
  readonly left: readonly { readonly standing: OutletStanding; readonly by: string }[];
  /** Those of its outlets that need protection by the code or a wish, and have none now. */
  readonly wanting: FitSide["left"];
  /** The supply, and what could not hang on LOAD: nobody can decide otherwise. */
  readonly fixed: boolean;
  readonly isSupply: boolean;
}

/** What a person decided beforehand, by cable. */
export type Decisions = ReadonlyMap<CableId, boolean>;

/** Hot and neutral net of a receptacle, over the paths inside it. */
export interface ReceptacleNets {
  readonly hot: readonly BoxNet[];
  readonly neutral: readonly BoxNet[];
  readonly ground: readonly BoxNet[];
}

export function receptacleNets(box: Box, device: Device, nets: ReadonlyMap<string, BoxNet>): ReceptacleNets {
  const of = (role: GroupRole): readonly BoxNet[] => [
    ...new Set(
      terminalsOf(device)
        .filter(({ purpose }) => purpose === role)
        .flatMap(({ name }) =>
          landedAt(box, device.id, name).length === 0 ? [] : (nets.get(`t ${device.id}.${name}`) ?? []),
        ),
    ),
  ];
  return { hot: of("hot"), neutral: of("neutral"), ground: of("ground") };
}

interface Asking {
  readonly project: Project;
  readonly section: Section;
  readonly box: Box;
  readonly device: Device;
  readonly nets: ReceptacleNets;
  readonly supply: { readonly hot: EndKey; readonly neutral: EndKey };
  readonly decided: Decisions;
}

/**
 * Parts what hangs on a receptacle's joint into what must stay together: a hot and the neutral that its outlets return
 * by. Each part goes to LOAD where an outlet of it wants protection, unless what must not go off unnoticed would share
 * the trip, a person decided otherwise, or its hot and neutral cannot both go.
 */
export function fitSides(asking: Asking): readonly FitSide[] {
  const { section, nets, device, supply } = asking;
  const hotItems = itemsOf(nets.hot, device.id);
  const neutralItems = itemsOf(nets.neutral, device.id);
  const all = [...hotItems, ...neutralItems];
  const numberOf = new Map(all.map((item, index) => [item, index]));
  const together = new UnionFind();
  const outletsAt = new Map<string, OutletStanding[]>();
  const stuck = new Map<string, string>();
  pairCables(together, numberOf, hotItems, neutralItems);
  for (const standing of section.outlets()) {
    const { outlet } = standing;
    if (outlet.device.id === device.id) continue;
    const hot = itemOnWay(
      asking,
      section.wayFrom("ungrounded", { device: outlet.device.id, node: outlet.hot }),
      hotItems,
    );
    const neutral = itemOnWay(
      asking,
      section.wayFrom("grounded", { device: outlet.device.id, node: outlet.neutral }),
      neutralItems,
    );
    const item = hot ?? neutral;
    if (item === undefined) continue;
    if (hot !== undefined && neutral !== undefined)
      together.join(numberOf.get(hot) as number, numberOf.get(neutral) as number);
    else
      stuck.set(item, hot === undefined ? SIDE_WORDS.notFromHere(outlet.name) : SIDE_WORDS.notReturning(outlet.name));
    outletsAt.set(item, [...(outletsAt.get(item) ?? []), standing]);
  }
  const parts = new Map<number, string[]>();
  for (const item of all) {
    const root = together.find(numberOf.get(item) as number);
    parts.set(root, [...(parts.get(root) ?? []), item]);
  }
  const isSupply = (item: string): boolean => item === supply.hot || item === supply.neutral;
  return [...parts.values()].map((items) =>
    sideOf(
      asking,
      items,
      items.flatMap((item) => outletsAt.get(item) ?? []),
      items.some(isSupply),
      items.flatMap((item) => stuck.get(item) ?? [])[0],
    ),
  );
}

const itemsOf = (nets: readonly BoxNet[], device: DeviceId): readonly string[] =>
  nets.flatMap(({ ends, terminals }) => [
    ...ends,
    ...terminals.filter((one) => one.device !== device).map((one) => `${one.device}.${one.terminal}`),
  ]);

/** Hot and neutral of one cable go together, whatever hangs on it. */
function pairCables(
  together: UnionFind,
  numberOf: ReadonlyMap<string, number>,
  hots: readonly string[],
  neutrals: readonly string[],
): void {
  const cableOf = (item: string): CableId | undefined => {
    const parsed = parseEnd(item);
    return parsed?.of === "cable" ? parsed.cable : undefined;
  };
  for (const hot of hots)
    for (const neutral of neutrals)
      if (cableOf(hot) !== undefined && cableOf(hot) === cableOf(neutral))
        together.join(numberOf.get(hot) as number, numberOf.get(neutral) as number);
}

/** By which of some items a way leaves the joint. */
function itemOnWay(
  { box, supply }: Asking,
  way: readonly PathStep[] | undefined,
  items: readonly string[],
): string | undefined {
  const known = new Set(items);
  for (const step of way ?? []) {
    if (step.kind === "cable" && step.fromEnclosure === box.id && known.has(step.from)) {
      if (step.from !== supply.hot && step.from !== supply.neutral) return step.from;
    }
    if (step.kind === "device" && step.enclosure === box.id && known.has(`${step.device}.${step.from}`))
      return `${step.device}.${step.from}`;
  }
  const last = way?.at(-1);
  return last?.kind === "jumper" && last.enclosure === box.id ? terminalAt(box, last.to, known) : undefined;
}

function terminalAt({ places }: Box, end: EndKey, known: ReadonlySet<string>): string | undefined {
  const at = places[end]?.at;
  const key = at === undefined ? undefined : pointKey(at)?.slice(2);
  return key !== undefined && known.has(key) ? key : undefined;
}

function sideOf(
  { project, section, decided }: Asking,
  items: readonly string[],
  outlets: readonly OutletStanding[],
  isSupply: boolean,
  stuck: string | undefined,
): FitSide {
  const ends = items.filter((item): item is EndKey => parseEnd(item)?.of === "cable");
  const cables = [
    ...new Set(
      ends.flatMap((end) => {
        const parsed = parseEnd(end);
        return parsed?.of === "cable" ? [parsed.cable] : [];
      }),
    ),
  ];
  const terminals = items.filter((item) => !(ends as readonly string[]).includes(item));
  const proof = sectionProof(section);
  const edition = getEdition(project.edition);
  const wanting = outlets.flatMap((standing) => {
    if ((proof.of(standing.outlet.key)?.protectedBy.length ?? 0) > 0) return [];
    const wish = section.installation.intent.outlets[standing.outlet.key]?.wish;
    if (wish === "decided-not") return [];
    const need = requirementOf(project, standing, edition);
    if (need.required === true) return [{ standing, by: need.section.section }];
    return wish === "protect" ? [{ standing, by: SIDE_WORDS.wish }] : [];
  });
  const base = { ends, terminals, cables, outlets, wanting, fixed: isSupply || stuck !== undefined, isSupply };
  const line = (why: string, left: FitSide["left"] = wanting): FitSide => ({ ...base, side: "LINE", why, left });
  if (isSupply) return line(SIDE_WORDS.supply, []);
  if (stuck !== undefined) return line(stuck);
  const words = cables.flatMap((cable) => decided.get(cable) ?? []);
  if (words.includes(false)) return line(SIDE_WORDS.decided);
  if (words.includes(true)) return { ...base, side: "LOAD", why: SIDE_WORDS.decided, left: [] };
  if (wanting.length === 0) return line(noNeedWords(outlets, project, edition));
  const priorities = outlets.flatMap(({ outlet }) =>
    prioritiesAt(section.installation, outlet.key).map((priority) =>
      SIDE_WORDS.priority(PRIORITY_WORDS[priority], outlet.name),
    ),
  );
  const [must] = priorities;
  if (must !== undefined) return line(SIDE_WORDS.goesOffOwn(must));
  const names = wanting.map(({ standing, by }) => SIDE_WORDS.by(standing.outlet.name, by));
  return { ...base, side: "LOAD", why: SIDE_WORDS.feeds(names.join(", ")), left: [] };
}

/** Why nothing there asks for LOAD; what cannot be told is told as that. */
function noNeedWords(outlets: readonly OutletStanding[], project: Project, edition: EditionData): string {
  if (outlets.length === 0) return SIDE_WORDS.unknownBehind;
  const unknown = outlets.filter((standing) => requirementOf(project, standing, edition).required === "room-unknown");
  const names = unknown.map(({ outlet }) => outlet.name).join(", ");
  if (names === "") return SIDE_WORDS.noNeed;
  return SIDE_WORDS.roomUnknown(names);
}

/** The ends of hot and neutral by which the supply comes to a receptacle; undefined where one of them does not come. */
export function supplyOf(section: Section, box: Box, device: Device): Asking["supply"] | undefined {
  const found = (["ungrounded", "grounded"] as const).map((source) => {
    const purpose = source === "ungrounded" ? "hot" : "neutral";
    for (const { name } of terminalsOf(device).filter((terminal) => terminal.purpose === purpose)) {
      const step = section.wayFrom(source, { device: device.id, node: name })?.findLast((one) => one.kind === "cable");
      if (step?.kind === "cable" && step.toEnclosure === box.id) return step.to;
    }
    return undefined;
  });
  const [hot, neutral] = found;
  return hot === undefined || neutral === undefined ? undefined : { hot, neutral };
}
