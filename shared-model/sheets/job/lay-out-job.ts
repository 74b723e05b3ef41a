import type { EmptySheets, PaperJob, PaperProgress, SheetOffer } from "../../answers/paper-messages.ts";
import type { SheetInput, SheetKind } from "../../answers/sheet-input.ts";
import type { EnclosureId } from "../../model/ids.ts";
import type { Project, StateName } from "../../model/project.ts";
import { findInstallation } from "../../queries/installation-of.ts";
import type { Page } from "../display-list.ts";
import { numberFolder, numberPages } from "../page/number-pages.ts";
import type { SheetDefinition } from "../registry.ts";

/** Sheets that are one box after the other: of some boxes they are those boxes. */
const OF_SEVERAL: ReadonlySet<SheetKind> = new Set(["drawing", "make-up", "box-fill", "as-found", "test-record"]);
/** Sheets that no box has for itself. */
const OF_THE_WHOLE: ReadonlySet<SheetKind> = new Set(["directory", "materials"]);

/** A list of all steps that was printed once a box would say what concerns all boxes as often. */
const boxesOf = (kind: SheetKind): SheetOffer["boxes"] =>
  OF_SEVERAL.has(kind) ? "several" : OF_THE_WHOLE.has(kind) ? "whole" : "one";

/** One sheet of a job as it was made. */
export interface MadeSheet {
  readonly definition: SheetDefinition;
  /** What it was made of: one input, or one a box. */
  readonly inputs: readonly SheetInput[];
  /** Without their numbers; none where there is nothing to say. */
  readonly pages: readonly Page[];
}

/** Pages that were made before of the same document, by what they show. */
export type MadePages = Map<string, readonly Page[]>;

export interface JobTools {
  readonly sheets: readonly SheetDefinition[];
  /** All that sheets may tell of a state; it may take long the first time. */
  readonly gather: (state: StateName, job: PaperJob) => SheetInput;
}

/** What can be printed, in the order of a job folder. */
export const sheetOffers = (sheets: readonly SheetDefinition[]): readonly SheetOffer[] =>
  sheets.map(({ kind, title, shows, tables }) => ({
    kind,
    title,
    shows,
    boxes: boxesOf(kind),
    hasList: tables !== undefined,
  }));

/** The state that a sheet shows in a job; undefined where the document does not have it, so that there is no such sheet. */
function stateFor({ shows }: SheetDefinition, job: PaperJob, project: Project): StateName | undefined {
  const wanted = shows === "either" ? job.state : shows === "difference" ? "proposed" : shows;
  return findInstallation(project, wanted) === undefined ? undefined : wanted;
}

/**
 * Makes the sheets of a job in the order of a job folder, a step at a time: it may be left off between any two. Sheets of
 * a state that the document does not have are left out, and so are boxes that it does not have, and pages with nothing on
 * them. What is in `made` is taken from there, and what is made is put there.
 */
export function* layOutJob(
  project: Project,
  job: PaperJob,
  { sheets, gather }: JobTools,
  made: MadePages,
): Generator<PaperProgress, readonly MadeSheet[], undefined> {
  const wanted = sheets.flatMap((definition) => {
    const state = job.sheets.includes(definition.kind) ? stateFor(definition, job, project) : undefined;
    if (state === undefined) return [];
    return [{ definition, state, boxes: boxesFor(definition, job, project, state) }];
  });
  const of = wanted.reduce((sum, { boxes }) => sum + boxes.length, 0);
  const done: MadeSheet[] = [];
  let steps = 0;
  for (const { definition, state, boxes } of wanted) {
    const { kind, title, make, nothing } = definition;
    const inputs: SheetInput[] = [];
    const pages: Page[] = [];
    for (const box of boxes) {
      yield { done: steps, of, ...(steps > 0 && { at: title }) };
      const whole = gather(state, job);
      const input = box === undefined ? whole : { ...whole, box };
      const key = [kind, state, box ?? "", job.paper, job.date, job.fileName ?? ""].join("\n");
      const known = made.get(key) ?? (nothing(input) === undefined ? make(input) : []);
      made.set(key, known);
      inputs.push(input);
      pages.push(...known);
      steps += 1;
    }
    done.push({ definition, inputs, pages });
  }
  return done;
}

/**
 * Why sheets would have nothing on them in a job, asked for or not. Of sheets that show a state that the job is not of
 * nothing is told: a state is not looked over for the sake of sheets that nobody asked for.
 */
export function emptySheets(project: Project, job: PaperJob, { sheets, gather }: JobTools): EmptySheets {
  const asked = sheets.filter(({ kind }) => job.sheets.includes(kind));
  const states = new Set([job.state, ...asked.map((definition) => stateFor(definition, job, project))]);
  return Object.fromEntries(
    sheets.flatMap((definition): readonly (readonly [SheetKind, string])[] => {
      const state = stateFor(definition, job, project);
      if (state === undefined || !states.has(state)) return [];
      const whole = gather(state, job);
      const whys = boxesFor(definition, job, project, state).map((box) =>
        definition.nothing(box === undefined ? whole : { ...whole, box }),
      );
      const [first] = whys;
      return first === undefined || whys.includes(undefined) ? [] : [[definition.kind, first]];
    }),
  );
}

/** The boxes to make a sheet of, one after the other; undefined stands for all at once. */
function boxesFor(
  { kind }: SheetDefinition,
  { boxes }: PaperJob,
  project: Project,
  state: StateName,
): readonly (EnclosureId | undefined)[] {
  if (boxes === undefined || boxesOf(kind) === "whole") return [undefined];
  if (boxesOf(kind) === "one" && boxes.length !== 1) return [undefined];
  const { enclosures } = findInstallation(project, state) ?? { enclosures: {} };
  return boxes.filter((id) => Object.hasOwn(enclosures, id));
}

/** All pages of a job with their numbers: running through all where there is more than one sheet. */
export function numberedPages(sheets: readonly MadeSheet[]): readonly Page[] {
  const each = sheets.map(({ pages }) => pages).filter(({ length }) => length > 0);
  const [only = []] = each;
  return each.length > 1 ? numberFolder(each) : numberPages(only);
}
