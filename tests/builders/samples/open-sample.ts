import { readFileSync } from "node:fs";
import { parseProject } from "../../../shared-model/format/parse-project.ts";
import type { Project } from "../../../shared-model/model/project.ts";

/** File of a sample by its name in the list. */
export const sampleUrl = (name: string): URL => new URL(`../../../assets/samples/${name}.loadside`, import.meta.url);

export const sampleText = (name: string): string => readFileSync(sampleUrl(name), "utf8");

/** A sample as the program opens it. Throws with every problem of the file. */
export function openSample(name: string): Project {
  const result = parseProject(sampleText(name));
  if (!result.ok) throw new Error(result.problems.map(({ path, message }) => `${path}: ${message}`).join("\n"));
  return result.value.project;
}
