import type { DeviceNode } from "../../catalog/device-type.ts";
import { getDeviceType } from "../../catalog/device-types.ts";
import type { Device } from "../../model/device.ts";
import type { DeviceId } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { netsLiveThroughLoads, type OutletNodes, type Sensor } from "../protection.ts";
import type { OutletStanding } from "../section.ts";
import type { SectionModel } from "../section-model.ts";
import type { SourceReach } from "../source-reach.ts";
import type { Circuit } from "./circuit.ts";
import { DeadNetwork } from "./dead-network.ts";
import { pluggedLoads } from "./plugged-loads.ts";

/** An outlet in both accounts of a section: nodes of its conduction graph and of its circuit. */
export interface ProvedOutlet {
  readonly standing: OutletStanding;
  readonly nodes: OutletNodes;
  /** Found when first asked for: a section without sensing devices has no use for a circuit. */
  readonly inCircuit: OutletNodes;
}

/** A sensing device with the three states of the section that its proof compares. */
export interface Prover {
  readonly device: DeviceId;
  readonly isPersonnel: boolean;
  /** A trip opens the neutral too. */
  readonly opensNeutral: boolean;
  readonly lineHot: readonly number[];
  readonly lineNeutral?: number;
  readonly loadNodes: readonly number[];
  /** Everything that the sensor sums taken out. */
  readonly cut: SourceReach;
  /** Its contacts open. */
  readonly tripped: SourceReach;
  /** With its contacts open a live conductor leads to the node through loads, plugged ones as drawn. */
  isLiveThroughLoads(node: number): boolean;
}

/** What the proofs of one section share. */
export class ProofGround {
  readonly model: SectionModel;
  readonly base: SourceReach;
  readonly outlets: readonly ProvedOutlet[];
  readonly provers: readonly Prover[];
  private readonly makeCircuit: () => Circuit;
  private circuitMade: Circuit | undefined;
  private deadMade: DeadNetwork | undefined;

  constructor(model: SectionModel, { loads }: Installation, makeCircuit: () => Circuit) {
    this.model = model;
    this.makeCircuit = makeCircuit;
    this.base = model.sourceReach();
    const standings = model.outlets();
    this.outlets = model.placed().map(({ nodes }, index) => this.outletOf(standings[index] as OutletStanding, nodes));
    const plugged = model.sensingDevices().length === 0 ? [] : pluggedLoads(loads, model);
    this.provers = model.sensingDevices().map(({ device }) => proverOf(model, device, plugged));
  }

  get circuit(): Circuit {
    this.circuitMade ??= this.makeCircuit();
    return this.circuitMade;
  }

  get dead(): DeadNetwork {
    this.deadMade ??= new DeadNetwork(this.circuit);
    return this.deadMade;
  }

  private outletOf(standing: OutletStanding, nodes: OutletNodes): ProvedOutlet {
    let inCircuit: OutletNodes | undefined;
    const find = (): OutletNodes => {
      inCircuit ??= outletNodesIn(this.circuit, standing);
      return inCircuit;
    };
    return {
      standing,
      nodes,
      get inCircuit() {
        return find();
      },
    };
  }
}

/** Throws for an outlet that is not in the circuit: a bug of the caller. */
export function outletNodesIn(circuit: Circuit, { outlet }: OutletStanding): OutletNodes {
  const at = (node: DeviceNode): number => {
    const found = circuit.nodeOf({ kind: "device", device: outlet.device.id, node });
    if (found === undefined) throw new Error(`The circuit has no ${outlet.key}.`);
    return found;
  };
  return { hot: at(outlet.hot), neutral: at(outlet.neutral) };
}

function proverOf(model: SectionModel, device: Device, plugged: readonly OutletNodes[]): Prover {
  const { sensing } = getDeviceType(device.type);
  const { lineHot, lineNeutral, isPersonnel, cut }: Sensor = model.sensorOf(device);
  const tripped = model.sourceReach({ device: device.id, what: "contacts" });
  const load = sensing === undefined ? [] : [...sensing.load.hot, sensing.load.neutral ?? []].flat();
  let live: ReadonlySet<number> | undefined;
  return {
    device: device.id,
    isPersonnel,
    opensNeutral: sensing?.opens.includes("neutral") === true,
    lineHot,
    ...(lineNeutral !== undefined && { lineNeutral }),
    loadNodes: load.flatMap((node) => model.graph.nodeOfDevice(device.id, node) ?? []),
    cut,
    tripped,
    isLiveThroughLoads: (node) => {
      live ??= netsLiveThroughLoads(model.graph, tripped, plugged);
      return live.has(tripped.net[node] as number);
    },
  };
}
