import type { RoomKind } from "../../model/room.ts";
import { circuitsFor, namesOfOutlets } from "../dedicated-circuits.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, subject } from "../rule-parts.ts";

const messages = {
  existing:
    "The small-appliance circuit of {breaker} in {panel} (counter: {own}) also feeds {others}. It may stay; think before you hang more on it.",
  introduced:
    "The small-appliance circuit of {breaker} in {panel} (counter: {own}) also feeds {others}. It may feed receptacles of kitchen, pantry and dining room and nothing else. Feed {others} from elsewhere.",
};

const SHARED: readonly RoomKind[] = ["kitchen-counter", "kitchen-other", "dining", "food-prep-with-sink"];

export const kitchenCircuitLights = defineRule({
  id: "kitchen-circuit-lights",
  status: "draft",
  scope: "section",
  severity: "violation",
  summary: "A small-appliance circuit must feed kitchen and dining receptacles and nothing else.",
  why: "A toaster and a kettle load a counter circuit to its breaker; a light on it goes dark with them, and a hood or a disposer takes what they need. A 20 A circuit counts as one for small appliances when a counter receptacle is on it. Receptacles for a clock and for the ignition of a gas range may share it and are not told apart here: judge those by hand. Circuits of old kitchens are noted and need not be changed.",
  messages,
  sections: everyEdition("210.52(B)", "unconfirmed"),
  check(context) {
    const circuits = circuitsFor(context, {
      isOwn: ({ outlet }, kinds) => outlet.receptacle && kinds.has("kitchen-counter"),
      mayShare: ({ outlet }, kinds) => outlet.receptacle && SHARED.some((kind) => kinds.has(kind)),
    });
    for (const { breaker, panel, own, others, isNew, marks } of circuits) {
      if (others.length === 0) continue;
      context.report({
        subjects: [subject("device", breaker)],
        severity: isNew ? "violation" : "caution",
        message: fillIn(isNew ? messages.introduced : messages.existing, {
          breaker: breaker.name,
          panel: panel.name,
          own: namesOfOutlets(own),
          others: namesOfOutlets(others),
        }),
        ...basisOf(marks),
      });
    }
  },
});
