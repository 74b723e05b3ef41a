import { findDeviceType } from "../catalog/device-types.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import { type EnclosureId, type OutletKey, outletKey, parseOutlet } from "../model/ids.ts";
import type { Installation, Project, Reading } from "../model/project.ts";
import type { RecordStage, RecordTest } from "../model/test-record.ts";
import { inOrder } from "./in-order.ts";
import { outletsOf, type PlacedOutlet } from "./outlets-of.ts";
import { replacedBy, replacementFor } from "./replaced.ts";

/** One line of the test record: one test of one thing, before the work and after it. */
export interface RecordRow {
  readonly key: string;
  readonly test: RecordTest;
  /** What is called so now; or then, where it is drawn no longer. */
  readonly item: string;
  /** What the test is made at in each stage, where the drawing of that stage has it: an outlet, a device or an enclosure. */
  readonly points: Readonly<Partial<Record<RecordStage, string>>>;
  /** The last reading of each stage; those before it stay in the document. */
  readonly before?: Reading;
  readonly after?: Reading;
}

/** Lines of one box or panel, in the order of the drawing. */
export interface RecordGroup {
  readonly key: string;
  readonly box: string;
  /** What a person wrote at the box: "laundry". */
  readonly note?: string;
  /** Absent where it is drawn no longer. */
  readonly enclosure?: EnclosureId;
  readonly rows: readonly RecordRow[];
}

/** The wiring that a stage is tested on. */
export const installationAt = ({ asFound, proposed }: Project, stage: RecordStage): Installation =>
  stage === "after" ? (proposed ?? asFound) : asFound;

/** A thing that is tested, under the one key that it has in both stages. */
interface Tested {
  readonly key: string;
  readonly item: string;
  readonly tests: readonly RecordTest[];
  readonly points: RecordRow["points"];
  /** The same of TEST and RESET: a plain receptacle that is replaced has none. */
  readonly buttons: RecordRow["points"];
}

const pointsOf = ({ points, buttons }: Tested, test: RecordTest): RecordRow["points"] =>
  test === "own-test" || test === "reset" ? buttons : points;

/** A row while it is filled. */
type Filling = { -readonly [K in keyof RecordRow]: RecordRow[K] };

/**
 * The whole test record: every line that the drawing calls for, filled or not, then whatever else was recorded at a thing,
 * and last what was recorded at things that are drawn no longer. A replaced device has one line with the one that came for it.
 */
export function testRecord(project: Project): readonly RecordGroup[] {
  const find = keyFinder(project);
  const groups = groupsOf(project);
  const rows = new Map<string, Filling>();
  const home = new Map<string, Filling[]>();
  const filled = groups.map(({ tested, ...group }) => {
    const own: Filling[] = [];
    for (const one of tested) {
      const { key, item } = one;
      home.set(key, own);
      for (const test of one.tests) {
        const row: Filling = { key: `${key} ${test}`, test, item, points: pointsOf(one, test) };
        own.push(row);
        rows.set(row.key, row);
      }
    }
    return { ...group, rows: own };
  });
  const byKey = new Map(groups.flatMap(({ tested }) => tested.map((one) => [one.key, one] as const)));
  const gone = new Map<string, { readonly key: string; readonly box: string; readonly rows: Filling[] }>();
  for (const reading of inOrder<Reading>(project.readings)) {
    const { record: line, points } = reading;
    if (line === undefined) continue;
    const key = find(points[0] ?? "", line.stage);
    // Every note is a line of its own.
    const rowKey = `${key} ${line.test}${line.test === "note" ? ` ${reading.id}` : ""}`;
    let row = rows.get(rowKey);
    if (row === undefined) {
      const one = byKey.get(key);
      row = { key: rowKey, test: line.test, item: one?.item ?? line.item, points: one ? pointsOf(one, line.test) : {} };
      rows.set(rowKey, row);
      (home.get(key) ?? rowsGone(gone, line.box ?? "")).push(row);
    }
    row[line.stage] = reading;
  }
  return [...filled, ...gone.values()].filter((group) => group.rows.length > 0);
}

function rowsGone(
  gone: Map<string, { readonly key: string; readonly box: string; readonly rows: Filling[] }>,
  box: string,
): Filling[] {
  const known = gone.get(box);
  if (known !== undefined) return known.rows;
  const rows: Filling[] = [];
  gone.set(box, { key: ["gone", box].join(" "), box, rows });
  return rows;
}

function groupsOf(project: Project): readonly (Omit<RecordGroup, "rows"> & { readonly tested: readonly Tested[] })[] {
  const before = installationAt(project, "before");
  const after = installationAt(project, "after");
  const old = replacementFor(after, before);
  const isReplaced = replacedBy(after, before);
  const boxes = inOrder(after.enclosures);
  const more = inOrder(before.enclosures).filter(({ id }) => after.enclosures[id] === undefined);
  const standing = new Set(boxes.flatMap(({ devices }) => Object.keys(devices)));
  const wasThere = new Map<string, Device>();
  for (const { devices } of Object.values(before.enclosures))
    for (const device of Object.values(devices)) wasThere.set(device.id, device);
  return [...boxes, ...more].map((enclosure) => {
    const was = before.enclosures[enclosure.id];
    const is = after.enclosures[enclosure.id];
    const tested: Tested[] = enclosure.kind === "box" ? [testedBox(enclosure, was, is)] : [];
    for (const device of inOrder<Device>(is?.devices ?? {}))
      tested.push(...testedOn(device, wasThere.get(old.get(device.id) ?? device.id), true));
    for (const device of inOrder<Device>(was?.devices ?? {}))
      if (!standing.has(device.id) && !isReplaced.has(device.id)) tested.push(...testedOn(device, device, false));
    const { id, name, note } = enclosure;
    return { key: id as string, box: name, ...(note && { note }), enclosure: id, tested };
  });
}

const testedBox = ({ id, name }: Enclosure, was: Enclosure | undefined, is: Enclosure | undefined): Tested => ({
  key: id,
  item: name,
  tests: ["dead"],
  points: { ...(was && { before: id }), ...(is && { after: id }) },
  buttons: {},
});

/** What is tested on a device: its buttons, then each of its outlets. */
function testedOn(device: Device, was: Device | undefined, isThere: boolean): readonly Tested[] {
  const after = isThere ? { after: device.id } : {};
  const own: Tested = {
    key: device.id,
    item: device.name,
    tests: hasButtons(device) ? ["own-test", "reset"] : [],
    points: { ...(was && { before: was.id }), ...after },
    buttons: { ...(was && hasButtons(was) && { before: was.id }), ...after },
  };
  const outlets = outletsOf(device).map((outlet): Tested => {
    const then = was && sameOutlet(outlet, was);
    const points = { ...(then && { before: then }), ...(isThere && { after: outlet.key }) };
    return { key: outlet.key, item: outlet.name, tests: testsOf(outlet), points, buttons: {} };
  });
  // A device with one outlet has the outlet's key: one thing, with all its tests.
  const same = outlets.find(({ key }) => key === own.key);
  if (same === undefined) return [own, ...outlets];
  return [{ ...own, tests: [...same.tests, ...own.tests] }, ...outlets.filter((one) => one !== same)];
}

/** The outlet of as found that has the place of one of proposed: the same half, or the only one. */
function sameOutlet({ key }: PlacedOutlet, was: Device): OutletKey | undefined {
  const { half } = parseOutlet(key);
  const then = outletsOf(was).map((outlet) => outlet.key);
  const wanted = outletKey(was.id, half);
  return then.find((one) => one === wanted) ?? (then.length === 1 ? then[0] : undefined);
}

const hasButtons = ({ type }: Device): boolean => findDeviceType(type)?.sensing !== undefined;

function testsOf({ receptacle, ground }: PlacedOutlet): readonly RecordTest[] {
  if (!receptacle) return ["works"];
  return ground === undefined ? ["hot-neutral"] : ["hot-neutral", "hot-ground", "neutral-ground", "polarity"];
}

/** The key in the record of what a reading was taken at. */
function keyFinder(project: Project): (point: string, stage: RecordStage) => string {
  const after = installationAt(project, "after");
  const successors = replacedBy(after, installationAt(project, "before"));
  const there = new Map<string, Device>();
  for (const { devices } of Object.values(after.enclosures))
    for (const device of Object.values(devices)) there.set(device.id, device);
  return (point, stage) => {
    if (stage === "after") return point;
    const { device, half } = parseOutlet(point as OutletKey);
    const now = there.get(successors.get(device) ?? device);
    if (now === undefined) return point;
    const outlets = outletsOf(now).map(({ key }) => key);
    const wanted = outletKey(now.id, half);
    return outlets.length === 0 || outlets.includes(wanted) || half === undefined ? wanted : (outlets[0] ?? point);
  };
}
