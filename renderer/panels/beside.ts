import { LeftPane } from "./left-pane.tsx";
import { PickDialog } from "./pick/pick-dialog.tsx";
import { SidePane } from "./side-pane.tsx";
import { TourHost } from "./tour/tour-host.tsx";

/** What stands beside the sheet and over it. The drawing is seen first, so it is fetched apart from it. */
export const parts = { LeftPane, PickDialog, SidePane, TourHost } as const;
