import type { CommandCall } from "../answers/command-call.ts";
import { runCommand } from "../commands/run-command.ts";
import type { EnclosureId } from "../model/ids.ts";
import type { Project, StateName } from "../model/project.ts";
import { findInstallation } from "../queries/installation-of.ts";
import { getEdition } from "../rules/editions/editions.ts";
import { fillLedger } from "../rules/fill/fill-ledger.ts";
import { fillEdition } from "../rules/fill-edition.ts";
import { PROJECT_SCOPE } from "./project-scope.ts";
import type { AnswersMessage, PreviewResult } from "./protocol.ts";

/** Whether nothing is drawn and nothing amended, by an edition that has nothing to say of itself: no rule has anything to look at. */
export const isBlank = ({ asFound, proposed, amendments, heldBack, edition }: Project): boolean =>
  proposed === undefined &&
  !getEdition(edition).countingOnly &&
  amendments.length === 0 &&
  (heldBack ?? []).length === 0 &&
  [asFound.enclosures, asFound.cables, asFound.loads, asFound.labels].every((table) => Object.keys(table).length === 0);

/** What is to be said of a drawing that holds nothing: no rule had anything to look at. */
export const nothingDrawn = (revision: number): Omit<AnswersMessage, "tookMs"> => ({
  type: "answers",
  revision,
  states: ["as-found"],
  changed: [
    {
      state: "as-found",
      whole: true,
      scopes: [{ key: PROJECT_SCOPE, answers: { findings: [], couldNotTell: [] } }],
      removed: [],
      ledgers: {},
      roles: {},
      outlets: {},
      checksRun: 0,
    },
  ],
});

/** The box fill of an enclosure after a command on a document; nothing is checked, and nothing of it stays. */
export function fillIfDone(
  project: Project,
  state: StateName,
  call: CommandCall,
  enclosure: EnclosureId,
): PreviewResult {
  const done = runCommand(project, call as Parameters<typeof runCommand>[1]);
  if (!done.ok) return { refused: done.refusal.message };
  const installation = findInstallation(done.project, state);
  const found = installation?.enclosures[enclosure];
  return {
    introduces: [],
    repairs: 0,
    unprotects: [],
    ...(installation !== undefined &&
      found !== undefined && { fill: fillLedger(installation, found, fillEdition(done.project)) }),
  };
}
