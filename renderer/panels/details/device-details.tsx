import { findDeviceType } from "../../../shared-model/catalog/device-types.ts";
import { loadItems } from "../../../shared-model/catalog/load-items.ts";
import type { Device } from "../../../shared-model/model/device.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import { landedAt } from "../../../shared-model/queries/landings.ts";
import { outletsOf, type PlacedOutlet } from "../../../shared-model/queries/outlets-of.ts";
import { terminalsOf } from "../../../shared-model/queries/terminals-of.ts";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { freeHole } from "../../state/item-actions/device-actions.ts";
import { addJumperFrom } from "../../state/item-actions/jumper-action.ts";
import { pigtail } from "../../state/pigtail.ts";
import { placeLoad } from "../../state/placing.ts";
import { goTo, notify, select } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { Glyph } from "../../ui/glyph.tsx";
import { DirectoryLine } from "./directory-line.tsx";
import { EndRow } from "./end-row.tsx";
import { FindingsAbout } from "./findings-about.tsx";
import { GroundFaultPart } from "./ground-fault-part.tsx";
import { OutletWishRow } from "./intent-rows.tsx";
import { LabelRows } from "./label-rows.tsx";
import { Properties } from "./properties.tsx";
import { ReplaceDevice, ReplacedLine } from "./replace-device.tsx";
import { Section } from "./section.tsx";
import { TestRecordPart } from "./test-record-part.tsx";
import { VoltageDrop } from "./voltage-drop.tsx";
import { Who } from "./who.tsx";
import { wording } from "./words.ts";

/** A device: its terminals and who is landed on them, what is plugged in, and the facts about it. */
export function DeviceDetails({ device, enclosure }: { readonly device: Device; readonly enclosure: Enclosure }) {
  const type = findDeviceType(device.type);
  return (
    <>
      <Who item={{ kind: "device", id: device.id }} name={device.name} kind={type?.caption ?? device.type}>
        <p className="row">
          <Glyph id={type?.glyph ?? "box"} size={20} />
          {type?.title ?? device.type}
          {wording.inWord}
          <button type="button" className="link" onClick={() => goTo({ kind: "enclosure", id: enclosure.id })}>
            {enclosure.name}
          </button>
        </p>
        <ReplacedLine device={device} />
      </Who>
      <FindingsAbout item={{ kind: "device", id: device.id }} />
      <GroundFaultPart enclosure={enclosure} device={device} />
      <Terminals device={device} enclosure={enclosure} />
      <ReplaceDevice device={device} enclosure={enclosure} />
      {outletsOf(device)
        .filter(({ receptacle }) => receptacle)
        .map((outlet) => (
          <PluggedIn key={outlet.key} outlet={outlet} />
        ))}
      {outletsOf(device).length > 0 && <VoltageDrop device={device.id} />}
      <TestRecordPart device={device} />
      <DirectoryLine device={device} />
      <Wishes device={device} />
      <LabelRows on={{ device: device.id }} />
      <Properties target={{ kind: "device", id: device.id }} />
    </>
  );
}

function Wishes({ device }: { readonly device: Device }) {
  const outlets = outletsOf(device);
  if (outlets.length === 0) return null;
  return (
    <Section title={wording.wishes}>
      <div className="part-body">
        {outlets.map((outlet) => (
          <OutletWishRow key={outlet.key} outlet={outlet} />
        ))}
      </div>
    </Section>
  );
}

const FINISH_WORDS = {
  brass: wording.brass,
  silver: wording.silver,
  green: wording.green,
  black: wording.black,
  none: "",
} as const;

function Terminals({ device, enclosure }: { readonly device: Device; readonly enclosure: Enclosure }) {
  const terminals = terminalsOf(device);
  const free = terminals.filter(({ name }) => landedAt(enclosure, device.id, name).length === 0);
  return (
    <Section title={wording.terminals} note={wording.ofFree(free.length, terminals.length)}>
      {terminals.map(({ name, group, label, finish, holes }) => {
        const landed = landedAt(enclosure, device.id, name);
        return (
          <div key={name} className="terminal">
            <p className="terminal-head">
              <strong>{[group, label].filter(Boolean).join(" ")}</strong>
              <span className="dim">
                {FINISH_WORDS[finish]}
                {holes > 1 && wording.holes(holes)}
                {landed.length === 0 && wording.free}
              </span>
              {landed.length > 1 ? (
                <button
                  type="button"
                  className="button small"
                  onClick={() => tell(pigtail(enclosure, device.id, name))}
                >
                  {wording.putOnAPigtail}
                  <span className="unseen">: {label}</span>
                </button>
              ) : (
                <button
                  type="button"
                  className="button small"
                  onClick={() =>
                    addJumperFrom(enclosure, {
                      kind: "terminal",
                      device: device.id,
                      terminal: name,
                      hole: freeHole(enclosure, device, name),
                    })
                  }
                >
                  {wording.pigtailFromHere}
                  <span className="unseen"> {[group, label].filter(Boolean).join(" ")}</span>
                </button>
              )}
            </p>
            {landed.length > 0 && (
              <ul className="ends">
                {landed.map(({ end }) => (
                  <EndRow key={end} enclosure={enclosure} end={end} />
                ))}
              </ul>
            )}
          </div>
        );
      })}
    </Section>
  );
}

function tell(done: ReturnType<typeof pigtail>): void {
  if (!done.ok) notify("problem", wording.notDone, [done.refusal.message]);
}

function PluggedIn({ outlet }: { readonly outlet: PlacedOutlet }) {
  const { loads } = useStore(documentStore, installationOf);
  const plugged = Object.values(loads).filter(({ plug }) => plug === outlet.key);
  return (
    <Section title={wording.pluggedInto(outlet.name)} note={plugged.length}>
      <div className="part-body">
        {plugged.map(({ id, name, loadW }) => (
          <p key={id} className="row">
            <button type="button" className="link" onClick={() => select({ kind: "load", id })}>
              {name}
            </button>
            <span className="dim fig">{loadW !== undefined && `${loadW} W`}</span>
          </p>
        ))}
        <select
          className="field small"
          aria-label={wording.plugALoadInto(outlet.name)}
          value=""
          onChange={({ target }) => target.value !== "" && tell(placeLoad(target.value, outlet.key))}
        >
          <option value="">{wording.plugOneIn}</option>
          {loadItems.map(({ id, title, figure }) => (
            <option key={id} value={id}>
              {title}, {figure}
            </option>
          ))}
        </select>
      </div>
    </Section>
  );
}
