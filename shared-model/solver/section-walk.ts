import type { Cable } from "../model/cable.ts";
import type { Enclosure, Panel } from "../model/enclosure.ts";
import {
  type CableId,
  type ConductorKey,
  cableEnd,
  type EnclosureId,
  type EndKey,
  otherSide,
  parseEnd,
  type Side,
} from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { cablesInto } from "../queries/cables-into.ts";
import { panelNets } from "./panel-nets.ts";

/** Boxes and cables that can be judged together, each sorted by id. */
export interface Walked {
  readonly boxes: readonly Enclosure[];
  readonly cables: readonly Cable[];
}

const byId = (p: { readonly id: string }, q: { readonly id: string }): number =>
  p.id < q.id ? -1 : p.id > q.id ? 1 : 0;

/**
 * Everything that is one section with a box: along cables from box to box, and across a panel where cables share a
 * breaker or a splice in it. Bars and buses end the walk.
 */
export function walkSection(installation: Installation, start: Enclosure): Walked {
  const boxes = new Map<EnclosureId, Enclosure>([[start.id, start]]);
  const cables = new Map<CableId, Cable>();
  const todo: Enclosure[] = [start];
  const visit = (id: EnclosureId): void => {
    const enclosure = installation.enclosures[id];
    if (enclosure?.kind !== "box" || boxes.has(id)) return;
    boxes.set(id, enclosure);
    todo.push(enclosure);
  };
  for (let box = todo.pop(); box !== undefined; box = todo.pop()) {
    for (const { cable, side } of cablesInto(installation.cables, box.id)) {
      cables.set(cable.id, cable);
      const far = cable.sides[otherSide(side)];
      if (!("enclosure" in far)) continue;
      const enclosure = installation.enclosures[far.enclosure];
      if (enclosure?.kind === "panel")
        for (const id of sharedInPanel(installation, enclosure, cable, otherSide(side))) visit(id);
      else visit(far.enclosure);
    }
  }
  return { boxes: [...boxes.values()].sort(byId), cables: [...cables.values()].sort(byId) };
}

/** Far enclosures of the other cables that share a net of this cable in a panel, bars and buses aside. */
function sharedInPanel(installation: Installation, panel: Panel, cable: Cable, side: Side): readonly EnclosureId[] {
  const nets = panelNets(panel);
  const found: EnclosureId[] = [];
  for (const conductor of Object.keys(cable.conductors) as ConductorKey[]) {
    const net = nets.netOfEnd(cableEnd(cable.id, conductor, side));
    if (net === undefined || nets.barsOf(net).length > 0) continue;
    for (const end of nets.cableEndsOn(net)) {
      const far = farEnclosure(installation, end);
      if (far !== undefined) found.push(far);
    }
  }
  return found;
}

function farEnclosure(installation: Installation, end: EndKey): EnclosureId | undefined {
  const parsed = parseEnd(end);
  if (parsed?.of !== "cable") return undefined;
  const far = installation.cables[parsed.cable]?.sides[otherSide(parsed.side)];
  return far !== undefined && "enclosure" in far ? far.enclosure : undefined;
}

/** Cables that can bring a feeder panel its supply: those on its lugs, and those that come from another panel. Sorted by id. */
export function feederCables(installation: Installation, panel: Panel): readonly Cable[] {
  const found = new Map<CableId, Cable>();
  for (const end of panelNets(panel).lugEnds) {
    const parsed = parseEnd(end);
    const cable = parsed?.of === "cable" ? installation.cables[parsed.cable] : undefined;
    if (cable !== undefined) found.set(cable.id, cable);
  }
  for (const cable of cablesFromPanels(installation, panel.id)) found.set(cable.id, cable);
  return [...found.values()].sort(byId);
}

const panelToPanel = new WeakMap<Installation["cables"], Map<EnclosureId, readonly Cable[]>>();

/** Cables between a panel and other panels. Cached by the cable table, because a panel may have hundreds of others. */
function cablesFromPanels(installation: Installation, panel: EnclosureId): readonly Cable[] {
  let index = panelToPanel.get(installation.cables);
  if (index === undefined) {
    index = new Map();
    panelToPanel.set(installation.cables, index);
  }
  let found = index.get(panel);
  if (found === undefined) {
    found = cablesInto(installation.cables, panel)
      .filter(({ cable, side }) => {
        const far = cable.sides[otherSide(side)];
        return (
          "enclosure" in far && far.enclosure !== panel && installation.enclosures[far.enclosure]?.kind === "panel"
        );
      })
      .map(({ cable }) => cable);
    index.set(panel, found);
  }
  return found;
}
