import { unreachable } from "../../../shared-model/lib/unreachable.ts";
import type { Installation, Project } from "../../../shared-model/model/project.ts";
import { findDevice, findJumper, findSplice } from "../../../shared-model/queries/find-item.ts";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { keyOf, type Selected } from "../../state/selection.ts";
import { sessionStore } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { CableDetails } from "./cable-details.tsx";
import { DeviceDetails } from "./device-details.tsx";
import { DrawingDetails } from "./drawing-details.tsx";
import { EnclosureDetails } from "./enclosure-details.tsx";
import { EndDetails } from "./end-details.tsx";
import { SeveralDetails } from "./several-details.tsx";
import { EntryDetails, JumperDetails, LabelDetails, LoadDetails, RoomDetails } from "./small-details.tsx";
import { SpliceDetails } from "./splice-details.tsx";
import { useKeptFocus } from "./use-kept-focus.ts";

/** Everything about what is selected, and every way to change it that the sheet has too. */
export function Details() {
  const selection = useStore(sessionStore, (state) => state.selection);
  const held = useStore(sessionStore, (state) => state.held !== undefined);
  const root = useKeptFocus(`${selection.map(keyOf).join(" ")} ${held}`);
  return (
    <div ref={root} tabIndex={-1} className="details">
      <Shown selection={selection} />
    </div>
  );
}

function Shown({ selection }: { readonly selection: readonly Selected[] }) {
  const [first, ...others] = selection;
  if (first === undefined) return <DrawingDetails />;
  if (others.length > 0) return <SeveralDetails selection={selection} />;
  return <OneDetails key={keyOf(first)} selected={first} />;
}

function OneDetails({ selected }: { readonly selected: Selected }) {
  const project = useStore(documentStore, (state) => state.project);
  const installation = useStore(documentStore, installationOf);
  return show(project, installation, selected) ?? <DrawingDetails />;
}

/** Undefined when the thing is gone, as after an undo. */
function show(project: Project, installation: Installation, selected: Selected) {
  switch (selected.kind) {
    case "enclosure": {
      const enclosure = installation.enclosures[selected.id];
      return enclosure && <EnclosureDetails enclosure={enclosure} />;
    }
    case "device": {
      const found = findDevice(installation, selected.id);
      return found && <DeviceDetails device={found.device} enclosure={found.enclosure} />;
    }
    case "cable": {
      const cable = installation.cables[selected.id];
      return cable && <CableDetails cable={cable} />;
    }
    case "splice": {
      const found = findSplice(installation, selected.id);
      return found && <SpliceDetails splice={found.splice} enclosure={found.enclosure} />;
    }
    case "end": {
      const enclosure = installation.enclosures[selected.enclosure];
      if (enclosure === undefined || !(selected.id in enclosure.places)) return undefined;
      return <EndDetails end={selected.id} enclosure={enclosure} />;
    }
    case "jumper": {
      const found = findJumper(installation, selected.id);
      return found && <JumperDetails jumper={found.jumper} enclosure={found.enclosure} />;
    }
    case "load": {
      const load = installation.loads[selected.id];
      return load && <LoadDetails load={load} />;
    }
    case "label": {
      const label = installation.labels[selected.id];
      return label && <LabelDetails label={label} />;
    }
    case "room": {
      const room = project.rooms[selected.id];
      return room && <RoomDetails room={room} />;
    }
    case "entry": {
      const enclosure = installation.enclosures[selected.enclosure];
      const entry = enclosure?.entries[selected.id];
      return enclosure && entry && <EntryDetails entry={entry} enclosure={enclosure} />;
    }
    default:
      return unreachable(selected);
  }
}
