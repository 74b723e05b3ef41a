import { Tabs } from "@base-ui/react/tabs";
import { lazy, Suspense } from "react";
import { type LeftTab, leftPaneStore, showLeftTab } from "../state/left-pane-store.ts";
import { useStore } from "../state/use-store.ts";
import { FoldablePane, FoldButton } from "./foldable-pane.tsx";
import { StateTag } from "./state-switch.tsx";
import { Stock } from "./stock/stock.tsx";
import { wording } from "./words.ts";

const Outline = lazy(() => import("./outline/outline.tsx"));

const TABS = [
  { value: "stock", word: wording.stock },
  { value: "outline", word: wording.outline },
] as const;

/** What can be placed, and the drawing as a tree. */
export function LeftPane() {
  const tab = useStore(leftPaneStore, (state) => state.tab);
  return (
    <FoldablePane side="left" tabs={TABS} onShow={showLeftTab}>
      <Tabs.Root className="tabs" value={tab} onValueChange={(value: LeftTab) => showLeftTab(value)}>
        <div className="region-head">
          <Tabs.List className="tab-list" activateOnFocus>
            <Tabs.Tab className="tab" value="stock">
              {wording.stock}
            </Tabs.Tab>
            <Tabs.Tab className="tab" value="outline">
              {wording.outline}
            </Tabs.Tab>
          </Tabs.List>
          <span className="state-place">
            <StateTag />
          </span>
          <FoldButton side="left" />
        </div>
        <Tabs.Panel className="tab-body left-tab" value="stock">
          <Stock />
        </Tabs.Panel>
        <Tabs.Panel className="tab-body left-tab" value="outline">
          <Suspense fallback={<p className="empty">{wording.openingTheOutline}</p>}>
            <Outline />
          </Suspense>
        </Tabs.Panel>
      </Tabs.Root>
    </FoldablePane>
  );
}
