import { useId, useMemo, useState } from "react";
import type { Device } from "../../../shared-model/model/device.ts";
import type { Project } from "../../../shared-model/model/project.ts";
import type { RecordTest } from "../../../shared-model/model/test-record.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { outletsOf } from "../../../shared-model/queries/outlets-of.ts";
import { installationAt, type RecordGroup, type RecordRow } from "../../../shared-model/queries/test-record.ts";
import { RECORD_WORDS, TEST_TITLES } from "../../state/test-record-words.ts";

/** Tests that the drawing does not call for by itself. */
const MORE_TESTS: readonly RecordTest[] = ["continuity", "plug-in-button", "dead", "note"];

/** A line that a person asked for and that has no reading yet: it belongs to this dialog alone. */
export interface AddedLine {
  readonly key: string;
  readonly test: RecordTest;
  readonly item: string;
  readonly point: string;
  readonly enclosure: string;
  /** Whether the wiring as found has it too. */
  readonly isOld: boolean;
}

/** The lines of the record with those that were asked for, as long as they are not written. */
export function withAdded(groups: readonly RecordGroup[], added: readonly AddedLine[]): readonly RecordGroup[] {
  const known = new Set(groups.flatMap(({ rows }) => rows.map(({ key }) => key)));
  return groups.map((group) => {
    const own = added.filter(({ enclosure, key }) => enclosure === group.enclosure && !known.has(key));
    const rows = own.map(
      ({ key, test, item, point, isOld }): RecordRow => ({
        key,
        test,
        item,
        points: { ...(isOld && { before: point }), after: point },
      }),
    );
    return own.length === 0 ? group : { ...group, rows: [...group.rows, ...rows] };
  });
}

interface Place {
  readonly point: string;
  readonly item: string;
  readonly enclosure: string;
  readonly box: string;
  readonly isOutlet: boolean;
}

/** Asks for a line more: what is tested, and where. */
export function AddLine({ project, onAdd }: { readonly project: Project; readonly onAdd: (line: AddedLine) => void }) {
  const id = useId();
  const places = useMemo(() => placesOf(project), [project]);
  const [point, setPoint] = useState("");
  const [test, setTest] = useState<RecordTest>("continuity");
  const at = places.find((place) => place.point === point);
  const tests = MORE_TESTS.filter((one) => one !== "plug-in-button" || at?.isOutlet !== false);
  return (
    <form
      className="record-add"
      aria-label={RECORD_WORDS.addTitle}
      onSubmit={(event) => {
        event.preventDefault();
        if (at === undefined) return;
        const isOld = placesOf({ ...project, proposed: project.asFound }).some((one) => one.point === point);
        onAdd({ key: `${point} ${test}`, test, item: at.item, point, enclosure: at.enclosure, isOld });
      }}
    >
      <strong>{RECORD_WORDS.addTitle}</strong>
      <label htmlFor={`${id}at`}>{RECORD_WORDS.addItem}</label>
      <select id={`${id}at`} className="field small" value={point} onChange={({ target }) => setPoint(target.value)}>
        <option value="" />
        {places.map((place) => (
          <option key={place.point} value={place.point}>
            {place.item === place.box ? place.item : `${place.item}, in ${place.box}`}
          </option>
        ))}
      </select>
      <label htmlFor={`${id}test`}>{RECORD_WORDS.addTest}</label>
      <select
        id={`${id}test`}
        className="field small"
        value={test}
        onChange={({ target }) => setTest(target.value as RecordTest)}
      >
        {tests.map((one) => (
          <option key={one} value={one}>
            {TEST_TITLES[one]}
          </option>
        ))}
      </select>
      <button type="submit" className="button small" aria-disabled={at === undefined}>
        {RECORD_WORDS.add}
      </button>
    </form>
  );
}

function placesOf(project: Project): readonly Place[] {
  return inOrder(installationAt(project, "after").enclosures).flatMap(({ id, name: box, devices }) => {
    const here = { enclosure: id as string, box };
    const within = inOrder<Device>(devices).flatMap((device) => {
      const outlets = outletsOf(device).map(({ key, name }) => ({ point: key as string, item: name, isOutlet: true }));
      const isThere = outlets.some(({ point }) => point === (device.id as string));
      return isThere ? outlets : [{ point: device.id as string, item: device.name, isOutlet: false }, ...outlets];
    });
    return [{ point: id as string, item: box, isOutlet: false }, ...within].map((one) => ({ ...one, ...here }));
  });
}
