import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { OutletStanding, Section } from "../../solver/section.ts";
import { directoryGap, directoryLine } from "../directory-words.ts";
import { fixBy, fixIn } from "../fix-parts.ts";
import { defineRule } from "../rule.ts";
import { everyEdition, fillIn, listed, subject } from "../rule-parts.ts";
import { cableLeadingOutside, hotOf } from "../section-parts.ts";

const messages = templates({
  unnamed:
    "The directory of {panel} says “{line}” for {breaker}; the wiring also feeds {places}. Write what it feeds: “{derived}”.",
  foreign:
    "The directory of {panel} says “{line}” for {breaker}, which does not feed {places}. Write what it feeds: “{derived}”.",
});

const wording = catalogue({
  write: (line: Part) => `Write “${line}”`,
});

/** Longest line that the directory of a document holds. */
const LONGEST_LINE = 200;

/** Words are compared, not meanings: a place is named by its room, its box, what is plugged in there, or a kind of outlet. */
export const directoryMismatch = defineRule({
  id: "directory-mismatch",
  status: "stable",
  scope: "section",
  severity: "advice",
  summary: "The line of the panel directory must say what its breaker feeds.",
  why: "Whoever opens a breaker by the directory takes what is not on the line for live, and what is on the line for dead. A line counts as naming an outlet when a word of its room, of its box, of what is plugged in there, or of its kind (lights, receptacles, smoke alarms) stands in it. A breaker without a line is not judged.",
  messages,
  sections: everyEdition("408.4(A)", "unconfirmed"),
  check({ section, project, installation, state, report }) {
    for (const { device: breaker, panel } of section.breakers()) {
      const line = installation.directory[breaker.id];
      if (line === undefined || line.trim() === "") continue;
      const keys = new Set(section.circuitOf(breaker.id).outlets);
      const fed = section.outlets().filter(({ outlet }) => keys.has(outlet.key));
      if (fed.length === 0) continue;
      const gap = directoryGap(project, installation, line, fed);
      const foreign = gap.foreign.length > 0 && !leadsOut(section, fed) ? gap.foreign : [];
      if (gap.unnamed.length === 0 && foreign.length === 0) continue;
      const derived = directoryLine(project, installation, fed);
      const isUnnamed = gap.unnamed.length > 0;
      report({
        subjects: [subject("device", breaker)],
        message: fillIn(isUnnamed ? messages.unnamed : messages.foreign, {
          panel: panel.name,
          line,
          breaker: breaker.name,
          places: listed(isUnnamed ? gap.unnamed : foreign),
          derived,
        }),
        ...fixIn(state, () =>
          derived.length > LONGEST_LINE
            ? undefined
            : fixBy(wording.write(derived), "set-directory-line", { state, device: breaker.id, text: derived }),
        ),
      });
    }
  },
});

/** What is beyond the drawing may be what the line names. */
const leadsOut = (section: Section, fed: readonly OutletStanding[]): boolean =>
  fed.some((standing) => cableLeadingOutside(section, hotOf(standing)) !== undefined);
