import type { Enclosure, Entry, Jumper } from "../../../shared-model/model/enclosure.ts";
import { jumperEnd } from "../../../shared-model/model/ids.ts";
import type { Load } from "../../../shared-model/model/load.ts";
import type { Label } from "../../../shared-model/model/project.ts";
import type { Room } from "../../../shared-model/model/room.ts";
import { goTo, showPane } from "../../state/session-store.ts";
import { RemoveButton } from "../remove-button.tsx";
import { EndRow } from "./end-row.tsx";
import { Properties } from "./properties.tsx";
import { Section } from "./section.tsx";
import { Who } from "./who.tsx";
import { wording } from "./words.ts";

export function JumperDetails({ jumper, enclosure }: { readonly jumper: Jumper; readonly enclosure: Enclosure }) {
  return (
    <>
      <Who item={{ kind: "jumper", id: jumper.id }} name={jumper.name} kind="jumper">
        <p>{wording.staysInsideItCountsNothingIn(enclosure.name)}</p>
      </Who>
      <Section title={wording.ends}>
        <ul className="ends">
          <EndRow enclosure={enclosure} end={jumperEnd(jumper.id, "a")} />
          <EndRow enclosure={enclosure} end={jumperEnd(jumper.id, "b")} />
        </ul>
      </Section>
      <Properties target={{ kind: "jumper", id: jumper.id }} />
    </>
  );
}

export function LoadDetails({ load }: { readonly load: Load }) {
  return (
    <>
      <Who item={{ kind: "load", id: load.id }} name={load.name} kind="load" />
      <Properties target={{ kind: "load", id: load.id }} />
    </>
  );
}

export function LabelDetails({ label }: { readonly label: Label }) {
  return (
    <>
      <header className="who">
        <div className="who-line">
          <h2>{wording.label}</h2>
          <RemoveButton items={[{ kind: "label", id: label.id }]} what={wording.theLabel2} />
        </div>
      </header>
      <Properties target={{ kind: "label", id: label.id }} />
    </>
  );
}

export function RoomDetails({ room }: { readonly room: Room }) {
  return (
    <>
      <Who item={{ kind: "room", id: room.id }} name={room.name} kind="room">
        <button type="button" className="link" onClick={() => showPane("rooms")}>
          {wording.boxesThatStandInIt}
        </button>
      </Who>
      <Properties target={{ kind: "room", id: room.id }} />
    </>
  );
}

export function EntryDetails({ entry, enclosure }: { readonly entry: Entry; readonly enclosure: Enclosure }) {
  return (
    <>
      <header className="who">
        <h2>
          {wording.entry2}
          <small>{wording.ofWord3(enclosure.name)}</small>
        </h2>
        <button type="button" className="link" onClick={() => goTo({ kind: "enclosure", id: enclosure.id })}>
          {enclosure.name}
        </button>
      </header>
      <Properties target={{ kind: "entry", enclosure: enclosure.id, id: entry.id }} />
    </>
  );
}
