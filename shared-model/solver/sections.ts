import type { BoxRoles, Role } from "../answers/circuit.ts";
import type { DeviceNode } from "../catalog/device-type.ts";
import type { Cable } from "../model/cable.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure, Panel } from "../model/enclosure.ts";
import {
  type CableId,
  type DeviceId,
  type EnclosureId,
  type EndKey,
  type OutletKey,
  otherSide,
  parseEnd,
  type SpliceId,
} from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { panelGraph } from "./conduction-graph.ts";
import { inputsOfModel, isCurrent, type ModelInputs } from "./model-inputs.ts";
import { Roles } from "./roles.ts";
import type {
  Circuit,
  Joining,
  OutletStanding,
  PathStep,
  Reach,
  Section,
  Spot,
  SwitchInNeutral,
  WrongPlace,
} from "./section.ts";
import { SectionModel } from "./section-model.ts";
import { walkSection } from "./section-walk.ts";
import { SourceReach } from "./source-reach.ts";

/** What the answers of a section rest on, by id: what to look at again when something changed. Each list is sorted. */
export interface SectionInputs {
  /** Its boxes, and the boxes that the feeders of its panels pass through. */
  readonly enclosures: readonly EnclosureId[];
  /** Its cables and those feeders. */
  readonly cables: readonly CableId[];
  /** Panels that its cables and feeders end in. A change in one may leave the section as it was: compare fingerprints. */
  readonly panels: readonly EnclosureId[];
}

interface Kept {
  readonly model: SectionModel;
  readonly inputs: ModelInputs;
}

/** The same box, unchanged, may stand in sections of two installations that differ elsewhere: as found, and proposed. */
const MOST_KEPT = 2;

const keptFor = new WeakMap<Enclosure, readonly Kept[]>();
const sectionsIn = new WeakMap<Installation, Map<EnclosureId, DrawnSection>>();

/**
 * The section of a box; undefined for a panel and for an enclosure that does not exist. Costs the section, not the house.
 * A section that nothing has touched since it was last asked for keeps its answers, whatever else has changed.
 */
export function sectionOf(installation: Installation, id: EnclosureId): Section | undefined {
  let sections = sectionsIn.get(installation);
  if (sections === undefined) {
    sections = new Map();
    sectionsIn.set(installation, sections);
  }
  const known = sections.get(id);
  if (known !== undefined) return known;
  const box = installation.enclosures[id];
  if (box?.kind !== "box") return undefined;
  let kept = keptFor.get(box)?.find(({ inputs }) => isCurrent(inputs, installation));
  if (kept === undefined) {
    const model = new SectionModel(installation, walkSection(installation, box));
    kept = { model, inputs: inputsOfModel(installation, model) };
    for (const own of model.walked.boxes) keptFor.set(own, [kept, ...(keptFor.get(own) ?? []).slice(0, MOST_KEPT - 1)]);
  }
  const section = new DrawnSection(installation, kept);
  for (const own of section.enclosures) sections.set(own.id, section);
  return section;
}

/** Every section, sorted by key. */
export function allSections(installation: Installation): readonly Section[] {
  const found = new Map<EnclosureId, Section>();
  for (const id of Object.keys(installation.enclosures) as EnclosureId[]) {
    const section = sectionOf(installation, id);
    if (section !== undefined) found.set(sectionKey(section), section);
  }
  return [...found.values()].sort((p, q) => (sectionKey(p) < sectionKey(q) ? -1 : 1));
}

/** Its smallest box id: stable while that box stays in it. */
export function sectionKey(section: Section): EnclosureId {
  const first = section.enclosures[0];
  if (first === undefined) throw new Error("A section has at least one box.");
  return first.id;
}

/**
 * An object that stays the same (===) while nothing that the answers of a section rest on has changed: its boxes, its
 * cables, and what its panels say of the terminals that it reaches.
 */
export const sectionFingerprint = (section: Section): object => keptOf(section);

/** A function that answers once for the wiring of a section, and gives the same answer as long as that is the same. */
export function keptWithWiring<T extends object>(find: (section: Section) => T): (section: Section) => T {
  const kept = new WeakMap<object, T>();
  return (section) => {
    const wiring = sectionFingerprint(section);
    let found = kept.get(wiring);
    if (found === undefined) {
      found = find(section);
      kept.set(wiring, found);
    }
    return found;
  };
}

/** What a section is derived from; for the solver's own use. */
export const modelOf = (section: Section): SectionModel => keptOf(section).model;

/** Every cable that a way from a source into the section can run over: its own, and those of its feeders. */
export function cablesOnWays(section: Section): readonly Cable[] {
  const { walked, graph } = modelOf(section);
  return graph.upstream.cables.length === 0 ? walked.cables : [...walked.cables, ...graph.upstream.cables];
}

export function inputsOf(section: Section): SectionInputs {
  const { boxes, cables, panels } = keptOf(section).inputs;
  const sorted = <T extends string>(items: Iterable<T>): T[] => [...items].sort();
  return {
    enclosures: sorted(boxes.keys()),
    cables: sorted(cables.keys()),
    panels: sorted(panels.map(({ panel }) => panel.id)),
  };
}

/**
 * Roles of the ends and splices in a panel, which belongs to no section: from its own buses and bars; of what none of
 * them reaches, such as a capped end that is live from elsewhere, from the section of the cable.
 * @param known The role of an end that such a section, named by its box here, is known to give still; undefined where it
 * must be asked.
 */
export function panelRoles(
  installation: Installation,
  panel: Panel,
  known: (end: EndKey, far: EnclosureId) => Role | undefined = () => undefined,
): BoxRoles {
  const own = ownPanelRoles(installation, panel);
  const ends: Record<EndKey, Role> = { ...own.ends };
  const fromAfar = (end: EndKey): Role => {
    const far = farBox(installation, end);
    if (far === undefined) return "floating";
    return known(end, far) ?? sectionOf(installation, far)?.roleOfEnd(end) ?? "floating";
  };
  for (const end of own.floatingEnds) ends[end] = fromAfar(end);
  const splices: Record<SpliceId, Role> = { ...own.splices };
  for (const [splice, member] of own.floatingSplices) splices[splice] = ends[member] ?? "floating";
  return { ends, splices };
}

interface OwnPanelRoles extends BoxRoles {
  readonly floatingEnds: readonly EndKey[];
  /** With an end that is in it. */
  readonly floatingSplices: ReadonlyMap<SpliceId, EndKey>;
}

const ownRolesOf = new WeakMap<Panel, OwnPanelRoles>();

/** A service panel is its own source, so that its part is kept as long as it is the same panel. */
function ownPanelRoles(installation: Installation, panel: Panel): OwnPanelRoles {
  const kept = panel.supply === "service" ? ownRolesOf.get(panel) : undefined;
  if (kept !== undefined) return kept;
  const graph = panelGraph(installation, panel);
  const roles = new Roles(graph, new SourceReach(graph));
  const at = (node: number | undefined): Role => (node === undefined ? "floating" : roles.of(node));
  const ends: Record<EndKey, Role> = {};
  const members = new Map<SpliceId, EndKey>();
  for (const end of Object.keys(panel.places) as EndKey[]) {
    ends[end] = at(graph.ends.get(end));
    const where = panel.places[end]?.at;
    if (where?.kind === "splice" && !members.has(where.splice)) members.set(where.splice, end);
  }
  const splices: Record<SpliceId, Role> = {};
  for (const splice of Object.keys(panel.splices) as SpliceId[]) splices[splice] = at(graph.nodeOfSplice(splice));
  const own: OwnPanelRoles = {
    ends,
    splices,
    floatingEnds: (Object.keys(ends) as EndKey[]).filter((end) => ends[end] === "floating"),
    floatingSplices: new Map([...members].filter(([splice]) => splices[splice] === "floating")),
  };
  if (panel.supply === "service") ownRolesOf.set(panel, own);
  return own;
}

function farBox(installation: Installation, end: EndKey): EnclosureId | undefined {
  const parsed = parseEnd(end);
  const far = parsed?.of === "cable" ? installation.cables[parsed.cable]?.sides[otherSide(parsed.side)] : undefined;
  return far !== undefined && "enclosure" in far ? far.enclosure : undefined;
}

function keptOf(section: Section): Kept {
  if (section instanceof DrawnSection) return section.kept;
  throw new Error("Sections are made by sectionOf.");
}

/** A model, seen from the installation that was asked. */
class DrawnSection implements Section {
  readonly installation: Installation;
  readonly kept: Kept;

  constructor(installation: Installation, kept: Kept) {
    this.installation = installation;
    this.kept = kept;
  }

  get enclosures(): readonly Enclosure[] {
    return this.kept.model.walked.boxes;
  }

  get cables(): readonly Cable[] {
    return this.kept.model.walked.cables;
  }

  get bounded(): boolean {
    return this.kept.model.sourceReach().bounded;
  }

  roleOfEnd(end: EndKey): Role {
    return this.kept.model.roleOf({ end });
  }

  roleOfSplice(splice: SpliceId): Role {
    return this.kept.model.roleOf({ splice });
  }

  roleOfNode(device: DeviceId, node: DeviceNode): Role {
    return this.kept.model.roleOf({ device, node });
  }

  outlets(): readonly OutletStanding[] {
    return this.kept.model.outlets();
  }

  sensingDevices(): readonly { readonly device: Device; readonly enclosure: Enclosure }[] {
    return this.kept.model.sensingDevices();
  }

  breakers(): readonly { readonly device: Device; readonly panel: Enclosure }[] {
    return this.kept.model.breakers();
  }

  enclosureOf(device: DeviceId): EnclosureId | undefined {
    return this.kept.model.graph.devices.get(device)?.enclosure.id;
  }

  reach(): Reach {
    return this.kept.model.reach();
  }

  contactsOpen(device: DeviceId): Reach {
    return this.kept.model.reach({ device, what: "contacts" });
  }

  sensorCut(device: DeviceId): Reach {
    return this.kept.model.reach({ device, what: "sensor" });
  }

  circuitOf(breaker: DeviceId): Circuit {
    return this.kept.model.circuitOf(breaker);
  }

  wayFrom(source: "ungrounded" | "grounded", to: Spot, open?: DeviceId): readonly PathStep[] | undefined {
    return this.kept.model.wayFrom(source, to, open);
  }

  whereNeutralStops(outlet: OutletKey): WrongPlace | undefined {
    return this.kept.model.whereNeutralStops(outlet);
  }

  whereHotStops(outlet: OutletKey): WrongPlace | undefined {
    return this.kept.model.whereHotStops(outlet);
  }

  shorts(): readonly Joining[] {
    return this.kept.model.shorts();
  }

  hotsOnGround(): readonly Joining[] {
    return this.kept.model.hotsOnGround();
  }

  deadHotsOnGround(): readonly Joining[] {
    return this.kept.model.deadHotsOnGround();
  }

  hotsAround(device: DeviceId, nearest: "LINE" | "LOAD"): readonly Joining[] {
    return this.kept.model.hotsAround(device, nearest);
  }

  neutralsOnGround(): readonly Joining[] {
    return this.kept.model.neutralsOnGround();
  }

  neutralsAround(device: DeviceId): readonly Joining[] {
    return this.kept.model.neutralsAround(device);
  }

  switchesInNeutral(): readonly SwitchInNeutral[] {
    return this.kept.model.switchesInNeutral();
  }

  wherePolarityCrosses(outlet: OutletKey): WrongPlace | undefined {
    return this.kept.model.wherePolarityCrosses(outlet);
  }
}
