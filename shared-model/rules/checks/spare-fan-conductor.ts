import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Box } from "../../model/enclosure.ts";
import { type EndKey, parseEnd } from "../../model/ids.ts";
import type { Installation, StateName } from "../../model/project.ts";
import { findEndFacts, nameOfEnd } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { outletsOf } from "../../queries/outlets-of.ts";
import type { PathStep, Section, Spot } from "../../solver/section.ts";
import { fansOn, kindsOfRoom, setOnBox } from "../box-parts.ts";
import type { EditionData } from "../editions/edition-data.ts";
import { fixTogether } from "../fix-parts.ts";
import { defineRule, type Report } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  spare:
    "{ends} in {box} {is} switched and spare: the next owner will hang a fan there, and the box is not listed for one. Where the box is new or exchanged, fit one that is listed for fans; an old one may stay, without a fan.",
  ceiling:
    "{box} is in the ceiling of a room where a fan may come, and is not listed for one. By this edition a box that is new or exchanged must be, or leave the framing behind it in reach for one; an old one may stay, without a fan.",
});

const wording = catalogue({
  exchange: (box: Part) => `Exchange ${box} for a box of its volume that is listed for fans`,
  is: (count: number) => (count === 1 ? "is" : "are"),
});

/** Only boxes that are recorded as in a ceiling and whose listing is recorded. A fan that hangs there is another rule's. */
export const spareFanConductor = defineRule({
  id: "spare-fan-conductor",
  status: "stable",
  scope: "section",
  severity: "caution",
  summary: "A new ceiling box where a fan may come must be able to carry one.",
  why: "A third conductor with a switch of its own is pulled to a ceiling box so that a fan can come later. When it comes, nobody looks at the box. Editions to 2020 ask for a fan box where such a spare conductor is; that of 2023 asks wherever a fan may come in a habitable room, since fans with a remote control need no spare conductor. It is for new and exchanged boxes: what stands may stay. Which rooms are meant is our reading. Nothing is said where it is not recorded that the box is in a ceiling, and for what it is listed.",
  messages,
  sections: everyEdition("314.27(C)", "from-memory", {
    2017: { section: "314.27(C)", confidence: "sourced" },
    2023: { section: "314.27(C)", confidence: "sourced" },
  }),
  values: ["spareConductorsForFanBox", "fanPlaces"],
  check({ section, project, edition, state, report }) {
    const { fanPlaces, spareConductorsForFanBox: wanted } = edition.values;
    for (const box of section.enclosures) {
      if (box.kind !== "box" || box.mountedOn !== "ceiling") continue;
      if (box.listedFor === undefined || box.listedFor.includes("fan") || fansOn(box).length > 0) continue;
      if (!kindsOfRoom(project, box).some((kind) => fanPlaces.value.includes(kind))) continue;
      const spare = wanted.value > 0 ? spareSwitched(section, box) : [];
      if (spare.length < wanted.value || (wanted.value === 0 && box.framingBehind === true)) continue;
      report(finding(section.installation, box, spare, state, edition));
    }
  },
});

function finding(
  installation: Installation,
  box: Box,
  spare: readonly EndKey[],
  state: StateName,
  { values }: EditionData,
): Report {
  return {
    subjects: [subject("enclosure", box)],
    message: fillIn(values.spareConductorsForFanBox.value > 0 ? messages.spare : messages.ceiling, {
      box: box.name,
      ends: listed(spare.map((end) => nameOfEnd(installation, box, end))),
      is: wording.is(spare.length),
    }),
    ...basisOf(
      marksOn(box, "mountedOn", "listedFor", "framingBehind"),
      spare.flatMap((end) => marksOn(box.places[end] ?? {}, "at")),
    ),
    offers: [
      fixTogether(wording.exchange(box.name), [setOnBox(box, state, "listedFor", [...(box.listedFor ?? []), "fan"])]),
    ],
  };
}

/** Capped ends of ungrounded conductors that a switch of their own makes live, apart from what hangs there. */
function spareSwitched(section: Section, box: Box): readonly EndKey[] {
  const reach = section.reach();
  const capped = (Object.keys(box.places) as EndKey[]).filter((end) => isSpare(section.installation, box, end));
  const switched = capped.filter((end) => reach.isLive({ end }) && !reach.isAlwaysLive({ end }));
  if (switched.length === 0) return [];
  const users = inOrder(box.devices).flatMap((device) =>
    outletsOf(device).map(({ hot }) => switchOf(section, { device: device.id, node: hot })),
  );
  return switched.filter((end) => !users.includes(switchOf(section, { end }))).sort();
}

function isSpare(installation: Installation, box: Box, end: EndKey): boolean {
  if (box.places[end]?.at.kind !== "capped" || parseEnd(end)?.of !== "cable") return false;
  const facts = findEndFacts(installation, box, end);
  return facts !== undefined && !facts.grounding;
}

/** The contact that a spot hangs on, the last device on its way from the source. */
function switchOf(section: Section, spot: Spot): string | undefined {
  const last = section
    .wayFrom("ungrounded", spot)
    ?.findLast((step): step is Extract<PathStep, { readonly kind: "device" }> => step.kind === "device");
  return last === undefined ? undefined : `${last.device} ${last.to}`;
}
