import type { FillRow, PaperName, SheetInput } from "../answers/sheet-input.ts";
import type { EnclosureId } from "../model/ids.ts";
import type { Edition, Project, StateName } from "../model/project.ts";
import { inOrder } from "../queries/in-order.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { directoryMismatch } from "../rules/checks/directory-mismatch.ts";
import type { Report } from "./report.ts";
import { scopeAnswer } from "./scope-answer.ts";
import { openSession, type Session } from "./session.ts";
import { circuitFeeds, rolesOf } from "./sheet-circuits.ts";
import { protectionRows } from "./sheet-protection.ts";
import { recordLines } from "./sheet-record.ts";

export interface SheetAsk {
  readonly state: StateName;
  /** Day of printing, "2026-05-04". */
  readonly date: string;
  readonly paper: PaperName;
  readonly box?: EnclosureId;
  readonly fileName?: string;
}

/**
 * Gathers all that sheets may tell of a document: checked, counted, proved and compared once for as many sheets as are
 * made. `session` is one that is open on the document already. Throws when the document does not have the state.
 */
export function sheetInput(project: Project, ask: SheetAsk, session: Session = openSession(project)): SheetInput {
  const { state, date, paper, box, fileName } = ask;
  const asFound = session.report("as-found");
  const proposed = project.proposed === undefined ? undefined : session.report("proposed");
  const shown = state === "proposed" ? proposed : asFound;
  if (shown === undefined) throw new Error(`The document has no ${state} state.`);
  const both = <T>(take: (report: Report) => T): { readonly asFound: T; readonly proposed?: T } => ({
    asFound: take(asFound),
    ...(proposed !== undefined && { proposed: take(proposed) }),
  });
  const roles = rolesOf(project.asFound);
  const scope = scopeAnswer(session);
  const directory = directoryMismatch.sections[project.edition];
  return {
    project,
    state,
    date,
    paper,
    ...(box !== undefined && { box }),
    ...(fileName !== undefined && { fileName }),
    rules: {
      edition: editionWords(project.edition),
      checksRun: shown.checksRun,
      ...(directory !== undefined && { directory }),
    },
    findings: both(({ findings }) => findings),
    couldNotTell: both(({ couldNotTell }) => couldNotTell),
    fill: both((report) => fillRows(project, report)),
    protection: protectionRows(project, state),
    record: recordLines(project),
    circuits: circuitFeeds(project, state),
    roles,
    ...(scope !== undefined && { scope }),
    shownRoles: state === "as-found" ? roles : rolesOf(getInstallation(project, state)),
  };
}

/** "CSA-C22.1" as it is written; a year is itself. */
const editionWords = (edition: Edition): string =>
  typeof edition === "number" ? String(edition) : edition.replace("-", " ");

const fillRows = (project: Project, { state, ledgers }: Report): readonly FillRow[] =>
  inOrder(getInstallation(project, state).enclosures).flatMap(({ id, kind }) => {
    const ledger = ledgers[id];
    return kind === "box" && ledger !== undefined ? [{ enclosure: id, ledger }] : [];
  });
