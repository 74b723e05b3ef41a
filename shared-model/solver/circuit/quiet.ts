import type { DeviceId } from "../../model/ids.ts";
import { HOT } from "../conduction-graph.ts";
import type { OutletNodes } from "../protection.ts";
import { MOST_SWITCHES, type Setting, settingsOf } from "../settings.ts";
import type { Circuit } from "./circuit.ts";
import type { DeadNetwork, SensorView } from "./dead-network.ts";
import { byOutlet, LEAST_SHARE, type Offender, type Verdict } from "./proof-answers.ts";
import { outletNodesIn, type ProofGround, type ProvedOutlet, type Prover } from "./proof-ground.ts";

export interface QuietAnswer {
  readonly verdict: Verdict;
  readonly offenders: readonly Offender[];
}

const AS_DRAWN = [...settingsOf([])][0] as Setting;

/** P6: which outlets of a section make a difference of current at a device when they are used. Each device once. */
export class Quiet {
  private readonly ground: ProofGround;
  private readonly answers = new Map<DeviceId, QuietAnswer>();

  constructor(ground: ProofGround) {
    this.ground = ground;
  }

  get devices(): readonly DeviceId[] {
    return this.ground.provers.map(({ device }) => device);
  }

  of(device: DeviceId): QuietAnswer {
    let answer = this.answers.get(device);
    if (answer === undefined) {
      const prover = this.ground.provers.find((one) => one.device === device);
      answer = prover === undefined ? { verdict: "cannot-tell", offenders: [] } : this.listen(prover);
      this.answers.set(device, answer);
    }
    return answer;
  }

  /**
   * Devices that see currents of the panels that the section hangs on: others than its own outlets may set them off. With
   * no share at any bus or bar there is none anywhere beyond, for between them a share is never greater than at them.
   */
  spilling(): readonly DeviceId[] {
    const { ground } = this;
    if (ground.provers.length === 0) return [];
    const { circuit, dead } = ground;
    const bars = circuit.placesAt.flatMap((places, node) =>
      places.some(({ kind }) => kind === "panel") ? [node] : [],
    );
    return this.devices.filter((device) => {
      const view = dead.view(device, AS_DRAWN);
      return view !== undefined && bars.some((node) => Math.abs(view.shareOf(node)) > LEAST_SHARE / 2);
    });
  }

  /** Outlets of this section that set off a device of any, in a circuit of the whole with the switches as drawn. */
  asDrawnIn(circuit: Circuit, whole: DeadNetwork, device: DeviceId): readonly Offender[] {
    const view = whole.view(device, AS_DRAWN);
    if (view === undefined) return [];
    return this.ground.outlets.flatMap((outlet) => {
      if (!this.canBeUsed(outlet, AS_DRAWN)) return [];
      const share = shareOf(view, outletNodesIn(circuit, outlet.standing));
      return share > LEAST_SHARE ? [{ outlet: outlet.standing.outlet.key, share }] : [];
    });
  }

  private listen(prover: Prover): QuietAnswer {
    const offenders: Offender[] = [];
    let isCertain = true;
    for (const outlet of this.ground.outlets) {
      const handles = this.handlesFor(outlet, prover);
      if (handles.length > MOST_SWITCHES) isCertain = false;
      // What reaches it is not known in any setting.
      if (this.ground.base.isBounded(outlet.nodes.hot) || this.ground.base.isBounded(outlet.nodes.neutral)) continue;
      let share = 0;
      for (const setting of settingsOf(handles)) {
        if (!this.canBeUsed(outlet, setting)) continue;
        const view = this.ground.dead.view(prover.device, setting);
        if (view !== undefined) share = Math.max(share, shareOf(view, outlet.inCircuit));
      }
      if (share > LEAST_SHARE) offenders.push({ outlet: outlet.standing.outlet.key, share });
    }
    const verdict = offenders.length > 0 ? "fail" : isCertain ? "pass" : "cannot-tell";
    return { verdict, offenders: offenders.sort(byOutlet) };
  }

  /** Something between its hot and its neutral draws current: a hot is at one, a source at the other. */
  private canBeUsed({ nodes }: ProvedOutlet, setting: Setting): boolean {
    const { base } = this.ground;
    const [one, other] = [base.bitsAt(nodes.hot, setting), base.bitsAt(nodes.neutral, setting)];
    return ((one | other) & HOT) !== 0 && one !== 0 && other !== 0;
  }

  private handlesFor({ nodes }: ProvedOutlet, { cut, lineHot, lineNeutral, loadNodes }: Prover): readonly string[] {
    const { base } = this.ground;
    const own = [nodes.hot, nodes.neutral];
    const all = new Set<string>();
    for (const node of own) for (const handle of base.handlesAt(node)) all.add(handle);
    for (const node of [...own, ...lineHot, ...loadNodes, ...(lineNeutral === undefined ? [] : [lineNeutral])])
      for (const handle of cut.handlesAt(node)) all.add(handle);
    return [...all].sort();
  }
}

/** What is seen of an ampere that an outlet uses. */
const shareOf = (view: SensorView, { hot, neutral }: OutletNodes): number =>
  Math.abs(view.shareOf(hot) - view.shareOf(neutral));
