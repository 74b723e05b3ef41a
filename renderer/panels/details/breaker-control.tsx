import { useId } from "react";
import { getDeviceType } from "../../../shared-model/catalog/device-types.ts";
import type { Device } from "../../../shared-model/model/device.ts";
import type { DeviceId } from "../../../shared-model/model/ids.ts";
import { findDevice } from "../../../shared-model/queries/find-item.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { sessionStore } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import type { ControlProps } from "./control-props.ts";
import { wording } from "./words.ts";

/** Chooses another breaker of the panel that the selected one sits in. */
export function BreakerControl({ property, value, onChange }: ControlProps) {
  const id = useId();
  const installation = useStore(documentStore, installationOf);
  const selected = useStore(sessionStore, ({ selection }) => selection[0]);
  const own = selected?.kind === "device" ? selected.id : undefined;
  const panel = own === undefined ? undefined : findDevice(installation, own)?.enclosure;
  const others = inOrder<Device>(panel?.devices ?? {}).filter(
    (device) => device.id !== own && getDeviceType(device.type).family === "breaker",
  );
  return (
    <>
      <label htmlFor={id}>{property.label}</label>
      <select
        id={id}
        className="field small"
        value={typeof value === "string" ? value : ""}
        onChange={({ target }) => onChange(target.value === "" ? null : (target.value as DeviceId))}
      >
        <option value="">{wording.notEntered}</option>
        {others.map((device) => (
          <option key={device.id} value={device.id}>
            {device.name}
          </option>
        ))}
      </select>
    </>
  );
}
