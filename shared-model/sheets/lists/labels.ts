import type { SheetInput } from "../../answers/sheet-input.ts";
import type { Label } from "../../model/project.ts";
import { findDevice } from "../../queries/find-item.ts";
import { inOrder } from "../../queries/in-order.ts";
import type { Page } from "../display-list.ts";
import { pt } from "../marks.ts";
import { openListSheet } from "../page/list-sheet.ts";
import type { ListTable } from "../tables/table.ts";
import { cutOutRows } from "./cut-outs.ts";
import { LABEL_TABLES, LABELS } from "./label-words.ts";
import { isShown, nothingWords, sayNothing, shownState, writeCautions } from "./list-parts.ts";

/** One label to make: the exact words, and what it goes on. */
interface LabelToFix {
  readonly wording: string;
  readonly on: string;
  readonly box?: string;
  readonly requiredBy?: string;
  readonly because?: string;
}

/** @returns Why there is no label to fix; undefined where there is one. */
export const noLabels = (input: SheetInput): string | undefined =>
  labelsOf(input).length > 0 ? undefined : nothingWords(input, LABELS.none);

/** A count by words, then every label to cut out, as often as it is needed. */
export function labelPages(input: SheetInput): readonly Page[] {
  const { flow, pages } = openListSheet(input, { kind: "labels", title: LABELS.title });
  const nothing = noLabels(input);
  if (nothing !== undefined) {
    sayNothing(flow, nothing);
    return pages();
  }
  const worded = byWording(labelsOf(input));
  flow.table({
    columns: [
      { head: LABELS.count, width: 16, align: "end", tabular: true, weight: 700 },
      { head: LABELS.words, share: 1.2, weight: 600 },
      { head: LABELS.where, share: 1.6 },
    ],
    rows: worded.map(([wording, all]) => ({
      cells: [
        String(all.length),
        { text: wording, note: [...new Set(all.flatMap(({ requiredBy }) => requiredBy ?? []))].join(", ") },
        all.map(whereOf).join(", "),
      ],
    })),
  });
  flow.paragraph(LABELS.how);
  const cutOuts = worded.flatMap(([, all]) =>
    all.map((label) => ({ lines: [{ words: label.wording, size: pt(12), bold: true }], below: whereOf(label) })),
  );
  const grid = { columns: 3, height: 15, centred: true };
  for (const row of cutOutRows(flow.width, flow.height, grid, cutOuts)) flow.block(row);
  writeCautions(flow, ["LIM3", "LIM4"]);
  return pages();
}

const whereOf = ({ on, box }: LabelToFix): string => (box === undefined || box === on ? on : LABELS.onIn(on, box));

/** Of the scope where there is one: what is required and what is drawn; else what is drawn. */
function labelsOf(input: SheetInput): readonly LabelToFix[] {
  const { scope, state } = input;
  if (scope === undefined || state === "as-found")
    return inOrder<Label>(shownState(input).labels).flatMap((label) => drawnLabel(input, label));
  return scope.labels
    .filter(({ kind, box }) => kind !== "reset-slip" && isShown(input, box?.id))
    .map(({ wording, on, box, requiredBy, because }) => ({
      wording,
      on: on.name,
      ...(box !== undefined && { box: box.name }),
      ...(requiredBy !== undefined && { requiredBy }),
      because,
    }));
}

function drawnLabel(input: SheetInput, { wording, on, requiredBy }: Label): readonly LabelToFix[] {
  const installation = shownState(input);
  const asked = requiredBy === undefined ? {} : { requiredBy };
  if ("cable" in on)
    return input.box === undefined ? [{ wording, on: installation.cables[on.cable]?.name ?? on.cable, ...asked }] : [];
  if ("enclosure" in on)
    return isShown(input, on.enclosure)
      ? [{ wording, on: installation.enclosures[on.enclosure]?.name ?? on.enclosure, ...asked }]
      : [];
  const found = findDevice(installation, on.device);
  return isShown(input, found?.enclosure.id)
    ? [{ wording, on: found?.device.name ?? on.device, ...(found && { box: found.enclosure.name }), ...asked }]
    : [];
}

function byWording(labels: readonly LabelToFix[]): readonly (readonly [string, readonly LabelToFix[]])[] {
  const worded = new Map<string, LabelToFix[]>();
  for (const label of labels) worded.set(label.wording, [...(worded.get(label.wording) ?? []), label]);
  return [...worded];
}

/** Words with their count, then one row a label. */
export function labelTables(input: SheetInput): readonly ListTable[] {
  const worded = byWording(labelsOf(input));
  return [
    {
      name: LABEL_TABLES.counts,
      columns: [
        { head: LABEL_TABLES.words, kind: "text", width: 40 },
        { head: LABEL_TABLES.count, kind: "number", width: 8 },
      ],
      rows: worded.map(([wording, all]) => [wording, all.length]),
    },
    {
      name: LABEL_TABLES.labels,
      columns: [
        { head: LABEL_TABLES.words, kind: "text", width: 40 },
        { head: LABEL_TABLES.on, kind: "text", width: 14 },
        { head: LABEL_TABLES.box, kind: "text", width: 10 },
        { head: LABEL_TABLES.requiredBy, kind: "text", width: 18 },
        { head: LABEL_TABLES.because, kind: "text", width: 40 },
      ],
      rows: worded.flatMap(([, all]) =>
        all.map(({ wording, on, box, requiredBy, because }) => [wording, on, box, requiredBy, because]),
      ),
    },
  ];
}
