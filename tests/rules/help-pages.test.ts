import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { helpPage } from "../../shared-model/rules/help-page.ts";
import { rules } from "../../shared-model/rules/registry.ts";

const PAGES = fileURLToPath(new URL("../../assets/rules/", import.meta.url));
const TESTS = fileURLToPath(new URL("./", import.meta.url));
const CHECKS = fileURLToPath(new URL("../../shared-model/rules/checks/", import.meta.url));

if (process.env.LOADSIDE_WRITE === "1") {
  mkdirSync(PAGES, { recursive: true });
  for (const rule of rules) writeFileSync(`${PAGES}${rule.id}.md`, helpPage(rule));
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
