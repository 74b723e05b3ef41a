import {
  asId,
  type CableId,
  type DeviceId,
  type EnclosureId,
  type Half,
  type JumperId,
  type LoadId,
  type OutletKey,
  outletKey,
  type RoomId,
  type SpliceId,
} from "../../shared-model/model/ids.ts";

/**
 * Ids of a drawing are made from kind and name, so that a test can name what it built and a mix-up of name and id shows:
 * box "B1" is "box-B1", splice "E_B2" is "splice-E_B2".
 */
const idText = (kind: string, name: string): string => `${kind}-${name.replaceAll(/[^A-Za-z0-9_-]/g, "_")}`;

export const boxId = (name: string): EnclosureId => asId<EnclosureId>(idText("box", name));
export const cableId = (name: string): CableId => asId<CableId>(idText("cable", name));
export const deviceId = (name: string): DeviceId => asId<DeviceId>(idText("device", name));
export const spliceId = (name: string): SpliceId => asId<SpliceId>(idText("splice", name));
export const jumperId = (name: string): JumperId => asId<JumperId>(idText("jumper", name));
export const roomId = (name: string): RoomId => asId<RoomId>(idText("room", name));
export const loadId = (name: string): LoadId => asId<LoadId>(idText("load", name));
export const outlet = (device: string, half?: Half): OutletKey => outletKey(deviceId(device), half);
