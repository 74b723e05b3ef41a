import { findDeviceType } from "../../../shared-model/catalog/device-types.ts";
import type { Device } from "../../../shared-model/model/device.ts";
import { outletsOf } from "../../../shared-model/queries/outlets-of.ts";
import { openDialog } from "../../state/dialog-store.ts";
import { documentStore } from "../../state/document-store.ts";
import { useStore } from "../../state/use-store.ts";
import { Section } from "./section.tsx";
import { wording } from "./words.ts";

/** How much of the test record is written of a device, and the way to its lines. */
export function TestRecordPart({ device }: { readonly device: Device }) {
  const readings = useStore(documentStore, ({ project }) => project.readings);
  if (outletsOf(device).length === 0 && findDeviceType(device.type)?.sensing === undefined) return null;
  // What was measured before at the device that this one replaces is on the same line.
  const ids: readonly (string | undefined)[] = [device.id, device.replaces];
  const own = Object.values(readings).filter(
    ({ record, points }) => record !== undefined && ids.includes(points[0]?.split("/")[0] ?? ""),
  );
  const count = (stage: string): number => own.filter(({ record }) => record?.stage === stage).length;
  const note = own.length === 0 ? wording.nothingRecorded : wording.beforeAfter(count("before"), count("after"));
  return (
    <Section title={wording.testRecord} note={note}>
      <div className="part-body">
        <button
          type="button"
          className="button small"
          onClick={() => openDialog({ kind: "test-record", at: device.id })}
        >
          {wording.expectedAndFound}
        </button>
      </div>
    </Section>
  );
}
