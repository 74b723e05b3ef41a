import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import samples from "../../assets/samples/index.json" with { type: "json" };
import { helpPage } from "../../shared-model/rules/help-page.ts";
import { rules } from "../../shared-model/rules/registry.ts";
import { buildLoadside, loadside, ROOT } from "./run-loadside.ts";

beforeAll(buildLoadside, 120_000);

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "loadside-samples-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test("samples lists every drawing that ships, each of which new makes", () => {
  const { status, stdout } = loadside(["samples", "--json"]);
  expect(status).toBe(0);
  const list: readonly { readonly name: string }[] = JSON.parse(stdout);
  for (const sample of list) expect(Object.keys(sample).sort()).toEqual(["about", "name", "title"]);
  const shipped = readdirSync(join(ROOT, "assets/samples")).filter((name) => name.endsWith(".loadside"));
  expect(list.map(({ name }) => `${name}.loadside`).sort()).toEqual(shipped.sort());
  for (const { name } of list) {
    const out = join(folder, `${name}.loadside`);
    expect(loadside(["new", "--sample", name, "--out", out])).toEqual({ status: 0, stdout: "", stderr: "" });
    expect(readFileSync(out)).toEqual(readFileSync(join(ROOT, "assets/samples", `${name}.loadside`)));
  }
  expect(loadside(["samples"]).stdout).toContain("laundry-box  1962 bungalow, laundry circuit\n  Five cables");
  // Each sample is a start of the program.
}, 120_000);

test("new never writes over what is there, a link that leads nowhere included", () => {
  const out = join(folder, "mine.loadside");
  writeFileSync(out, "my work");
  symlinkSync(join(folder, "nothing"), join(folder, "link"));
  for (const name of ["mine.loadside", "link"]) {
    const { status, stderr } = loadside(["new", "--sample", "laundry-box", "--out", name], { cwd: folder });
    expect([status, stderr]).toEqual([2, `${name}: It is there already and stays as it is. Choose another name.\n`]);
  }
  expect([readFileSync(out, "utf8"), readdirSync(folder).sort()]).toEqual(["my work", ["link", "mine.loadside"]]);
});

test("new says which samples there are, and why a file could not be made", () => {
  expect(loadside(["new", "--sample", "castle", "--out", join(folder, "x")])).toEqual({
    status: 2,
    stdout: "",
    stderr: `loadside: There is no sample "castle". Name one of: ${samples.map(({ name }) => name).join(", ")}.\n`,
  });
  const { status, stderr } = loadside(["new", "--sample", "laundry-box", "--out", join(folder, "no", "x")]);
  expect([status, readdirSync(folder)]).toEqual([2, []]);
  expect(stderr).toMatch(/^[^\n]+ was not saved: the folder is not there\. [^\n]+\n$/);
});

test("rules lists every rule once, with its severity, status, scope, sections and sentence", () => {
  const list = JSON.parse(loadside(["rules", "--json"]).stdout);
  expect(list.map(({ id }: { id: string }) => id)).toEqual(rules.map(({ id }) => id));
  for (const rule of list)
    expect(Object.keys(rule).sort()).toEqual(["id", "scope", "sections", "severity", "status", "summary"]);
  const text = loadside(["rules"]).stdout;
  for (const { id, severity, status, summary } of rules)
    expect(text).toContain(`${id}  ${severity}, ${status}\n  ${summary}\n`);
});

test("rules with the name of one prints its page, or what the list holds of it", () => {
  const [rule] = rules;
  if (rule === undefined) throw new Error("No rules.");
  expect(loadside(["rules", rule.id])).toEqual({ status: 0, stdout: helpPage(rule), stderr: "" });
  const { stdout } = loadside(["rules", "--json"]);
  expect(JSON.parse(loadside(["rules", rule.id, "--json"]).stdout)).toEqual(JSON.parse(stdout)[0]);
  expect(loadside(["rules", "box-overful"])).toEqual({
    status: 2,
    stdout: "",
    stderr: 'loadside: There is no rule "box-overful". The list of all: loadside rules.\n',
  });
  expect(loadside(["rules", rule.id, "--write-help"]).status).toBe(2);
});

test("rules --write-help writes the pages that differ, names them, and leaves the others alone", () => {
  // In a copy, so that the pages of the project stay as they are.
  const program = join(folder, "dist/cli/loadside.mjs");
  const pages = join(folder, "assets/rules");
  cpSync(join(ROOT, "dist/cli/loadside.mjs"), program);
  mkdirSync(pages, { recursive: true });
  const writeHelp = () => spawnSync(process.execPath, [program, "rules", "--write-help"], { encoding: "utf8" });
  expect(writeHelp().stdout).toBe(rules.map(({ id }) => `${join(pages, `${id}.md`)}\n`).join(""));
  for (const rule of rules) expect(readFileSync(join(pages, `${rule.id}.md`), "utf8")).toBe(helpPage(rule));
  expect(writeHelp()).toMatchObject({ status: 0, stdout: "", stderr: "" });
  writeFileSync(join(pages, "box-overfull.md"), "old");
  expect(writeHelp()).toMatchObject({ status: 0, stdout: `${join(pages, "box-overfull.md")}\n`, stderr: "" });
  rmSync(pages, { recursive: true });
  expect(writeHelp()).toMatchObject({
    status: 2,
    stdout: "",
    stderr: expect.stringMatching(/^[^\n]+ was not saved: [^\n]+\n$/),
  });
});

test("schema prints the JSON Schema that ships", () => {
  const schema = readFileSync(join(ROOT, "assets/loadside.schema.json"), "utf8");
  expect(loadside(["schema"])).toEqual({ status: 0, stdout: schema, stderr: "" });
});
