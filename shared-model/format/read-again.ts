import { FORMAT_MIN_READER, FORMAT_VERSION, type Project } from "../model/project.ts";
import type { Json } from "./json.ts";
import { migrate, migrations } from "./migrations.ts";
import { withoutMark } from "./parse-json.ts";
import type { Reader } from "./reader.ts";
import type { DocumentInFile } from "./schema/document.ts";
import { projectOf } from "./volumes.ts";

/** What the program can read. */
export const THIS_PROGRAM: Reader = { version: FORMAT_VERSION, chain: migrations };

/** The JSON of a file's text that `parseProject` found to be readable; of any other text it may throw or fill the memory. */
export const readableJson = (textOfFile: string): Json => JSON.parse(withoutMark(textOfFile)) as Json;

/**
 * The very document that `parseProject` gave for the same text, without judging it again. Reading a text twice, once where
 * it is judged and once where it is needed, takes a third of the time of carrying the document over. `json` is changed in
 * place: it belongs to whoever has just read it.
 */
export function projectOfReadable(json: Json, reader: Reader = THIS_PROGRAM): Project {
  return projectOf(upToDate(json, reader) as unknown as DocumentInFile);
}

/** The document as this version of the program writes it; one of this or a newer version is given back as it is. */
export function upToDate(json: Json, reader: Reader): Json {
  const version = json.version as number;
  if (version >= reader.version) return json;
  return { ...migrate(json, version, reader.chain, reader.version), minReader: FORMAT_MIN_READER };
}
