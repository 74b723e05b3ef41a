import type { ScopeMaterial } from "../../answers/scope.ts";
import type { SheetInput } from "../../answers/sheet-input.ts";
import type { Page } from "../display-list.ts";
import { TYPE } from "../page/flow.ts";
import { openListSheet } from "../page/list-sheet.ts";
import type { TableRow } from "../page/table-blocks.ts";
import type { ListTable } from "../tables/table.ts";
import { nothingWords, sayNothing, writeCautions } from "./list-parts.ts";
import { NOTHING_PROPOSED } from "./list-words.ts";
import {
  MATERIAL_GROUPS,
  MATERIAL_NOTE,
  MATERIALS,
  NO_MATERIALS,
  TAKEN_OUT,
  TAKEN_OUT_NOTE,
  UNIT_NAMES,
  UNIT_WORDS,
} from "./scope-words.ts";

/** @returns Why there is nothing to list; undefined where there is. */
export function noMaterials(input: SheetInput): string | undefined {
  const { scope } = input;
  if (scope === undefined) return nothingWords(input, NOTHING_PROPOSED);
  return scope.materials.length + scope.removed.length > 0 ? undefined : nothingWords(input, NO_MATERIALS);
}

/** What is to be bought and what comes out, in generic words: always of the whole job. */
export function materialPages(input: SheetInput): readonly Page[] {
  const { flow, pages } = openListSheet(input, { kind: "materials", title: MATERIALS, difference: true });
  const { scope } = input;
  const nothing = noMaterials(input);
  if (scope === undefined || nothing !== undefined) {
    sayNothing(flow, nothing ?? NOTHING_PROPOSED);
    return pages();
  }
  if (scope.materials.length === 0) flow.paragraph(NO_MATERIALS);
  else {
    flow.paragraph(MATERIAL_NOTE, { size: TYPE.small });
    flow.table({
      columns: [
        { head: "have", width: 12 },
        { head: "quantity", width: 22, align: "end", tabular: true, weight: 700 },
        { head: "what", share: 1.3 },
        { head: "for" },
      ],
      rows: groupedRows(scope.materials),
    });
  }
  if (scope.removed.length > 0) {
    flow.heading(TAKEN_OUT, TAKEN_OUT_NOTE);
    flow.table({
      columns: [
        { head: "out", width: 12 },
        { head: "quantity", width: 22, align: "end", tabular: true, weight: 700 },
        { head: "what", share: 1.3 },
        { head: "from" },
      ],
      rows: scope.removed.map(({ quantity, what, where }) => ({
        cells: [{ text: "", check: true }, String(quantity), what, where.join(", ")],
      })),
    });
  }
  writeCautions(flow, ["DAT3"]);
  return pages();
}

const inGroups = (
  materials: readonly ScopeMaterial[],
): readonly (readonly [ScopeMaterial["group"], ScopeMaterial[]])[] =>
  (Object.keys(MATERIAL_GROUPS) as ScopeMaterial["group"][])
    .map((group) => [group, materials.filter((one) => one.group === group)] as const)
    .filter(([, all]) => all.length > 0);

const groupedRows = (materials: readonly ScopeMaterial[]): readonly TableRow[] =>
  inGroups(materials).flatMap(([group, all]) => [
    { cells: [{ text: MATERIAL_GROUPS[group], span: 4 }], group: true },
    ...alike(all).map((lines) => {
      const [{ unit, what }] = lines;
      const note = notesOf(lines);
      return {
        cells: [
          { text: "", check: true },
          `${sumOf(lines)}${UNIT_WORDS[unit]}`,
          { text: what, ...(note !== "" && { note }) },
          lines.flatMap(({ where }) => where).join(", "),
        ],
      };
    }),
  ]);

type AlikeLines = readonly [ScopeMaterial, ...ScopeMaterial[]];

/** One thing is one line to buy, though it is wanted for one reason here and for another there. */
function alike(materials: readonly ScopeMaterial[]): readonly AlikeLines[] {
  const lines = new Map<string, AlikeLines>();
  for (const one of materials) {
    const key = `${one.item ?? ""} ${one.what} ${one.unit}`;
    const known = lines.get(key);
    lines.set(key, known === undefined ? [one] : [...known, one]);
  }
  return [...lines.values()];
}

const sumOf = (lines: AlikeLines): number => lines.reduce((sum, { quantity }) => sum + quantity, 0);

/** What is to be known, each with how many of them it is told of where it is not all. */
const notesOf = (lines: AlikeLines): string =>
  lines
    .filter(({ note }) => note !== undefined)
    .map(({ quantity, unit, note }) => (lines.length === 1 ? note : `${quantity}${UNIT_WORDS[unit]}: ${note}`))
    .join("\n");

/** What is to be bought, and what comes out. */
export function materialTables({ scope }: SheetInput): readonly ListTable[] {
  return [
    {
      name: "Materials",
      columns: [
        { head: "Group", kind: "text", width: 14 },
        { head: "Item", kind: "text", width: 40 },
        { head: "Quantity", kind: "number", width: 10 },
        { head: "Unit", kind: "text", width: 8 },
        { head: "For", kind: "text", width: 50 },
        { head: "Note", kind: "text", width: 30 },
      ],
      rows: inGroups(scope?.materials ?? []).flatMap(([group, all]) =>
        all.map(({ what, quantity, unit, where, note }) => [
          MATERIAL_GROUPS[group],
          what,
          quantity,
          UNIT_NAMES[unit],
          where.join(", "),
          note,
        ]),
      ),
    },
    {
      name: "Taken out",
      columns: [
        { head: "Item", kind: "text", width: 40 },
        { head: "Quantity", kind: "number", width: 10 },
        { head: "From", kind: "text", width: 50 },
      ],
      rows: (scope?.removed ?? []).map(({ what, quantity, where }) => [what, quantity, where.join(", ")]),
    },
  ];
}
