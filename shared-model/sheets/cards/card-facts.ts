import type { CircuitFeeds } from "../../answers/circuit-feeds.ts";
import type { FillRow, SheetInput } from "../../answers/sheet-input.ts";
import { getDeviceType } from "../../catalog/device-types.ts";
import { findEnclosureItem } from "../../catalog/enclosure-items.ts";
import { titleSaysMaterial } from "../../geometry/near/words.ts";
import type { Box, Enclosure } from "../../model/enclosure.ts";
import type { EnclosureId, EndKey } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { isBreakerFound, ratingRead } from "../../queries/breaker-read.ts";
import { changedBetweenStates } from "../../queries/changed-between-states.ts";
import { findEndFacts } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { addVolumes, exceedsVolume, formatVolume, subtractVolume } from "../../units/volume.ts";
import { CARD, fillParts, fillWords, MATERIALS, OVERFULL } from "./card-words.ts";

/** Boxes that get a card: the one asked for; else those that the work opens or brings; else all. */
export function cardBoxes({ project, state, box: asked }: SheetInput, installation: Installation): readonly Box[] {
  const boxes = inOrder(installation.enclosures).filter((each): each is Box => each.kind === "box");
  if (asked !== undefined) return boxes.filter(({ id }) => id === asked);
  if (state === "as-found" || project.proposed === undefined) return boxes;
  const { enclosures } = changedBetweenStates(project.asFound, project.proposed);
  return boxes.filter(({ id }) => enclosures.has(id));
}

export interface BreakerFact {
  readonly caption: string;
  readonly value: string;
}

/** "14", or "6/8" of a breaker that takes two spaces of its column. */
const spacesOf = (slot: number, spaces: number): string =>
  Array.from({ length: Math.max(1, spaces) }, (_, i) => slot + 2 * i).join("/");

const byBox = new WeakMap<SheetInput["circuits"], ReadonlyMap<EnclosureId, readonly CircuitFeeds[]>>();

/** Circuits that come to a box. Kept by the table of circuits: a large house asks for every box. */
export function circuitsAt({ circuits }: Pick<SheetInput, "circuits">, id: EnclosureId): readonly CircuitFeeds[] {
  let known = byBox.get(circuits);
  if (known === undefined) {
    const found = new Map<EnclosureId, CircuitFeeds[]>();
    for (const circuit of circuits)
      for (const box of circuit.boxes) {
        const all = found.get(box) ?? [];
        all.push(circuit);
        found.set(box, all);
      }
    known = found;
    byBox.set(circuits, known);
  }
  return known.get(id) ?? [];
}

/** "14, 20 A" of "breaker, panel P"; several are named together, with their panels where these are several too. */
export function breakersOf(input: SheetInput, installation: Installation, box: Enclosure): BreakerFact {
  const found = circuitsAt(input, box.id)
    .flatMap(({ breaker, panel: id }) => {
      const panel = installation.enclosures[id];
      const device = panel?.devices[breaker];
      if (panel === undefined || device === undefined) return [];
      const { name, slot, type } = device;
      const isFound = isBreakerFound(device);
      const ampere = isFound ? device.breakerRatingA : ratingRead(device);
      const words = !isFound
        ? CARD.breakerNotFound
        : slot === undefined
          ? name
          : spacesOf(slot, getDeviceType(type).gangs);
      return [{ words, slot: slot ?? 0, ampere, panel: panel.name }];
    })
    .sort((p, q) => (p.panel < q.panel ? -1 : p.panel > q.panel ? 1 : p.slot - q.slot));
  const [first, ...others] = found;
  if (first === undefined) return { caption: CARD.breakers, value: CARD.noBreaker };
  if (others.length === 0)
    return {
      caption: CARD.breaker(first.panel),
      value: [first.words, first.ampere === undefined ? "" : CARD.ampere(first.ampere)].filter(Boolean).join(", "),
    };
  const isOnePanel = others.every(({ panel }) => panel === first.panel);
  return {
    caption: isOnePanel ? CARD.breakersIn(first.panel) : CARD.breakers,
    value: found.map(({ words, panel }) => (isOnePanel ? words : CARD.inPanel(words, panel))).join(", "),
  };
}

/** "4 in. square × 2-1/8, metal; all conductors 12 AWG". */
export function makeOf(installation: Installation, box: Box): string {
  const title = findEnclosureItem(box.item)?.title ?? "";
  const { material } = box;
  const make = material === "unknown" || titleSaysMaterial(box) ? [title] : [title, MATERIALS[material]];
  const sizes = [
    ...new Set((Object.keys(box.places) as EndKey[]).flatMap((end) => findEndFacts(installation, box, end)?.awg ?? [])),
  ].sort((a, b) => Number.parseFloat(a) - Number.parseFloat(b));
  const wires = sizes.length === 0 ? "" : (sizes.length === 1 ? CARD.allConductors : CARD.conductors)(sizes.join(", "));
  return [make.filter(Boolean).join(", "), wires].filter(Boolean).join("; ");
}

export interface FillLineWords {
  readonly fill: string;
  readonly parts: string;
  /** What is to be done about it. */
  readonly act: string;
}

/** The line of box fill: total of room, its parts, and what is left. */
export function fillLine({ fill, state, project }: SheetInput, box: Box): FillLineWords | undefined {
  const rowsOf = (rows: readonly FillRow[] | undefined) => rows?.find(({ enclosure }) => enclosure === box.id)?.ledger;
  const ledger = rowsOf(state === "proposed" ? fill.proposed : fill.asFound);
  if (ledger === undefined || ledger.verdict === "not-applicable") return undefined;
  const { lines, total, available, spare, verdict } = ledger;
  const isOver = verdict === "overfull" && available !== undefined;
  const left = isOver ? subtractVolume(total, available) : spare;
  const before = state === "proposed" ? project.asFound.enclosures[box.id] : undefined;
  const clamps = rowsOf(fill.asFound)?.lines.find(({ item }) => item === "clamps");
  const taken = before?.kind === "box" && before.internalClamps === "present" && box.internalClamps === "none";
  const withClamps = taken && clamps !== undefined ? addVolumes(total, clamps.volume) : undefined;
  const needed =
    withClamps !== undefined && available !== undefined && exceedsVolume(withClamps, available)
      ? CARD.clampsOut(formatVolume(subtractVolume(withClamps, available)))
      : "";
  return {
    fill: fillWords(formatVolume(total), available === undefined ? undefined : formatVolume(available)),
    parts: fillParts(
      lines.map(({ volume }) => formatVolume(volume, 2)),
      left === undefined ? undefined : formatVolume(left),
      isOver,
    ),
    act: isOver ? OVERFULL[state] : needed,
  };
}
