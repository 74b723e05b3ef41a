import type { ProtectionRow, SheetInput } from "../../answers/sheet-input.ts";
import type { OutletWish } from "../../model/project.ts";
import type { Page } from "../display-list.ts";
import { TYPE } from "../page/flow-blocks.ts";
import { openListSheet } from "../page/list-sheet.ts";
import type { TableCell, TableRow } from "../page/table-blocks.ts";
import type { ListTable } from "../tables/table.ts";
import { figuresBlock, isShown, nothingWords, sayNothing, shownState, writeCautions } from "./list-parts.ts";
import { listed } from "./list-words.ts";
import { decidedNot, PROTECTION, PROTECTION_TABLE, QUIET_VERDICTS, TESTS, VERDICTS } from "./protection-words.ts";
import { severitySign } from "./signs.ts";

type TestName = keyof typeof TESTS;
const TEST_NAMES = Object.keys(TESTS) as TestName[];

/** @returns Why there is no outlet to tell of; undefined where there is one. */
export const noOutlets = (input: SheetInput): string | undefined =>
  shownRows(input).length > 0 ? undefined : nothingWords(input, PROTECTION.noOutlets);

/** Outlet by outlet who asks for protection, what gives it, and the proof in words. */
export function protectionPages(input: SheetInput): readonly Page[] {
  const { flow, pages } = openListSheet(input, {
    kind: "protection",
    title: PROTECTION.title,
    orientation: "landscape",
  });
  const nothing = noOutlets(input);
  if (nothing !== undefined) {
    sayNothing(flow, nothing);
    return pages();
  }
  const rows = shownRows(input);
  flow.block(figuresBlock(flow.width, figuresOf(rows)));
  if (!input.protection.isListHeld) flow.paragraph(PROTECTION.noList, { weight: 600 });
  flow.table({
    columns: [
      { head: PROTECTION.outlet, width: 31, weight: 700 },
      { head: PROTECTION.room, width: 29 },
      { head: PROTECTION.requiredBy, width: 25 },
      { head: PROTECTION.protectedBy, width: 32 },
      ...TEST_NAMES.map((head) => ({ head, width: 10, align: "middle" as const })),
      { head: PROTECTION.proof },
    ],
    rows: rows.map((row) => tableRow(input, row)),
  });
  const legend = TEST_NAMES.map((test) => `${test} ${TESTS[test]}.`).join(" ");
  flow.space(2);
  flow.paragraph(`${PROTECTION.testsAre} ${legend}`, { size: TYPE.small });
  writeCautions(flow, ["LIM1", "LIM2", "LIM3", "LIM5", "LIM6", "LIM7"]);
  return pages();
}

const shownRows = (input: SheetInput): readonly ProtectionRow[] =>
  input.protection.rows.filter(({ enclosure }) => isShown(input, enclosure.id));

function figuresOf(rows: readonly ProtectionRow[]): readonly { readonly value: string; readonly caption: string }[] {
  const count = (test: (row: ProtectionRow) => boolean): string => String(rows.filter(test).length);
  return [
    { value: count(({ isAsked }) => isAsked), caption: PROTECTION.asked },
    { value: count(({ isAsked, isProtected }) => isAsked && isProtected), caption: PROTECTION.askedAndProved },
    { value: count(({ isAsked, isProtected }) => isAsked && !isProtected), caption: PROTECTION.open },
    { value: count(({ isAsked, isProtected }) => !isAsked && isProtected), caption: PROTECTION.others },
  ];
}

const wishOf = (input: SheetInput, { outlet }: ProtectionRow): OutletWish | undefined =>
  (shownState(input).intent.outlets as Readonly<Record<string, OutletWish>>)[outlet.id];

function tableRow(input: SheetInput, row: ProtectionRow): TableRow {
  const { outlet, enclosure, room, requiredBy, tests, reason, isAsked, isProtected } = row;
  const wish = wishOf(input, row);
  const decided = wish?.wish === "decided-not" ? decidedNot(wish.by, wish.reason) : undefined;
  const wished = wish?.wish === "protect" ? [wish.by, wish.reason].filter(Boolean).join(": ") : "";
  const open = isAsked && !isProtected;
  return {
    cells: [
      { text: outlet.name, note: PROTECTION.in(enclosure.name) },
      room ?? "",
      { text: requiredBy ?? PROTECTION.nobodyAsks, ...(wished !== "" && { note: wished }) },
      {
        text: byWords(row),
        ...(open && { weight: 700, sign: severitySign("violation") }),
        ...noteOf(row),
      },
      ...TEST_NAMES.map(
        (test): TableCell => ({
          text: (isAsked ? VERDICTS : QUIET_VERDICTS)[tests[test]],
          ...(isAsked && tests[test] === "fail" && { weight: 700 }),
        }),
      ),
      { text: reason, ...(decided !== undefined && { note: decided }) },
    ],
  };
}

const byWords = ({ isProtected, protectedBy }: ProtectionRow): string =>
  !isProtected || protectedBy.length === 0
    ? PROTECTION.notProtected
    : listed(
        protectedBy.map(({ name, enclosure }) =>
          enclosure === undefined ? name : PROTECTION.deviceIn(name, enclosure),
        ),
      );

function noteOf({ bySetting, told, protectedBy }: ProtectionRow): { readonly note?: string } {
  if (bySetting) return { note: PROTECTION.bySetting };
  const isTold = told !== undefined && !protectedBy.some(({ name }) => name === told);
  return isTold ? { note: PROTECTION.toldOf(told) } : {};
}

/** One row an outlet. */
export function protectionTables(input: SheetInput): readonly ListTable[] {
  return [
    {
      name: PROTECTION_TABLE.name,
      columns: [
        { head: PROTECTION_TABLE.outlet, kind: "text", width: 12 },
        { head: PROTECTION_TABLE.box, kind: "text", width: 10 },
        { head: PROTECTION_TABLE.room, kind: "text", width: 24 },
        { head: PROTECTION_TABLE.requiredBy, kind: "text", width: 18 },
        { head: PROTECTION_TABLE.asked, kind: "yes-no", width: 10 },
        { head: PROTECTION_TABLE.protected, kind: "yes-no", width: 10 },
        { head: PROTECTION_TABLE.protectedBy, kind: "text", width: 22 },
        ...TEST_NAMES.map((head) => ({ head, kind: "text" as const, width: 10 })),
        { head: PROTECTION_TABLE.proof, kind: "text", width: 70 },
        { head: PROTECTION_TABLE.decision, kind: "text", width: 40 },
      ],
      rows: shownRows(input).map((row) => {
        const wish = wishOf(input, row);
        return [
          row.outlet.name,
          row.enclosure.name,
          row.room,
          row.requiredBy,
          row.isAsked,
          row.isProtected,
          row.isProtected ? listed(row.protectedBy.map(({ name }) => name)) : undefined,
          ...TEST_NAMES.map((test) => QUIET_VERDICTS[row.tests[test]]),
          row.reason,
          wish?.wish === "decided-not" ? decidedNot(wish.by, wish.reason) : undefined,
        ];
      }),
    },
  ];
}
