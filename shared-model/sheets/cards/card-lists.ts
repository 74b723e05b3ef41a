import type { BoxRoles, Role } from "../../answers/circuit.ts";
import { getDeviceType } from "../../catalog/device-types.ts";
import { FINISH_WORDS, spliceCaption } from "../../geometry/near/words.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import { type EndKey, type JumperId, jumperEnd, otherSide, parseEnd } from "../../model/ids.ts";
import type { At } from "../../model/place.ts";
import type { Installation } from "../../model/project.ts";
import { findEndFacts, nameOfEnd } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { HALF_WORDS } from "../../queries/outlets-of.ts";
import { CARD } from "./card-words.ts";

export type Layer = "grounds" | "neutrals" | "hots";

/** One conductor end to tick: "e bare", "to R1b G, green". */
export interface CardEntry {
  readonly name: string;
  readonly where: string;
}

/** A joint, or what lands at one thing without a joint. */
export interface CardJoint {
  readonly name: string;
  readonly note: string;
  readonly entries: readonly CardEntry[];
  /** A joint is pulled at when it is made. */
  readonly tug: boolean;
}

export type CardLists = Readonly<Record<Layer, readonly CardJoint[]>>;

/** Every end in a box by the layer that it is folded into, in the order of the work: joints, then what lands directly. */
export function cardLists(installation: Installation, box: Enclosure, roles: BoxRoles | undefined): CardLists {
  const lists: Record<Layer, CardJoint[]> = { grounds: [], neutrals: [], hots: [] };
  const layerOf = (end: EndKey): Layer => layerOfRole(roles?.ends[end]) ?? layerByMake(installation, box, end);
  const ends = sortedEnds(installation, box);
  const nameOf = (end: EndKey): string => nameOfEnd(installation, box, end);
  const words = (end: EndKey): string => farWords(box, end);

  for (const splice of inOrder(box.splices)) {
    const here = ends.filter((end) => isAtSplice(box.places[end]?.at, splice.id));
    const [first] = here;
    if (first === undefined) continue;
    lists[layerOf(first)].push({
      name: splice.name,
      note: `${here.length}, ${spliceCaption({ splice })}`,
      entries: here.map((end) => ({ name: nameOf(end), where: words(end) })),
      tug: true,
    });
  }
  const rest = ends.filter((end) => box.places[end]?.at.kind !== "splice" && !isJumperFromJoint(box, end));
  for (const layer of ["grounds", "neutrals", "hots"] as const)
    lists[layer].push(
      ...directJoints(
        box,
        rest.filter((end) => layerOf(end) === layer),
        nameOf,
      ),
    );
  for (const pass of inOrderOfKeys(box)) {
    const cable = installation.cables[pass.cable];
    for (const key of pass.conductors) {
      const conductor = cable?.conductors[key];
      if (cable === undefined || conductor === undefined) continue;
      const layer = conductor.grounding ? "grounds" : conductor.colour === "white" ? "neutrals" : "hots";
      const entry = { name: `${cable.name} ${key.toUpperCase()}`, where: CARD.throughNote };
      lists[layer].push({ name: CARD.through, note: "", entries: [entry], tug: false });
    }
  }
  return lists;
}

const inOrderOfKeys = ({ passThroughs }: Enclosure) =>
  Object.values(passThroughs).sort((a, b) => (a.id < b.id ? -1 : 1));

function layerOfRole(role: Role | undefined): Layer | undefined {
  switch (role) {
    case "ground":
      return "grounds";
    case "grounded":
      return "neutrals";
    case "ungrounded":
    case "switched":
    case "traveller":
      return "hots";
    default:
      return undefined;
  }
}

function layerByMake(installation: Installation, box: Enclosure, end: EndKey): Layer {
  const facts = findEndFacts(installation, box, end);
  if (facts?.grounding) return "grounds";
  const colour = box.places[end]?.markedAs ?? facts?.colour;
  return colour === "white" || colour === "grey" ? "neutrals" : "hots";
}

/** Cables before jumpers, each by the numbers in their names. */
function sortedEnds(installation: Installation, box: Enclosure): readonly EndKey[] {
  const isJumper = (end: EndKey): number => Number(parseEnd(end)?.of === "jumper");
  const owner = (end: EndKey): string => findEndFacts(installation, box, end)?.owner ?? end;
  return (Object.keys(box.places) as EndKey[]).sort(
    (a, b) =>
      isJumper(a) - isJumper(b) ||
      owner(a).localeCompare(owner(b), "en", { numeric: true }) ||
      (a < b ? -1 : a > b ? 1 : 0),
  );
}

const isAtSplice = (at: At | undefined, splice: string): boolean => at?.kind === "splice" && at.splice === splice;

/** The other end of the same jumper. */
function otherEnd(end: EndKey): EndKey | undefined {
  const parsed = parseEnd(end);
  return parsed?.of === "jumper" ? jumperEnd(parsed.jumper as JumperId, otherSide(parsed.side)) : undefined;
}

/** Its other end stands in a joint, where it says already where this one goes. */
function isJumperFromJoint(box: Enclosure, end: EndKey): boolean {
  const other = otherEnd(end);
  return other !== undefined && box.places[other]?.at.kind === "splice";
}

/** Where the other end of a jumper goes; nothing for a cable. */
function farWords(box: Enclosure, end: EndKey): string {
  const other = otherEnd(end);
  const at = other === undefined ? undefined : box.places[other]?.at;
  if (at === undefined) return "";
  if (at.kind === "splice") return CARD.linkTo(box.splices[at.splice]?.name ?? "");
  return CARD.to(placeWords(box, at, true));
}

function directJoints(box: Enclosure, ends: readonly EndKey[], nameOf: (end: EndKey) => string): readonly CardJoint[] {
  const joints = new Map<string, { name: string; note: string; entries: CardEntry[] }>();
  const put = (key: string, name: string, note: string, entry: CardEntry): void => {
    const joint = joints.get(key) ?? { name, note, entries: [] };
    joint.entries.push(entry);
    joints.set(key, joint);
  };
  for (const end of ends) {
    const at = box.places[end]?.at;
    if (at === undefined) continue;
    const name = nameOf(end);
    if (at.kind === "terminal")
      put(`device:${at.device}`, box.devices[at.device]?.name ?? "", CARD.directNote, {
        name,
        where: CARD.to(placeWords(box, at, false)),
      });
    else if (at.kind === "bond") put("bond", CARD.bond, CARD.directNote, { name, where: CARD.to(CARD.bond) });
    else if (at.kind === "capped") put("capped", CARD.capped, CARD.cappedNote, { name, where: "" });
    else if (at.kind === "loose") put("loose", CARD.loose, CARD.looseNote, { name, where: "" });
  }
  return [...joints.values()].map((joint) => ({ ...joint, tug: false }));
}

/** "LINE N, silver", "R1b G, green" where the device must be told, "box ground screw". */
function placeWords(box: Enclosure, at: At, tellDevice: boolean): string {
  if (at.kind !== "terminal") return at.kind === "splice" ? at.kind : CARD[at.kind];
  const device = box.devices[at.device];
  const terminals = device === undefined ? [] : getDeviceType(device.type).terminals;
  const terminal = terminals.find(({ name }) => name === at.terminal);
  if (device === undefined || terminal === undefined) return at.terminal;
  const { group, label, finish, purpose } = terminal;
  const isCut = (purpose === "neutral" ? device.neutralTab : device.hotTab) === "removed";
  const alike = terminals.filter((each) => each.label === label && each.group === group);
  const half = isCut && alike.length === 2 ? [HALF_WORDS.upper, HALF_WORDS.lower][alike.indexOf(terminal)] : undefined;
  const words = [group, half, label].filter(Boolean).join(" ");
  const isTold = tellDevice && (Object.keys(box.devices).length > 1 || group === undefined);
  return `${isTold ? `${device.name} ` : ""}${words}${finish === "none" ? "" : `, ${FINISH_WORDS[finish]}`}`;
}
