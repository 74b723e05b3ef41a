import { describe, expect, test } from "vitest";
import type { Amendment, Project } from "../../shared-model/model/project.ts";
import { statedAmendments } from "../../shared-model/rules/amendment-reports.ts";
import { rules } from "../../shared-model/rules/registry.ts";
import { ruleBook } from "../../shared-model/rules/rule-book.ts";
import { checkDocument } from "./check-drawing.ts";
import { laundryAsFound } from "./laundry.ts";

const amended = (project: Project, ...amendments: readonly Amendment[]): Project => ({ ...project, amendments });
const clamps = (value: number, reason = "The county counts clamps twice."): Amendment => ({
  rule: "box-overfull",
  change: { kind: "value", name: "clampAllowances", value },
  reason,
  by: "the county",
});
const off = (rule: string): Amendment => ({ rule, change: { kind: "off" }, reason: "Not here.", by: "the county" });
const said = (project: Project, rule: string) => checkDocument(project).findings.filter((one) => one.rule === rule);

describe("findings that an amendment touches", () => {
  test("say what it changed, from what, why, and who asked for it; others do not", () => {
    const project = amended(laundryAsFound().project(), clamps(2));
    const [overfull] = said(project, "box-overfull").filter(({ subjects }) => subjects[0]?.name === "B1");
    expect(overfull?.amendments).toEqual([
      { value: "clampAllowances", is: 2, was: 1, reason: "The county counts clamps twice.", by: "the county" },
    ]);
    const others = checkDocument(project).findings.filter(({ rule }) => rule !== "box-overfull");
    expect(others.length).toBeGreaterThan(0);
    expect(others.every(({ amendments }) => amendments === undefined)).toBe(true);
    expect(said(laundryAsFound().project(), "box-overfull")[0]?.amendments).toBeUndefined();
  });

  test("of several for one value the last holds and is told; one that changes nothing is not", () => {
    const project = amended(laundryAsFound().project(), clamps(2), clamps(3, "Later."), clamps(0.5, "A slip."));
    const found = said(project, "box-overfull")[0];
    expect(found?.amendments).toEqual([
      { value: "clampAllowances", is: 3, was: 1, reason: "Later.", by: "the county" },
    ]);
  });
});

describe("a rule that is switched off", () => {
  test.each(
    rules.filter(({ status }) => status !== "retired").map(({ id, severity, summary }) => [id, severity, summary]),
  )("%s leaves one line with the reason", (id, severity, summary) => {
    const lines = said(amended(laundryAsFound().project(), off(id)), "rule-switched-off");
    expect(lines.map((one) => one.severity)).toEqual([severity === "danger" ? "caution" : "advice"]);
    expect(lines[0]?.message).toContain(summary);
    expect(lines[0]?.message).toContain("Reason: Not here. (required by the county)");
    expect(lines[0]?.message).toContain(`at worst ${severity === "advice" ? severity : `a ${severity}`}`);
  });

  test("without a reason, as a file may have it, says that none is given", () => {
    const [line] = said(
      amended(laundryAsFound().project(), { rule: "cover-missing", change: { kind: "off" }, reason: "" }),
      "rule-switched-off",
    );
    expect(line?.message).toMatch(/Reason: none is given\.$/);
  });
});

describe("the rule book that a person amends by", () => {
  test("holds every rule with its plain numbers, as the edition has them", () => {
    const book = ruleBook(2020);
    expect(book.map(({ id }) => id).sort()).toEqual(rules.map(({ id }) => id).sort());
    const room = book.find(({ id }) => id === "box-overfull");
    expect(room?.values.find(({ name }) => name === "clampAllowances")).toEqual({
      name: "clampAllowances",
      value: 1,
      section: { section: "314.16(B)(2)", confidence: "sourced" },
      source: "NFPA 70 314.16(B)(2), as explained in exam-preparation texts",
    });
    expect(room?.values.find(({ name }) => name === "loopLengthIn")).toMatchObject({ value: 12, unit: "in." });
    expect(room?.values.some(({ name }) => name === "conductorAllowance")).toBe(false);
  });

  test("of CSA C22.1 holds what it covers, with its own numbers", () => {
    const book = ruleBook("CSA-C22.1");
    expect(book.map(({ id }) => id).sort()).toEqual(["box-overfull", "box-volume-unknown", "fill-nearly-full"]);
    const room = book.find(({ id }) => id === "box-overfull");
    expect(room?.values.map(({ name, value }) => [name, value])).toContainEqual(["connectorsPerAllowance", 2]);
  });

  test("whatever it offers takes effect, in every edition", () => {
    for (const edition of [2011, 2017, 2020, 2023, 2026, "CSA-C22.1"] as const) {
      const amendments = ruleBook(edition).flatMap(({ id, values }) => [
        off(id),
        ...values.map(
          ({ name, value }): Amendment => ({
            rule: id,
            change: { kind: "value", name, value: (value ?? 0) + 1 },
            reason: "A test.",
          }),
        ),
      ]);
      const project = amended({ ...laundryAsFound().project(), edition }, ...amendments);
      expect(statedAmendments(project).filter(({ problem }) => problem !== undefined)).toEqual([]);
    }
  });
});
