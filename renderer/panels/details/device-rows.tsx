import { findDeviceType } from "../../../shared-model/catalog/device-types.ts";
import type { Device } from "../../../shared-model/model/device.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { select } from "../../state/session-store.ts";
import { Glyph } from "../../ui/glyph.tsx";
import { Section } from "./section.tsx";
import { wording } from "./words.ts";

/** The devices of an enclosure, by gang. */
export function DeviceRows({ enclosure }: { readonly enclosure: Enclosure }) {
  const devices = inOrder<Device>(enclosure.devices);
  if (devices.length === 0) return null;
  return (
    <Section title={wording.devices} note={devices.length}>
      <ul className="rows">
        {devices.map(({ id, name, type }) => (
          <li key={id} className="row">
            <Glyph id={findDeviceType(type)?.glyph ?? "box"} size={20} />
            <button type="button" className="link" onClick={() => select({ kind: "device", id })}>
              {name}
            </button>
            <span className="dim">{findDeviceType(type)?.caption ?? type}</span>
          </li>
        ))}
      </ul>
    </Section>
  );
}
