import type { DeviceFamily } from "../../catalog/device-type.ts";
import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { Box } from "../../model/enclosure.ts";
import { nameOfEnd } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { landedAt } from "../../queries/landings.ts";
import { terminalsOf } from "../../queries/terminals-of.ts";
import { groundDeviceFix } from "../ground-fixes.ts";
import { reachesGround } from "../ground-leads.ts";
import { groundsOf, isParted } from "../grounds.ts";
import { defineRule, type Report } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  missing:
    "{device} in {box} is not joined to the grounds there ({grounds}): {landed} on its ground screw. Bring a pigtail from them to its green screw; box fill stays the same.",
  luminaire:
    "The ground of {device} in {box} is not joined to the grounds there ({grounds}). Join it, unless no metal of the luminaire can be touched.",
  contactUnknown:
    "Cannot tell whether {device} in {box} is grounded by its mounting: whether the box is metal is not recorded. Look, and record its material.",
});

const wording = catalogue({
  armourOf: (cable: Part) => `the armour of ${cable}`,
  landed: (ends: Part, count: number) => `${ends} ${count === 1 ? "is" : "are"}`,
  materialOf: (box: Part) => `the material of ${box}`,
  nothingIs: "nothing is",
});

/** Families of snap switches: metal screws in a bonded metal box ground them. */
const SWITCHES: ReadonlySet<DeviceFamily> = new Set(["switch", "dimmer", "timer", "combination"]);

type Standing = "grounded" | "missing" | "cannot-tell";

/**
 * Whether a ground of a box leads to ground is decided at its far end, so the whole section is looked at. A box without
 * a ground is another matter, and so is a metal box that is not bonded itself.
 */
export const deviceEgcMissing = defineRule({
  id: "device-egc-missing",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary:
    "A device with a ground screw must be joined to the ground in its box, by a pigtail or by a contact listed for it.",
  why: "A receptacle without its pigtail looks grounded and is not: a fault in a tool plugged into it has no way home. The mounting screws alone are no ground for a receptacle unless its contact is marked self-grounding and the box is metal and bonded; a snap switch is grounded by metal screws in a bonded metal box, and needs a pigtail in a nonmetallic one. A ground-fault device works without its ground, so that its TEST says nothing of it.",
  messages,
  sections: everyEdition("250.146", "from-memory"),
  check({ section, state, edition, report, cannotTell }) {
    const { installation } = section;
    for (const box of section.enclosures) {
      if (box.kind !== "box") continue;
      const grounds = groundsOf(section, box);
      if (!grounds.present || isParted(box, grounds)) continue;
      const leading = grounds.groups.filter((group) => group.reachesGround);
      const ends = leading.flatMap((group) => group.ends);
      for (const device of inOrder(box.devices)) {
        const screw = terminalsOf(device).find(({ purpose }) => purpose === "ground");
        if (screw === undefined || reachesGround(section, { device: device.id, node: screw.name })) continue;
        const standing = standingOf(box, device);
        if (standing === "grounded") continue;
        const landed = landedAt(box, device.id, screw.name).map(({ end }) => nameOfEnd(installation, box, end));
        const subjects = [subject("device", device)];
        const shown = {
          device: device.name,
          box: box.name,
          grounds: listed([
            ...ends.map((end) => nameOfEnd(installation, box, end)),
            ...leading.flatMap(({ armour }) => armour).map(({ name }) => wording.armourOf(name)),
          ]),
          landed: landed.length === 0 ? wording.nothingIs : wording.landed(listed(landed), landed.length),
        };
        if (standing === "cannot-tell") {
          cannotTell({
            subjects,
            message: fillIn(messages.contactUnknown, shown),
            missing: wording.materialOf(box.name),
            enterAt: subject("enclosure", box),
          });
          continue;
        }
        const fix = groundDeviceFix(installation, box, state, leading, device, screw.name);
        const { family } = getDeviceType(device.type);
        report({
          subjects,
          ...asFamily(family, shown),
          ...sectionFor(family, edition.year),
          ...basisOf(marksOn(device, "type", "selfGrounding"), marksOn(box, "material")),
          ...(fix !== undefined && { fix }),
        });
      }
    }
  },
});

/** A device whose ground screw leads nowhere, by what its mounting does. An unbonded metal box is found by itself. */
function standingOf(box: Box, device: Device): Standing {
  const { family, outlets } = getDeviceType(device.type);
  const byMounting = device.selfGrounding === true || (SWITCHES.has(family) && outlets.length === 0);
  if (!byMounting || box.material === "nonmetallic") return "missing";
  return box.material === "metal" ? "grounded" : "cannot-tell";
}

/** A luminaire without metal that can be touched needs no ground, and a drawing does not say which it is. */
const asFamily = (
  family: DeviceFamily,
  shown: Readonly<Record<string, string>>,
): Pick<Report, "message" | "severity"> =>
  family === "luminaire"
    ? { message: fillIn(messages.luminaire, shown), severity: "caution" }
    : { message: fillIn(messages.missing, shown) };

const SECTIONS = {
  switch: everyEdition("404.9(B)", "from-memory"),
  luminaire: everyEdition("410.44", "unconfirmed"),
  fixed: everyEdition("250.110, 250.134", "unconfirmed"),
};

const SECTION_OF: Readonly<Partial<Record<DeviceFamily, keyof typeof SECTIONS>>> = {
  switch: "switch",
  dimmer: "switch",
  timer: "switch",
  luminaire: "luminaire",
  fan: "fixed",
  appliance: "fixed",
  disconnect: "fixed",
};

function sectionFor(family: DeviceFamily, year: keyof typeof SECTIONS.switch): Pick<Report, "section"> {
  const kind = SECTION_OF[family];
  const section = kind === undefined ? undefined : SECTIONS[kind][year];
  return section === undefined ? {} : { section };
}
