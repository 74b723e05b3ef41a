import type { Command } from "commander";
import samples from "../../../assets/samples/index.json" with { type: "json" };
import { onOneLine } from "../../format/json-path.ts";
import { complain, print, printJson } from "./console.ts";
import { makeFile } from "./make-file.ts";
import { STATUS, type Status } from "./status.ts";

const FOLDER = "../../../assets/samples/";
/** Text of each sample by its path; part of the program, so that it needs no folder beside it. */
const TEXTS = import.meta.glob("../../../assets/samples/*.loadside", { query: "?raw", import: "default", eager: true });

export function addSamples(program: Command, end: (status: Status) => void): void {
  program
    .command("samples")
    .description("List the drawings that come with the program.")
    .option("--json", "print JSON")
    .action(async (options: { readonly json?: true }) => {
      const list = samples.map(({ name, title, about }) => ({ name, title, about }));
      if (options.json) await printJson(list);
      else await print(list.map(({ name, title, about }) => `${name}  ${title}\n  ${about}\n`).join("\n"));
      end(STATUS.good);
    });
}

export function addNew(program: Command, end: (status: Status) => void): void {
  program
    .command("new")
    .description("Make a new file from a drawing that comes with the program.")
    .requiredOption("--sample <name>", "which one; see loadside samples")
    .requiredOption("--out <file>", "where to; a file that is there is never overwritten")
    .action(async (options: { readonly sample: string; readonly out: string }) => {
      const problem = await makeNew(options.sample, options.out);
      if (problem !== undefined) complain(problem);
      end(problem === undefined ? STATUS.good : STATUS.badInput);
    });
}

/** @returns What went wrong, as one line; undefined when the file is there. */
async function makeNew(name: string, out: string): Promise<string | undefined> {
  const sample = samples.find((one) => one.name === name);
  if (sample === undefined) {
    const names = samples.map((one) => one.name).join(", ");
    return `loadside: There is no sample "${onOneLine(name)}". Name one of: ${names}.`;
  }
  const text = TEXTS[FOLDER + sample.file];
  if (text === undefined) throw new Error(`The sample ${sample.file} is not part of the program.`);
  return await makeFile(out, text);
}
