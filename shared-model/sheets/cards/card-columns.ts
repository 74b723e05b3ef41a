import type { SheetInput } from "../../answers/sheet-input.ts";
import type { Box } from "../../model/enclosure.ts";
import { type EndKey, parseEnd } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { inOrder } from "../../queries/in-order.ts";
import type { Mark } from "../display-list.ts";
import { group, line, rect } from "../marks.ts";
import type { Block } from "../page/block.ts";
import { INK } from "../page/inks.ts";
import { jointBlock, listTitle, noteBlock, TITLE_HEIGHT } from "./card-list-marks.ts";
import { type CardLists, cardLists, type Layer } from "./card-lists.ts";
import { apartNote, CARD, foldNote, jumperNote } from "./card-words.ts";

const PAD = 2.4;
const FRAME = { ink: INK, width: 0.4 } as const;

const LAYERS: readonly {
  readonly layer: Layer;
  readonly title: string;
  readonly sample: "bare" | "white" | "black";
}[] = [
  { layer: "grounds", title: CARD.grounds, sample: "bare" },
  { layer: "neutrals", title: CARD.neutrals, sample: "white" },
  { layer: "hots", title: CARD.hots, sample: "black" },
];

interface Part {
  readonly height: number;
  readonly marks: readonly Mark[];
}

export interface ListColumns {
  /** All three lists beside each other, as high as the longest. */
  whole(): Part;
  /** The same over several pages: each at most `room` high, the last at most `lastRoom`. */
  pages(room: number, lastRoom: number): readonly Part[];
}

/** Three lists in the order in which they are made and folded: grounds, neutrals, hots. */
export function listColumns(input: SheetInput, installation: Installation, box: Box, width: number): ListColumns {
  const lists = cardLists(installation, box, input.shownRoles[box.id]);
  const each = width / 3;
  const inner = each - 2 * PAD;
  const notes = notesOf(input, box, lists);
  const columns = LAYERS.map(({ layer }) => [
    ...lists[layer].map((joint) => jointBlock(joint, inner)),
    ...(lists[layer].length === 0 ? [noteBlock(CARD.none, inner)] : []),
    ...(notes[layer] ?? []).map((words) => noteBlock(words, inner)),
  ]);
  const part = (blocks: readonly (readonly Block[])[]): Part => {
    const height = TITLE_HEIGHT + 1 + Math.max(4, ...blocks.map(heightOf));
    return {
      height,
      marks: [
        rect({ x: 0, y: 0, width, height }, { stroke: FRAME }),
        ...LAYERS.flatMap(({ title, sample }, i) => [
          ...(i === 0 ? [] : [line(i * each, 0, i * each, height, FRAME)]),
          group([...listTitle(i + 1, title, sample, inner), ...stacked(blocks[i] ?? [])], {
            shift: { x: i * each + PAD, y: 0 },
          }),
        ]),
      ],
    };
  };
  return {
    whole: () => part(columns),
    pages: (room, lastRoom) => {
      const parts: Part[] = [];
      let rest = columns;
      while (rest.some((blocks) => TITLE_HEIGHT + 1 + heightOf(blocks) > lastRoom)) {
        const taken = rest.map((blocks) => fitting(blocks, room - TITLE_HEIGHT - 1));
        parts.push(part(taken));
        rest = rest.map((blocks, i) => blocks.slice(taken[i]?.length ?? 0));
      }
      return [...parts, part(rest)];
    },
  };
}

const heightOf = (blocks: readonly Block[]): number => blocks.reduce((sum, { height }) => sum + height, 0);

/** At least one, so that it ends. */
function fitting(blocks: readonly Block[], room: number): readonly Block[] {
  let used = 0;
  const count = blocks.findIndex(({ height }) => {
    used += height;
    return used > room;
  });
  return count < 0 ? blocks : blocks.slice(0, Math.max(1, count));
}

function stacked(blocks: readonly Block[]): readonly Mark[] {
  let y = TITLE_HEIGHT;
  return blocks.map(({ height, marks }) => {
    const set = group(marks, { shift: { x: 0, y } });
    y += height;
    return set;
  });
}

function notesOf({ shownRoles }: SheetInput, box: Box, lists: CardLists): Partial<Record<Layer, readonly string[]>> {
  const jumpers = inOrder(box.jumpers);
  const awgs = [...new Set(jumpers.map(({ awg }) => awg))];
  const behind = shownRoles[box.id]?.behind ?? {};
  const isBehind = (end: string): boolean => (behind[end as EndKey]?.length ?? 0) > 0;
  const spliceOf = (name: string): boolean =>
    Object.entries(box.places).some(
      ([end, { at }]) => at.kind === "splice" && box.splices[at.splice]?.name === name && isBehind(end),
    );
  const joints = lists.neutrals.filter(({ tug }) => tug);
  const onLoad = joints.filter(({ name }) => spliceOf(name));
  const onLine = joints.filter(({ name }) => !spliceOf(name));
  const cables = onLoad.flatMap(({ entries }) =>
    entries.filter(({ where }) => where === "").map(({ name }) => ownerOf(name)),
  );
  const isGuarded = Object.keys(behind).some((end) => parseEnd(end) !== undefined);
  return {
    neutrals: [
      ...(jumpers.length === 0
        ? []
        : [
            jumperNote(
              jumpers.map(({ name }) => name),
              awgs,
            ),
          ]),
      ...(cables.length === 0 || onLine.length === 0
        ? []
        : [
            apartNote(
              cables,
              onLine.map(({ name }) => name),
            ),
          ]),
    ],
    hots: [foldNote(isGuarded)],
  };
}

/** "C2" of "C2 WH". */
const ownerOf = (name: string): string => name.slice(0, name.lastIndexOf(" ") < 0 ? undefined : name.lastIndexOf(" "));
