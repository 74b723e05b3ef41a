import type { Draft } from "immer";
import { catalogue } from "../lib/catalogue.ts";
import { sameValue } from "../lib/same-value.ts";
import type { Project, Reading } from "../model/project.ts";
import { readingLabel, readingShape, refuseReading } from "./args-of-reading.ts";
import { idText, record } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, type Refusal, refusal } from "./define-command.ts";
import { copyOf } from "./plain-data.ts";

type Args = CommandArgs["change-reading"];

const wording = catalogue({
  gone: "This reading is no longer in the document.",
  same: "The reading says this already.",
});

/** Corrects a reading, as after a slip of the pen. It keeps its place; fields of a newer program stay on it. */
export const changeReading = defineCommand<Args>({
  id: "change-reading",
  args: record<Args>({ id: idText, reading: readingShape }),
  label: (_project, { reading }) => readingLabel(reading, "correct"),
  refuse(project, { id, reading }) {
    const no = noSuchReading(project, id) ?? refuseReading(reading);
    if (no !== undefined) return no;
    return sameValue(corrected(project.readings[id] as Reading, reading), project.readings[id])
      ? refusal("nothing-to-change", wording.same)
      : undefined;
  },
  apply(draft, { id, reading }, before) {
    draft.readings[id] = copyOf(corrected(before.readings[id] as Reading, reading)) as Draft<Reading>;
  },
});

/** Fields of a reading that a person enters: one that is left out is taken away. */
const ENTERED: ReadonlySet<string> = new Set<keyof Reading>([
  "instrument",
  "points",
  "value",
  "unit",
  "state",
  "arrangement",
  "computed",
  "takenAt",
  "by",
  "instrumentId",
  "remark",
  "record",
  "survey",
  "evidence",
]);

function corrected(was: Reading, reading: Args["reading"]): Reading {
  const kept = Object.fromEntries(Object.entries(was).filter(([field]) => !ENTERED.has(field)));
  return { ...kept, ...reading, id: was.id, order: was.order };
}

/** For what was taken away meanwhile, as by undo. */
export const noSuchReading = ({ readings }: Project, id: string): Refusal | undefined =>
  id in readings ? undefined : refusal("no-such-reading", wording.gone);
