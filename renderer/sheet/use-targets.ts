import { useMemo } from "react";
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import { nameOfEnd } from "../../shared-model/queries/end-facts.ts";
import { documentStore, refusalOf, shownInstallation } from "../state/document-store.ts";
import { type LandingState, landingStore } from "../state/landing-store.ts";
import { useStore } from "../state/use-store.ts";
import type { HeldThing } from "./gesture-store.ts";
import type { LandingTarget } from "./landing-targets.ts";
import { useLaterParts } from "./later.ts";

const NONE: readonly LandingTarget[] = [];

/** Targets of what is held in a box, with what is known against each. What would follow arrives a moment after the hold. */
export function useTargets(
  enclosure: Enclosure | undefined,
  drawing: BoxDrawing | undefined,
  held: HeldThing | undefined,
): readonly LandingTarget[] {
  const parts = useLaterParts();
  const ours = held?.kind === "end";
  const landing = useStore(landingStore, (store): LandingState | undefined => (ours ? store : undefined));
  return useMemo(() => {
    if (held === undefined || enclosure === undefined || drawing === undefined || parts === undefined) return NONE;
    if (held.kind === "jumper")
      return parts.targetsOfJumper(drawing, enclosure, held, documentStore.get().state, refusalOf);
    if (landing?.held?.end !== held.end || landing.held.enclosure !== held.enclosure) return NONE;
    return parts.targetsOfEnd(
      drawing,
      held,
      landing.choices,
      landing.previews,
      nameOfEnd(shownInstallation(), enclosure, held.end),
    );
  }, [enclosure, drawing, held, landing, parts]);
}
