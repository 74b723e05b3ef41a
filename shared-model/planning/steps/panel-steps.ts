import type { ScopeBox, ScopeBreaker } from "../../answers/scope.ts";
import { findDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { EnclosureId } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { inBox, type StepDraft } from "./step-draft.ts";

const wording = catalogue({
  closeMain: (panel: Part) => `Take the lock off and close the main of ${panel}, or the disconnect ahead of it.`,
  leave: "Where nothing ahead of it can be opened and locked, leave the panel closed: that is the utility's to part.",
  openMain: (panel: Part) => `Open the main of ${panel}, or the disconnect ahead of it; lock and tag.`,
  opensAtOnce: "It opens at once: leave it open and go back to the dead tests.",
  stayLive:
    "With its breakers open the buses of a panel are live, and with the main open the lugs ahead of the main are: stay away from them.",
});

/**
 * Panels that the work opens. Their buses are live whatever branch breakers are open, so what is ahead of them is opened
 * too, but where that is a breaker of another panel that is drawn: it stands among the breakers. Common practice, from
 * memory: OSHA 29 CFR 1910.333(a)(1) and (b), live parts are made dead before anyone works near them.
 */
const toOpen = (boxes: readonly ScopeBox[], asFound: Installation): readonly ScopeBox[] =>
  boxes.filter(
    ({ isPanel, enclosure, breakers }) =>
      isPanel &&
      asFound.enclosures[enclosure] !== undefined &&
      !breakers.some((one) => isFeeding(one, enclosure, asFound)),
  );

function isFeeding({ panel }: ScopeBreaker, id: EnclosureId, { enclosures }: Installation): boolean {
  const fed = enclosures[id];
  return fed?.kind === "panel" && fed.supply === "feeder" && panel.id !== id;
}

/** Stage 2: the main of each, or what is ahead of it. */
export const openMains = (boxes: readonly ScopeBox[], asFound: Installation): readonly StepDraft[] =>
  toOpen(boxes, asFound).map((box) => ({
    ...inBox(box),
    id: `isolate:main:${box.enclosure}`,
    stage: 2,
    kind: "isolate",
    items: [{ kind: "enclosure", id: box.enclosure, name: box.name }],
    text: wording.openMain(box.name),
    details: [wording.stayLive],
    ifNot: wording.leave,
    cautions: ["WRK1", "WRK5"],
  }));

/** Stage 14: closed again, before the breakers behind it. */
export const closeMains = (boxes: readonly ScopeBox[], asFound: Installation): readonly StepDraft[] =>
  toOpen(boxes, asFound)
    .filter(({ work }) => work !== "removed")
    .map((box) => ({
      ...inBox(box),
      id: `energise:main:${box.enclosure}`,
      stage: 14,
      kind: "energise",
      items: [{ kind: "enclosure", id: box.enclosure, name: box.name }],
      text: wording.closeMain(box.name),
      ifNot: wording.opensAtOnce,
    }));

/** A handle that is moved to see whether something comes by its other way; one that is locked open stays as it is. */
export function isTriedBothWays({ id, type }: Device, { breakers }: ScopeBox): boolean {
  const found = findDeviceType(type);
  if (found === undefined || found.positions.length === 0) return false;
  return found.family !== "breaker" && found.family !== "fuse" && !breakers.some(({ device }) => device === id);
}
