import { findDeviceType } from "../../catalog/device-types.ts";
import type { Cable, Conductor } from "../../model/cable.ts";
import type { Box, Enclosure } from "../../model/enclosure.ts";
import type { CableId, ConductorKey, DeviceId, EnclosureId } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import type { SurveyFacts, SurveyGroup, SurveyItem } from "../../model/survey.ts";
import { cablesInto, enclosureAtSide } from "../../queries/cables-into.ts";
import { inOrder } from "../../queries/in-order.ts";
import { outletsOf } from "../../queries/outlets-of.ts";
import type { Wire } from "./lead.ts";

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
  /** Readings to ground have a reference: a ground in some cable, or one that was proved. */
  readonly hasReference: boolean;
}

/**
 * Reads from the drawing what a survey needs, and from facts what the drawing does not tell. A cable that enters twice, or
 * runs through unbroken, counts once.
 */
export function boxAtHand(installation: Installation, box: Box, facts: SurveyFacts): BoxAtHand {
  const into = [...new Map(cablesInto(installation.cables, box.id).map((one) => [one.cable.id, one])).values()];
  const drawn: { readonly items: SurveyGroup; readonly key: string }[] = [];
  const cables = into.map(({ cable, side }): CableAtHand => {
    const far = enclosureAtSide(installation, cable, side === "a" ? "b" : "a");
    const beyond = far === undefined ? undefined : whatLies(installation, box.id, far);
    let drawnTo: CableAtHand["drawnTo"];
    if (beyond === "panel") drawnTo = "panel";
    else if (beyond !== undefined && beyond.length > 0) {
      const key = beyond.map(({ id }) => id).join(" ");
      drawnTo = drawn.findIndex((one) => one.key === key);
      if (drawnTo < 0) drawnTo = drawn.push({ items: beyond, key }) - 1;
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
    hasReference: cables.some(({ hasGround }) => hasGround) || facts.referenceProved !== undefined,
  };
}

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

/** Every outlet and light that is reached from a far end without coming back through the box, or that a panel is reached. */
function whatLies(
  installation: Installation,
  box: EnclosureId,
  from: Enclosure,
): readonly SurveyItem[] | "panel" | undefined {
  const seen = new Set<EnclosureId>([box]);
  const found: Enclosure[] = [];
  const waiting = [from];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (seen.has(next.id)) continue;
    seen.add(next.id);
    if (next.kind === "panel") return "panel";
    found.push(next);
    for (const { cable, side } of cablesInto(installation.cables, next.id)) {
      const far = enclosureAtSide(installation, cable, side === "a" ? "b" : "a");
      if (far !== undefined) waiting.push(far);
    }
  }
  const switches = found.flatMap((enclosure) =>
    inOrder(enclosure.devices).flatMap(({ id, type }) => (isSwitch(type) ? [id] : [])),
  );
  return found
    .sort((p, q) => p.order - q.order || (p.id < q.id ? -1 : 1))
    .flatMap((enclosure) => itemsIn(enclosure, switches));
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
