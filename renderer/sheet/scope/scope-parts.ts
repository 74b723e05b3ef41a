import "../../ui/flag.css";
import "./scope.css";
import { ScopeFar } from "./scope-far.tsx";
import { ScopeGone } from "./scope-gone.tsx";
import { ScopeInside } from "./scope-inside.tsx";
import { ScopeOverlay } from "./scope-overlay.tsx";
import { ScopeTallies } from "./scope-tallies.tsx";

/** What draws the difference of the states. Fetched when it is shown first. */
export const parts = { ScopeFar, ScopeGone, ScopeInside, ScopeOverlay, ScopeTallies } as const;
