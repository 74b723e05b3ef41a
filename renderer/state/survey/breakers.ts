import { findDeviceType } from "../../../shared-model/catalog/device-types.ts";
import type { Device } from "../../../shared-model/model/device.ts";
import type { DeviceId } from "../../../shared-model/model/ids.ts";
import type { Installation } from "../../../shared-model/model/project.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";

/** Breakers and fuses of an installation, in the order of its panels. */
export const breakersOf = ({
  enclosures,
}: Pick<Installation, "enclosures">): readonly { readonly id: DeviceId; readonly name: string }[] =>
  inOrder(enclosures).flatMap(({ devices }) =>
    inOrder<Device>(devices).flatMap(({ id, name, type }) => {
      const family = findDeviceType(type)?.family;
      return family === "breaker" || family === "fuse" ? [{ id, name }] : [];
    }),
  );
