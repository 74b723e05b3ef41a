import { Tabs } from "@base-ui/react/tabs";
import { lazy, Suspense } from "react";
import { energiseStore, isEnergised } from "../state/energise/energise-store.ts";
import { findingsStore } from "../state/findings-store.ts";
import { type Pane, sessionStore, showPane } from "../state/session-store.ts";
import { useStore } from "../state/use-store.ts";
import { Details } from "./details/details.tsx";
import { Findings } from "./findings/findings.tsx";
import { Rooms } from "./rooms/rooms.tsx";
import { StateTag } from "./state-switch.tsx";
import { wording } from "./words.ts";

const EnergisePane = lazy(() => import("./energise/energise-pane.tsx"));

/** What is selected, what was found, and where things stand. */
export function SidePane() {
  const pane = useStore(sessionStore, (state) => state.pane);
  const count = useStore(findingsStore, (state) => state.findings.length);
  const open = useStore(findingsStore, (state) => state.couldNotTell.length);
  const energised = useStore(energiseStore, isEnergised);
  return (
    <Tabs.Root className="tabs" value={pane} onValueChange={(value: Pane) => showPane(value)}>
      <div className="region-head">
        <Tabs.List className="tab-list" activateOnFocus>
          <Tabs.Tab className="tab" value="details">
            {wording.details}
          </Tabs.Tab>
          <Tabs.Tab className="tab" value="findings">
            {wording.findings}
            <span className="tab-count fig">
              {count}
              {open > 0 && (
                <>
                  <span aria-hidden="true"> · {open} ?</span>
                  <span className="unseen">{wording.cannotTell(open)}</span>
                </>
              )}
            </span>
          </Tabs.Tab>
          <Tabs.Tab className="tab" value="rooms">
            {wording.rooms}
          </Tabs.Tab>
          {energised && (
            <Tabs.Tab className="tab" value="energise">
              {wording.energised}
            </Tabs.Tab>
          )}
        </Tabs.List>
        {!energised && <StateTag />}
      </div>
      <Tabs.Panel className="tab-body" value="details">
        <Details />
      </Tabs.Panel>
      <Tabs.Panel className="tab-body" value="findings">
        <h2 className="unseen">{wording.findings2}</h2>
        <Findings />
      </Tabs.Panel>
      <Tabs.Panel className="tab-body" value="rooms">
        <h2 className="unseen">{wording.rooms}</h2>
        <Rooms />
      </Tabs.Panel>
      {energised && (
        <Tabs.Panel className="tab-body" value="energise">
          <h2 className="unseen">{wording.energised}</h2>
          <Suspense fallback={<p className="empty">{wording.energising}</p>}>
            <EnergisePane />
          </Suspense>
        </Tabs.Panel>
      )}
    </Tabs.Root>
  );
}
