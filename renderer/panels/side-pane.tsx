import { Tabs } from "@base-ui/react/tabs";
import { type FocusEvent, lazy, type ReactNode, Suspense, useEffect, useRef } from "react";
import { energiseStore, isEnergised } from "../state/energise/energise-store.ts";
import { findingsStore } from "../state/findings-store.ts";
import { isMakingUp, makeUpStore } from "../state/make-up/make-up-store.ts";
import { isScopeShown, scopeStore } from "../state/scope/scope-store.ts";
import { needForScope } from "../state/scope/scoping.ts";
import { type Pane, sessionStore, showPane, turnTo } from "../state/session-store.ts";
import { isSurveying, surveyStore } from "../state/survey/survey-store.ts";
import { useStore } from "../state/use-store.ts";
import { Details } from "./details/details.tsx";
import { Findings } from "./findings/findings.tsx";
import { FoldablePane, FoldButton } from "./foldable-pane.tsx";
import { Rooms } from "./rooms/rooms.tsx";
import { StateTag } from "./state-switch.tsx";
import { wording } from "./words.ts";

const EnergisePane = lazy(() => import("./energise/energise-pane.tsx"));
const MakeUpPane = lazy(() => import("./make-up/make-up-pane.tsx"));
const SurveyPane = lazy(() => import("./survey/survey-pane.tsx"));

let ScopePane: typeof import("./scope/scope-pane.tsx")["ScopePane"] | undefined;

/** Before it is shown: nothing is waited for then. */
async function fetchScopePane(): Promise<void> {
  ({ ScopePane } = await import("./scope/scope-pane.tsx"));
}

/** What is selected, what was found, and where things stand. */
export function SidePane() {
  const pane = useStore(sessionStore, (state) => state.pane);
  const energised = useStore(energiseStore, isEnergised);
  const makingUp = useStore(makeUpStore, isMakingUp);
  const surveying = useStore(surveyStore, isSurveying);
  const scoped = useStore(scopeStore, isScopeShown);
  useEffect(() => needForScope(fetchScopePane), []);
  const keepFocus = useKeptFocus(pane);
  const tabs: readonly { readonly value: Pane; readonly word: ReactNode }[] = [
    { value: "details", word: wording.details },
    { value: "findings", word: <FindingsWord /> },
    { value: "rooms", word: wording.rooms },
    ...(energised ? [{ value: "energise", word: wording.energised } as const] : []),
    ...(makingUp ? [{ value: "make-up", word: wording.makeUp } as const] : []),
    ...(surveying ? [{ value: "survey", word: wording.survey } as const] : []),
    ...(scoped ? [{ value: "scope", word: wording.scope } as const] : []),
  ];
  return (
    <FoldablePane side="right" tabs={tabs} onShow={turnTo}>
      <Tabs.Root className="tabs" value={pane} onValueChange={(value: Pane) => showPane(value)} {...keepFocus}>
        <div className="region-head">
          <Tabs.List className="tab-list" activateOnFocus>
            {tabs.map(({ value, word }) => (
              <Tabs.Tab key={value} className="tab" value={value}>
                {word}
              </Tabs.Tab>
            ))}
          </Tabs.List>
          {!energised && !makingUp && !surveying && !scoped && (
            <span className="state-place">
              <StateTag />
            </span>
          )}
          <FoldButton side="right" />
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
        {makingUp && (
          <Tabs.Panel className="tab-body" value="make-up">
            <Suspense fallback={<p className="empty">{wording.workingItOut}</p>}>
              <MakeUpPane />
            </Suspense>
          </Tabs.Panel>
        )}
        {surveying && (
          <Tabs.Panel className="tab-body" value="survey">
            <Suspense fallback={<p className="empty">{wording.workingItOut}</p>}>
              <SurveyPane />
            </Suspense>
          </Tabs.Panel>
        )}
        {scoped && ScopePane && (
          <Tabs.Panel className="tab-body" value="scope">
            <h2 className="unseen">{wording.scope}</h2>
            <ScopePane />
          </Tabs.Panel>
        )}
      </Tabs.Root>
    </FoldablePane>
  );
}

/** With how many there are, and how much cannot be told. */
function FindingsWord() {
  const count = useStore(findingsStore, (state) => state.findings.length);
  const open = useStore(findingsStore, (state) => state.couldNotTell.length);
  return (
    <>
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
    </>
  );
}

/** What had the focus in a pane goes with it when another is shown: the tab of that one takes the focus then. */
function useKeptFocus(pane: Pane) {
  const root = useRef<HTMLDivElement>(null);
  const shown = useRef(pane);
  const isInside = useRef(false);
  useEffect(() => {
    const changed = shown.current !== pane;
    shown.current = pane;
    const tab = root.current?.querySelector<HTMLElement>("[role=tab][aria-selected=true]");
    const focused = document.activeElement;
    if (!changed || !isInside.current) return;
    // The old one may stand for a moment more; the new one has no label yet.
    const label = focused?.closest("[role=tabpanel]")?.getAttribute("aria-labelledby") ?? undefined;
    if (focused === document.body || (label !== undefined && label !== tab?.id)) tab?.focus({ preventScroll: true });
  }, [pane]);
  return {
    ref: root,
    onFocus: () => {
      isInside.current = true;
    },
    onBlur: ({ currentTarget, relatedTarget }: FocusEvent) => {
      isInside.current = currentTarget.contains(relatedTarget);
    },
  };
}
