import {
  asId,
  type CableId,
  type DeviceId,
  type EnclosureId,
  type OutletKey,
  type ReadingId,
} from "../../shared-model/model/ids.ts";
import type { Reading } from "../../shared-model/model/project.ts";
import { RECORD_STAGES } from "../../shared-model/model/test-record.ts";
import { outletsValue } from "../../shared-model/queries/recorded-value.ts";
import { deviceId, idsIn, type Scene } from "./random-scene.ts";

/** A reading of the document, or one that is not there. */
export const readingId = ({ pick, project }: Scene): ReadingId => pick.from(idsIn(project.readings), asId("gone"));

/** A line of the test record at some device; now and then one that cannot be a result. */
export function randomTest(scene: Scene): Omit<Reading, "id" | "order"> {
  const { pick } = scene;
  const device = deviceId(scene) as DeviceId;
  const stage = pick.from(RECORD_STAGES, "after");
  const line = { stage, item: device, box: "B" } as const;
  const more = {
    points: [device],
    ...(pick.chance(0.3) && { by: "somebody", takenAt: "2026-05-04", instrumentId: "M-17", remark: "by the door" }),
  };
  if (pick.chance(0.4)) {
    const value = pick.from(["121.8", "0", "a lot"], "0");
    return { instrument: "meter", value, unit: "V", ...more, record: { test: "hot-neutral", ...line } };
  }
  const test = pick.from(["own-test", "reset", "plug-in-button"] as const, "reset");
  const outlets = pick.chance(0.3) ? [] : [device as string as OutletKey];
  const expected = { kind: "outlets", outlets: [device as string as OutletKey], names: [device] } as const;
  return {
    instrument: test,
    value: outletsValue(test, outlets),
    ...more,
    record: { test, ...line, outlets, ...(pick.chance(0.5) && { expected }) },
  };
}

/** A reading of a survey: something about a box, volts of a cable, what worked, or what a breaker killed. */
export function randomSurveyed(scene: Scene): Omit<Reading, "id" | "order"> {
  const { pick } = scene;
  const { enclosures, cables } = scene.project.asFound;
  const box = pick.from(Object.keys(enclosures) as EnclosureId[], asId<EnclosureId>("gone"));
  const cable = pick.from(Object.keys(cables) as CableId[], asId<CableId>("gone"));
  const breaker = pick.from([asId<DeviceId>("Q1")], asId<DeviceId>("Q1"));
  const outlets = [asId<DeviceId>("R1") as string as OutletKey];
  const surveys: readonly NonNullable<Reading["survey"]>[] = [
    { box, test: { kind: "facts", facts: { switchesHere: 1, groups: [[{ id: "a", name: "a", kind: "outlet" }]] } } },
    {
      ...{ box, arrangement: "A2" as const, nothingPlugged: true, switches: [{ switch: "S1", on: true }] },
      test: { kind: "pair", from: { cable, conductor: asId("bk") }, to: "ground" },
    },
    { box, arrangement: "A3", joined: [cable], test: { kind: "works", items: ["a"] } },
    { test: { kind: "breaker-off", breaker, dead: outlets } },
  ];
  const survey = pick.from(surveys, surveys[0] as NonNullable<Reading["survey"]>);
  return { instrument: "clamp-meter", points: [box], value: "1", unit: "A", state: "as-found", survey };
}
