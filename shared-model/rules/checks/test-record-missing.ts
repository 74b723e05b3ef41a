import { findDeviceType } from "../../catalog/device-types.ts";
import { catalogue, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { DeviceId, EnclosureId } from "../../model/ids.ts";
import type { Project, Reading } from "../../model/project.ts";
import { isNewCable, workAt } from "../new-work.ts";
import { defineRule, type ProjectContext } from "../rule.ts";
import { everyEdition, fillIn, subject } from "../rule-parts.ts";

const messages = templates({
  noTest:
    "The test record has no TEST of {device} in {box} after the work. Press TEST on {device} and record every outlet that went dark, then RESET. A plug-in tester alone does not show that its own button works.",
  noReset:
    "TEST of {device} in {box} is recorded and RESET is not. Press RESET and record what came on again: a device that does not hold is not finished.",
  failed:
    "The test record says that TEST of {device} in {box} made nothing go dark, where {count} should have gone dark. Do not leave it so: find out why, or replace it, and test again.",
});

const wording = catalogue({
  outlets: (count: number) => (count === 1 ? "one outlet" : `${count} outlets`),
});

/** Judged once the work is said to be done, or the first test after it is recorded. */
export const testRecordMissing = defineRule({
  id: "test-record-missing",
  status: "draft",
  scope: "project",
  severity: "advice",
  summary: "A protective device that the work installed or extended must have its TEST and RESET recorded.",
  why: "Its instructions ask for TEST when it is installed: it is the only test of the mechanism that has to open, and the list of what went dark shows at once a pair of conductors on the wrong side of LINE and LOAD. The button of a plug-in tester sends its current by the ground wire and finds something else. Asked for when the drawing says that the proposed work is done, or the first test after the work is recorded; then for each device that is new, came for another, or has a new cable in its box. What the program computed is no record.",
  messages,
  sections: everyEdition("110.3(B)", "unconfirmed"),
  check(context) {
    const { project, installation, state, report } = context;
    if (state !== "proposed") return;
    const taken = testsOf(project);
    if (project.workDone !== true && !taken.hasAfter) return;
    const extended = extendedIn(context);
    for (const enclosure of Object.values(installation.enclosures)) {
      for (const device of protectiveIn(enclosure)) {
        if (!isWorkedOn(context, enclosure, device, extended)) continue;
        const own = taken.ownTest.get(device.id);
        const expected = own === undefined ? 0 : missedBy(own);
        const kind =
          own === undefined ? "noTest" : expected > 0 ? "failed" : taken.reset.has(device.id) ? undefined : "noReset";
        if (kind === undefined) continue;
        const count = wording.outlets(expected);
        report({
          subjects: [subject("device", device)],
          message: fillIn(messages[kind], { device: device.name, box: enclosure.name, count }),
        });
      }
    }
  },
});

interface Taken {
  /** Something was tested after the work. */
  readonly hasAfter: boolean;
  readonly ownTest: ReadonlyMap<DeviceId, Reading>;
  readonly reset: ReadonlyMap<DeviceId, Reading>;
}

const taken = new WeakMap<Project["readings"], Taken>();

/** Cached: the rule looks at the whole document after every edit. The last of several tests counts. */
function testsOf({ readings }: Project): Taken {
  const known = taken.get(readings);
  if (known !== undefined) return known;
  const ownTest = new Map<DeviceId, Reading>();
  const reset = new Map<DeviceId, Reading>();
  let hasAfter = false;
  for (const reading of Object.values(readings).sort((p, q) => p.order - q.order)) {
    if (reading.computed === true || !isAfter(reading)) continue;
    if (reading.record !== undefined) hasAfter = true;
    // A reading that was kept as evidence names the device or a terminal of it.
    const device = (reading.points[0] ?? "").split(/[./]/)[0] as DeviceId;
    if (reading.instrument === "own-test") ownTest.set(device, reading);
    if (reading.instrument === "reset") reset.set(device, reading);
  }
  const found = { hasAfter, ownTest, reset };
  taken.set(readings, found);
  return found;
}

const isAfter = ({ record, state }: Reading): boolean =>
  record === undefined ? state === "proposed" : record.stage === "after";

/** How many outlets should have gone dark, where it is recorded that none did. */
const missedBy = ({ record }: Reading): number =>
  record?.outlets?.length === 0 && record.expected?.kind === "outlets" ? record.expected.outlets.length : 0;

const protective = new WeakMap<Enclosure, readonly Device[]>();

/** Devices with TEST and RESET. Cached for the same reason. */
function protectiveIn(enclosure: Enclosure): readonly Device[] {
  let found = protective.get(enclosure);
  if (found === undefined) {
    found = Object.values(enclosure.devices).filter(({ type }) => findDeviceType(type)?.sensing !== undefined);
    protective.set(enclosure, found);
  }
  return found;
}

/** It is new, came for another, or something new is fed from its box. A panel gets cables for other breakers all the time. */
const isWorkedOn = (
  context: ProjectContext,
  enclosure: Enclosure,
  device: Device,
  extended: ReadonlySet<EnclosureId>,
): boolean =>
  workAt(context, enclosure, device).kind !== "kept" || (enclosure.kind === "box" && extended.has(enclosure.id));

/** Boxes with a new cable in them. */
function extendedIn(context: ProjectContext): ReadonlySet<EnclosureId> {
  const found = new Set<EnclosureId>();
  for (const cable of Object.values(context.installation.cables))
    if (isNewCable(context, cable))
      for (const side of Object.values(cable.sides)) if ("enclosure" in side) found.add(side.enclosure);
  return found;
}
