import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { helpWords } from "../../shared-model/rules/help/words-of-rule.ts";
import { helpPage } from "../../shared-model/rules/help-page.ts";
import { rules } from "../../shared-model/rules/registry.ts";
import { amendableText } from "./amendable-text.ts";

const PAGES = fileURLToPath(new URL("../../assets/rules/", import.meta.url));
const TESTS = fileURLToPath(new URL("./", import.meta.url));
const AMENDABLE = fileURLToPath(new URL("../../shared-model/catalog/amendable-rules.ts", import.meta.url));
const CHECKS = fileURLToPath(new URL("../../shared-model/rules/checks/", import.meta.url));

if (process.env.LOADSIDE_WRITE === "1") {
  mkdirSync(PAGES, { recursive: true });
  for (const rule of rules) writeFileSync(`${PAGES}${rule.id}.md`, helpPage(rule));
  writeFileSync(AMENDABLE, amendableText());
}

describe("every rule of the registry", () => {
  test.each(rules)("$id has the help page that is made from it (LOADSIDE_WRITE=1 writes it)", (rule) => {
    expect(readFileSync(`${PAGES}${rule.id}.md`, "utf8")).toBe(helpPage(rule));
  });

  test.each(rules)("$id has a file and a test of its name", ({ id }) => {
    expect(existsSync(`${CHECKS}${id}.ts`)).toBe(true);
    expect(existsSync(`${TESTS}${id}.test.ts`)).toBe(true);
  });

  test.each(rules)("$id says what it is about, and where to look it up in every edition judged", (rule) => {
    expect(rule.summary).toMatch(/\.$/);
    expect(rule.why.length).toBeGreaterThan(80);
    expect(Object.values<string>(rule.messages).every((message) => /[.}]$/.test(message))).toBe(true);
    for (const edition of [2017, 2020, 2023, 2026] as const) expect(rule.sections[edition]?.section).toBeTruthy();
    const own = rule.sections[2023]?.confidence === "own-rule";
    expect(rule.sections[2026]?.confidence).toBe(own ? "own-rule" : "doubtful");
  });

  test("no verdict is spoken that a drawing cannot give", () => {
    for (const rule of rules) expect(helpPage(rule)).not.toMatch(/\b(safe|compliant)\b/i);
  });
});

test("commands know which rules and numbers there are to amend (LOADSIDE_WRITE=1 writes it)", () => {
  expect(readFileSync(AMENDABLE, "utf8")).toBe(amendableText());
});

test("every check is in the registry, every help page belongs to a rule, ids are unique", () => {
  const ids = rules.map(({ id }) => id).sort();
  expect(new Set(ids).size).toBe(ids.length);
  expect(
    readdirSync(CHECKS)
      .map((name) => name.replace(/\.ts$/, ""))
      .sort(),
  ).toEqual(ids);
  expect(
    readdirSync(PAGES)
      .map((name) => name.replace(/\.md$/, ""))
      .sort(),
  ).toEqual(ids);
});

test("a page shows wrong and right, says what is protected, and that practice is practice", () => {
  for (const rule of rules) {
    const page = helpPage(rule);
    const { wrong, right, asked } = helpWords[rule.id] ?? {};
    if (wrong !== undefined) expect(page).toContain(`\n## Wrong and right\n\n- Wrong: ${wrong}\n- Right: ${right}\n\n`);
    expect(page).toContain(`\n## What it protects\n\n${rule.why}\n\n`);
    expect(page.includes("## What inspectors commonly ask")).toBe(asked !== undefined);
    if (asked !== undefined) expect(page).toContain(`\n\n${asked}\n\nCommon practice, from no code text`);
  }
});
