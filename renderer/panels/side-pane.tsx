import { Tabs } from "@base-ui/react/tabs";
import { findingsStore } from "../state/findings-store.ts";
import { type Pane, sessionStore, showPane } from "../state/session-store.ts";
import { useStore } from "../state/use-store.ts";
import { Details } from "./details/details.tsx";
import { Findings } from "./findings/findings.tsx";
import { Rooms } from "./rooms/rooms.tsx";
import { StateTag } from "./state-switch.tsx";

/** What is selected, what was found, and where things stand. */
export function SidePane() {
  const pane = useStore(sessionStore, (state) => state.pane);
  const count = useStore(findingsStore, (state) => state.findings.length);
  return (
    <Tabs.Root className="tabs" value={pane} onValueChange={(value: Pane) => showPane(value)}>
      <div className="region-head">
        <Tabs.List className="tab-list" activateOnFocus>
          <Tabs.Tab className="tab" value="details">
            Details
          </Tabs.Tab>
          <Tabs.Tab className="tab" value="findings">
            Findings <span className="tab-count fig">{count}</span>
          </Tabs.Tab>
          <Tabs.Tab className="tab" value="rooms">
            Rooms
          </Tabs.Tab>
        </Tabs.List>
        <StateTag />
      </div>
      <Tabs.Panel className="tab-body" value="details">
        <Details />
      </Tabs.Panel>
      <Tabs.Panel className="tab-body" value="findings">
        <Findings />
      </Tabs.Panel>
      <Tabs.Panel className="tab-body" value="rooms">
        <Rooms />
      </Tabs.Panel>
    </Tabs.Root>
  );
}
