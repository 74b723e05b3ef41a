import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import { measureSheet } from "./road-measure.ts";

const ASSETS = new URL("../../assets/", import.meta.url);
const FILES = ["samples", "templates"].flatMap((folder) =>
  readdirSync(new URL(folder, ASSETS))
    .filter((name) => name.endsWith(".loadside"))
    .map((name) => `${folder}/${name}`),
);

describe("a drawing that comes with the program needs no tidying", () => {
  test.each(FILES)("%s: no box lies on another, no cable runs through one or along another", (file) => {
    const opened = parseProject(readFileSync(new URL(file, ASSETS), "utf8"));
    if (!opened.ok) throw new Error("A shipped drawing cannot be read.");
    const { project } = opened.value;
    for (const installation of [project.asFound, project.proposed ?? project.asFound])
      for (const level of ["near", "middle"] as const) {
        const { overlaps, through, alongside } = measureSheet(project, installation, level);
        expect({ level, overlaps, through, alongside }).toEqual({ level, overlaps: [], through: [], alongside: [] });
      }
  });
});
