import { openSession } from "../../analysis/session.ts";
import { sheetInput } from "../../analysis/sheet-input.ts";
import type { PaperName, SheetInput, SheetKind } from "../../answers/sheet-input.ts";
import { onOneLine } from "../../format/json-path.ts";
import { failed, ok, type Problem, problem, type Result } from "../../lib/result.ts";
import type { EnclosureId } from "../../model/ids.ts";
import type { Project, StateName } from "../../model/project.ts";
import { findInstallation } from "../../queries/installation-of.ts";
import { findSheet, SHEETS, type SheetDefinition } from "../../sheets/registry.ts";

export const JOB_FOLDER = "job-folder";
export const FORMATS = ["pdf", "svg", "png", "csv", "xlsx"] as const;
export type ExportFormat = (typeof FORMATS)[number];

export interface ExportAsk {
  /** A kind of sheet, or "job-folder". */
  readonly sheet: string;
  readonly format: ExportFormat;
  readonly paper: PaperName;
  readonly state: StateName;
  readonly isStateAsked: boolean;
  readonly date: string;
  readonly scale: number;
  readonly box?: string;
  /** Kinds with commas between them. */
  readonly sheets?: string;
  readonly fileName?: string;
}

/** A sheet with all that it is made of. */
export interface PreparedSheet {
  readonly definition: SheetDefinition;
  readonly input: SheetInput;
}

export interface PreparedExport {
  readonly title: string;
  readonly sheets: readonly PreparedSheet[];
  /** What a person should know who asked for it, a line each. */
  readonly notes: readonly string[];
}

/** Sheets of one box alone; any other is of the whole. */
const BY_BOX: ReadonlySet<string> = new Set<SheetKind>(["drawing", "make-up", "box-fill", "as-found", "test-record"]);

/** Looks over what is asked, and gathers what the sheets tell. */
export function prepareExport(project: Project, ask: ExportAsk): Result<PreparedExport> {
  const chosen = chosenSheets(project, ask);
  if (!chosen.ok) return chosen;
  const problems =
    ask.sheet === JOB_FOLDER ? folderMisfits(ask) : chosen.value.flatMap((definition) => misfits(definition, ask));
  if (problems.length > 0) return failed(...problems);
  const session = openSession(project);
  const inputs = new Map<StateName, SheetInput>();
  const sheets: PreparedSheet[] = [];
  for (const definition of chosen.value) {
    const state = stateOf(definition, ask);
    const box = ask.box === undefined ? ok(undefined) : findBox(project, state, ask.box, definition);
    if (!box.ok) return box;
    const { paper, date, fileName } = ask;
    const whole =
      inputs.get(state) ??
      sheetInput(project, { state, paper, date, ...(fileName !== undefined && { fileName }) }, session);
    inputs.set(state, whole);
    sheets.push({ definition, input: box.value === undefined ? whole : { ...whole, box: box.value } });
  }
  const what = ask.sheet === JOB_FOLDER ? "job folder" : chosen.value.map(({ title }) => title).join(", ");
  return ok({ title: [project.title, what].filter(Boolean).join(", "), ...withoutEmpty(sheets, ask) });
}

/**
 * A folder of all there is leaves out what has nothing to say; what is asked for by its name is made all the same. Either is
 * told. Something is always left to write.
 */
function withoutEmpty(
  sheets: readonly PreparedSheet[],
  { sheet, sheets: named }: ExportAsk,
): Pick<PreparedExport, "sheets" | "notes"> {
  const why = ({ definition, input }: PreparedSheet): string | undefined => definition.nothing(input);
  const empty = sheets.filter((one) => why(one) !== undefined);
  const full = sheets.filter((one) => why(one) === undefined);
  if (sheet === JOB_FOLDER && named === undefined && full.length > 0) {
    const left = empty.map(({ definition }) => definition.kind).join(", ");
    return { sheets: full, notes: left === "" ? [] : [`Left out of the folder, with nothing to say: ${left}.`] };
  }
  return { sheets, notes: empty.map((one) => `${one.definition.kind}: ${why(one)}`) };
}

const stateOf = ({ shows }: SheetDefinition, { state }: ExportAsk): StateName =>
  shows === "either" ? state : shows === "difference" ? "proposed" : shows;

function chosenSheets(project: Project, ask: ExportAsk): Result<readonly SheetDefinition[]> {
  if (ask.sheet !== JOB_FOLDER) {
    if (ask.sheets !== undefined)
      return failed(
        problem("needs-folder", "", "--sheets chooses from a job folder. Give --sheet job-folder with it."),
      );
    const sheet = findSheet(ask.sheet);
    if (sheet === undefined) throw new Error(`There is no sheet ${ask.sheet}.`);
    if (findInstallation(project, stateOf(sheet, ask)) === undefined)
      return failed(
        problem("no-such-state", "/proposed", `Nothing is proposed in it yet, and ${ask.sheet} shows what is.`),
      );
    return ok([sheet]);
  }
  const there = SHEETS.filter((sheet) => findInstallation(project, stateOf(sheet, ask)) !== undefined);
  if (ask.sheets === undefined) return ok(there);
  const asked = ask.sheets.split(",").map((kind) => kind.trim());
  const unknown = asked.filter((kind) => findSheet(kind) === undefined);
  if (unknown.length > 0)
    return failed(
      ...unknown.map((kind) =>
        problem(
          "no-such-sheet",
          "",
          `There is no sheet ${onOneLine(JSON.stringify(kind))}. Name some of: ${SHEETS.map((each) => each.kind).join(", ")}.`,
        ),
      ),
    );
  const missing = asked.filter((kind) => !there.some((each) => each.kind === kind));
  if (missing.length > 0)
    return failed(
      ...missing.map((kind) =>
        problem("no-such-state", "/proposed", `Nothing is proposed in it yet, and ${kind} shows what is.`),
      ),
    );
  return ok(there.filter(({ kind }) => asked.includes(kind)));
}

/** What of the options does not go with a sheet. */
function misfits({ kind, shows, tables }: SheetDefinition, ask: ExportAsk): readonly Problem[] {
  const problems: Problem[] = [];
  if (ask.isStateAsked && (shows === "as-found" || shows === "proposed") && shows !== ask.state)
    problems.push(problem("wrong-state", "", `${kind} shows ${shows} alone. Leave --state away.`));
  if (ask.box !== undefined && !BY_BOX.has(kind)) problems.push(ofTheWhole(kind));
  if ((ask.format === "csv" || ask.format === "xlsx") && tables === undefined)
    problems.push(problem("no-list", "", `${kind} is no list. Give --out a name that ends in .pdf, .svg or .png.`));
  return problems;
}

/** The same of a job folder, which leaves out what it cannot show. */
function folderMisfits({ box, format }: ExportAsk): readonly Problem[] {
  const problems: Problem[] = [];
  if (box !== undefined) problems.push(ofTheWhole(JOB_FOLDER));
  if (format !== "pdf" && format !== "xlsx")
    problems.push(problem("wrong-ending", "", `A job folder becomes .pdf, or .xlsx for its lists; not .${format}.`));
  return problems;
}

const ofTheWhole = (what: string): Problem =>
  problem("whole-only", "", `${what} is always of the whole. Leave --box away.`);

function findBox(project: Project, state: StateName, text: string, { kind }: SheetDefinition): Result<EnclosureId> {
  const boxes = Object.values(findInstallation(project, state)?.enclosures ?? {});
  const asked = onOneLine(JSON.stringify(text));
  const named = boxes.filter(({ name }) => name === text);
  const found = boxes.find(({ id }) => id === text) ?? (named.length === 1 ? named[0] : undefined);
  if (found === undefined)
    return named.length > 1
      ? failed(problem("not-unique", "", `Several boxes are named ${asked}. Give an id to --box.`))
      : failed(
          problem(
            "no-such-box",
            "",
            `It has no box ${asked} ${state === "proposed" ? "in proposed" : "as found"}. Name one in --box.`,
          ),
        );
  if (found.kind === "panel" && (kind === "make-up" || kind === "box-fill"))
    return failed(problem("is-a-panel", "", `${asked} is a panel, and ${kind} is made of boxes. Name a box in --box.`));
  return ok(found.id);
}
