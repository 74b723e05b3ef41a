import { readdirSync, readFileSync } from "node:fs";
import { sheetInput } from "../../shared-model/analysis/sheet-input.ts";
import { PAPERS, type PaperName, type SheetInput } from "../../shared-model/answers/sheet-input.ts";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Project, StateName } from "../../shared-model/model/project.ts";

const SAMPLES = new URL("../../assets/samples/", import.meta.url);

export const SAMPLE_FILES: readonly string[] = readdirSync(SAMPLES).filter((name) => name.endsWith(".loadside"));
export const ALL_PAPERS = PAPERS;

export function sampleProject(name: string): Project {
  const opened = parseProject(readFileSync(new URL(name, SAMPLES), "utf8"));
  if (!opened.ok) throw new Error(`${name} does not open.`);
  return opened.value.project;
}

export interface InputOptions {
  readonly state?: StateName;
  readonly paper?: PaperName;
  /** By name. */
  readonly box?: string;
}

/** What sheets of a drawing are made of, on a fixed day. */
export function inputOf(
  project: Project,
  { state = "as-found", paper = "letter", box }: InputOptions = {},
): SheetInput {
  const { enclosures } = (state === "proposed" ? project.proposed : undefined) ?? project.asFound;
  const found = box === undefined ? undefined : Object.values(enclosures).find(({ name }) => name === box)?.id;
  return sheetInput(project, {
    state,
    paper,
    date: "2026-05-04",
    fileName: "drawing.loadside",
    ...(found !== undefined && { box: found as EnclosureId }),
  });
}

export const statesOf = ({ proposed }: Project): readonly StateName[] =>
  proposed === undefined ? ["as-found"] : ["as-found", "proposed"];
