import type { Enclosure } from "../model/enclosure.ts";
import type { DeviceId, EndKey } from "../model/ids.ts";
import type { Reach, Section } from "./section.ts";

/**
 * Ends of a box that lie behind a ground-fault device: joined to a source while it is reset, and to none with everything
 * taken out that its sensor sums. Undefined where there is nothing of the kind.
 * @param devices Those that are found to protect an outlet, so that one that is fed on LOAD or without power has nothing
 * behind it.
 */
export function endsBehind(
  section: Section,
  enclosure: Enclosure,
  devices: readonly DeviceId[],
): Readonly<Record<EndKey, readonly DeviceId[]>> | undefined {
  if (devices.length === 0) return undefined;
  const closed = section.reach();
  const cuts = devices.map((device) => ({ device, cut: section.sensorCut(device) }));
  const found: Record<EndKey, readonly DeviceId[]> = Object.create(null);
  for (const end of Object.keys(enclosure.places) as EndKey[]) {
    if (!isFed(closed, end) || closed.isOnGround({ end })) continue;
    const behind = cuts.filter(({ cut }) => !isFed(cut, end)).map(({ device }) => device);
    if (behind.length > 0) found[end] = behind;
  }
  return Object.keys(found).length > 0 ? found : undefined;
}

const isFed = (reach: Reach, end: EndKey): boolean => reach.isLive({ end }) || reach.isGrounded({ end });
