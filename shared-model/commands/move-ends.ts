import type { Draft } from "immer";
import type { EnclosureId, EndKey, SpliceId } from "../model/ids.ts";
import type { At, Place } from "../model/place.ts";
import type { Installation, Project, StateName } from "../model/project.ts";
import { findSplice } from "../queries/find-item.ts";
import { findInstallation, getInstallation } from "../queries/installation-of.ts";
import { membersOf } from "../queries/landings.ts";
import { growConnectors } from "./grow-connector.ts";

/** The state of a draft that a command writes. `refuse` has made sure that it exists. */
export function draftInstallation(draft: Draft<Project>, state: StateName): Draft<Installation> {
  const installation = state === "as-found" ? draft.asFound : draft.proposed;
  if (installation === undefined) throw new Error(`The document has no ${state} state.`);
  return installation;
}

/** An entity of a draft that `refuse` has made sure of. */
export function written<T>(entity: T | undefined): T {
  if (entity === undefined) throw new Error("The command writes something that does not exist.");
  return entity;
}

export const otherState = (project: Project, state: StateName): Installation | undefined =>
  findInstallation(project, state === "as-found" ? "proposed" : "as-found");

export const sameAt = (a: At, b: At): boolean =>
  a.kind === b.kind &&
  (a.kind !== "splice" || (b.kind === "splice" && a.splice === b.splice)) &&
  (a.kind !== "terminal" ||
    (b.kind === "terminal" && a.device === b.device && a.terminal === b.terminal && a.hole === b.hole));

/** Facts of the joint, not of the end: they do not survive a move. */
const OF_THE_JOINT = ["spare", "jointOhm"] as const;

/**
 * Puts ends of one enclosure somewhere else. What is known of an end stays with it, what is known of its old joint goes,
 * and a splice that loses its last member goes.
 */
export function moveEnds(
  draft: Draft<Project>,
  state: StateName,
  enclosureId: EnclosureId,
  moves: ReadonlyMap<EndKey, At>,
  before: Project,
): void {
  const enclosure = written(getInstallation(before, state).enclosures[enclosureId]);
  const box = written(draftInstallation(draft, state).enclosures[enclosureId]);
  const left = new Set<SpliceId>();
  const joined = new Set<SpliceId>();
  for (const [end, at] of moves) {
    const was = enclosure.places[end];
    if (was !== undefined && sameAt(was.at, at)) continue;
    if (was?.at.kind === "splice") left.add(was.at.splice);
    const place = box.places[end];
    if (place !== undefined) put(place, at);
    if (at.kind === "splice") joined.add(at.splice);
  }
  for (const splice of left) {
    const stays = membersOf(enclosure, splice).some((end) => isIn(splice, moves.get(end) ?? enclosure.places[end]?.at));
    const joins = [...moves.values()].some((at) => isIn(splice, at));
    if (!stays && !joins) dropSplice(draft, state, enclosureId, splice, before);
  }
  growConnectors(draftInstallation(draft, state), enclosureId, joined);
}

const isIn = (splice: SpliceId, at: At | undefined): boolean => at?.kind === "splice" && at.splice === splice;

function put(place: Draft<Place>, at: At): void {
  place.at = { ...at };
  for (const field of OF_THE_JOINT) delete place[field];
  forgetEvidence(place, "at", ...OF_THE_JOINT);
}

/** Takes marks off fields that no longer hold what the mark was about. */
export function forgetEvidence(
  entity: { evidence?: Draft<Record<string, unknown>> },
  ...fields: readonly string[]
): void {
  const { evidence } = entity;
  if (evidence === undefined) return;
  for (const field of fields) if (field in evidence) delete evidence[field];
  if (Object.keys(evidence).length === 0) delete entity.evidence;
}

/** Takes an empty splice away, and where it was drawn unless the other state still has it. */
export function dropSplice(
  draft: Draft<Project>,
  state: StateName,
  enclosureId: EnclosureId,
  splice: SpliceId,
  before: Project,
): void {
  delete written(draftInstallation(draft, state).enclosures[enclosureId]).splices[splice];
  const other = otherState(before, state);
  if (splice in before.layout.splices && (other === undefined || findSplice(other, splice) === undefined))
    delete draft.layout.splices[splice];
}
