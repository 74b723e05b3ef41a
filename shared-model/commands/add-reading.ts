import type { Draft } from "immer";
import type { Reading } from "../model/project.ts";
import { nextOrder } from "../queries/in-order.ts";
import { readingLabel, readingShape, refuseReading } from "./args-of-reading.ts";
import { idText, record } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand } from "./define-command.ts";
import { idsInUse } from "./fresh-ids.ts";
import { copyOf } from "./plain-data.ts";

type Args = CommandArgs["add-reading"];

/** Adds a measurement to the record. It stays what it was even when the drawing changes: it is evidence. */
export const addReading = defineCommand<Args>({
  id: "add-reading",
  args: record<Args>({ id: idText, reading: readingShape }),
  label: (_project, { reading }) => readingLabel(reading, "add"),
  refuse: (project, { id, reading }) => refuseReading(reading) ?? idsInUse(project, id),
  apply(draft, { id, reading }, before) {
    draft.readings[id] = { ...copyOf(reading), id, order: nextOrder(before.readings) } as Draft<Reading>;
  },
});
