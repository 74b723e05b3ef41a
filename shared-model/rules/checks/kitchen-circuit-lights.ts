import { templates } from "../../lib/catalogue.ts";
import { circuitsFor, reportMixed } from "../dedicated-circuits.ts";
import { SMALL_APPLIANCE_PLACES } from "../editions/circuit-values.ts";
import { defineRule } from "../rule.ts";
import { everyEdition } from "../rule-parts.ts";

const messages = templates({
  existing:
    "The small-appliance circuit of {breaker} in {panel} (counter: {own}) also feeds {others}. It may stay; think before you hang more on it.",
  introduced:
    "The small-appliance circuit of {breaker} in {panel} (counter: {own}) also feeds {others}. It may feed receptacles of kitchen, pantry, breakfast room and dining room, and nothing else. Feed {others} from elsewhere.",
});

export const kitchenCircuitLights = defineRule({
  id: "kitchen-circuit-lights",
  status: "draft",
  scope: "section",
  severity: "violation",
  summary: "A small-appliance circuit must feed kitchen and dining receptacles and nothing else.",
  why: "A toaster and a kettle load a counter circuit to its breaker; a light on it goes dark with them, and a hood or a disposer takes what they need. A 20 A circuit counts as one for small appliances when a counter receptacle is on it. A pantry is a room of the kind kitchen, a breakfast room one of the kind dining. Receptacles for a clock and for the ignition of a gas range may share it and are not told apart here: judge those by hand. Circuits of old kitchens are noted and need not be changed.",
  messages,
  sections: everyEdition("210.52(B)", "unconfirmed"),
  check(context) {
    const circuits = circuitsFor(context, {
      isOwn: ({ outlet }, kinds) => outlet.receptacle && kinds.has("kitchen-counter"),
      mayShare: ({ outlet }, kinds) => outlet.receptacle && SMALL_APPLIANCE_PLACES.some((kind) => kinds.has(kind)),
    });
    for (const circuit of circuits) if (circuit.others.length > 0) reportMixed(context, messages, circuit);
  },
});
