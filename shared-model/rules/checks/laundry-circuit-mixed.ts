import { templates } from "../../lib/catalogue.ts";
import { circuitsFor, reportMixed } from "../dedicated-circuits.ts";
import { defineRule } from "../rule.ts";
import { everyEdition } from "../rule-parts.ts";

const messages = templates({
  existing:
    "The laundry circuit of {breaker} in {panel} ({own}) also feeds {others}. It may stay; think before you hang more on it.",
  introduced:
    "The laundry circuit of {breaker} in {panel} ({own}) also feeds {others}. A laundry gets a 20 A circuit for its receptacles alone. Feed {others} from elsewhere.",
});

export const laundryCircuitMixed = defineRule({
  id: "laundry-circuit-mixed",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "The 20 A laundry circuit must feed laundry receptacles and nothing else.",
  why: "A washer and an iron at once take what the circuit has. In older houses the laundry shares its circuit with half of the basement; that is noted and need not be changed, but what is added to it is today's work. A 20 A circuit with a receptacle in a laundry counts as the laundry circuit; one of another rating is not taken for it.",
  messages,
  sections: everyEdition("210.11(C)(2)", "from-memory"),
  check(context) {
    const circuits = circuitsFor(context, {
      isOwn: ({ outlet }, kinds) => outlet.receptacle && kinds.has("laundry"),
      mayShare: () => false,
    });
    for (const circuit of circuits) if (circuit.others.length > 0) reportMixed(context, messages, circuit);
  },
});
