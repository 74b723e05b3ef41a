import type { DeviceSaid } from "../answers/energised.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { DeviceId } from "../model/ids.ts";
import type { TripRun } from "../solver/circuit/trips.ts";
import type { Drawn } from "./drawn-outlets.ts";

const wording = catalogue({
  itOpened: "It opened.",
  furtherOrders: "There are further orders, which were not followed.",
  and: " and ",
  eitherFirst: (steps: Part) => `Either may be first. It could also be: ${steps}.`,
  thenNext: ", then ",
});

/** What opened in the order that is shown, each with what it says about it. */
export function openedBy(run: TripRun, drawn: Drawn): readonly (readonly DeviceSaid[])[] {
  const all = [...run.devices, ...run.breakers];
  const why = (device: DeviceId): string =>
    all.find((one) => one.device === device && one.trips === "yes")?.why ?? wording.itOpened;
  return (run.outcomes[0]?.opened ?? []).map((together) =>
    together.map((device) => ({ device, name: drawn.nameOf(device), why: why(device) })),
  );
}

/** Other orders than the one that is shown, as sentences. */
export function otherOrders({ outcomes, cutShort }: TripRun, drawn: Drawn): readonly string[] {
  const sentences = outcomes.slice(1).map(({ opened }) => {
    const steps = opened.map((together) => together.map(drawn.nameOf).join(wording.and));
    return wording.eitherFirst(steps.join(wording.thenNext));
  });
  return cutShort ? [...sentences, wording.furtherOrders] : sentences;
}

/** Devices of which it is not certain whether they open. */
export const mayOpen = ({ devices, breakers }: TripRun, drawn: Drawn): readonly DeviceSaid[] =>
  [...devices, ...breakers].flatMap(({ device, trips, why }) =>
    trips === "may" ? [{ device, name: drawn.nameOf(device), why }] : [],
  );
