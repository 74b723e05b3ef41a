import { findConnector } from "../../catalog/connectors.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import { inSentence } from "../../lib/in-sentence.ts";
import { takes } from "../../queries/connector-takes.ts";
import { getEndFacts } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { membersOf } from "../../queries/landings.ts";
import { describeCapacity, describeMembers } from "../connector-capacity.ts";
import { fittingConnector } from "../fitting-connector.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  over: "{splice} in {box} holds {set}; its connector ({connector}) takes {capacity}. {cure}",
});

const wording = catalogue({
  change: (connectors: Part) => `Change the connector: ${connectors}`,
  split: (splice: Part) => `Make two splices of ${splice} with one link`,
  splitOrListed: "Split it into two splices with one link, or use a connector listed for this set.",
  orSplit: (connector: Part) => `Use one that takes them (${connector}), or split it into two splices with one link.`,
});

/**
 * The connector's own table must name exactly what is in it: too few is as wrong as too many. A connector that is not
 * recorded is asked for once, by the rule that wants one at all.
 */
export const spliceOverCapacity = defineRule({
  id: "splice-over-capacity",
  status: "stable",
  scope: "box",
  severity: "violation",
  summary: "A connector must be listed for the number and sizes of conductors in it.",
  why: "A connector with one conductor too many does not grip all of them, and one with too few cannot be tightened. The rows shown are illustrative: the table on the package of the actual connector governs. A joint of seven is commonly made as two joints with one link. A connector that is not recorded is asked for elsewhere.",
  messages,
  sections: everyEdition("110.14(B), 110.3(B)", "from-memory"),
  check({ enclosure, installation, state, report }) {
    for (const splice of inOrder(enclosure.splices)) {
      const ends = membersOf(enclosure, splice.id);
      if (ends.length < 2) continue;
      const members = ends.map((end) => getEndFacts(installation, enclosure, end));
      const subjects = [subject("splice", splice)];
      const shown = { splice: splice.name, box: enclosure.name, set: describeMembers(members) };
      const connector = findConnector(splice.connector);
      if (connector === undefined || takes(connector, members)) continue;
      const better = fittingConnector(connector.id, members);
      const title = (words: string): string =>
        better === undefined ? wording.split(splice.name) : wording.change(words);
      const fix = new MakeUpPlan(installation, enclosure, state).touch(splice.id).fix(title);
      report({
        subjects,
        message: fillIn(messages.over, {
          ...shown,
          connector: inSentence(connector.title),
          capacity: describeCapacity(connector, members),
          cure: better === undefined ? wording.splitOrListed : wording.orSplit(inSentence(better.title)),
        }),
        data: { conductors: members.length, set: shown.set, connector: connector.id },
        ...basisOf(marksOn(splice, "connector")),
        ...(fix !== undefined && { fix }),
      });
    }
  },
});
