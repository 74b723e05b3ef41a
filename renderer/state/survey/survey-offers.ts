import type { Box, Enclosure } from "../../../shared-model/model/enclosure.ts";
import { cablesInto } from "../../../shared-model/queries/cables-into.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { documentStore } from "../document-store.ts";
import { pickBox } from "../pick-box.ts";
import { mapCircuits, surveyBox } from "./survey-store.ts";
import { wording } from "./words.ts";

/** A survey that can be begun, named by what it does. */
interface Offer {
  readonly title: string;
  readonly run: () => void;
}

/** With one cable there is nothing to tell apart. What is surveyed is what is there: as found. */
function isSurveyable({ id, kind }: Pick<Enclosure, "id" | "kind">): boolean {
  const { enclosures, cables } = documentStore.get().project.asFound;
  return kind === "box" && enclosures[id] !== undefined && cablesInto(cables, id).length > 1;
}

/** The assistant for the cables of a box, where it can be begun. */
export const cableOffers = (enclosure: Pick<Enclosure, "id" | "kind" | "name">): readonly Offer[] =>
  isSurveyable(enclosure)
    ? [{ title: wording.whichCableOfIsWhich(enclosure.name), run: () => surveyBox(enclosure.id) }]
    : [];

/** The same without a box that is selected: which one is asked; and the map of circuits. */
export function surveyOffers(): readonly Offer[] {
  if (documentStore.get().readOnly) return [];
  const { enclosures } = documentStore.get().project.asFound;
  const boxes = inOrder<Enclosure>(enclosures).filter((one): one is Box => isSurveyable(one));
  return [
    ...(boxes.length > 0
      ? [{ title: wording.whichCableIsWhich, run: () => pickBox(wording.whichBox, boxes, surveyBox) }]
      : []),
    ...(Object.keys(enclosures).length > 0 ? [{ title: wording.mapTheCircuits, run: mapCircuits }] : []),
  ];
}
