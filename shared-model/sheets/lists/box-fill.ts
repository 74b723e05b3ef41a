import type { FillLedger, FillLine } from "../../answers/fill.ts";
import type { FillRow, SheetInput } from "../../answers/sheet-input.ts";
import { sameValue } from "../../lib/same-value.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { EnclosureId } from "../../model/ids.ts";
import type { Installation, StateName } from "../../model/project.ts";
import { type CubicInches, formatVolume, toDecimal } from "../../units/volume.ts";
import type { Page } from "../display-list.ts";
import type { Flow } from "../page/flow.ts";
import { TYPE } from "../page/flow-blocks.ts";
import { openListSheet } from "../page/list-sheet.ts";
import type { TableCell, TableColumn, TableRow } from "../page/table-blocks.ts";
import type { ListTable } from "../tables/table.ts";
import { BOX_FILL, FILL_TABLES, ITEM_WORDS, VERDICT_WORDS, volumeWords } from "./box-fill-words.ts";
import { headed, isShown, nothingWords, placeOf, sayNothing, writeCautions } from "./list-parts.ts";
import { LIST, STATE_NAMES, STATE_TITLES } from "./list-words.ts";

/** One state of a box, where it has a ledger there. */
interface Side {
  readonly state: StateName;
  readonly box: Enclosure;
  readonly ledger: FillLedger;
}

/** Every box with its ledgers, as found first, in the order of the drawing: what proposed adds stands last. */
function filledBoxes(input: SheetInput): readonly (readonly [Side, ...Side[]])[] {
  const { asFound, proposed } = input.fill;
  const sides = new Map<EnclosureId, [Side, ...Side[]]>();
  const take = (state: StateName, installation: Installation | undefined, rows: readonly FillRow[] = []): void => {
    for (const { enclosure, ledger } of rows) {
      const box = installation?.enclosures[enclosure];
      if (box === undefined || !isShown(input, enclosure)) continue;
      const side = { state, box, ledger };
      const known = sides.get(enclosure);
      if (known === undefined) sides.set(enclosure, [side]);
      else known.push(side);
    }
  };
  take("as-found", input.project.asFound, asFound);
  take("proposed", input.project.proposed, proposed);
  return [...sides.values()];
}

/** @returns Why there is nothing to count; undefined where there is. */
export const noBoxes = (input: SheetInput): string | undefined =>
  filledBoxes(input).length > 0 ? undefined : nothingWords(input, BOX_FILL.noBoxes);

/** Box by box every line of the count, with its section, for both states side by side. */
export function boxFillPages(input: SheetInput): readonly Page[] {
  const sheet = openListSheet(input, {
    kind: "box-fill",
    title: BOX_FILL.title,
    difference: input.project.proposed !== undefined,
  });
  const boxes = filledBoxes(input);
  const nothing = noBoxes(input);
  if (nothing !== undefined) sayNothing(sheet.flow, nothing);
  else {
    sheet.flow.paragraph(BOX_FILL.counting, { size: TYPE.small });
    for (const sides of boxes) sheet.flow.keepTogether((flow) => writeBox(flow, input, sides));
    writeCautions(sheet.flow, ["DAT3", "DAT2"]);
    sheet.flow.paragraph(LIST.evidenceLegend, { size: TYPE.small });
  }
  return sheet.pages();
}

function writeBox(flow: Flow, input: SheetInput, sides: readonly [Side, ...Side[]]): void {
  const [first, second] = sides;
  const isAlike = second !== undefined && sameValue(first.ledger, second.ledger);
  const shown = isAlike ? [first] : sides;
  const state = isAlike ? BOX_FILL.alike : sides.length === 1 ? STATE_NAMES[first.state] : "";
  headed(flow, first.box.name, [placeOf(input, (second ?? first).box), state].filter(Boolean).join("; "));
  const volumes = [
    ...new Set(shown.map(({ box, ledger }) => (box.kind === "box" ? volumeWords(box, ledger.available) : ""))),
  ];
  for (const words of volumes.length === 1 ? volumes : shown.map(named(volumes)))
    flow.paragraph(words, { size: TYPE.small, withNext: true });
  if (shown.some(({ ledger }) => ledger.verdict !== "not-applicable"))
    flow.table({ columns: columnsFor(shown), rows: rowsFor(shown) });
  for (const { state: name, ledger } of shown)
    if (ledger.reason !== undefined)
      flow.paragraph(shown.length > 1 ? `${STATE_TITLES[name]}: ${ledger.reason}` : ledger.reason, {
        size: TYPE.small,
      });
}

const named =
  (volumes: readonly string[]) =>
  ({ state }: Side, i: number): string =>
    `${STATE_TITLES[state]}: ${volumes[i] ?? ""}`;

/** White between the figures of a state and what stands to their right. */
const SPACER = 3;

const columnsFor = (sides: readonly Side[]): readonly TableColumn[] => [
  { head: BOX_FILL.item },
  { head: BOX_FILL.awg, width: 12 },
  ...sides.flatMap(({ state }): readonly TableColumn[] => {
    const count = sides.length > 1 ? BOX_FILL.countIn(STATE_NAMES[state]) : BOX_FILL.count;
    return [
      { head: count, width: sides.length > 1 ? 18 : 16, align: "end", tabular: true },
      { head: BOX_FILL.each, width: 18, align: "end", tabular: true },
      { head: BOX_FILL.in3, width: 18, align: "end", tabular: true },
      { head: "", width: SPACER },
    ];
  }),
  { head: BOX_FILL.section, width: 25 },
];

/** Lines of one kind stand in one row, whichever state has them. */
const keyOf = ({ item, awg, section, each }: FillLine): string => `${item} ${awg} ${section} ${each}`;

function rowsFor(sides: readonly Side[]): readonly TableRow[] {
  const keys = new Map<string, FillLine>();
  for (const { ledger } of sides)
    for (const each of ledger.lines) if (!keys.has(keyOf(each))) keys.set(keyOf(each), each);
  const places = decimalsOf(sides);
  const figure = (volume: CubicInches): FigureCell => figureCell(volume, places);
  const order = [...keys].sort(([, a], [, b]) => ITEMS.indexOf(a.item) - ITEMS.indexOf(b.item));
  const isQuarter = (one: FillLine): boolean =>
    one.item === "grounds" && order.some(([, { item, each }]) => item === "grounds" && each > one.each);
  const row = (label: string, cell: (side: Side) => string | TableCell, before?: (side: Side) => string): TableRow => ({
    cells: [{ text: label, span: 2 }, ...sides.flatMap((side) => ["", before?.(side) ?? "", cell(side), ""]), ""],
  });
  return [
    ...order.map(
      ([key, one]): TableRow => ({
        cells: [
          isQuarter(one) ? { text: ITEM_WORDS[one.item], note: BOX_FILL.quarter } : ITEM_WORDS[one.item],
          one.awg,
          ...sides.flatMap(({ ledger }): readonly (string | TableCell)[] => {
            const own = ledger.lines.find((each) => keyOf(each) === key);
            if (own === undefined) return ["0", "", figure(NOTHING), ""];
            const { count, each, volume, ml } = own;
            return [
              String(count),
              { ...figure(each), ...(ml && { note: BOX_FILL.ml(ml.each) }) },
              { ...figure(volume), ...(ml && { note: BOX_FILL.ml(ml.volume) }) },
              "",
            ];
          }),
          one.section,
        ],
      }),
    ),
    {
      ...row(BOX_FILL.used, ({ ledger: { total, totalMl } }) => ({
        ...figure(total),
        ...(totalMl !== undefined && { note: BOX_FILL.ml(totalMl) }),
      })),
      strong: true,
    },
    row(BOX_FILL.volume, ({ ledger: { available } }) =>
      available === undefined ? BOX_FILL.notKnown : figure(available),
    ),
    {
      ...row(
        BOX_FILL.left,
        ({ ledger: { spare, verdict } }) =>
          spare === undefined ? VERDICT_WORDS[verdict] : figure((spare < 0 ? -spare : spare) as CubicInches),
        ({ ledger: { verdict } }) => (verdict === "overfull" ? BOX_FILL.over : ""),
      ),
      strong: true,
    },
  ];
}

const ITEMS: readonly FillLine["item"][] = Object.keys(ITEM_WORDS) as FillLine["item"][];

const NOTHING = 0 as CubicInches;

type FigureCell = Required<Pick<TableCell, "text" | "unsaid">>;

/** A volume without zeros at its end that nobody measured, in the room of as many places as its column has. */
function figureCell(volume: CubicInches, places: number): FigureCell {
  const words = formatVolume(volume);
  return { text: words, unsaid: formatVolume(volume, places).slice(words.length) };
}

/** As many places as the finest figure needs. */
function decimalsOf(sides: readonly Side[]): number {
  const volumes = sides.flatMap(({ ledger: { lines, total, available, spare } }) => [
    ...lines.flatMap(({ each, volume }) => [each, volume]),
    total,
    available ?? NOTHING,
    spare ?? NOTHING,
  ]);
  return Math.max(...volumes.map((volume) => formatVolume(volume).split(".")[1]?.length ?? 0));
}

/** Every line, and the sums by box. */
export function boxFillTables(input: SheetInput): readonly ListTable[] {
  const sides = filledBoxes(input).flat();
  return [
    {
      name: FILL_TABLES.sums,
      columns: [
        { head: FILL_TABLES.box, kind: "text", width: 10 },
        { head: FILL_TABLES.place, kind: "text", width: 24 },
        { head: FILL_TABLES.state, kind: "text", width: 10 },
        { head: FILL_TABLES.used, kind: "number", decimals: 4, width: 12 },
        { head: FILL_TABLES.volume, kind: "number", decimals: 4, width: 12 },
        { head: FILL_TABLES.left, kind: "number", decimals: 4, width: 12 },
        { head: FILL_TABLES.result, kind: "text", width: 24 },
        { head: FILL_TABLES.remark, kind: "text", width: 50 },
      ],
      rows: sides.map(({ state, box, ledger: { total, available, spare, verdict, reason } }) => [
        box.name,
        placeOf(input, box),
        STATE_NAMES[state],
        verdict === "not-applicable" ? undefined : toDecimal(total),
        available === undefined ? undefined : toDecimal(available),
        spare === undefined ? undefined : toDecimal(spare),
        VERDICT_WORDS[verdict],
        reason,
      ]),
    },
    {
      name: FILL_TABLES.lines,
      columns: [
        { head: FILL_TABLES.box, kind: "text", width: 10 },
        { head: FILL_TABLES.state, kind: "text", width: 10 },
        { head: FILL_TABLES.item, kind: "text", width: 28 },
        { head: FILL_TABLES.awg, kind: "text", width: 8 },
        { head: FILL_TABLES.count, kind: "number", width: 8 },
        { head: FILL_TABLES.each, kind: "number", decimals: 4, width: 12 },
        { head: FILL_TABLES.volume, kind: "number", decimals: 4, width: 12 },
        { head: FILL_TABLES.section, kind: "text", width: 16 },
      ],
      rows: sides.flatMap(({ state, box, ledger }) =>
        ledger.lines.map(({ item, awg, count, each, volume, section }) => [
          box.name,
          STATE_NAMES[state],
          ITEM_WORDS[item],
          awg,
          count,
          toDecimal(each),
          toDecimal(volume),
          section,
        ]),
      ),
    },
  ];
}
