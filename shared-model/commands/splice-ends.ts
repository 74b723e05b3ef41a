import type { Draft } from "immer";
import { findConnector } from "../catalog/connectors.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { EnclosureId, EndKey, SpliceId } from "../model/ids.ts";
import { jumperEnd, parseEnd } from "../model/ids.ts";
import type { At } from "../model/place.ts";
import type { Project, StateName } from "../model/project.ts";
import { nameOfEnd } from "../queries/end-facts.ts";
import { nextOrder } from "../queries/in-order.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { catalogText, endText, flag, idText, listOf, nameText, optional, record, stateName } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, type Refusal, refusal } from "./define-command.ts";
import { enclosureOr, endOr } from "./find-or-refuse.ts";
import { idsInUse } from "./fresh-ids.ts";
import { notInStock } from "./item-words.ts";
import { assumed } from "./make-device.ts";
import { draftInstallation, moveEnds, written } from "./move-ends.ts";

type Args = CommandArgs["splice-ends"];

const wording = catalogue({
  bothEnds: (jumper: Part) => `Both ends of jumper ${jumper} would be in one splice. Leave one of them out.`,
  splice: (count: Part, name: Part) => `Splice ${count} ends as ${name}`,
  tooFew: "A splice joins at least two different ends. Pick another end for it.",
});

/** Joins two or more ends of one enclosure in a new splice, taking them off whatever they were on. */
export const spliceEnds = defineCommand<Args>({
  id: "splice-ends",
  args: record<Args>({
    state: stateName,
    enclosure: idText,
    splice: idText,
    name: nameText,
    connector: catalogText,
    connectorAssumed: optional(flag),
    ends: listOf(endText),
  }),
  label: (_project, { name, ends }) => wording.splice(ends.length, name),
  refuse(project, { state, enclosure, splice, connector, ends }) {
    const { found, no } = enclosureOr(project, state, enclosure);
    if (no !== undefined) return no;
    const chosen = new Set(ends);
    if (chosen.size < ends.length || ends.length < 2) return refusal("too-few-ends", wording.tooFew);
    for (const end of ends) {
      const missing = endOr(project, state, enclosure, end).no;
      if (missing !== undefined) return missing;
      const parsed = parseEnd(end);
      if (parsed?.of === "jumper" && parsed.side === "a" && chosen.has(jumperEnd(parsed.jumper, "b")))
        return refusal("jumper-to-itself", wording.bothEnds(nameOfEnd(found.installation, found.enclosure, end)));
    }
    return noSuchConnector(connector) ?? idsInUse(project, splice);
  },
  apply(draft, { state, enclosure, splice, name, connector, connectorAssumed, ends }, before) {
    makeSplice(draft, state, enclosure, { id: splice, name, connector, connectorAssumed }, before);
    moveEnds(
      draft,
      state,
      enclosure,
      new Map<EndKey, At>(ends.map((end) => [end, { kind: "splice", splice }])),
      before,
    );
  },
});

const BARE_WAYS: ReadonlySet<string> = new Set(["none", "taped", "soldered", "unknown"]);

export function noSuchConnector(connector: string): Refusal | undefined {
  if (BARE_WAYS.has(connector) || findConnector(connector) !== undefined) return undefined;
  return refusal("unknown-catalog-item", notInStock.connector(connector));
}

/** Adds an empty splice, for a command that fills it at once. */
export function makeSplice(
  draft: Draft<Project>,
  state: StateName,
  enclosure: EnclosureId,
  {
    connectorAssumed,
    ...splice
  }: {
    readonly id: SpliceId;
    readonly name: string;
    readonly connector: string;
    /** Nobody picked the connector, and there is one. */
    readonly connectorAssumed: boolean | undefined;
  },
  before: Project,
): void {
  const order = nextOrder(written(getInstallation(before, state).enclosures[enclosure]).splices);
  written(draftInstallation(draft, state).enclosures[enclosure]).splices[splice.id] = {
    ...splice,
    order,
    ...(connectorAssumed && findConnector(splice.connector) && { evidence: assumed(["connector"]) }),
  };
}
