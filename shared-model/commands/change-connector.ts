import { findConnector } from "../catalog/connectors.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { catalogText, idText, record, stateName } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand } from "./define-command.ts";
import { enclosureOr, noSuchPlace } from "./find-or-refuse.ts";
import { unnamed } from "./item-words.ts";
import { draftInstallation, forgetEvidence, written } from "./move-ends.ts";
import { noSuchConnector } from "./splice-ends.ts";

type Args = CommandArgs["change-connector"];

const wording = catalogue({
  change: (splice: Part, connector: Part) => `Change connector of ${splice} to ${connector}`,
});

/** Puts another connector on a splice. */
export const changeConnector = defineCommand<Args>({
  id: "change-connector",
  args: record<Args>({ state: stateName, enclosure: idText, splice: idText, connector: catalogText }),
  label(project, { state, enclosure, splice, connector }) {
    const name = getInstallation(project, state).enclosures[enclosure]?.splices[splice]?.name ?? unnamed.splice;
    return wording.change(name, findConnector(connector)?.title ?? connector);
  },
  refuse(project, { state, enclosure, splice, connector }) {
    const { found, no } = enclosureOr(project, state, enclosure);
    return no ?? noSuchPlace(found, { kind: "splice", splice }) ?? noSuchConnector(connector);
  },
  apply(draft, { state, enclosure, splice: id, connector }) {
    const splice = written(written(draftInstallation(draft, state).enclosures[enclosure]).splices[id]);
    if (splice.connector === connector) return;
    splice.connector = connector;
    forgetEvidence(splice, "connector");
  },
});
