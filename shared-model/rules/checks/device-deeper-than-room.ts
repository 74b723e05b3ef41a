import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { Box } from "../../model/enclosure.ts";
import type { Installation, StateName } from "../../model/project.ts";
import { boxDepth } from "../../queries/box-depth.ts";
import { getEndFacts } from "../../queries/end-facts.ts";
import { landedAt } from "../../queries/landings.ts";
import { terminalsOf } from "../../queries/terminals-of.ts";
import { inchWords } from "../../units/inch-words.ts";
import { compareWireSize } from "../../units/wire-size.ts";
import { yokesOn } from "../box-parts.ts";
import type { EditionData } from "../editions/edition-data.ts";
import { CONDUCTOR_SPACE } from "../editions/product-values.ts";
import { deeperBox } from "../larger-box.ts";
import { defineRule, type Report } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  tooDeep:
    "The body of {device} reaches {body} into {box}, which is {depth} deep: {left} is left behind it, and {least} is the least. Fit a deeper box, an extension, or a device with a shallower body.",
  tight:
    "The body of {device} reaches {body} into {box}, which is {depth} deep: {left} is left behind it. That passes, but folded conductors commonly want {space} more than {least}, so they will be pressed when it is pushed home. A deeper box, an extension or a shallower device makes room.",
  depthUnknown:
    "Cannot tell whether {device}, whose body is {body} deep, has room in {box}: how deep {box} is, is not recorded. Measure from its back to its front edge, rings included.",
  ringUnknown:
    "Cannot tell whether {device}, whose body is {body} deep, has room in {box}: {box} alone is {depth} deep, and what its ring or extension adds is not recorded. Measure it, and record it with the ring.",
});

const wording = catalogue({
  depthOf: (box: Part) => `the depth of ${box}`,
  nothing: "nothing",
  ringDepthOf: (box: Part) => `the depth that the ring of ${box} adds`,
});

/** Depth alone; volume is another rule. Nothing is said of a device whose body nobody measured. */
export const deviceDeeperThanRoom = defineRule({
  id: "device-deeper-than-room",
  status: "stable",
  scope: "box",
  severity: "violation",
  summary: "A device must leave room for the conductors behind it.",
  why: "A ground-fault receptacle or dimmer is deep, and an old box is shallow: what is left behind the body is where every conductor has to fold. Pressed between device and box, insulation is cut and joints come apart, though the count of box fill may be right. Rings and extensions bring the front forward and count with their depth. Where conductors come in through the middle of the back, the 2023 edition asks for 1/2 in. instead: the drawing does not know where they come in. Without the depth of the body nothing is said.",
  messages,
  sections: everyEdition("314.24(B)", "unconfirmed", {
    2020: { section: "314.24(B)", confidence: "sourced" },
    2023: { section: "314.24(B)", confidence: "sourced" },
  }),
  values: ["behindDeviceIn", "deepDeviceIn", "deepDeviceOnThickIn"],
  check({ enclosure, installation, edition, state, report, cannotTell }) {
    if (enclosure.kind !== "box") return;
    for (const device of yokesOn(enclosure)) {
      const { bodyDepthIn: body } = device;
      if (body === undefined) continue;
      const depth = boxDepth(enclosure);
      const least = edition.values.behindDeviceIn.value;
      const left = (depth?.atLeastIn ?? 0) - body;
      if (depth !== undefined && left >= least + CONDUCTOR_SPACE) continue;
      const shown = { device: device.name, box: enclosure.name, body: inchWords(body) };
      const subjects = [subject("device", device), subject("enclosure", enclosure)];
      const enterAt = subject("enclosure", enclosure);
      if (depth === undefined) {
        const missing = wording.depthOf(enclosure.name);
        cannotTell({ subjects, message: fillIn(messages.depthUnknown, shown), missing, enterAt });
        continue;
      }
      const deep = inchWords(depth.atLeastIn);
      if (depth.more) {
        const missing = wording.ringDepthOf(enclosure.name);
        const message = fillIn(messages.ringUnknown, { ...shown, depth: deep });
        cannotTell({ subjects, message, missing, enterAt });
        continue;
      }
      const breaks = left <= 0 || (left < least && isDeep(installation, enclosure, device, body, edition));
      const parts = {
        ...shown,
        depth: deep,
        left: left > 0 ? inchWords(left) : wording.nothing,
        least: inchWords(least),
      };
      report({
        subjects,
        severity: breaks ? "violation" : "caution",
        message: fillIn(breaks ? messages.tooDeep : messages.tight, { ...parts, space: inchWords(CONDUCTOR_SPACE) }),
        data: { bodyIn: body, depthIn: depth.atLeastIn, leftIn: left },
        ...basisOf(
          marksOn(device, "bodyDepthIn"),
          marksOn(enclosure, "depthIn"),
          Object.values(enclosure.rings).flatMap((ring) => marksOn(ring, "depthIn")),
        ),
        ...offers(enclosure, state, body + least + CONDUCTOR_SPACE - (depth.atLeastIn - ownDepth(enclosure))),
      });
    }
  },
});

/** The code asks for the room behind any device that reaches far in, and sooner behind one on 12 AWG or thicker. */
function isDeep(installation: Installation, box: Box, device: Device, body: number, { values }: EditionData): boolean {
  if (body > values.deepDeviceIn.value) return true;
  if (body <= values.deepDeviceOnThickIn.value) return false;
  return terminalsOf(device)
    .flatMap(({ name }) => landedAt(box, device.id, name))
    .some(({ end }) => compareWireSize(getEndFacts(installation, box, end).awg, "12") >= 0);
}

const ownDepth = (box: Box): number => boxDepth({ ...box, rings: {} })?.atLeastIn ?? 0;

function offers(box: Box, state: StateName, depthIn: number): Pick<Report, "offers"> {
  const deeper = deeperBox(box, state, depthIn);
  return deeper === undefined ? {} : { offers: [deeper] };
}
