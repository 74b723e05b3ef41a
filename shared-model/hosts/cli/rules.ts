import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import type { Command } from "commander";
import { helpPage } from "../../rules/help-page.ts";
import { rules } from "../../rules/registry.ts";
import type { Rule } from "../../rules/rule.ts";
import { replaceFile } from "../atomic-file.ts";
import { complain, print, printJson } from "./console.ts";
import { STATUS, type Status } from "./status.ts";

export function addRules(program: Command, end: (status: Status) => void): void {
  program
    .command("rules")
    .description("List the rules, or print the page of one.")
    .argument("[rule]", "id of a rule: its page instead of the list")
    .option("--json", "print JSON")
    .option("--write-help", "write the help pages of the project anew, and name those that changed")
    .action(async (id: string | undefined, options: { readonly json?: true; readonly writeHelp?: true }) => {
      if (id !== undefined) end(await one(id, options));
      else end(options.writeHelp ? await writeHelp() : await list(options.json === true));
    });
}

/** What the catalogue holds of a rule. */
const inCatalogue = ({ id, severity, status, scope, sections, summary }: Rule) => ({
  id,
  severity,
  status,
  scope,
  sections,
  summary,
});

async function one(id: string, options: { readonly json?: true; readonly writeHelp?: true }): Promise<Status> {
  const rule = rules.find((each) => each.id === id);
  if (rule === undefined || options.writeHelp) {
    complain(
      rule === undefined
        ? `loadside: There is no rule "${id}". The list of all: loadside rules.`
        : "loadside: --write-help writes all pages. Leave the name of the rule out.",
    );
    return STATUS.badInput;
  }
  await (options.json ? printJson(inCatalogue(rule)) : print(helpPage(rule)));
  return STATUS.good;
}

async function list(asJson: boolean): Promise<Status> {
  const catalogue = rules.map(inCatalogue);
  const asText = catalogue.map(({ id, severity, status, summary }) => `${id}  ${severity}, ${status}\n  ${summary}\n`);
  await (asJson ? printJson(catalogue) : print(asText.join("\n")));
  return STATUS.good;
}

/** From the built program, `dist/cli/loadside.mjs`, to the pages that the window shows. */
const PAGES = new URL("../../assets/rules/", import.meta.url);

async function writeHelp(): Promise<Status> {
  for (const rule of rules) {
    const path = fileURLToPath(new URL(`${rule.id}.md`, PAGES));
    const page = helpPage(rule);
    const before = await readFile(path, "utf8").catch(() => undefined);
    if (before === page) continue;
    const result = await replaceFile(path, new TextEncoder().encode(page));
    if (!result.saved) {
      complain(result.message);
      return STATUS.badInput;
    }
    await print(`${path}\n`);
  }
  return STATUS.good;
}
