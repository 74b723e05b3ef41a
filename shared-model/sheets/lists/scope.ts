import type { ScopeAnswer, ScopeBox, ScopeCounts, ScopeLabel, ScopeLine } from "../../answers/scope.ts";
import type { SheetInput } from "../../answers/sheet-input.ts";
import type { Page } from "../display-list.ts";
import type { Flow } from "../page/flow.ts";
import { TYPE } from "../page/flow-blocks.ts";
import { openListSheet } from "../page/list-sheet.ts";
import type { TableColumn, TableRow } from "../page/table-blocks.ts";
import type { ListCell, ListTable } from "../tables/table.ts";
import { firstSentence } from "./findings-words.ts";
import { figuresBlock, headed, isShown, legendBlock, nothingWords, sayNothing } from "./list-parts.ts";
import { LIST } from "./list-words.ts";
import {
  breakersOff,
  COUNT_WORDS,
  countWords,
  FINDING_GROUPS,
  KIND_WORDS,
  LEGEND,
  labelsOn,
  pieces,
  quoted,
  SCOPE,
  SCOPE_TABLES,
  SHOWN_COUNTS,
  slips,
  THING_WORDS,
  WORK_WORDS,
} from "./scope-words.ts";
import { scopeFlag, scopeLine, severitySign } from "./signs.ts";

/** @returns Why there is nothing to tell of; undefined where there is. */
export function noScope(input: SheetInput): string | undefined {
  const { scope, box } = input;
  if (scope === undefined) return nothingWords(input, LIST.nothingProposed);
  const isChanged =
    shownBoxes(input, scope).length > 0 ||
    shownLabels(input, scope).length > 0 ||
    (box === undefined && scope.elsewhere.length > 0);
  return isChanged ? undefined : nothingWords(input, SCOPE.noChange);
}

const shownBoxes = (input: SheetInput, { boxes }: ScopeAnswer): readonly ScopeBox[] =>
  boxes.filter(({ enclosure }) => isShown(input, enclosure));

/** Box by box what is kept, moved, removed and new, with what it counts. */
export function scopePages(input: SheetInput): readonly Page[] {
  const { flow, pages } = openListSheet(input, { kind: "scope", title: SCOPE.title, difference: true });
  const { scope } = input;
  if (scope === undefined) {
    sayNothing(flow, nothingWords(input, LIST.nothingProposed));
    return pages();
  }
  const boxes = shownBoxes(input, scope);
  const isWhole = input.box === undefined;
  if (boxes.length === 0 && (!isWhole || scope.elsewhere.length === 0))
    sayNothing(flow, nothingWords(input, SCOPE.noChange));
  else {
    flow.block(figuresBlock(flow.width, figuresOf(scope, boxes, isWhole)));
    flow.paragraph(SCOPE.moves, { size: TYPE.small });
    writeLegend(flow);
  }
  for (const box of boxes) {
    headed(flow, `${box.name}${box.note ? `, ${box.note}` : ""}`, headNote(box));
    writeLines(flow, box.lines);
  }
  // New labels are told with their count below.
  const elsewhere = scope.elsewhereLines.filter(
    ({ kind, items }) => kind !== "new" || !items.every((item) => item.kind === "label"),
  );
  if (isWhole && elsewhere.length > 0) {
    flow.heading(SCOPE.elsewhere);
    writeLines(flow, elsewhere);
  }
  writeLabels(flow, input, scope);
  if (isWhole) writeFindings(flow, scope);
  return pages();
}

function figuresOf(
  { totals }: ScopeAnswer,
  boxes: readonly ScopeBox[],
  isWhole: boolean,
): readonly { readonly value: string; readonly caption: string }[] {
  const sum = (key: keyof ScopeCounts): number =>
    isWhole ? totals[key] : boxes.reduce((all, { counts }) => all + counts[key], 0);
  return [
    { value: String(isWhole ? totals.boxes : boxes.length), caption: COUNT_WORDS.boxes },
    ...SHOWN_COUNTS.map((key) => ({ value: String(sum(key)), caption: COUNT_WORDS[key] })),
  ];
}

const countsNote = (counts: ScopeCounts): readonly string[] =>
  SHOWN_COUNTS.filter((key) => counts[key] > 0).map((key) => countWords(key, counts[key]));

const headNote = ({ work, breakers, counts }: ScopeBox): string =>
  [WORK_WORDS[work], breakersOff(breakers.map(({ name }) => name)), ...countsNote(counts)].filter(Boolean).join(", ");

const LINE_COLUMNS: readonly TableColumn[] = [
  { head: SCOPE.what, share: 2, weight: 600 },
  { head: SCOPE.asFound, share: 1.2 },
  { head: SCOPE.proposed, share: 1.6, weight: 600 },
];

const writeLines = (flow: Flow, lines: readonly ScopeLine[]): void =>
  flow.table({
    columns: LINE_COLUMNS,
    rows: lines.map(
      ({ kind, title, was, will }): TableRow => ({
        cells: [{ text: title, sign: scopeFlag(kind) }, was ?? "", will],
      }),
    ),
  });

/** Flags and lines as the drawing has them. */
function writeLegend(flow: Flow): void {
  flow.block(
    legendBlock(
      flow.width,
      LEGEND.map(([kind, drawn, words]) => [[scopeFlag(kind), scopeLine(drawn, 9)], words]),
    ),
  );
  flow.paragraph(SCOPE.changedLegend, { size: TYPE.small });
}

const shownLabels = (input: SheetInput, { labels }: ScopeAnswer): readonly ScopeLabel[] =>
  labels.filter(({ box }) => isShown(input, box?.id));

function writeLabels(flow: Flow, input: SheetInput, scope: ScopeAnswer): void {
  const worded = new Map<string, ScopeLabel[]>();
  for (const label of shownLabels(input, scope)) {
    const key = `${label.kind === "reset-slip"} ${label.wording}`;
    worded.set(key, [...(worded.get(key) ?? []), label]);
  }
  if (worded.size === 0) return;
  flow.heading(SCOPE.labelsRecord, SCOPE.fromProof);
  flow.table({
    columns: LINE_COLUMNS,
    rows: [...worded.values()].map((all) => {
      const [first] = all;
      const count = first?.kind === "reset-slip" ? slips(all.length) : pieces(all.length);
      const names = all.map(({ on }) => on.name).join(", ");
      return { cells: [{ text: quoted(first?.wording ?? ""), sign: scopeFlag("new") }, "", labelsOn(count, names)] };
    }),
  });
}

function writeFindings(flow: Flow, { findings }: ScopeAnswer): void {
  const groups = (Object.keys(FINDING_GROUPS) as (keyof typeof FINDING_GROUPS)[]).filter(
    (key) => findings[key].length > 0,
  );
  if (groups.length === 0) return;
  flow.heading(SCOPE.findings);
  flow.table({
    columns: [{ head: "", width: 32, weight: 600 }, { head: SCOPE.at, width: 30 }, { head: SCOPE.what }],
    rows: groups.flatMap((key) =>
      findings[key].map((finding, i) => ({
        cells: [
          i === 0 ? FINDING_GROUPS[key] : "",
          { text: finding.subjects.map(({ name }) => name).join(", "), sign: severitySign(finding.severity) },
          firstSentence(finding.message),
        ],
      })),
    ),
  });
}

/** Every line, the counts of every box, and every change. */
export function scopeTables(input: SheetInput): readonly ListTable[] {
  const { scope } = input;
  const boxes = (scope?.boxes ?? []).filter(({ enclosure }) => isShown(input, enclosure));
  const lines = [
    ...boxes.flatMap(({ name, lines: own }) => own.map((one) => [name, one] as const)),
    ...(input.box === undefined ? (scope?.elsewhereLines ?? []) : []).map((one) => ["", one] as const),
  ];
  const changes = [
    ...boxes.flatMap(({ name, changes: own }) => own.map((one) => [name, one] as const)),
    ...(input.box === undefined ? (scope?.elsewhere ?? []) : []).map((one) => ["", one] as const),
  ];
  return [
    {
      name: SCOPE_TABLES.scope,
      columns: [
        { head: SCOPE_TABLES.box, kind: "text", width: 10 },
        { head: SCOPE_TABLES.kind, kind: "text", width: 14 },
        { head: SCOPE_TABLES.what, kind: "text", width: 32 },
        { head: SCOPE_TABLES.asFound, kind: "text", width: 24 },
        { head: SCOPE_TABLES.proposed, kind: "text", width: 32 },
      ],
      rows: lines.map(([box, { kind, title, was, will }]) => [box, KIND_WORDS[kind], title, was, will]),
    },
    {
      name: SCOPE_TABLES.counts,
      columns: [
        { head: SCOPE_TABLES.box, kind: "text", width: 10 },
        { head: SCOPE_TABLES.work, kind: "text", width: 14 },
        ...(["detach", "attach", "newJoints", "devices", "newJumpers", "newCables"] as const).map((key) => ({
          head: SCOPE_TABLES[key],
          kind: "number" as const,
          width: 11,
        })),
      ],
      rows: boxes.map(({ name, work, counts }): readonly ListCell[] => [
        name,
        WORK_WORDS[work],
        counts.detach,
        counts.attach,
        counts.newJoints,
        counts.devices,
        counts.newJumpers,
        counts.newCables,
      ]),
    },
    {
      name: SCOPE_TABLES.changes,
      columns: [
        { head: SCOPE_TABLES.box, kind: "text", width: 10 },
        { head: SCOPE_TABLES.kind, kind: "text", width: 12 },
        { head: SCOPE_TABLES.thing, kind: "text", width: 12 },
        { head: SCOPE_TABLES.name, kind: "text", width: 20 },
        { head: SCOPE_TABLES.was, kind: "text", width: 24 },
        { head: SCOPE_TABLES.willBe, kind: "text", width: 24 },
        { head: SCOPE_TABLES.detach, kind: "number", width: 8 },
        { head: SCOPE_TABLES.attach, kind: "number", width: 8 },
        { head: SCOPE_TABLES.key, kind: "text", width: 24 },
      ],
      rows: changes.map(([box, { key, kind, item, was, will, detach, attach }]) => [
        box,
        KIND_WORDS[kind],
        THING_WORDS[item.kind],
        item.name,
        was?.words,
        will?.words,
        detach,
        attach,
        key,
      ]),
    },
  ];
}
