import type { DeviceId } from "../../shared-model/model/ids.ts";
import { HOT, NEUTRAL } from "../../shared-model/solver/conduction-graph.ts";
import { netsLiveThroughLoads, type OutletNodes, type Sensor } from "../../shared-model/solver/protection.ts";
import type { OutletStanding, Section } from "../../shared-model/solver/section.ts";
import { modelOf } from "../../shared-model/solver/sections.ts";
import { MOST_SWITCHES, type Setting, settingsOf } from "../../shared-model/solver/settings.ts";
import type { SourceReach } from "../../shared-model/solver/source-reach.ts";

/*
 * Protection by isolation alone, without any current: a second account to compare the proof with. It asks what reaches an
 * outlet with the sensor of a device taken out, and nothing of what a current does.
 */

/** What isolation says of one outlet and one sensing device, over all settings in which the outlet is live. */
export interface IsolationTest {
  readonly device: DeviceId;
  /** With the sensor of the device taken out, a source still reaches the outlet, by its hot or by its neutral. */
  readonly hotReached: boolean;
  readonly neutralReached: boolean;
  /** The same through a fixed load that hangs between a live conductor and the outlet. */
  readonly reachedThroughLoad: boolean;
  /** Its LINE has hot and neutral wherever the outlet is live. */
  readonly powered: boolean;
  readonly personnelClass: boolean;
  readonly fedOnLine: boolean;
  readonly protects: boolean;
}

export interface Isolation {
  readonly standing: OutletStanding;
  /** One for each sensing device of the section, sorted by device id. */
  readonly tests: readonly IsolationTest[];
  /** Devices that each protect it in every setting in which it is live; empty for an outlet that is never live. */
  readonly protectedBy: readonly DeviceId[];
  /** False when the switch settings that bear on it are more than are tried: then "not protected" is not known. */
  readonly certain: boolean;
}

interface Isolated extends Sensor {
  isLiveThroughLoads(node: number): boolean;
}

/** For each of `section.outlets()`, in their order. */
export function isolationIn(section: Section): readonly Isolation[] {
  const model = modelOf(section);
  const base = model.sourceReach();
  const sensors = section.sensingDevices().map(({ device }): Isolated => {
    const open = model.sourceReach({ device: device.id, what: "contacts" });
    const live = netsLiveThroughLoads(model.graph, open);
    return { ...model.sensorOf(device), isLiveThroughLoads: (node) => live.has(open.net[node] as number) };
  });
  return model.placed().map(({ nodes }, index) => {
    const outcomes = sensors.map((sensor) => testOutlet(base, nodes, sensor));
    const tests = outcomes.map(({ test }) => test);
    const protectedBy = tests.filter(({ protects }) => protects).map(({ device }) => device);
    const certain = outcomes.every((outcome) => outcome.certain) && !base.isBounded(nodes.hot);
    const standing = section.outlets()[index] as OutletStanding;
    return { standing, tests, protectedBy, certain: certain || protectedBy.length > 0 };
  });
}

interface TestOutcome {
  readonly test: IsolationTest;
  readonly certain: boolean;
}

/** P1, P4 and P5 of one outlet and one sensing device, over every setting in which the outlet is live. */
function testOutlet(base: SourceReach, { hot, neutral }: OutletNodes, sensor: Isolated): TestOutcome {
  const { cut } = sensor;
  const handles = handlesOf(base, { hot, neutral }, sensor);
  let hotReached = false;
  let neutralReached = false;
  let powered = true;
  let fedOnLine = true;
  let live = false;
  for (const setting of settingsOf(handles)) {
    if ((base.bitsAt(hot, setting) & HOT) === 0) continue;
    live = true;
    if (cut.bitsAt(hot, setting) !== 0) hotReached = true;
    if (cut.bitsAt(neutral, setting) !== 0) neutralReached = true;
    if (!isPowered(base, sensor, setting)) powered = false;
    if (!isFedOnLine(base, sensor, setting)) fedOnLine = false;
  }
  const reachedThroughLoad = sensor.isLiveThroughLoads(hot) || sensor.isLiveThroughLoads(neutral);
  const isolated = live && !hotReached && !neutralReached && !reachedThroughLoad;
  const certain =
    handles.length <= MOST_SWITCHES && ![base, cut].some((reach) => reach.isBounded(hot) || reach.isBounded(neutral));
  return {
    test: {
      device: sensor.device.id,
      hotReached,
      neutralReached,
      reachedThroughLoad,
      powered,
      personnelClass: sensor.isPersonnel,
      fedOnLine,
      protects: certain && isolated && powered && sensor.isPersonnel && fedOnLine,
    },
    certain,
  };
}

function isPowered(base: SourceReach, sensor: Isolated, setting: Setting): boolean {
  const { lineHot, lineNeutral } = sensor;
  const hot = lineHot.some((node) => (base.bitsAt(node, setting) & HOT) !== 0);
  return hot && lineNeutral !== undefined && (base.bitsAt(lineNeutral, setting) & NEUTRAL) !== 0;
}

/**
 * With the sensor taken out, the supply is on LINE; what is fed on LOAD leaves its LINE dead then. Each pole counts: with
 * the neutral alone exchanged, out and back run the same way through the sensor, which sees twice the load.
 */
function isFedOnLine(base: SourceReach, { lineHot, lineNeutral, cut }: Isolated, setting: Setting): boolean {
  const hot = lineHot.some((node) => (cut.bitsAt(node, setting) & HOT) !== 0);
  if (!hot || lineNeutral === undefined) return hot;
  const isNeutral = (reach: SourceReach): boolean => (reach.bitsAt(lineNeutral, setting) & NEUTRAL) !== 0;
  return isNeutral(cut) || !isNeutral(base);
}

function handlesOf(base: SourceReach, { hot, neutral }: OutletNodes, sensor: Isolated): readonly string[] {
  const { cut, lineHot, lineNeutral } = sensor;
  const handles = new Set<string>();
  const add = (reach: SourceReach, nodes: readonly number[]): void => {
    for (const node of nodes) for (const handle of reach.handlesAt(node)) handles.add(handle);
  };
  const line = lineNeutral === undefined ? lineHot : [...lineHot, lineNeutral];
  add(base, [hot, ...line]);
  add(cut, [hot, neutral, ...line]);
  return [...handles].sort();
}
