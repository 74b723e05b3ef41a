import { useMemo } from "react";
import type { BoxConditions, Condition, ConditionKind, Energised } from "../../../shared-model/answers/energised.ts";
import type { BoxDrawing, ConductorDrawing } from "../../../shared-model/geometry/box-drawing.ts";
import type { Cable } from "../../../shared-model/model/cable.ts";
import type { CableId, ConductorKey, EnclosureId } from "../../../shared-model/model/ids.ts";
import { shownInstallation } from "../../state/document-store.ts";
import { energiseStore, shownAnswer } from "../../state/energise/energise-store.ts";
import { useStore } from "../../state/use-store.ts";

/** How the things in a box stand while the drawing is energised. */
export interface Lit {
  readonly box: BoxConditions;
  readonly answer: Energised;
  /** Undefined for what the answer does not know yet. */
  conductor(drawing: ConductorDrawing): Condition | undefined;
}

/** Undefined while the drawing is not energised, and before the first answer. */
export function useLit(id: EnclosureId): Lit | undefined {
  const answer = useStore(energiseStore, shownAnswer);
  return useMemo(() => {
    return answer === undefined ? undefined : litIn(answer, id);
  }, [answer, id]);
}

/** How the things in a box stand by an answer; undefined where it does not know the box. */
export function litIn(answer: Energised, id: EnclosureId): Lit | undefined {
  const box = answer.boxes[id];
  return box && { box, answer, conductor: (drawing) => conditionOf(answer, box, id, drawing) };
}

function conditionOf(
  answer: Energised,
  box: BoxConditions,
  id: EnclosureId,
  { ends, passThrough, conductor }: ConductorDrawing,
): Condition | undefined {
  const [end] = ends;
  if (end !== undefined) return box.ends[end];
  const through = passThrough && shownInstallation().enclosures[id]?.passThroughs[passThrough];
  return through && conductor && answer.cables[through.cable]?.[conductor];
}

const GRAVEST: readonly ConditionKind[] = [
  "live",
  "switched",
  "through-load",
  "floating",
  "neutral-and-ground",
  "dead",
  "neutral",
  "ground",
];

/** The gravest of the conductors of a cable, grounds aside. */
export function cableCondition({ cables }: Energised, id: CableId, cable: Cable | undefined): Condition | undefined {
  const own = Object.entries(cables[id] ?? {}) as [ConductorKey, Condition][];
  const insulated = own.filter(([key]) => !isGround(cable, key));
  const all = (insulated.length > 0 ? insulated : own).map(([, condition]) => condition);
  return all.sort((p, q) => GRAVEST.indexOf(p.kind) - GRAVEST.indexOf(q.kind))[0];
}

const isGround = (cable: Cable | undefined, key: ConductorKey): boolean => {
  const colour = cable?.conductors[key]?.colour;
  return colour === "bare" || colour === "green";
};

/** The gravest of the places of a device where it has outlets, loads or poles; grounds and neutrals aside. */
export function deviceCondition(lit: Lit, device: BoxDrawing["devices"][number]["device"]): Condition | undefined {
  const all = Object.values(lit.box.devices[device] ?? {}).filter(
    ({ kind }) => kind !== "ground" && kind !== "neutral",
  );
  return [...all].sort((p, q) => GRAVEST.indexOf(p.kind) - GRAVEST.indexOf(q.kind))[0];
}
