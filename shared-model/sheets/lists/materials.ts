import type { ScopeMaterial } from "../../answers/scope.ts";
import type { SheetInput } from "../../answers/sheet-input.ts";
import type { Page } from "../display-list.ts";
import { TYPE } from "../page/flow-blocks.ts";
import { openListSheet } from "../page/list-sheet.ts";
import type { TableRow } from "../page/table-blocks.ts";
import type { ListTable } from "../tables/table.ts";
import { nothingWords, sayNothing, writeCautions } from "./list-parts.ts";
import { LIST } from "./list-words.ts";
import { MATERIAL_GROUPS, MATERIAL_TABLES, MATERIALS, quantityWords, UNIT_NAMES } from "./material-words.ts";

/** @returns Why there is nothing to list; undefined where there is. */
export function noMaterials(input: SheetInput): string | undefined {
  const { scope } = input;
  if (scope === undefined) return nothingWords(input, LIST.nothingProposed);
  return scope.materials.length + scope.removed.length > 0 ? undefined : nothingWords(input, MATERIALS.none);
}

/** What is to be bought and what comes out, in generic words: always of the whole job. */
export function materialPages(input: SheetInput): readonly Page[] {
  const { flow, pages } = openListSheet(input, { kind: "materials", title: MATERIALS.title, difference: true });
  const { scope } = input;
  const nothing = noMaterials(input);
  if (scope === undefined || nothing !== undefined) {
    sayNothing(flow, nothing ?? LIST.nothingProposed);
    return pages();
  }
  if (scope.materials.length === 0) flow.paragraph(MATERIALS.none);
  else {
    flow.paragraph(MATERIALS.note, { size: TYPE.small });
    flow.table({
      columns: [
        { head: MATERIALS.have, width: 12 },
        { head: MATERIALS.quantity, width: 22, align: "end", tabular: true, weight: 700 },
        { head: MATERIALS.what, share: 1.3 },
        { head: MATERIALS.for },
      ],
      rows: groupedRows(scope.materials),
    });
  }
  if (scope.removed.length > 0) {
    flow.heading(MATERIALS.takenOut, MATERIALS.takenOutNote);
    flow.table({
      columns: [
        { head: MATERIALS.out, width: 12 },
        { head: MATERIALS.quantity, width: 22, align: "end", tabular: true, weight: 700 },
        { head: MATERIALS.what, share: 1.3 },
        { head: MATERIALS.from },
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
          quantityWords(sumOf(lines), unit),
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
    .flatMap(({ quantity, unit, note }) => {
      if (note === undefined) return [];
      return lines.length === 1 ? [note] : [MATERIALS.noteOf(quantityWords(quantity, unit), note)];
    })
    .join("\n");

/** What is to be bought, and what comes out. */
export function materialTables({ scope }: SheetInput): readonly ListTable[] {
  return [
    {
      name: MATERIAL_TABLES.materials,
      columns: [
        { head: MATERIAL_TABLES.group, kind: "text", width: 14 },
        { head: MATERIAL_TABLES.item, kind: "text", width: 40 },
        { head: MATERIAL_TABLES.quantity, kind: "number", width: 10 },
        { head: MATERIAL_TABLES.unit, kind: "text", width: 8 },
        { head: MATERIAL_TABLES.for, kind: "text", width: 50 },
        { head: MATERIAL_TABLES.note, kind: "text", width: 30 },
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
      name: MATERIAL_TABLES.takenOut,
      columns: [
        { head: MATERIAL_TABLES.item, kind: "text", width: 40 },
        { head: MATERIAL_TABLES.quantity, kind: "number", width: 10 },
        { head: MATERIAL_TABLES.from, kind: "text", width: 50 },
      ],
      rows: (scope?.removed ?? []).map(({ what, quantity, where }) => [what, quantity, where.join(", ")]),
    },
  ];
}
