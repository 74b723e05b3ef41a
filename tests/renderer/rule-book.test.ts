/** What of the rule book is shown for what is typed and chosen, and the marks that stand for what most findings share. */
import { describe, expect, test } from "vitest";
import { legendOf } from "../../renderer/panels/findings/finding-words.ts";
import { ALL_RULES, findRules } from "../../renderer/state/rule-search.ts";
import { ruleBook } from "../../shared-model/rules/rule-book.ts";

const book = ruleBook(2020);
const ids = (found: readonly { readonly id: string }[]) => found.map(({ id }) => id);

describe("rules of the book", () => {
  test("all of them where nothing is asked, the gravest first", () => {
    expect(findRules(book, ALL_RULES)).toEqual(book);
    expect(book.length).toBeGreaterThan(100);
    expect([book[0]?.severity, book.at(-1)?.severity]).toEqual(["danger", "advice"]);
  });

  test("by words of its sentence, its id or its section, every word somewhere", () => {
    expect(ids(findRules(book, { typed: "Protected 210.8(A)" }))).toEqual(["outlet-not-protected"]);
    expect(ids(findRules(book, { typed: "box-overfull" }))).toEqual(["box-overfull"]);
    expect(ids(findRules(book, { typed: "BOX overfull" }))).toContain("box-overfull");
    expect(findRules(book, { typed: "box-overfull 210.8" })).toEqual([]);
  });

  test("by severity and by status", () => {
    const dangers = findRules(book, { typed: "", severity: "danger" });
    expect(new Set(dangers.map(({ severity }) => severity))).toEqual(new Set(["danger"]));
    const drafts = findRules(book, { typed: "", status: "draft" });
    expect(ids(drafts)).toContain("outlet-not-protected");
    expect(ids(drafts)).not.toContain("box-overfull");
    expect(ids(findRules(book, { typed: "", severity: "danger", status: "draft" }))).toEqual(
      ids(dangers).filter((id) => ids(drafts).includes(id)),
    );
  });
});

describe("the line at the head of the findings", () => {
  const of = (confidence: "sourced" | "from-memory" | "unconfirmed" | "own-rule", status: "draft" | "stable") => ({
    section: { section: "110.14", confidence },
    status,
  });

  test("tells each mark once, and only those that stand somewhere", () => {
    expect(legendOf([of("sourced", "stable"), of("own-rule", "stable")])).toBeUndefined();
    expect(legendOf([of("from-memory", "stable"), of("unconfirmed", "stable")])).toBe(
      "* number not checked against the text. Explain tells more.",
    );
    expect(legendOf([of("sourced", "draft")])).toBe("† draft rule. Explain tells more.");
    expect(legendOf([of("from-memory", "draft"), of("from-memory", "draft")])).toBe(
      "* number not checked against the text, † draft rule. Explain tells more.",
    );
  });
});
