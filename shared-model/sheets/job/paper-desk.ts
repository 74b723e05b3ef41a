import type {
  EmptySheets,
  FromPaper,
  LaidSheet,
  PaperFile,
  PaperJob,
  PaperProgress,
  ToPaper,
} from "../../answers/paper-messages.ts";
import { unreachable } from "../../lib/unreachable.ts";
import type { Project } from "../../model/project.ts";
import type { Page } from "../display-list.ts";
import { numberPages } from "../page/number-pages.ts";
import type { ListTable } from "../tables/table.ts";
import {
  emptySheets,
  type JobTools,
  layOutJob,
  type MadePages,
  type MadeSheet,
  numberedPages,
  sheetOffers,
} from "./lay-out-job.ts";
import { lostLetters } from "./lost-letters.ts";

/** What is written and by whom; the worker brings the writers, tests bring theirs. */
export interface DeskTools {
  readonly sheets: JobTools["sheets"];
  /** Begins on a document: what it gathers of it is kept until the next. */
  open(project: Project): JobTools["gather"];
  /** A page as a picture that needs nothing from elsewhere. */
  svg(page: Page): Promise<string>;
  pdf(pages: readonly Page[], about: PdfAbout): Promise<Uint8Array>;
  csv(tables: readonly ListTable[]): Promise<Uint8Array>;
  xlsx(tables: readonly ListTable[]): Promise<Uint8Array>;
  post(message: FromPaper): void;
  /** Lets messages in that came meanwhile. */
  turn(): Promise<void>;
}

export interface PdfAbout {
  readonly title: string;
  readonly date: string;
  readonly onPage: (done: number, of: number) => void;
  /** Asked between pages: nobody wants it any more. */
  readonly isStopped: () => boolean;
}

/** What was laid out last. */
interface Laid {
  readonly request: number;
  readonly project: Project;
  readonly job: PaperJob;
  readonly sheets: readonly MadeSheet[];
  readonly pages: readonly Page[];
}

/** A request that is worked at. */
interface Work {
  readonly request: number;
  readonly type: ToPaper["type"];
  isStopped: boolean;
  /** Title of the sheet at hand. */
  at?: string;
}

/**
 * Takes the messages of the window and answers them: holds a document, lays out jobs and writes files. Work goes in small
 * steps with a turn for messages between them, so that it can be stopped; of two layouts the later counts.
 */
export function createPaperDesk({ sheets, open, svg, pdf, csv, xlsx, post, turn }: DeskTools): {
  take(message: ToPaper): void;
} {
  let held: { readonly revision: number; readonly project: Project; readonly made: MadePages } | undefined;
  let gather: JobTools["gather"] | undefined;
  let laid: Laid | undefined;
  const works = new Map<number, Work>();

  function take(message: ToPaper): void {
    switch (message.type) {
      case "document":
        held = { revision: message.revision, project: message.project, made: new Map() };
        gather = undefined;
        break;
      case "offers":
        post({ type: "offers", request: message.request, offers: sheetOffers(sheets) });
        break;
      case "lay-out":
        for (const work of works.values()) if (work.type === "lay-out") work.isStopped = true;
        run(message, (work) => layOut(message.revision, message.job, work));
        break;
      case "page":
        run(message, async (work) => {
          const page = laidAs(message.of).pages[message.page];
          if (page === undefined) throw new Error("There is no such page.");
          work.at = page.title;
          post({ type: "page", request: work.request, svg: await svg(page) });
        });
        break;
      case "file":
        run(message, async (work) => {
          // A copy: what a library gives may be a part of a larger piece.
          const bytes = new Uint8Array(await fileOf(laidAs(message.of), message.file, work));
          if (!work.isStopped) post({ type: "file", request: work.request, bytes });
        });
        break;
      case "stop": {
        const work = works.get(message.request);
        if (work !== undefined) work.isStopped = true;
        break;
      }
      default:
        unreachable(message);
    }
  }

  /** Every request ends with one word: its answer, that it was stopped, or what went wrong. */
  async function run(
    { request, type }: Extract<ToPaper, { readonly request: number }>,
    act: (work: Work) => Promise<void>,
  ): Promise<void> {
    const work: Work = { request, type, isStopped: false };
    works.set(request, work);
    try {
      await act(work);
      if (work.isStopped) post({ type: "stopped", request });
    } catch (fault) {
      if (work.isStopped) post({ type: "stopped", request });
      else {
        const reason = fault instanceof Error ? fault.message : String(fault);
        post({ type: "failed", request, reason, ...(work.at !== undefined && { at: work.at }) });
      }
    } finally {
      works.delete(request);
    }
  }

  function laidAs(request: number): Laid {
    if (laid?.request !== request) throw new Error("Another layout has come since.");
    return laid;
  }

  async function layOut(revision: number, job: PaperJob, work: Work): Promise<void> {
    if (held === undefined || held.revision !== revision) throw new Error("The document has not come.");
    const { project, made: known } = held;
    gather ??= open(project);
    const steps = layOutJob(project, job, { sheets, gather }, known);
    for (;;) {
      const step = steps.next();
      if (step.done === true) {
        const made = step.value.filter(({ pages }) => pages.length > 0);
        const empty = emptySheets(project, job, { sheets, gather });
        keep({ request: work.request, project, job, sheets: made, pages: numberedPages(made) }, empty);
        return;
      }
      tell(work, step.value);
      await turn();
      if (work.isStopped) return;
    }
  }

  function keep(next: Laid, empty: EmptySheets): void {
    laid = next;
    let from = 0;
    const told = next.sheets.map(({ definition, pages }): LaidSheet => {
      const own = next.pages.slice(from, from + pages.length);
      from += pages.length;
      return {
        kind: definition.kind,
        title: definition.title,
        hasList: definition.tables !== undefined,
        pages: own.map(({ title, width, height }) => ({ title, width, height })),
      };
    });
    const { request, project, job, pages } = next;
    post({ type: "laid-out", request, sheets: told, empty, lost: lostLetters(project, pages, job.fileName) });
  }

  function tell(work: Work, progress: PaperProgress): void {
    if (progress.at !== undefined) work.at = progress.at;
    post({ type: "progress", request: work.request, ...progress });
  }

  async function fileOf(of: Laid, file: PaperFile, work: Work): Promise<Uint8Array> {
    const chosen = file.sheet === undefined ? undefined : of.sheets[file.sheet];
    if (file.sheet !== undefined && chosen === undefined) throw new Error("There is no such sheet.");
    switch (file.format) {
      case "pdf": {
        const pages = chosen === undefined ? of.pages : numberPages(chosen.pages);
        const title = [of.project.title, chosen?.definition.title].filter(Boolean).join(", ");
        return pdf(pages, {
          title,
          date: of.job.date,
          isStopped: () => work.isStopped,
          onPage(done, total) {
            const at = pages[done]?.title;
            tell(work, { done, of: total, ...(at !== undefined && { at }) });
          },
        });
      }
      case "xlsx":
        return xlsx((chosen === undefined ? of.sheets : [chosen]).flatMap(tablesOf));
      case "csv": {
        const tables = chosen === undefined ? [] : tablesOf(chosen);
        if (tables.length === 0) throw new Error("This sheet is no list.");
        return csv(tables);
      }
      default:
        return unreachable(file);
    }
  }

  return { take };
}

/** The lists of a sheet; where it was made box by box, what belongs into one list stands in one. */
function tablesOf({ definition, inputs }: MadeSheet): readonly ListTable[] {
  const { tables } = definition;
  if (tables === undefined) return [];
  const byName = new Map<string, ListTable>();
  for (const table of inputs.flatMap((input) => tables(input))) {
    const before = byName.get(table.name);
    byName.set(table.name, before === undefined ? table : { ...before, rows: [...before.rows, ...table.rows] });
  }
  return [...byName.values()];
}
