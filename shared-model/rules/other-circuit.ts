import type { Device } from "../model/device.ts";
import type { DeviceId } from "../model/ids.ts";
import type { PathStep, Section, Spot } from "../solver/section.ts";

/**
 * The breaker of a hot, where the LINE of a device is on another one or on its other leg; undefined where both are of one
 * circuit, and where one of them is not known.
 */
export function otherCircuit(section: Section, device: DeviceId, line: Spot, hot: Spot): Device | undefined {
  const own = feedOf(section, section.wayFrom("ungrounded", hot, device));
  const ofLine = feedOf(section, section.wayFrom("ungrounded", line, device));
  if (own === undefined || ofLine === undefined) return undefined;
  return own.breaker === ofLine.breaker && own.terminal === ofLine.terminal ? undefined : own.breaker;
}

/** The breaker and terminal by which a way comes out of a panel last. */
export function feedOf(
  section: Section,
  way: readonly PathStep[] | undefined,
): { readonly breaker: Device; readonly terminal: string } | undefined {
  const breakers = new Map(section.breakers().map(({ device }) => [device.id, device]));
  const step = way?.findLast((one) => one.kind === "device" && breakers.has(one.device));
  if (step?.kind !== "device") return undefined;
  const breaker = breakers.get(step.device);
  return breaker === undefined ? undefined : { breaker, terminal: step.to };
}
