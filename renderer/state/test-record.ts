import type { OutletKey, ReadingId } from "../../shared-model/model/ids.ts";
import type { Project, Reading, ReadingInstrument } from "../../shared-model/model/project.ts";
import type { ExpectedTest, RecordStage } from "../../shared-model/model/test-record.ts";
import { outletsOf } from "../../shared-model/queries/outlets-of.ts";
import { OPEN, outletsValue, VALUE_KINDS } from "../../shared-model/queries/recorded-value.ts";
import { readingOfTest } from "../../shared-model/queries/taken-test.ts";
import { installationAt, type RecordGroup, type RecordRow } from "../../shared-model/queries/test-record.ts";
import { type Dispatched, dispatch, documentStore } from "./document-store.ts";
import { mintId } from "./mint-id.ts";
import { preferencesStore } from "./preferences-store.ts";
import { createStore, type Store } from "./store.ts";

/** With what, by whom and when is tested now; for every line that is written from here on. */
export interface TestedBy {
  readonly by: string;
  /** Day as "2026-05-04". */
  readonly day: string;
  readonly instrument: ReadingInstrument;
  readonly instrumentId: string;
}

const today = (): string => {
  const now = new Date();
  const two = (part: number): string => String(part).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

export const testedByStore: Store<TestedBy> = createStore<TestedBy>({
  by: preferencesStore.get().name,
  day: today(),
  instrument: "meter",
  instrumentId: "",
});

/** What a person entered at one cell: a text or a word, or for a button the outlets that followed. */
export type Entered = { readonly text: string } | { readonly outlets: readonly OutletKey[] };

/** A place of the record that is written to. */
export interface RecordPlace {
  readonly row: Pick<RecordRow, "test" | "item" | "points" | RecordStage>;
  readonly stage: RecordStage;
  readonly box: string;
  readonly expected: ExpectedTest | undefined;
}

const DONE: Dispatched = { ok: true };

/** Writes a result down, corrects the one that is there, or with an empty text takes it away. One undo step. */
export function enterTest({ row, stage, box, expected }: RecordPlace, entered: Entered): Dispatched {
  const was = row[stage];
  if ("text" in entered && entered.text.trim() === "") return was === undefined ? DONE : removeTest(was.id);
  const { project } = documentStore.get();
  const point = row.points[stage] ?? was?.points[0];
  if (point === undefined) return DONE;
  const { by, day, instrument, instrumentId } = testedByStore.get();
  const value =
    "text" in entered ? valueTyped(row, entered.text) : valueOfOutlets(project, row, stage, entered.outlets);
  const told = expected ?? was?.record?.expected;
  const reading = readingOfTest(project, {
    stage,
    test: row.test,
    point,
    item: nameAt(project, stage, point) ?? row.item,
    box,
    value,
    ...("outlets" in entered && { outlets: entered.outlets }),
    ...(told !== undefined && { expected: told }),
    instrument,
    instrumentId,
    takenAt: day,
    by,
    ...(was?.remark !== undefined && { remark: was.remark }),
  });
  if (was !== undefined) return dispatch({ command: "change-reading", args: { id: was.id, reading } });
  return dispatch({ command: "add-reading", args: { id: mintId<ReadingId>("m"), reading } });
}

export const removeTest = (id: ReadingId): Dispatched => dispatch({ command: "remove-reading", args: { id } });

/** Writes a remark on a reading; an empty text takes it away. */
export function remarkOn({ id, order: _order, remark: _was, ...reading }: Reading, text: string): Dispatched {
  const remark = text.trim();
  return dispatch({
    command: "change-reading",
    args: { id, reading: { ...reading, ...(remark !== "" && { remark }) } },
  });
}

/** A decimal comma, and the unit behind a figure, are what people type. */
function valueTyped({ test }: Pick<RecordRow, "test">, text: string): string {
  const kind = VALUE_KINDS[test];
  const typed = text.trim();
  if (kind !== "volts" && kind !== "ohms") return typed;
  if (typed.toLowerCase() === OPEN) return OPEN;
  const [, figure] = /^([\d.,]+)\s*(v|volts?|ohms?|Ω)?$/i.exec(typed) ?? [];
  const number = Number((figure ?? typed).replace(",", "."));
  return figure !== undefined && Number.isFinite(number) ? String(Number(number.toFixed(3))) : typed;
}

function valueOfOutlets(
  project: Project,
  { test }: Pick<RecordRow, "test">,
  stage: RecordStage,
  outlets: readonly OutletKey[],
): string {
  const names = outletNames(project, stage);
  return outletsValue(
    test,
    outlets.map((key) => names.get(key) ?? key),
  );
}

/** Names of all outlets that the wiring of a stage has. */
export function outletNames(project: Project, stage: RecordStage): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  for (const { devices } of Object.values(installationAt(project, stage).enclosures))
    for (const device of Object.values(devices))
      for (const { key, name } of outletsOf(device)) names.set(key as string, name);
  return names;
}

/** How what is tested is called in the wiring of its stage: R1 before the work, R1b after it. */
function nameAt(project: Project, stage: RecordStage, point: string): string | undefined {
  const named = outletNames(project, stage).get(point);
  if (named !== undefined) return named;
  const { enclosures } = installationAt(project, stage);
  for (const { id, name, devices } of Object.values(enclosures)) {
    if (id === point) return name;
    for (const device of Object.values(devices)) if (device.id === point) return device.name;
  }
  return undefined;
}

/** How much of the record is filled, and how many of its readings differ is told by who compares. */
export function countRecord(groups: readonly RecordGroup[]): {
  readonly before: number;
  readonly after: number;
  readonly due: number;
} {
  const rows = groups.flatMap((group) => group.rows);
  const measured = (stage: RecordStage): number => rows.filter((row) => row[stage] !== undefined).length;
  const due = rows.filter((row) => row.points.after !== undefined).length;
  return { before: measured("before"), after: measured("after"), due };
}
