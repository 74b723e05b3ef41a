import type { Cable } from "../model/cable.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure, Panel } from "../model/enclosure.ts";
import type { CableId, EnclosureId, EndKey } from "../model/ids.ts";
import type { Place } from "../model/place.ts";
import type { Installation } from "../model/project.ts";
import { type PanelNets, panelNets } from "./panel-nets.ts";
import type { SectionModel } from "./section-model.ts";
import { feederCables } from "./section-walk.ts";

/** What a section reads of a panel: its cable ends there, the nets that they lie on, and the breakers on these. */
interface PanelInput {
  readonly panel: Panel;
  readonly feeders: readonly Cable[];
  readonly nets: readonly {
    readonly end: EndKey;
    readonly place: Place | undefined;
    readonly signature: string;
    readonly devices: readonly Device[];
  }[];
}

/** Everything that a section rests on, as it was. */
export interface ModelInputs {
  readonly cableTable: Installation["cables"];
  readonly boxes: ReadonlyMap<EnclosureId, Enclosure>;
  readonly cables: ReadonlyMap<CableId, Cable>;
  readonly panels: readonly PanelInput[];
}

export function inputsOfModel(installation: Installation, model: SectionModel): ModelInputs {
  const { walked, graph } = model;
  const boxes = [...walked.boxes, ...graph.upstream.boxes];
  const cables = [...walked.cables, ...graph.upstream.cables];
  return {
    cableTable: installation.cables,
    boxes: new Map(boxes.map((box) => [box.id, box])),
    cables: new Map(cables.map((cable) => [cable.id, cable])),
    panels: [...graph.panelEnds].map(([panel, ends]) => ({
      panel,
      feeders: feedersOf(installation, panel),
      nets: [...ends].map((end) => ({ end, place: panel.places[end], ...netAt(panelNets(panel), end) })),
    })),
  };
}

/** True when nothing that a section rests on is different in an installation. Costs the section, not the house. */
export function isCurrent(inputs: ModelInputs, installation: Installation): boolean {
  for (const [id, box] of inputs.boxes) if (installation.enclosures[id] !== box) return false;
  return areCablesCurrent(inputs, installation) && inputs.panels.every((input) => isPanelCurrent(input, installation));
}

/** A cable more in a box has ends there, and so makes it another box: only its own cables are to be looked at. */
function areCablesCurrent({ cableTable, cables }: ModelInputs, installation: Installation): boolean {
  if (installation.cables === cableTable) return true;
  for (const [id, cable] of cables) if (installation.cables[id] !== cable) return false;
  return true;
}

function isPanelCurrent({ panel, feeders, nets }: PanelInput, installation: Installation): boolean {
  const now = installation.enclosures[panel.id];
  if (now === undefined || now.kind !== "panel") return false;
  if (now.supply === "feeder" && !areSame(feedersOf(installation, now), feeders)) return false;
  if (now === panel) return true;
  if (now.supply !== panel.supply || now.mainBond !== panel.mainBond || now.name !== panel.name) return false;
  const fresh = panelNets(now);
  if (fresh.barJumpers !== panelNets(panel).barJumpers) return false;
  return nets.every(({ end, place, signature, devices }) => {
    const net = netAt(fresh, end);
    return now.places[end] === place && net.signature === signature && areSame(net.devices, devices);
  });
}

const feedersOf = (installation: Installation, panel: Panel): readonly Cable[] =>
  panel.supply === "feeder" ? feederCables(installation, panel) : [];

function netAt(nets: PanelNets, end: EndKey): { readonly signature: string; readonly devices: readonly Device[] } {
  const net = nets.netOfEnd(end);
  if (net === undefined) return { signature: "", devices: [] };
  return { signature: nets.signatureOf(net), devices: nets.barsOf(net).length > 0 ? [] : nets.devicesOn(net) };
}

const areSame = <T>(some: readonly T[], others: readonly T[]): boolean =>
  some.length === others.length && some.every((item, index) => item === others[index]);
