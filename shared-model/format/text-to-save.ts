import { canonicalText } from "../lib/canonical-text.ts";
import { FORMAT_VERSION, type Project } from "../model/project.ts";
import { documentOf } from "./volumes.ts";

/** A file as it was opened or last saved: its text, byte order mark and line ends included, and what was read from it. */
export interface FileText {
  readonly text: string;
  readonly project: Project;
}

/**
 * The text to write into the file of a document. Without an edit since `file`, that is the very text of the file,
 * whatever its spacing; otherwise the canonical text. Encode it as UTF-8 as it is.
 */
export function textToSave(project: Project, file?: FileText): string {
  if (file !== undefined && (project === file.project || textOf(project) === textOf(file.project))) return file.text;
  // Saving it would strip what only the newer program knows how to keep in agreement.
  if (project.version > FORMAT_VERSION) throw new Error("A document of a newer version cannot be changed and saved.");
  return textOf(project);
}

const textOf = (project: Project): string => canonicalText(documentOf(project));
