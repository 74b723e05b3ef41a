import { FullWords } from "../ui/full-words.tsx";
import { BackToDrawing } from "./back-to-drawing.tsx";
import { BendLayer } from "./bend/bend-layer.tsx";
import { beginEndDrag } from "./bend/end-drag.ts";
import { CableKnob } from "./cable-knob.tsx";
import { LitAway } from "./energise/lit-away.tsx";
import { litActions, pressLit } from "./energise/lit-events.ts";
import { litItems } from "./energise/lit-items.ts";
import { LitLayer } from "./energise/lit-layer.tsx";
import { LitRoads, LitRoadTags } from "./energise/lit-roads.tsx";
import { HandHint } from "./hand-hint.tsx";
import { HandLayer } from "./hand-layer.tsx";
import { targetsOfEnd, targetsOfJumper } from "./landing-targets.ts";
import { LayingOutHint } from "./laying-out-hint.tsx";
import { Legend } from "./legend.tsx";
import { OverviewHost } from "./overview/overview-host.tsx";
import { placeKey } from "./placing/place-keys.ts";
import { PlacingGhost } from "./placing/placing-ghost.tsx";
import { RenameField } from "./rename-field.tsx";
import { RouteLine } from "./route-line.tsx";
import { SelectionBar } from "./selection-bar.tsx";
import { TargetLayer } from "./target-layer.tsx";
import { TargetTip } from "./target-tip.tsx";

/** What the sheet needs once a hand is at work on it, or it is energised. */
export const parts = {
  BackToDrawing,
  BendLayer,
  CableKnob,
  FullWords,
  HandHint,
  HandLayer,
  LayingOutHint,
  Legend,
  LitAway,
  LitLayer,
  LitRoads,
  LitRoadTags,
  OverviewHost,
  PlacingGhost,
  RenameField,
  RouteLine,
  SelectionBar,
  TargetLayer,
  TargetTip,
  beginEndDrag,
  litActions,
  litItems,
  placeKey,
  pressLit,
  targetsOfEnd,
  targetsOfJumper,
} as const;
