import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { DeviceId } from "../../model/ids.ts";
import { sensingClass } from "../../solver/protection.ts";
import type { Section, Spot } from "../../solver/section.ts";
import { toLineFix } from "../line-side-fix.ts";
import { OWN_CHECK } from "../own-check.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";
import { isFedRightWay, type LineLoadDevice, lineLoadDevices, marksOnWay } from "../section-parts.ts";

const messages = templates({
  behindDevice:
    "{device} in {box} is fed only from the LOAD of {upstream}: either may trip on one fault, and whoever resets one of them does not find the other. Feed {device} from LINE of {first}, by a pigtail before it, or put an ordinary receptacle in its place.",
  behindBreaker:
    "{device} in {box} is fed only through {upstream}: either may trip on one fault, and whoever resets one of them does not find the other. One of the two is enough: an ordinary receptacle at {device}, or an ordinary breaker.",
});

const wording = catalogue({
  inBox: (device: Part, box: Part) => `${device} in ${box}`,
});

/** With the sensor of another device taken out, neither its hot nor its neutral has a source on LINE. */
export const gfciBehindGfci = defineRule({
  id: "gfci-behind-gfci",
  status: "stable",
  scope: "section",
  severity: "caution",
  summary: "A ground-fault device should not be fed from the LOAD side of another one.",
  why: "Nothing forbids it and nobody is less protected. But one fault may trip either device or both, which of them is not told by anything, and the reset that brings the outlet back is in another room. The one further on is commonly left over from an earlier change. Feeding it by a pigtail from the LINE side keeps what it protects and frees the other one.",
  messages,
  sections: everyEdition(OWN_CHECK, "own-rule"),
  check({ section, state, report }) {
    const sensors = section.sensingDevices().filter(({ device }) => isPersonnel(device));
    if (sensors.length < 2) return;
    const lineLoad = lineLoadDevices(section);
    for (const found of lineLoad) {
      const { device, enclosure, lineHot } = found;
      const lineNeutral = neutralOfLine(found);
      if (!isPersonnel(device) || !found.lineLive || lineNeutral === undefined) continue;
      const before = sensors.filter(
        (one) =>
          one.device.id !== device.id &&
          isSound(lineLoad, one) &&
          isFedThrough(section, one.device.id, [lineHot, lineNeutral]),
      );
      const [first] = nearestFirst(section, before);
      if (first === undefined) continue;
      const inBox = before.filter((one) => one.enclosure.kind === "box");
      report({
        subjects: [subject("device", device)],
        message: fillIn(first.enclosure.kind === "box" ? messages.behindDevice : messages.behindBreaker, {
          device: device.name,
          box: enclosure.name,
          upstream: listed(before.map((one) => wording.inBox(one.device.name, one.enclosure.name))),
          first: first.device.name,
        }),
        data: { upstream: before.map((one) => one.device.name).join(" ") },
        ...basisOf(marksOn(device, "type"), marksOnWay(section, section.wayFrom("ungrounded", lineHot))),
        ...(state === "proposed" && inBox.length === 1 && before.length === 1 && offers(first)),
      });

      function offers(one: Placed) {
        const fix = lineNeutral && toLineFix(section, one.device.id, [lineHot, lineNeutral], state);
        return fix === undefined ? {} : { fix };
      }
    }
  },
});

interface Placed {
  readonly device: Device;
  readonly enclosure: Enclosure;
}

function isPersonnel(device: Device): boolean {
  const { sensing } = getDeviceType(device.type);
  return sensing !== undefined && sensingClass(device, sensing) === "personnel";
}

function neutralOfLine({ device }: LineLoadDevice): Spot | undefined {
  const node = getDeviceType(device.type).sensing?.line.neutral;
  return node === undefined ? undefined : { device: device.id, node };
}

/** One that is fed on LOAD, or whose neutral has a way round it, has a fault of its own; what is behind it is not told here. */
function isSound(lineLoad: readonly LineLoadDevice[], { device }: Placed): boolean {
  const found = lineLoad.find((one) => one.device.id === device.id);
  return found === undefined || (found.lineLive && isFedRightWay(found));
}

function isFedThrough(section: Section, device: DeviceId, [hot, neutral]: readonly [Spot, Spot]): boolean {
  const cut = section.sensorCut(device);
  return !cut.isLive(hot) && !cut.isGrounded(neutral) && section.reach().isGrounded(neutral);
}

/** Devices that are themselves fed through the most of the others come last on the way, and so first here. */
function nearestFirst(section: Section, devices: readonly Placed[]): readonly Placed[] {
  const depth = ({ device }: Placed): number => {
    const [hot] = getDeviceType(device.type).sensing?.line.hot ?? [];
    if (hot === undefined || hot.startsWith("@")) return 0;
    const lineHot: Spot = { device: device.id, node: hot };
    return devices.filter(
      (other) => other.device.id !== device.id && !section.sensorCut(other.device.id).isLive(lineHot),
    ).length;
  };
  return [...devices].sort((a, b) => depth(b) - depth(a) || (a.device.id < b.device.id ? -1 : 1));
}
