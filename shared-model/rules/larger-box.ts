import type { CommandCall } from "../answers/command-call.ts";
import type { Fix } from "../answers/finding.ts";
import { type EnclosureItem, enclosureItems, findEnclosureItem } from "../catalog/enclosure-items.ts";
import { findStandardBox } from "../catalog/standard-boxes.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Box, VolumeFact } from "../model/enclosure.ts";
import type { StateName } from "../model/project.ts";
import { creditedVolume } from "../queries/box-volume.ts";
import { inOrder } from "../queries/in-order.ts";
import { inchFigure, inchWords } from "../units/inch-words.ts";
import { addVolumes, type CubicInches, cubicInches, exceedsVolume, formatVolume } from "../units/volume.ts";
import { fixBy, fixTogether, makeFresh } from "./fix-parts.ts";

const wording = catalogue({
  clampsOut: (box: Part) => `Take the internal clamps of ${box} out and fit connectors outside`,
  extension: (box: Part, depth: Part, volume: Part) => `Put an extension on ${box}, ${depth} deep, ${volume} in³`,
  exchange: (box: Part, item: Part, volume: Part) => `Exchange ${box} for ${item}: ${volume} in³`,
  exchangeWithRings: (box: Part, item: Part, volume: Part) =>
    `Exchange ${box} for ${item}: ${volume} in³ with what is on it`,
});

/** What the box needs, with its clamps counted as they are and without them. */
interface Needs {
  readonly asItIs: CubicInches;
  readonly withoutClamps: CubicInches;
}

/**
 * Ways to give an overfull box room enough, each of which suffices by itself: clamps out, an extension, a larger box of
 * the same kind. The least work comes first.
 */
export function roomOffers(box: Box, state: StateName, needs: Needs): readonly Fix[] {
  const has = creditedVolume(box);
  if (has === undefined) return [];
  return [clampsOut(box, state, has, needs), extension(box, state, has, needs), larger(box, state, needs)].filter(
    (offer) => offer !== undefined,
  );
}

function clampsOut(box: Box, state: StateName, has: CubicInches, { withoutClamps }: Needs): Fix | undefined {
  if (box.internalClamps !== "present" || exceedsVolume(withoutClamps, has)) return undefined;
  const entries = inOrder(box.entries).filter(({ means }) => means === "internal-clamp");
  const title = wording.clampsOut(box.name);
  return fixTogether(title, [
    setBox(box, state, "internalClamps", "none"),
    ...entries.map(({ id }) => ({
      command: "set-property",
      args: {
        state,
        target: { kind: "entry", enclosure: box.id, id },
        field: "means",
        value: "external-connector",
      },
    })),
  ]);
}

/** Depths in which extensions are stocked, inches: common practice. */
const EXTENSION_DEPTHS = [1.5, 2.125];

function extension(box: Box, state: StateName, has: CubicInches, { asItIs }: Needs): Fix | undefined {
  const size = sizeOf(box);
  const parts = size?.match(/^(4|4-11\/16)x\S+ (square|round\/octagonal)$/);
  if (parts === null || parts === undefined) return undefined;
  const [, opening, family] = parts;
  for (const depth of EXTENSION_DEPTHS) {
    const added = findStandardBox(`${opening}x${inchFigure(depth)} ${family}`);
    if (added === undefined || exceedsVolume(asItIs, addVolumes(has, cubicInches(added.volumeIn3)))) continue;
    const title = wording.extension(box.name, inchWords(depth), added.volumeIn3.toFixed(1));
    const volume: VolumeFact = { kind: "table", size: added.size };
    return fixBy(title, "add-ring", {
      state,
      enclosure: box.id,
      id: makeFresh(box)("r").id,
      kind: "extension",
      volume,
    });
  }
  return undefined;
}

/** Its standard size: as recorded, else that of the stock it was made from while that has the same shape. */
function sizeOf({ volume, item, shape }: Box): string | undefined {
  if (volume.kind === "table") return volume.size;
  const make = findEnclosureItem(item)?.make;
  if (make?.kind !== "box" || make.facts.shape !== shape || make.facts.volume.kind !== "table") return undefined;
  return make.facts.volume.size;
}

/** The smallest of the stock that holds what is in it: material, shape and gangs the same, listed for what it is listed for. */
function larger(box: Box, state: StateName, { asItIs }: Needs): Fix | undefined {
  const [best] = enclosureItems
    .flatMap((item) => {
      if (item.make.kind !== "box" || !isOfItsKind(item.make.facts, box)) return [];
      const { facts } = item.make;
      const holds = creditedVolume({ ...box, volume: facts.volume });
      return holds === undefined || exceedsVolume(asItIs, holds) ? [] : [{ item, facts, holds }];
    })
    .sort((a, b) => a.holds - b.holds);
  return best && exchange(box, state, best);
}

/** The shallowest of the stock, of the kind of a box and holding no less, that is so deep; undefined when none is. */
export function deeperBox(box: Box, state: StateName, depthIn: number): Fix | undefined {
  const has = creditedVolume(box) ?? (0 as CubicInches);
  const [best] = enclosureItems
    .flatMap((item) => {
      if (item.make.kind !== "box" || !isOfItsKind(item.make.facts, box)) return [];
      const { facts } = item.make;
      const holds = creditedVolume({ ...box, volume: facts.volume });
      if (holds === undefined || exceedsVolume(has, holds)) return [];
      return (facts.depthIn ?? 0) < depthIn ? [] : [{ item, facts, holds }];
    })
    .sort((a, b) => (a.facts.depthIn ?? 0) - (b.facts.depthIn ?? 0) || a.holds - b.holds);
  return best && exchange(box, state, best);
}

interface Stocked {
  readonly item: EnclosureItem;
  readonly facts: Facts;
  readonly holds: CubicInches;
}

function exchange(box: Box, state: StateName, { facts, item, holds }: Stocked): Fix {
  const calls: CommandCall[] = [
    setBox(box, state, "volume", facts.volume),
    setBox(box, state, "depthIn", facts.depthIn ?? null),
  ];
  const title = Object.keys(box.rings).length === 0 ? wording.exchange : wording.exchangeWithRings;
  return fixTogether(title(box.name, item.title, formatVolume(holds, 1)), calls);
}

type Facts = Extract<EnclosureItem["make"], { readonly kind: "box" }>["facts"];

function isOfItsKind(facts: Facts, { material, shape, gangs, listedFor = [] }: Box): boolean {
  if (facts.material !== material || facts.shape !== shape) return false;
  // Masonry and cast boxes of the stock are sold by the gang.
  if (facts.gangs !== gangs && shape !== "masonry" && shape !== "cast") return false;
  const special = listedFor.filter((what) => what !== "device");
  return special.every((what) => facts.listedFor?.includes(what) === true);
}

const setBox = (box: Box, state: StateName, field: string, value: unknown): CommandCall => ({
  command: "set-property",
  args: { state, target: { kind: "enclosure", id: box.id }, field, value },
});
