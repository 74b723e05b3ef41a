import { allDrops } from "../../analysis/outlet-drops.ts";
import type { OutletDropAnswer } from "../../answers/outlet-drop.ts";
import type { Device } from "../../model/device.ts";
import type { DeviceId } from "../../model/ids.ts";
import type { Installation, Project, StateName } from "../../model/project.ts";
import { inOrder } from "../../queries/in-order.ts";
import { getInstallation } from "../../queries/installation-of.ts";
import { outletsOf } from "../../queries/outlets-of.ts";
import { buildCircuit } from "../../solver/circuit/build-circuit.ts";
import type { Circuit, OperatingSetting } from "../../solver/circuit/circuit.ts";
import { type LiveContact, liveAfter } from "../../solver/circuit/live-after.ts";
import { FREQUENCY_HZ } from "../../solver/circuit/modelling-values.ts";
import { placeNamer } from "../../solver/circuit/place-names.ts";
import { type OutletReading, readOutlets } from "../../solver/circuit/readings.ts";
import { type BreakerTrip, type DeviceTrip, runTrips, type TripRun } from "../../solver/circuit/trips.ts";
import { type VoltageDrop, voltageDrops } from "../../solver/circuit/voltage-drop.ts";
import type { Phasors } from "../../solver/network/network.ts";
import { spiceDeck } from "../../solver/network/spice-deck.ts";

/** One state of a file as a circuit, energised in one setting, before anything in it trips. */
export interface Simulated {
  readonly file: string;
  readonly title: string;
  readonly state: StateName;
  readonly circuit: Circuit;
  readonly volts: Phasors;
  /** Names of all places at a node. */
  placesAt(node: number): readonly string[];
  nameOf(device: DeviceId): string;
  readonly outlets: readonly SimulatedOutlet[];
  readonly devices: readonly DeviceTrip[];
  readonly breakers: readonly BreakerTrip[];
  readonly outcomes: TripRun["outcomes"];
  /** Contacts that are live once everything that trips has tripped. */
  readonly liveAfter: readonly LiveContact[];
}

interface SimulatedOutlet extends OutletReading {
  /** From the buses of the service panel; absent where the outlet is dead or has not half its volts. */
  readonly drop?: VoltageDrop;
  /** Under its stated load, whatever the setting. */
  readonly stated?: OutletDropAnswer;
}

export function simulateState(file: string, project: Project, state: StateName, setting: OperatingSetting): Simulated {
  const { title, supply } = project;
  const installation = getInstallation(project, state);
  const run = runTrips(buildCircuit(installation, supply, setting));
  const circuit = run.energised;
  const placed = devicesIn(installation);
  const outlets = placed.flatMap(outletsOf);
  const drops = new Map(voltageDrops(circuit, outlets).map((drop) => [drop.outlet.key, drop]));
  const statedDrops = new Map(allDrops(project, installation).map((drop) => [drop.outlet, drop]));
  const order = new Map(placed.map(({ id }, index) => [id, index]));
  const inDrawing = (p: { readonly device: DeviceId }, q: { readonly device: DeviceId }): number =>
    (order.get(p.device) ?? 0) - (order.get(q.device) ?? 0);
  const nameOf = placeNamer(installation);
  const names = new Map(placed.map(({ id, name }) => [id, name]));
  return {
    file,
    title,
    state,
    circuit,
    volts: circuit.factor.operatingPoint(),
    placesAt: (node) => (circuit.placesAt[node] ?? []).map(nameOf),
    nameOf: (device) => names.get(device) ?? device,
    outlets: readOutlets(circuit, outlets).map((reading) => {
      const drop = drops.get(reading.outlet.key);
      const stated = statedDrops.get(reading.outlet.key);
      return { ...reading, ...(drop !== undefined && { drop }), ...(stated !== undefined && { stated }) };
    }),
    devices: [...run.devices].sort(inDrawing),
    breakers: [...run.breakers].sort(inDrawing),
    outcomes: run.outcomes,
    liveAfter: liveAfter(run, outlets),
  };
}

const devicesIn = ({ enclosures }: Installation): readonly Device[] =>
  inOrder(enclosures).flatMap(({ devices }) => inOrder(devices));

/** Name of a node in answers, the same as in the netlist; "0" is earth. */
export const nodeName = (node: number): string => String(node + 1);

/** The circuit as a SPICE deck, every node with its places. */
export const netlistOf = ({ circuit, title, placesAt }: Simulated): string =>
  spiceDeck(circuit.factor, (node) => placesAt(node).join(", "), { title, frequency: FREQUENCY_HZ });
