import { templates } from "../../lib/catalogue.ts";
import type { CableId } from "../../model/ids.ts";
import type { Section } from "../../solver/section.ts";
import { fixIn } from "../fix-parts.ts";
import { isLineEmpty, outletsFedBeside, sidesOf, toLineFix } from "../load-side.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";
import { hotOf, isSwapped, type LineLoadDevice, lastCableStep, lineLoadDevices, marksOnWay } from "../section-parts.ts";

const messages = templates({
  swapped:
    "The supply{cable} is on LOAD of {device} in {box}, and what it should feed is on LINE. Later types will not reset and their face stays dead; early types leave the face live and unprotected. What is spliced to LOAD stays live. Exchange the LINE and LOAD conductors, with the power off.",
  lineEmpty:
    "The supply{cable} is on LOAD of {device} in {box}, and LINE is empty. Later types will not reset and their face stays dead; early types leave the face live and unprotected. Move both conductors of the supply to LINE, with the power off.",
  allOnLoad:
    "The supply{cable} is on LOAD of {device} in {box}, together with what is fed ({fed}), and LINE is empty. What is fed does not pass its sensor and stays live whatever it does; its own face stays dead, or is live and unprotected with early types. Move both conductors of the supply to LINE and leave what is fed on LOAD, with the power off.",
});

const OUTLET_CONSEQUENCES = [
  "outlet-not-protected",
  "wish-not-protected",
  "open-hot",
  "open-neutral",
  "downstream-neutral-on-line",
  "downstream-hot-on-line",
  "replace-needs-gfci",
  "lighting-behind-gfci-egress",
  "grounding-type-unprotected",
];
const NO_CABLE = "" as CableId;
const DEVICE_CONSEQUENCES = ["gfci-no-neutral", "gfci-load-empty-tape", "freezer-shares-trip", "gfci-behind-gfci"];

/** With the contacts open, sources reach both LOAD terminals and neither LINE terminal. */
export const lineLoadSwapped = defineRule({
  id: "line-load-swapped",
  status: "stable",
  scope: "section",
  severity: "danger",
  summary: "The supply of a ground-fault device belongs on its LINE terminals.",
  why: "The two pairs look alike, and the tape over LOAD comes off with the first cable. Fed backwards the device either refuses to reset or, in an early type, looks healthy while its own face stays live after a trip.",
  messages,
  sections: everyEdition("110.3(B)", "unconfirmed"),
  check({ section, state, report }) {
    for (const found of lineLoadDevices(section)) {
      if (!isSwapped(found)) continue;
      const { device, enclosure } = found;
      const way = section.wayFrom("ungrounded", found.loadHot, device.id);
      const cable = section.installation.cables[lastCableStep(way, "toEnclosure", enclosure.id)?.cable ?? NO_CABLE];
      const sides = [sidesOf(section, found, "hot"), sidesOf(section, found, "neutral")];
      const fed = sides.flatMap((side) => side.fed);
      const outlets = [...consequences(section, found), ...outletsFedBeside(section, found, sides)];
      report({
        subjects: [subject("device", device)],
        message: fillIn(messages[!isLineEmpty(sides) ? "swapped" : fed.length === 0 ? "lineEmpty" : "allOnLoad"], {
          fed: listed(fed),
          device: device.name,
          box: enclosure.name,
          cable: cable === undefined ? "" : ` ${cable.name}`,
        }),
        ...basisOf(marksOn(device, "type"), marksOnWay(section, way)),
        ...fixIn(state, () => toLineFix(section, found, sides, state)),
        hides: [
          ...OUTLET_CONSEQUENCES.map((rule) => ({ rule, subjects: outlets })),
          ...DEVICE_CONSEQUENCES.map((rule) => ({ rule, subjects: [device.id] })),
        ],
      });
    }
  },
});

/** Its own face, and what loses its hot with the contacts: that would be on LOAD if the pairs were right. */
const consequences = (section: Section, { device, open }: LineLoadDevice): readonly string[] =>
  section
    .outlets()
    .filter((standing) => standing.outlet.device.id === device.id || (standing.live && !open.isLive(hotOf(standing))))
    .map(({ outlet }) => outlet.key);
