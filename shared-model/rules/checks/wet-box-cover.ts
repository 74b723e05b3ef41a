import type { SectionPointer } from "../../answers/finding.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { Box } from "../../model/enclosure.ts";
import type { Project } from "../../model/project.ts";
import { inOrder } from "../../queries/in-order.ts";
import { outletsOf, roomKindsOf } from "../../queries/outlets-of.ts";
import { setOnBox } from "../box-parts.ts";
import type { EditionData } from "../editions/edition-data.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, sectionIn, subject } from "../rule-parts.ts";

const messages = templates({
  onlyClosed:
    "The cover of {box} protects {outlets} only while nothing is plugged in, and rain reaches it there{assumed}. Fit a cover that stays closed over a plug.",
  notWeatherproof: "The cover of {box} keeps no water from {outlets}, {where}{assumed}. Fit {cover}.",
});

const wording = catalogue({
  damp: "and it is damp there",
  fit: (cover: Part, box: Part) => `Fit ${cover} on ${box}`,
  outdoors: (box: Part) => ` (outdoors; record ${box} as damp if a roof keeps it off)`,
  rain: "and rain reaches it there",
});

/** Receptacles that rain or damp reaches, where the cover is recorded. A box without any cover is another rule's. */
export const wetBoxCover = defineRule({
  id: "wet-box-cover",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "A receptacle in the wet must be protected with a plug in it, one in the damp without.",
  why: "Outdoors, things stay plugged in: lights, a pump, a charger. A flap that closes only over an empty face leaves the slots open to rain for all that time. Under a roof, where rain never beats in, the flap is enough: record the box as damp then. What is outdoors counts as wet while nothing else is recorded. Where the cover is not recorded nothing is said.",
  messages,
  sections: everyEdition("406.9(B)(1)", "from-memory"),
  values: ["inUseCoverUpToA"],
  check({ section, project, edition, state, report }) {
    for (const box of section.enclosures) {
      if (box.kind !== "box" || !PARTLY.has(box.cover ?? "none")) continue;
      const exposed = inOrder(box.devices).filter((device) => isSmallReceptacle(device, edition));
      const wet = exposed.filter((device) => exposureOf(project, box, device) === "wet");
      const damp = exposed.filter((device) => exposureOf(project, box, device) === "damp");
      const needs = wet.length > 0 ? wet : box.cover === "weatherproof-closed" ? [] : damp;
      if (needs.length === 0) continue;
      const cover = wet.length > 0 ? "weatherproof-in-use" : "weatherproof-closed";
      const closed = box.cover === "weatherproof-closed";
      report({
        subjects: [subject("enclosure", box), ...needs.map((device) => subject("device", device))],
        message: fillIn(closed ? messages.onlyClosed : messages.notWeatherproof, {
          box: box.name,
          outlets: listed(needs.map(({ name }) => name)),
          where: wet.length > 0 ? wording.rain : wording.damp,
          assumed: wet.length > 0 && box.exposure === undefined ? wording.outdoors(box.name) : "",
          cover: COVER[cover],
        }),
        ...basisOf(marksOn(box, "cover", "exposure"), box.exposure === undefined ? ["assumed"] : []),
        ...(wet.length === 0 && { section: DAMP(edition) }),
        offers: [{ title: wording.fit(COVER[cover], box.name), call: setOnBox(box, state, "cover", cover) }],
      });
    }
  },
});

/** Covers that protect less than all. */
const PARTLY: ReadonlySet<string> = new Set<NonNullable<Box["cover"]>>([
  "device-plate",
  "blank",
  "weatherproof-closed",
]);

const COVER = catalogue({
  "weatherproof-in-use": "a cover that protects it with a plug in it",
  "weatherproof-closed": "a weatherproof cover",
});

const DAMP = (edition: EditionData): SectionPointer => sectionIn(edition, "406.9(A)", "from-memory");

const isSmallReceptacle = (device: Device, { values }: EditionData): boolean =>
  outletsOf(device).some(({ receptacle }) => receptacle) &&
  (device.ratingA === undefined || device.ratingA <= values.inUseCoverUpToA.value);

/** As recorded for the box, else as its room and zones have it: outdoors is wet. */
function exposureOf(project: Project, box: Box, device: Device): Box["exposure"] {
  if (box.exposure !== undefined) return box.exposure;
  const kinds = roomKindsOf(project, box, device);
  if (kinds.has("outdoor")) return "wet";
  return kinds.has("damp-wet-indoor") ? "damp" : undefined;
}
