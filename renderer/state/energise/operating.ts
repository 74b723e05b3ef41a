import type { Operable, Operated } from "../../../shared-model/answers/energised.ts";
import type { DeviceId } from "../../../shared-model/model/ids.ts";
import { energiseStore } from "./energise-store.ts";
import { doNow, setAllOn, setOperated } from "./energising.ts";

const including = <T>(list: readonly T[], item: T): readonly T[] => (list.includes(item) ? list : [...list, item]);
const without = <T>(list: readonly T[], item: T): readonly T[] => list.filter((one) => one !== item);

/** Everything that can be operated, as it stands now; nothing before the first answer. */
export const operables = (): readonly Operable[] => energiseStore.get().answer?.operables ?? [];

/** What of it belongs to a device. */
export const operablesOf = (device: DeviceId): readonly Operable[] =>
  operables().filter((one) => one.device === device);

/**
 * Operates something once: a breaker or switch goes over, a load is taken out of use or put back, a ground-fault device
 * that is set is tested and one that is tripped is reset. @returns False where that cannot be.
 */
export function operate(one: Operable): boolean {
  const { setting } = energiseStore.get();
  switch (one.kind) {
    case "breaker":
      setOperated(breakerOver(one.device, one.stands, setting));
      return true;
    case "switch":
      setOperated({
        positions: { ...setting.positions, [one.handle]: (one.position + 1) % Math.max(1, one.positions.length) },
      });
      return true;
    case "ground-fault":
      if (one.stands === "set") pressTest(one.device);
      else pressReset(one.device);
      return true;
    case "load":
      setOperated({ idle: one.inUse ? including(setting.idle, one.item) : without(setting.idle, one.item) });
      return true;
  }
}

/** A breaker that has tripped is put back on by one step, as if it went over off. */
function breakerOver(
  device: DeviceId,
  stands: Extract<Operable, { readonly kind: "breaker" }>["stands"],
  { off, tripped }: Operated,
): Partial<Operated> {
  if (stands === "on") return { off: including(off, device) };
  return { off: without(off, device), tripped: without(tripped, device) };
}

export const pressTest = (device: DeviceId): void => doNow({ kind: "own-test", device });

/** RESET of a ground-fault device. Whether it holds is computed. */
export const pressReset = (device: DeviceId): void => doNow({ kind: "reset", device });

/** Everything on, reset, in use and as drawn. */
export const allOn = (): void => setAllOn();
