import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import { fixBy } from "../fix-parts.ts";
import { defineRule } from "../rule.ts";
import { basisOf, counted, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  open: "{box} has {openings} that nothing closes. Fit {plugs}: sparks and hot metal must stay inside, mice and fingers outside.",
});

const wording = catalogue({
  close: (count: number, box: Part) => `Close the open ${count === 1 ? "knockout" : "knockouts"} of ${box}`,
  openings: (count: number) => counted(count, "unused opening"),
  plugs: (count: number) => (count === 1 ? "a plug" : `${count} plugs`),
});

/** Where somebody counted them; a box whose openings nobody looked at is not asked about. */
export const openKnockout = defineRule({
  id: "open-knockout",
  status: "stable",
  scope: "box",
  severity: "violation",
  summary: "Every unused opening of a box must be closed.",
  why: "A knockout that was taken out for a cable that is gone leaves a hole to the inside of the wall. A joint that fails throws sparks through it, and dust, vermin and insulation come in by it. Plugs are sold for every knockout. An opening that nobody counted is not known: nothing is said of it.",
  messages,
  sections: everyEdition("110.12(A), 314.17(A)", "unconfirmed"),
  check({ enclosure, state, report }) {
    if (enclosure.kind !== "box") return;
    const { openKnockouts = 0, id, name } = enclosure;
    if (openKnockouts === 0) return;
    report({
      subjects: [subject("enclosure", enclosure)],
      message: fillIn(messages.open, {
        box: name,
        openings: wording.openings(openKnockouts),
        plugs: wording.plugs(openKnockouts),
      }),
      data: { openings: openKnockouts },
      ...basisOf(marksOn(enclosure, "openKnockouts")),
      fix: fixBy(wording.close(openKnockouts, name), "set-property", {
        state,
        target: { kind: "enclosure", id },
        field: "openKnockouts",
        value: 0,
      }),
    });
  },
});
