import type { DeviceId } from "../../model/ids.ts";
import { HOT, NEUTRAL } from "../conduction-graph.ts";
import { positionOf } from "../joinings-by-setting.ts";
import type { HandlePosition } from "../section.ts";
import { MOST_SWITCHES, type Setting, settingsOf } from "../settings.ts";
import type { SourceReach } from "../source-reach.ts";
import { type DeviceProof, LEAST_SHARE, type OutletProof, type ProofTest, type Verdict } from "./proof-answers.ts";
import type { ProofGround, ProvedOutlet, Prover } from "./proof-ground.ts";
import type { Quiet } from "./quiet.ts";

const PROTECTING = ["P1", "P2", "P3", "P4", "P5"] as const;

/** P1 to P5 of an outlet by every device of its section. */
export function proveOutlet(ground: ProofGround, outlet: ProvedOutlet, quiet: Quiet): OutletProof {
  const { provers } = ground;
  const { standing } = outlet;
  const devices = provers.map((prover) => proveBy(ground, outlet, prover, quiet));
  const alone = devices.filter(({ protects }) => protects).map(({ device }) => device);
  const proof = { standing, devices };
  if (!standing.live) return { ...proof, verdict: "not-live", protectedBy: [] };
  if (alone.length > 0) return { ...proof, verdict: "all", protectedBy: alone };
  const together = protectorsBySetting(ground, outlet);
  const isUnknown = devices.some(({ tests }) => !PROTECTING.some((test) => tests[test] === "fail"));
  if (together === "cannot-tell" || (together.length === 0 && isUnknown))
    return { ...proof, verdict: "cannot-tell", protectedBy: [] };
  return together.length > 0
    ? { ...proof, verdict: "by-setting", protectedBy: together }
    : { ...proof, verdict: "none", protectedBy: [] };
}

/** What a setting says; the figures as in `DeviceProof`. */
interface InSetting {
  readonly hotReached: boolean;
  readonly neutralReached: boolean;
  readonly balance: number;
  readonly neutralAdrift: boolean;
  readonly isBalanced: boolean;
  readonly detection: number;
  readonly isDetected: boolean;
  readonly powered: boolean;
  readonly fedOnLine: boolean;
  /** P1 to P5 but what does not depend on the setting: class, and what loads bring. */
  readonly holds: boolean;
}

function testIn(ground: ProofGround, { nodes, inCircuit }: ProvedOutlet, prover: Prover, setting: Setting): InSetting {
  const { base } = ground;
  const { cut, tripped, opensNeutral, lineHot, lineNeutral } = prover;
  const { hot, neutral } = nodes;
  const hotReached = (tripped.bitsAt(hot, setting) & HOT) !== 0;
  // The equipment ground at a neutral is no source; what it takes of the balance is seen there.
  const neutralReached = (tripped.bitsAt(neutral, setting) & (opensNeutral ? HOT | NEUTRAL : HOT)) !== 0;
  const view = ground.dead.view(prover.device, setting);
  const detection = view === undefined ? 0 : view.shareOf(inCircuit.hot);
  const neutralAdrift = view?.isAdrift(inCircuit.neutral) === true;
  const back = view === undefined || neutralAdrift ? 0 : view.shareOf(inCircuit.neutral);
  const balance = Math.abs(detection - back);
  const hotRound = cut.bitsAt(hot, setting) !== 0;
  // A path round the sensor that carries next to nothing now, for a bad joint in it, is a path all the same.
  const neutralAloneRound = !hotRound && cut.bitsAt(neutral, setting) !== 0;
  const isBalanced = view !== undefined && balance <= LEAST_SHARE && !neutralAdrift && !neutralAloneRound;
  const isDetected = Math.abs(Math.abs(detection) - 1) <= LEAST_SHARE && !hotRound;
  const hasHot = (reach: SourceReach): boolean => lineHot.some((node) => (reach.bitsAt(node, setting) & HOT) !== 0);
  const hasNeutral = (reach: SourceReach): boolean =>
    lineNeutral !== undefined && (reach.bitsAt(lineNeutral, setting) & NEUTRAL) !== 0;
  const powered = hasHot(base) && hasNeutral(base);
  // What reaches LINE only through its own sensor comes from LOAD.
  const fedOnLine = (hasHot(cut) || !hasHot(base)) && (hasNeutral(cut) || !hasNeutral(base));
  return {
    hotReached,
    neutralReached,
    balance,
    neutralAdrift,
    isBalanced,
    detection: Math.abs(detection),
    isDetected,
    powered,
    fedOnLine,
    holds: !hotReached && !neutralReached && isBalanced && isDetected && powered && fedOnLine,
  };
}

function proveBy(ground: ProofGround, outlet: ProvedOutlet, prover: Prover, quiet: Quiet): DeviceProof {
  const { base, model } = ground;
  const { hot, neutral } = outlet.nodes;
  const handles = handlesOf(base, outlet, prover);
  const settings = [...settingsOf(handles)].filter((setting) => (base.bitsAt(hot, setting) & HOT) !== 0);
  const results = settings.map((setting) => testIn(ground, outlet, prover, setting));
  const some = (fails: (one: InSetting) => boolean): boolean => results.some(fails);
  const reachedThroughLoad = prover.isLiveThroughLoads(hot) || prover.isLiveThroughLoads(neutral);
  const live = results.length > 0;
  // Where more switches meet than are tried, what reaches a node is only known to be no more than that.
  const reaches = [base, prover.cut, prover.tripped];
  const isKnown = live && !reaches.some((reach) => nodesOf(outlet, prover).some((node) => reach.isBounded(node)));
  const isEverySettingTried = handles.length <= MOST_SWITCHES;
  const verdict = (fails: boolean): Verdict =>
    isKnown && fails ? "fail" : isKnown && isEverySettingTried ? "pass" : "cannot-tell";
  const hotReached = some((one) => one.hotReached);
  const neutralReached = some((one) => one.neutralReached);
  const powered = !some((one) => !one.powered);
  const fedOnLine = !some((one) => !one.fedOnLine);
  const { verdict: P6, offenders } = quiet.of(prover.device);
  const tests: Record<ProofTest, Verdict> = {
    P1: verdict(hotReached || neutralReached || reachedThroughLoad),
    P2: verdict(some((one) => !one.isBalanced)),
    P3: verdict(some((one) => !one.isDetected)),
    P4: verdict(!powered),
    P5: live && !prover.isPersonnel ? "fail" : verdict(!fedOnLine),
    P6,
  };
  const first = results.findIndex(({ holds }) => !holds);
  return {
    device: prover.device,
    tests,
    hotReached,
    neutralReached,
    reachedThroughLoad: live && reachedThroughLoad,
    balance: Math.max(0, ...results.map(({ balance }) => balance)),
    neutralAdrift: some((one) => one.neutralAdrift),
    detection: results.reduce((worst, one) => (off(one.detection) > off(worst) ? one.detection : worst), live ? 1 : 0),
    powered,
    personnelClass: prover.isPersonnel,
    fedOnLine,
    offenders,
    failsWhen: some(({ holds }) => holds) && first >= 0 ? positionsOf(model, settings[first] as Setting) : [],
    protects: PROTECTING.every((test) => tests[test] === "pass"),
  };
}

const off = (detection: number): number => Math.abs(detection - 1);

function positionsOf({ graph }: ProofGround["model"], setting: Setting): readonly HandlePosition[] {
  return setting.handles.flatMap((handle) => positionOf(graph, handle, setting.positionOf(handle)));
}

/** Devices of which one or another protects in each setting; none when some setting has none. Each is needed. */
function protectorsBySetting(ground: ProofGround, outlet: ProvedOutlet): readonly DeviceId[] | "cannot-tell" {
  const { base } = ground;
  const { hot, neutral } = outlet.nodes;
  const able = ground.provers.filter(
    (prover) => prover.isPersonnel && !prover.isLiveThroughLoads(hot) && !prover.isLiveThroughLoads(neutral),
  );
  // One that protects in no setting of its own handles is no help in more of them.
  const handles = [...new Set(able.flatMap((prover) => handlesOf(base, outlet, prover)))].sort();
  if (handles.length > MOST_SWITCHES) return "cannot-tell";
  const sets: DeviceId[][] = [];
  for (const setting of settingsOf(handles)) {
    if ((base.bitsAt(hot, setting) & HOT) === 0) continue;
    const holding = able.filter((prover) => testIn(ground, outlet, prover, setting).holds);
    if (holding.length === 0) return [];
    sets.push(holding.map(({ device }) => device));
  }
  return coverOf(sets);
}

/** A few members so that every set has one: those in most sets first, then by name. */
function coverOf(sets: readonly (readonly DeviceId[])[]): readonly DeviceId[] {
  const chosen: DeviceId[] = [];
  for (let open = sets; open.length > 0; ) {
    const counts = new Map<DeviceId, number>();
    for (const set of open) for (const device of set) counts.set(device, (counts.get(device) ?? 0) + 1);
    const [best] = [...counts].sort(([p, m], [q, n]) => n - m || (p < q ? -1 : 1));
    if (best === undefined) return [];
    chosen.push(best[0]);
    open = open.filter((set) => !set.includes(best[0]));
  }
  return chosen.sort();
}

/** What the proof of an outlet by a device asks about: contacts of the outlet, and LINE of the device. */
const nodesOf = ({ nodes }: ProvedOutlet, { lineHot, lineNeutral }: Prover): readonly number[] =>
  lineNeutral === undefined
    ? [nodes.hot, nodes.neutral, ...lineHot]
    : [nodes.hot, nodes.neutral, ...lineHot, lineNeutral];

/** Handles that decide what reaches these, in any of the three states. Sorted. */
function handlesOf(base: SourceReach, outlet: ProvedOutlet, prover: Prover): readonly string[] {
  const all = new Set<string>();
  for (const reach of [base, prover.cut, prover.tripped])
    for (const node of nodesOf(outlet, prover)) for (const handle of reach.handlesAt(node)) all.add(handle);
  return [...all].sort();
}
