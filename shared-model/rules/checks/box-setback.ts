import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import { inchWords } from "../../units/inch-words.ts";
import { fixTogether, makeFresh } from "../fix-parts.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  combustible:
    "The front of {box} is {back} behind a surface that burns, where it must be flush: a spark inside the wall meets wood. Fit an extender, or bring the box forward.",
  noncombustible: "The front of {box} is {back} behind the surface, {most} is the most. Fit an extender.",
  wallUnknown:
    "Cannot tell whether the front of {box} may be {back} behind the surface: {most} is the most in plaster or gypsum board, and none in wood. Record whether the wall is combustible.",
});

const wording = catalogue({
  extender: (box: Part) => `Fit an extender on ${box}, flush with the surface`,
  whetherCombustible: (box: Part) => `whether the wall at ${box} is combustible`,
});

/** Front of the box or of the ring on it, where somebody measured it. */
export const boxSetback = defineRule({
  id: "box-setback",
  status: "stable",
  scope: "box",
  severity: "violation",
  summary: "The front of a box must be flush with a wall that burns, and nearly so with one that does not.",
  why: "A box that ends behind the panelling leaves a gap in which sparks meet wood and dust. It happens when a wall is clad a second time and nobody brings the boxes forward. The front is that of the ring or extension where there is one. Extenders of plastic or metal are sold for it. Without a measured distance nothing is said.",
  messages,
  sections: everyEdition("314.20", "from-memory"),
  values: ["setbackIn", "setbackCombustibleIn"],
  check({ enclosure, edition, state, report, cannotTell }) {
    if (enclosure.kind !== "box") return;
    const { setbackIn: back = 0, wallCombustible, name, id } = enclosure;
    const { setbackIn: most, setbackCombustibleIn: mostCombustible } = edition.values;
    if (back <= mostCombustible.value || (wallCombustible === false && back <= most.value)) return;
    const shown = { box: name, back: inchWords(back), most: inchWords(most.value) };
    const subjects = [subject("enclosure", enclosure)];
    if (wallCombustible === undefined && back <= most.value) {
      const missing = wording.whetherCombustible(name);
      cannotTell({ subjects, message: fillIn(messages.wallUnknown, shown), missing });
      return;
    }
    const ring = makeFresh(enclosure)("r").id;
    const set = (target: object, field: string, value: number) => ({
      command: "set-property",
      args: { state, target, field, value },
    });
    report({
      subjects,
      message: fillIn(wallCombustible === true ? messages.combustible : messages.noncombustible, shown),
      data: { setbackIn: back },
      ...basisOf(marksOn(enclosure, "setbackIn", "wallCombustible")),
      offers: [
        fixTogether(wording.extender(name), [
          {
            command: "add-ring",
            args: { state, enclosure: id, id: ring, kind: "extension", volume: { kind: "unknown" } },
          },
          set({ kind: "ring", enclosure: id, id: ring }, "depthIn", back),
          set({ kind: "enclosure", id }, "setbackIn", 0),
        ]),
      ],
    });
  },
});
