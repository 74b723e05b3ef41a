import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Box } from "../../model/enclosure.ts";
import type { EndKey } from "../../model/ids.ts";
import type { Project } from "../../model/project.ts";
import type { RoomKind } from "../../model/room.ts";
import { nameOfEnd } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { findTerminal } from "../../queries/terminals-of.ts";
import type { Section } from "../../solver/section.ts";
import { kindsOfRoom, luminairesOn, yokesOn } from "../box-parts.ts";
import { fixBy } from "../fix-parts.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  missing: "{box} has no cover. Fit {cover}.",
  exposed:
    "{box} has no cover, and {ends} {is} live on bare metal where people live: a finger or a lamp chain reaches it. Turn the circuit off and fit {cover} before anything else.",
});

const wording = catalogue({
  fit: (cover: Part, box: Part) => `Fit ${cover} on ${box}`,
  is: (count: number) => (count === 1 ? "is" : "are"),
});

/** A box whose cover nobody recorded is not asked about: most are covered, and a survey does not say so. */
export const coverMissing = defineRule({
  id: "cover-missing",
  status: "stable",
  scope: "section",
  severity: "danger",
  summary: "Every box must have a cover, a plate or a canopy on it.",
  why: "An open box lets fingers and dust in and sparks out. It is a violation everywhere, in an attic too; where people live, with live screws or bare ends in it, it is a shock waiting for a child. The check speaks where the cover is recorded as none, and says nothing where it is not recorded.",
  messages,
  sections: everyEdition("314.25", "from-memory"),
  check({ section, project, state, report }) {
    for (const box of section.enclosures) {
      if (box.kind !== "box" || box.cover !== "none") continue;
      const live = isLivedIn(kindsOfRoom(project, box)) ? liveAndBare(section, box) : [];
      const cover = fittingCover(project, box);
      report({
        subjects: [subject("enclosure", box)],
        severity: live.length > 0 ? "danger" : "violation",
        message: fillIn(live.length > 0 ? messages.exposed : messages.missing, {
          box: box.name,
          ends: listed(live.map((end) => nameOfEnd(section.installation, box, end))),
          is: wording.is(live.length),
          cover: WORDS[cover],
        }),
        data: { liveEnds: live.length },
        ...basisOf(
          marksOn(box, "cover"),
          live.flatMap((end) => marksOn(box.places[end] ?? {}, "at")),
        ),
        fix: fixBy(wording.fit(WORDS[cover], box.name), "set-property", {
          state,
          target: { kind: "enclosure", id: box.id },
          field: "cover",
          value: cover,
        }),
      });
    }
  },
});

/** Nobody passes there by chance. Of a box in no room that is not known. */
const NOT_LIVED_IN: ReadonlySet<RoomKind> = new Set<RoomKind>(["attic", "crawl-space"]);
const isLivedIn = (kinds: readonly RoomKind[]): boolean => kinds.some((kind) => !NOT_LIVED_IN.has(kind));

/** Ends on screws, in joints without a connector, or loose, to which some switch position brings a hot. */
function liveAndBare(section: Section, box: Box): readonly EndKey[] {
  const reach = section.reach();
  return (Object.keys(box.places) as EndKey[]).filter((end) => isBare(box, end) && reach.isLive({ end })).sort();
}

function isBare(box: Box, end: EndKey): boolean {
  const at = box.places[end]?.at;
  if (at?.kind === "loose") return true;
  if (at?.kind === "splice") return box.splices[at.splice]?.connector === "none";
  if (at?.kind !== "terminal") return false;
  // Leads of what hangs on a box end in connectors; a yoke has its screws beside it.
  const device = box.devices[at.device];
  return device !== undefined && findTerminal(device, at.terminal)?.entryKind !== "lead";
}

type Cover = "device-plate" | "weatherproof-in-use" | "luminaire" | "blank";

const WORDS: Readonly<Record<Cover, string>> = catalogue({
  "device-plate": "a plate",
  "weatherproof-in-use": "a cover that protects it while in use",
  luminaire: "the canopy of its luminaire",
  blank: "a blank cover",
});

function fittingCover(project: Project, box: Box): Cover {
  if (yokesOn(box).length > 0)
    return box.exposure === "wet" || kindsOfRoom(project, box).includes("outdoor")
      ? "weatherproof-in-use"
      : "device-plate";
  return luminairesOn(box).length > 0 || inOrder(box.devices).length > 0 ? "luminaire" : "blank";
}
