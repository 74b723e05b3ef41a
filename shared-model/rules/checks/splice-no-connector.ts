import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import { getEndFacts } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { membersOf } from "../../queries/landings.ts";
import { describeMembers } from "../connector-capacity.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { isMixed } from "../metals.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  missing:
    "{count} conductors are joined at {splice} in {box} {how}. Join them in a connector listed for their sizes and number.",
  unknown:
    "Cannot tell whether {splice} in {box} has a connector listed for {set}: it is not recorded. Look, and record it.",
  soldered:
    "Cannot tell whether {splice} in {box} is sound: it is soldered. A soldered joint counts only when it was first made mechanically secure and is insulated; look, and record the connector or make the joint again.",
});

const wording = catalogue({
  connectorOf: (splice: Part, box: Part) => `the connector of ${splice} in ${box}`,
  join: (count: Part, connectors: Part) => `Join the ${count} conductors again: ${connectors}`,
});

const HOW: Readonly<Record<string, string>> = catalogue({
  none: "without a connector",
  taped: "with tape alone",
});

/** Two or more conductors held together by nothing, or by tape. */
export const spliceNoConnector = defineRule({
  id: "splice-no-connector",
  status: "stable",
  scope: "box",
  severity: "danger",
  summary: "Conductors that are joined must be held by a listed connector.",
  why: "A twist under tape loosens as it heats and cools; a loose joint arcs inside the wall. Old work often shows tape over a twist, and tape hides whether there is a connector underneath.",
  messages,
  sections: everyEdition("110.14(B)", "from-memory"),
  check({ enclosure, installation, state, report, cannotTell }) {
    for (const splice of inOrder(enclosure.splices)) {
      const ends = membersOf(enclosure, splice.id);
      const count = ends.length;
      if (count < 2) continue;
      const subjects = [subject("splice", splice)];
      const shown = { splice: splice.name, box: enclosure.name, count };
      const how = HOW[splice.connector];
      if (how !== undefined) {
        const fix = new MakeUpPlan(installation, enclosure, state)
          .touch(splice.id)
          .fix((connector) => wording.join(count, connector));
        report({
          subjects,
          message: fillIn(messages.missing, { ...shown, how }),
          data: { conductors: count },
          ...basisOf(marksOn(splice, "connector")),
          ...(fix !== undefined && { fix }),
        });
      } else if (splice.connector === "unknown" || splice.connector === "soldered") {
        const members = ends.map((end) => getEndFacts(installation, enclosure, end));
        // Of different metals another rule asks for the same connector.
        if (isMixed(members)) continue;
        cannotTell({
          subjects,
          message: fillIn(messages[splice.connector], { ...shown, set: describeMembers(members) }),
          missing: wording.connectorOf(splice.name, enclosure.name),
        });
      }
    }
  },
});
