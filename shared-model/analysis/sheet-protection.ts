import type { ProtectionAnswers, ProtectionRow } from "../answers/sheet-input.ts";
import { catalogue } from "../lib/catalogue.ts";
import type { Installation, Project, StateName } from "../model/project.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { type AskedBy, type ProtectionLine, proveState } from "./prove-state.ts";

const wording = catalogue({
  roomNotEntered: "room not entered",
  wish: "wish",
});

/** The protection schedule of a state in words, for a sheet. */
export function protectionRows(project: Project, state: StateName): ProtectionAnswers {
  const { isListHeld, lines } = proveState(project, state);
  const homes = homesOf(getInstallation(project, state));
  return { isListHeld, rows: lines.map((line) => rowOf(line, homes)) };
}

/** Name of the box in which each device stands. */
const homesOf = ({ enclosures }: Installation): ReadonlyMap<string, string> =>
  new Map(
    Object.values(enclosures).flatMap(({ devices, name }) => Object.keys(devices).map((id) => [id, name] as const)),
  );

function rowOf(line: ProtectionLine, homes: ReadonlyMap<string, string>): ProtectionRow {
  const { proof, room, askedBy, isProtected, protectedBy, told, tests, reason } = line;
  const { outlet, enclosure } = proof.standing;
  const required = requiredBy(askedBy);
  return {
    outlet: { id: outlet.key, name: outlet.name },
    enclosure: { id: enclosure.id, name: enclosure.name },
    ...(room !== undefined && { room }),
    ...(required !== undefined && { requiredBy: required }),
    isAsked: askedBy.kind === "section" || askedBy.kind === "wish",
    isProtected,
    protectedBy: protectedBy.map(({ id, name }) => {
      const home = homes.get(id);
      return { id, name, ...(home !== undefined && { enclosure: home }) };
    }),
    bySetting: proof.verdict === "by-setting",
    ...(told !== undefined && { told: told.name }),
    tests,
    reason,
  };
}

function requiredBy(askedBy: AskedBy): string | undefined {
  switch (askedBy.kind) {
    case "section":
      return askedBy.section;
    case "wish":
      return wording.wish;
    case "room-unknown":
      return wording.roomNotEntered;
    case "nobody":
      return undefined;
  }
}
