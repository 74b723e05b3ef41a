import type { EnergiseAsk, Energised, MeterReading, Operated, OutletTested, StillLive } from "../answers/energised.ts";
import type { DeviceId, OutletKey } from "../model/ids.ts";
import type { Installation, Supply } from "../model/project.ts";
import { buildCircuit } from "../solver/circuit/build-circuit.ts";
import { type Circuit, EVERYTHING_ON, type OperatingSetting } from "../solver/circuit/circuit.ts";
import { METER_OHM } from "../solver/circuit/instrument-values.ts";
import { readOhms, readVolts } from "../solver/circuit/instruments.ts";
import { liveLoadTerminals } from "../solver/circuit/live-after.ts";
import { NOMINAL_V, TEST_OHM } from "../solver/circuit/modelling-values.ts";
import { TESTER_WORDS } from "../solver/circuit/plug-in-tester.ts";
import { readOutlets } from "../solver/circuit/readings.ts";
import { tripStates } from "../solver/circuit/trip-states.ts";
import { runTrips, type TripRun } from "../solver/circuit/trips.ts";
import { Conditions } from "./conditions.ts";
import { type Drawn, drawnIn, liveIn } from "./drawn-outlets.ts";
import { doAct } from "./energise-act.ts";
import { LitBoxes } from "./lit-boxes.ts";
import { operablesOf } from "./operables.ts";
import { mayOpen, openedBy, otherOrders } from "./trip-words.ts";

/**
 * An installation energised in one setting, after everything that opens by itself has opened, and what is asked for: a
 * pure function of the drawing. Where either of two devices may open first, the first order is shown and the others are
 * told. Names in the setting that are not drawn are passed over: they may have been taken away since. With the `lit` of an
 * answer before, whatever stands as it did is the same object again.
 */
export function energise(
  installation: Installation,
  supply: Supply,
  operated: Operated,
  ask: EnergiseAsk,
  lit: LitBoxes = new LitBoxes(),
): Energised {
  const drawn = drawnIn(installation);
  const setting = settingOf(operated);
  const circuit = circuitOf(installation, supply).inSetting(setting);
  const run = runTrips(circuit);
  const before = shownAfter(run);
  const bySelf = openedBy(run, drawn);
  const openedBefore = new Set([...setting.tripped, ...bySelf.flat().map(({ device }) => device)]);
  const done =
    ask.act === undefined ? undefined : doAct(drawn, before, ask.act, supply.nominalV ?? NOMINAL_V, openedBefore);
  const shown = done?.after ?? before;
  const conditions = new Conditions(shown, installation, lit.pool);
  const opened = [...bySelf, ...(done?.opened ?? [])];
  const states = tripStates(shown);
  const meter = ask.meter === undefined ? undefined : readMeter(shown, ask.meter, conditions);
  const outlet = ask.outlet === undefined ? undefined : testOutlet(drawn, shown, ask.outlet);
  const latched = new Set([...openedBefore, ...(done?.opened ?? []).flat().map(({ device }) => device)]);
  if (ask.act?.kind === "reset" && done?.act.holds) latched.delete(ask.act.device);
  return {
    ...lit.tell(conditions, shown, installation),
    operables: operablesOf(installation, {
      circuit: shown,
      set: latched,
      sensors: new Map(states.devices.map((state) => [state.device, state])),
      breakers: new Map(states.breakers.map((state) => [state.device, state])),
      reversed: new Map(run.devices.flatMap(({ device, reversed, why }) => (reversed ? [[device, why]] : []))),
    }),
    opened,
    tripped: [...latched],
    otherwise: done?.otherwise ?? otherOrders(run, drawn),
    mayOpen: done?.mayOpen ?? mayOpen(run, drawn),
    liveAfter: stillLive(drawn, shown, latched),
    liveTerminals: liveLoadTerminals({ ...run, outcomes: [{ opened: [], circuit: shown }] }).map(
      ({ place, volts }) => ({
        device: place.device,
        name: drawn.nameOf(place.device),
        terminal: place.node,
        volts,
      }),
    ),
    powerOff: isPowerOff(shown, conditions),
    ...(meter !== undefined && { meter }),
    ...(outlet !== undefined && { outlet }),
    ...(done !== undefined && { act: done.act }),
    supplyV: supply.nominalV ?? NOMINAL_V,
    instruments: { meterOhm: METER_OHM, testMa: ((supply.nominalV ?? NOMINAL_V) / TEST_OHM) * 1000 },
    assumptions: shown.assumptions,
  };
}

/** What is left after the first of the orders in which devices may open. */
const shownAfter = ({ outcomes, energised }: TripRun): Circuit => outcomes[0]?.circuit ?? energised;

const settingOf = ({ off, positions, tripped, idle }: Operated): OperatingSetting => ({
  off: new Set(off),
  positions: new Map(Object.entries(positions)),
  tripped: new Set(tripped),
  idle: new Set(idle),
  added: [],
});

const circuits = new WeakMap<Installation, { readonly supply: Supply; readonly circuit: Circuit }>();

/** Cached by the identity of the installation: most asks are about another setting of the same drawing. */
export function circuitOf(installation: Installation, supply: Supply): Circuit {
  const known = circuits.get(installation);
  if (known?.supply === supply) return known.circuit;
  const circuit = buildCircuit(installation, supply, EVERYTHING_ON);
  circuits.set(installation, { supply, circuit });
  return circuit;
}

function readMeter(
  circuit: Circuit,
  { from, to }: NonNullable<EnergiseAsk["meter"]>,
  conditions: Conditions,
): MeterReading | undefined {
  if (isPowerOff(circuit, conditions)) {
    const ohms = readOhms(circuit, from, to);
    return ohms && { kind: "ohms", ...ohms };
  }
  const volts = readVolts(circuit, from, to);
  return volts && { kind: "volts", ...volts };
}

/** No conductor of any cable or jumper is live, so that an ohmmeter may be put on. */
function isPowerOff({ parts, network: { a, b } }: Circuit, conditions: Conditions): boolean {
  const isLive = (node: number): boolean =>
    node >= 0 && ["live", "switched", "through-load"].includes(conditions.ofNode(node).kind);
  return !parts.some(
    ({ kind }, branch) =>
      (kind === "conductor" || kind === "jumper") && (isLive(a[branch] as number) || isLive(b[branch] as number)),
  );
}

function testOutlet(drawn: Drawn, circuit: Circuit, key: OutletKey): OutletTested | undefined {
  const outlet = drawn.outlets.get(key);
  const [reading] = outlet === undefined ? [] : readOutlets(circuit, [outlet]);
  if (reading === undefined) return undefined;
  const { hn, hg, ng, tester } = reading;
  return {
    ...drawn.named(key),
    hn,
    ...(hg !== undefined && { hg }),
    ...(ng !== undefined && { ng }),
    ...(tester !== undefined && { tester: { ...TESTER_WORDS[tester.name], lit: tester.lit } }),
  };
}

/** Contacts that are live on the circuits of devices that are open. */
function stillLive(drawn: Drawn, shown: Circuit, open: ReadonlySet<DeviceId>): readonly StillLive[] {
  if (open.size === 0) return [];
  const outlets = drawn.outletsOn(shown, open);
  return liveIn(shown, outlets).map(({ outlet, contact, volts }) => ({
    ...drawn.named(outlet),
    contact,
    volts,
  }));
}
