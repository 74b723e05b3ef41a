import { findDeviceType } from "../../catalog/device-types.ts";
import { catalogue } from "../../lib/catalogue.ts";
import type { Cable, Conductor } from "../../model/cable.ts";
import type { Box, Enclosure, Panel } from "../../model/enclosure.ts";
import type { CableId, ConductorKey, DeviceId, EnclosureId } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import type { SurveyFacts, SurveyGroup, SurveyItem, SurveyKnown } from "../../model/survey.ts";
import { cablesInto, enclosureAtSide } from "../../queries/cables-into.ts";
import { inOrder } from "../../queries/in-order.ts";
import { outletsOf } from "../../queries/outlets-of.ts";
import type { Wire } from "./lead.ts";

const wording = catalogue({
  noGround: "No cable here has a ground",
  someWithoutGround: "Not every cable here has a ground, and the supply may be one without",
});

/** A cable as it comes out of the wall of the box. */
export interface CableAtHand {
  readonly id: CableId;
  readonly name: string;
  readonly conductors: Cable["conductors"];
  /** What each insulated conductor usually is; the others are grounds. */
  readonly wires: ReadonlyMap<ConductorKey, Wire>;
  readonly hasGround: boolean;
  /** Three insulated conductors. */
  readonly isThreeWire: boolean;
  /** What the drawing has at its far end: a group by its place, the panel, or nothing that is drawn. */
  readonly drawnTo: number | "panel" | undefined;
}

/** What is surveyed: the cables of a box, and what they may lead to. */
export interface BoxAtHand {
  readonly id: EnclosureId;
  readonly name: string;
  readonly cables: readonly CableAtHand[];
  readonly groups: readonly SurveyGroup[];
  readonly groupsFrom: "drawing" | "person" | "nowhere";
  readonly switchesHere: number;
  /**
   * Readings to ground have a reference: a ground in every cable, or one that was proved. Where a cable has none, it may be
   * the supply, and the grounds of the others hang on nothing.
   */
  readonly hasReference: boolean;
  /** What a person knows of a cable, by its place. */
  readonly known: ReadonlyMap<number, Omit<SurveyKnown, "cable">>;
}

/**
 * Reads from the drawing what a survey needs, and from facts what the drawing does not tell. A cable that enters twice, or
 * runs through unbroken, counts once.
 */
export function boxAtHand(installation: Installation, box: Box, facts: SurveyFacts): BoxAtHand {
  const into = [...new Map(cablesInto(installation.cables, box.id).map((one) => [one.cable.id, one])).values()];
  const drawn: { readonly items: SurveyGroup; readonly key: string }[] = [];
  const far = into.map(({ cable, side }) => {
    const at = enclosureAtSide(installation, cable, side === "a" ? "b" : "a");
    return at === undefined ? undefined : whatLies(installation, box.id, at);
  });
  const isFromService = far.some((beyond) => beyond?.panel === "service");
  const cables = into.map(({ cable }, index): CableAtHand => {
    const { panel, items = [] } = far[index] ?? {};
    let drawnTo: CableAtHand["drawnTo"];
    // A panel with a feeder is fed through this box where another cable comes from the service.
    if (panel === "service" || (panel === "feeder" && !isFromService)) drawnTo = "panel";
    else if (items.length > 0) {
      const key = items.map(({ id }) => id).join(" ");
      drawnTo = drawn.findIndex((one) => one.key === key);
      if (drawnTo < 0) drawnTo = drawn.push({ items, key }) - 1;
    }
    return { id: cable.id, name: cable.name, conductors: cable.conductors, ...wiresOf(cable), drawnTo };
  });
  const listed = facts.groups !== undefined;
  const groups = listed ? facts.groups : drawn.map(({ items }) => items);
  const lampOf = new Map(facts.lamps?.map(({ item, lamp }) => [item, lamp]));
  return {
    id: box.id,
    name: box.name,
    cables: listed ? cables.map((cable) => ({ ...cable, drawnTo: againstList(cable, drawn, groups) })) : cables,
    groups: groups.map((group) =>
      group.map((item) => {
        const lamp = lampOf.get(item.id) ?? item.lamp;
        return lamp === undefined ? item : { ...item, lamp };
      }),
    ),
    groupsFrom: groups.length === 0 ? "nowhere" : listed ? "person" : "drawing",
    switchesHere: facts.switchesHere ?? switchesIn(box),
    hasReference: cables.every(({ hasGround }) => hasGround) || facts.referenceProved !== undefined,
    known: new Map(
      facts.known?.flatMap(({ cable, leadsTo, how }) => {
        const place = cables.findIndex(({ id }) => id === cable);
        return place < 0 ? [] : [[place, { leadsTo, how }] as const];
      }),
    ),
  };
}

/** Why a reading to ground has no reference here. */
export const noGroundWords = ({ cables }: Pick<BoxAtHand, "cables">): string =>
  cables.some(({ hasGround }) => hasGround) ? wording.someWithoutGround : wording.noGround;

/** Where a person lists what is drawn too, the drawing can still be compared. */
function againstList(
  { drawnTo }: CableAtHand,
  drawn: readonly { readonly items: SurveyGroup }[],
  groups: readonly SurveyGroup[],
): CableAtHand["drawnTo"] {
  if (typeof drawnTo !== "number") return drawnTo;
  const ids = new Set(drawn[drawnTo]?.items.map(({ id }) => id));
  const same = groups.findIndex((group) => group.length === ids.size && group.every(({ id }) => ids.has(id)));
  return same < 0 ? undefined : same;
}

/** The wires of a cable by what they usually are: white is white, the first other insulated one is the hot. */
function wiresOf({ conductors }: Cable): Pick<CableAtHand, "wires" | "hasGround" | "isThreeWire"> {
  const wires = new Map<ConductorKey, Wire>();
  const all = Object.entries<Conductor>(conductors).sort(([, p], [, q]) => p.order - q.order);
  const insulated = all.filter(([, { grounding }]) => !grounding);
  const white = insulated.find(([, { colour }]) => colour === "white" || colour === "grey") ?? insulated[1];
  let next: Wire = "b";
  for (const one of insulated) {
    const wire: Wire = one === white ? "w" : next;
    if (wire === "b") next = "r";
    wires.set(one[0] as ConductorKey, wire);
  }
  return { wires, hasGround: all.length > insulated.length, isThreeWire: insulated.length >= 3 };
}

/** Every outlet and light that is reached from a far end without coming back through the box, and which panel is reached. */
function whatLies(
  installation: Installation,
  box: EnclosureId,
  from: Enclosure,
): { readonly panel: Panel["supply"] | undefined; readonly items: readonly SurveyItem[] } {
  const seen = new Set<EnclosureId>([box]);
  const found: Enclosure[] = [];
  let panel: Panel["supply"] | undefined;
  const waiting = [from];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (seen.has(next.id)) continue;
    seen.add(next.id);
    if (next.kind === "panel" && next.supply === "service") return { panel: "service", items: [] };
    if (next.kind === "panel") panel = "feeder";
    else found.push(next);
    for (const { cable, side } of cablesInto(installation.cables, next.id)) {
      const far = enclosureAtSide(installation, cable, side === "a" ? "b" : "a");
      if (far !== undefined) waiting.push(far);
    }
  }
  const switches = found.flatMap((enclosure) =>
    inOrder(enclosure.devices).flatMap(({ id, type }) => (isSwitch(type) ? [id] : [])),
  );
  const items = found
    .sort((p, q) => p.order - q.order || (p.id < q.id ? -1 : 1))
    .flatMap((enclosure) => itemsIn(enclosure, switches));
  return { panel, items };
}

const itemsIn = (enclosure: Enclosure, switches: readonly DeviceId[]): readonly SurveyItem[] =>
  inOrder(enclosure.devices).flatMap((device) =>
    outletsOf(device).map(
      (outlet): SurveyItem => ({
        id: outlet.key,
        name: outlet.name,
        kind: outlet.receptacle ? "outlet" : "light",
        ...(!outlet.receptacle && switches.length > 0 && { switches }),
      }),
    ),
  );

const isSwitch = (type: string): boolean => {
  const family = findDeviceType(type)?.family;
  return family === "switch" || family === "dimmer" || family === "timer";
};

const switchesIn = ({ devices }: Box): number => Object.values(devices).filter(({ type }) => isSwitch(type)).length;
