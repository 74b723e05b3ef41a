import type { Fix, SectionPointer } from "../../answers/finding.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Cable } from "../../model/cable.ts";
import type { Enclosure, Entry } from "../../model/enclosure.ts";
import type { EntryId } from "../../model/ids.ts";
import type { Installation, StateName } from "../../model/project.ts";
import { cablesAtEntry } from "../../queries/cables-at-entry.ts";
import { inOrder } from "../../queries/in-order.ts";
import type { EditionData } from "../editions/edition-data.ts";
import { fixBy, fixTogether } from "../fix-parts.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  unsecured: "{cables} {enters} {box} with nothing to hold {them}{short}. {cure}",
  fasteningUnknown:
    "Cannot tell whether {cables} may enter {box} without a clamp: that needs a nonmetallic single-gang box, a fastening within {fastened} in. of it and {sheath} in. of sheath inside. Look, and record {missing}.",
});

const wording = catalogue({
  connector: "Fit a cable connector.",
  connectorOutside: "Fit a cable connector: it holds the cable from outside the box and adds nothing to box fill.",
  enters: (count: number) => (count === 1 ? "enters" : "enter"),
  fastenedFar: (far: Part, most: Part) =>
    `, and is fastened ${far} in. away where ${most} in. is the most without a clamp`,
  fitConnector: (cable: Part, box: Part) => `Fit a cable connector for ${cable} at ${box}`,
  fitMarkedConnector: (count: Part, cables: Part, box: Part) =>
    `Fit a cable connector marked for ${count} cables (${cables}) at ${box}`,
  howFarSheath: "how far the sheath reaches inside",
  howNearFastened: "how near to the box the cable is fastened",
  missingAt: (facts: Part, box: Part) => `${facts}, at ${box}`,
  sheathShort: (inside: Part, least: Part) =>
    `, and ${inside} in. of sheath is inside where ${least} in. is the least without a clamp`,
  them: (count: number) => (count === 1 ? "it" : "them"),
  underClamp: (count: number) =>
    `Put ${count === 1 ? "it" : "them"} under a clamp of the box, or fit a cable connector; neither adds to box fill.`,
  whetherNonmetallic: "whether the box is nonmetallic",
});

/** Sheaths and raceways. Open wiring on insulators comes in through bushings, and a single conductor has no sheath to hold. */
export const cableEntryUnsecured = defineRule({
  id: "cable-entry-unsecured",
  status: "stable",
  scope: "box",
  severity: "violation",
  summary: "A cable must be held where it enters a box or cabinet.",
  why: "A cable that nothing holds is pulled by its conductors: joints loosen, and a sharp edge cuts the insulation. A single-gang nonmetallic box may do without a clamp when the cable is fastened close to it and its sheath reaches inside. A connector in the knockout holds the cable from outside the box and needs no allowance; clamps inside the box count while they are present.",
  messages,
  sections: everyEdition("314.17, 334.30", "from-memory", {
    2023: { section: "314.17, 334.30", confidence: "doubtful" },
  }),
  values: ["unclampedFastenedWithinIn", "unclampedSheathInsideIn"],
  check({ enclosure, installation, edition, state, report, cannotTell }) {
    const asked: { readonly cables: readonly Cable[]; readonly missing: readonly string[] }[] = [];
    for (const entry of inOrder(enclosure.entries)) {
      if (entry.means !== "none") continue;
      const cables = heldAt(installation, enclosure, entry.id);
      if (cables.length === 0) continue;
      const missing = missingForNoClamp(enclosure, entry, cables, edition);
      if (missing === "no" || missing === "short") {
        const names = listed(cables.map(({ name }) => name));
        report({
          subjects: [...cables.map((cable) => subject("cable", cable)), subject("enclosure", enclosure)],
          message: fillIn(messages.unsecured, {
            cables: names,
            enters: wording.enters(cables.length),
            box: enclosure.name,
            them: wording.them(cables.length),
            short: missing === "short" ? shortWords(entry, edition) : "",
            cure: cureWords(enclosure, cables.length),
          }),
          data: { cables: cables.length },
          ...(enclosure.kind === "panel" && { section: CABINET[edition.year] ?? CABINET[2020] }),
          ...basisOf(
            marksOn(entry, "means", "securedWithinIn", "sheathInsideIn"),
            marksOn(enclosure, "material", "gangs", "shape"),
          ),
          fix: connectorFix(enclosure, entry, state, names, cables.length),
        });
      } else if (missing.length > 0) asked.push({ cables, missing });
    }
    if (asked.length === 0) return;
    // One look at the box answers for all of its cables.
    const cables = asked.flatMap((one) => one.cables);
    const missing = listed([...new Set(asked.flatMap((one) => one.missing))]);
    const { unclampedFastenedWithinIn: fastened, unclampedSheathInsideIn: sheath } = edition.values;
    cannotTell({
      subjects: [subject("enclosure", enclosure)],
      message: fillIn(messages.fasteningUnknown, {
        cables: listed([...new Set(cables.map(({ name }) => name))]),
        box: enclosure.name,
        fastened: fastened.value,
        sheath: sheath.value,
        missing,
      }),
      missing: wording.missingAt(missing, enclosure.name),
    });
  },
});

/** Cabinets have a section of their own. */
const CABINET: Readonly<Partial<Record<EditionData["year"], SectionPointer>>> = everyEdition("312.5(C)", "unconfirmed");

const NEEDS_HOLDING: ReadonlySet<Cable["construction"]> = new Set([
  "nonmetallic-sheathed",
  "armoured-bonded",
  "armoured-old",
  "raceway",
]);

const heldAt = (installation: Installation, enclosure: Enclosure, entry: EntryId): readonly Cable[] =>
  cablesAtEntry(installation, enclosure, entry).filter(({ construction }) => NEEDS_HOLDING.has(construction));

/**
 * Facts that are missing before an entry may do without a clamp: none when it may; "no" when it may not whatever they
 * are, "short" when the cable of a box that could do without is fastened too far off or its sheath ends too soon.
 */
function missingForNoClamp(
  enclosure: Enclosure,
  { securedWithinIn, sheathInsideIn }: Entry,
  cables: readonly Cable[],
  { values }: EditionData,
): readonly string[] | "no" | "short" {
  if (enclosure.kind === "panel" || enclosure.material === "metal") return "no";
  if (enclosure.gangs > 1 || enclosure.shape !== "device") return "no";
  if (cables.some(({ construction }) => construction !== "nonmetallic-sheathed")) return "no";
  if (securedWithinIn !== undefined && securedWithinIn > values.unclampedFastenedWithinIn.value) return "short";
  if (sheathInsideIn !== undefined && sheathInsideIn < values.unclampedSheathInsideIn.value) return "short";
  return [
    ...(enclosure.material === "unknown" ? [wording.whetherNonmetallic] : []),
    ...(securedWithinIn === undefined ? [wording.howNearFastened] : []),
    ...(sheathInsideIn === undefined ? [wording.howFarSheath] : []),
  ];
}

/** Clamps that a box has are counted whether they hold something or not. */
function cureWords(enclosure: Enclosure, cables: number): string {
  if (enclosure.kind === "panel") return wording.connector;
  const { internalClamps } = enclosure;
  if (internalClamps === "none" || internalClamps === "unknown") return wording.connectorOutside;
  return wording.underClamp(cables);
}

function shortWords({ securedWithinIn, sheathInsideIn }: Entry, { values }: EditionData): string {
  const { unclampedFastenedWithinIn: fastened, unclampedSheathInsideIn: sheath } = values;
  return securedWithinIn !== undefined && securedWithinIn > fastened.value
    ? wording.fastenedFar(securedWithinIn, fastened.value)
    : wording.sheathShort(sheathInsideIn ?? "", sheath.value);
}

function connectorFix(enclosure: Enclosure, entry: Entry, state: StateName, names: string, count: number): Fix {
  const target = { kind: "entry", enclosure: enclosure.id, id: entry.id };
  const means = { state, target, field: "means", value: "external-connector" };
  if (count === 1) return fixBy(wording.fitConnector(names, enclosure.name), "set-property", means);
  return fixTogether(wording.fitMarkedConnector(count, names, enclosure.name), [
    { command: "set-property", args: means },
    { command: "set-property", args: { state, target, field: "markedForCables", value: count } },
  ]);
}
