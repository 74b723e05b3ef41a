import type { Draft } from "immer";
import { isId } from "../model/ids.ts";
import type { Reading } from "../model/project.ts";
import { nextOrder } from "../queries/in-order.ts";
import {
  type Check,
  endText,
  evidenceMark,
  flag,
  idText,
  listOf,
  oneOf,
  optional,
  record,
  stateName,
  tableOf,
  textUpTo,
} from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { idsInUse } from "./fresh-ids.ts";
import { copyOf } from "./plain-data.ts";

type Args = CommandArgs["add-reading"];
type Arrangement = NonNullable<Reading["arrangement"]>;

const evidence: Check = (value, at) => {
  const wrong = tableOf(evidenceMark)(value, at);
  return wrong ?? (Object.keys(value as object).every(isId) ? undefined : `${at} has a key that is not a field`);
};

/** Adds a measurement to the record. It stays what it was even when the drawing changes: it is evidence. */
export const addReading = defineCommand<Args>({
  id: "add-reading",
  args: record<Args>({
    id: idText,
    reading: record<Args["reading"]>({
      instrument: oneOf([
        "meter",
        "low-impedance-meter",
        "plug-in-tester",
        "noncontact",
        "continuity",
        "insulation",
        "own-test",
        "reset",
        "plug-in-button",
        "leak",
      ]),
      points: listOf(textUpTo(130)),
      value: textUpTo(200),
      unit: optional(textUpTo(20)),
      state: optional(stateName),
      arrangement: optional(
        record<Arrangement>({
          switches: optional(tableOf(textUpTo(40))),
          off: optional(listOf(idText)),
          capped: optional(listOf(endText)),
          idle: optional(listOf(idText)),
        }),
      ),
      computed: optional(flag),
      takenAt: optional(textUpTo(40)),
      by: optional(textUpTo(100)),
      evidence: optional(evidence),
    }),
  }),
  label: (_project, { reading }) => `Add reading ${reading.value}`.trimEnd(),
  refuse(project, { id, reading }) {
    if (reading.points.length < 1 || reading.points.length > 2)
      return refusal("reading-needs-points", "A reading is taken at one point or between two. Pick one or two points.");
    return idsInUse(project, id);
  },
  apply(draft, { id, reading }, before) {
    draft.readings[id] = { ...copyOf(reading), id, order: nextOrder(before.readings) } as Draft<Reading>;
  },
});
