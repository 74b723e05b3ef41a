import type { Act, ActDone, DeviceSaid, StillLive } from "../answers/energised.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { DeviceId, OutletKey } from "../model/ids.ts";
import type { PlacedOutlet } from "../queries/outlets-of.ts";
import type { Added, Circuit } from "../solver/circuit/circuit.ts";
import type { LiveContact } from "../solver/circuit/live-after.ts";
import { readOutlets } from "../solver/circuit/readings.ts";
import { pressReset } from "../solver/circuit/reset.ts";
import { leakAt, ownTestOf, plugInTestAt } from "../solver/circuit/test-currents.ts";
import { runTrips, type TripRun } from "../solver/circuit/trips.ts";
import { type Drawn, liveIn } from "./drawn-outlets.ts";
import { mayOpen, openedBy, otherOrders } from "./trip-words.ts";

const wording = catalogue({
  notInCircuit: "It is not in the circuit.",
  noTest: "It has no TEST.",
  notAnOutlet: "It is not an outlet.",
  noGroundForButton: (name: Part) => `${name} has no ground contact: the button of a plug-in tester does nothing.`,
  leakNeedsMilliamperes: "A leak needs milliamperes, more than 0.",
  noSuchContact: (name: Part) => `${name} has no such contact.`,
});

interface Done {
  readonly act: ActDone;
  /** The circuit with everything open that opened, and without what was done. */
  readonly after: Circuit;
  readonly opened: readonly (readonly DeviceSaid[])[];
  readonly otherwise?: readonly string[];
  readonly mayOpen?: readonly DeviceSaid[];
}

/** Volts from hot to neutral, on a low-impedance meter, from which an outlet is on. */
export const ON_FROM_V = 50;

/** Does something to an energised circuit and follows what opens. `latched` are the devices that stay open until RESET. */
export function doAct(drawn: Drawn, before: Circuit, act: Act, supplyV: number, latched: ReadonlySet<DeviceId>): Done {
  if (act.kind === "reset") return reset(drawn, before, act.device, latched);
  const wanted = addedBy(drawn, act, supplyV);
  if (typeof wanted === "string") return { act: nothing(wanted), after: before, opened: [] };
  const from = before.nodeOf(wanted.from);
  if (from === undefined || before.nodeOf(wanted.to) === undefined)
    return { act: nothing(wording.notInCircuit), after: before, opened: [] };
  const pressed = before.inSetting({ ...before.setting, added: [wanted] });
  const run = runTrips(pressed);
  const outcome = run.outcomes[0];
  const steps = outcome?.opened ?? [];
  const opened = new Set(steps.flat());
  const after = before.inSetting({ ...before.setting, tripped: new Set([...before.setting.tripped, ...opened]) });
  const around = drawn.outletsOn(
    before,
    opened.size > 0 ? opened : act.kind === "own-test" ? new Set([act.device]) : new Set(),
    [from],
  );
  return {
    after,
    opened: openedBy(run, drawn),
    otherwise: otherOrders(run, drawn),
    mayOpen: mayOpen(run, drawn),
    act: {
      devices: seen(drawn, run, act),
      ...compare(drawn, around, before, after),
      raised: raised(drawn, before, pressed),
    },
  };
}

/** A device that is open by itself, because it is fed on LOAD, is pressed like one that has tripped. */
function reset(drawn: Drawn, before: Circuit, device: DeviceId, latched: ReadonlySet<DeviceId>): Done {
  const { setting } = before;
  const tripped = new Set([...setting.tripped].filter((one) => latched.has(one) || one === device));
  const { holds, why, run } = pressReset(before.inSetting({ ...setting, tripped }), device);
  const after = run?.outcomes[0]?.circuit ?? before;
  const said = { device, name: drawn.nameOf(device), residualMa: 0, trips: "no", why } as const;
  const around = drawn.outletsOn(before, new Set([device]));
  return {
    after,
    opened: run === undefined ? [] : openedBy(run, drawn),
    ...(run !== undefined && { otherwise: otherOrders(run, drawn), mayOpen: mayOpen(run, drawn) }),
    act: { devices: [said], ...compare(drawn, around, before, after), raised: [], holds },
  };
}

const nothing = (impossible: string): ActDone => ({
  impossible,
  devices: [],
  wentDark: [],
  cameOn: [],
  stayedOn: [],
  offButLive: [],
  raised: [],
});

type Momentary = Exclude<Act, { readonly kind: "reset" }>;

/** The resistance that is put in, or why there is none. */
function addedBy(drawn: Drawn, act: Momentary, supplyV: number): Added | string {
  if (act.kind === "own-test") {
    const device = drawn.devices.get(act.device);
    return (device && ownTestOf(device)) ?? wording.noTest;
  }
  const outlet = drawn.outlets.get(act.outlet);
  if (outlet === undefined) return wording.notAnOutlet;
  if (act.kind === "plug-in-button") return plugInTestAt(outlet) ?? wording.noGroundForButton(outlet.name);
  if (!(act.mA > 0) || !Number.isFinite(act.mA)) return wording.leakNeedsMilliamperes;
  return leakAt(outlet, act.contact, (supplyV * 1000) / act.mA) ?? wording.noSuchContact(outlet.name);
}

/** Devices that saw some of it, and the one whose own TEST was pressed whatever it saw. */
const seen = (drawn: Drawn, { devices }: TripRun, act: Act): ActDone["devices"] =>
  devices
    .filter(({ device, residualMa }) => residualMa >= 0.5 || (act.kind === "own-test" && act.device === device))
    .map(({ device, residualMa, trips, why }) => ({ device, name: drawn.nameOf(device), residualMa, trips, why }));

function compare(
  drawn: Drawn,
  around: readonly PlacedOutlet[],
  before: Circuit,
  after: Circuit,
): Pick<ActDone, "wentDark" | "cameOn" | "stayedOn" | "offButLive"> {
  const wasOn = onIn(before, around);
  const isOn = onIn(after, around);
  const off = around.filter(({ key }) => wasOn.has(key) && !isOn.has(key));
  const live = liveIn(after, off);
  const stillLive = new Set(live.map(({ outlet }) => outlet));
  return {
    wentDark: off.filter(({ key }) => !stillLive.has(key)).map(({ key }) => drawn.named(key)),
    cameOn: around.filter(({ key }) => !wasOn.has(key) && isOn.has(key)).map(({ key }) => drawn.named(key)),
    stayedOn: around.filter(({ key }) => wasOn.has(key) && isOn.has(key)).map(({ key }) => drawn.named(key)),
    offButLive: live.map((contact) => asStillLive(drawn, contact)),
  };
}

const asStillLive = (drawn: Drawn, { outlet, contact, volts }: LiveContact): StillLive => ({
  ...drawn.named(outlet),
  contact,
  volts,
});

const onIn = (circuit: Circuit, outlets: readonly PlacedOutlet[]): ReadonlySet<OutletKey> =>
  new Set(readOutlets(circuit, outlets).flatMap(({ outlet, hn }) => (hn.lowVolts >= ON_FROM_V ? [outlet.key] : [])));

/** Ground contacts that are live only while it is held. */
function raised(drawn: Drawn, before: Circuit, pressed: Circuit): readonly StillLive[] {
  const outlets = [...drawn.outlets.values()];
  const grounds = (circuit: Circuit): readonly LiveContact[] =>
    liveIn(circuit, outlets).filter(({ contact }) => contact === "ground");
  const were = new Set(grounds(before).map(({ outlet }) => outlet));
  return grounds(pressed)
    .filter(({ outlet }) => !were.has(outlet))
    .map((contact) => asStillLive(drawn, contact));
}
