import { describe, expect, test } from "vitest";
import type { EndKey } from "../../shared-model/model/ids.ts";
import type { Place } from "../../shared-model/model/place.ts";
import { cappedNeutralForgotten } from "../../shared-model/rules/checks/capped-neutral-forgotten.ts";
import { checkDocument, inShort } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

const whiteCapped = () => laundryProposed().put({ "C5.wh@B1": "cap" });

const markSpare = (drawing: Drawing, box: string, end: string): Drawing => {
  const { places } = drawing.at(box);
  places[end as EndKey] = { ...(places[end as EndKey] as Place), spare: true };
  return drawing;
};

ruleTester(cappedNeutralForgotten, {
  passes: [
    { name: "everything landed", drawing: () => laundryProposed() },
    { name: "marked as spare", drawing: () => markSpare(whiteCapped(), "B1", "C5.wh.a") },
    { name: "capped at both ends", drawing: () => whiteCapped().put({ "C5.wh@B6": "cap" }) },
    { name: "capped at one end, loose at the other", drawing: () => whiteCapped().put({ "C5.wh@B6": "loose" }) },
    { name: "a ground", drawing: () => laundryProposed().put({ "C5.cu@B1": "cap" }) },
    { name: "the box is being surveyed", drawing: () => whiteCapped().setBox("B1", { beingSurveyed: true }) },
    { name: "the other box is being surveyed", drawing: () => whiteCapped().setBox("B6", { beingSurveyed: true }) },
    {
      name: "landed in a panel that was only assumed, so that there is a supply",
      drawing: () => laundryProposed().put({ "C1.wh@B1": "cap" }).knownBy("C1.wh@P", "assumed"),
    },
    {
      name: "the other end is not drawn",
      drawing: () => laundryProposed().cable("C9", "nm-12-2-g", "B1", "attic"),
    },
  ],
  finds: [
    {
      name: "a white capped in the first box",
      drawing: whiteCapped,
      findings: [
        {
          on: "C5 WH B1",
          severity: "caution",
          data: { conductors: 1 },
          says: ["C5 WH is capped in B1 and landed in B6", "mark it as spare if it is"],
        },
      ],
    },
    {
      name: "hot and neutral of one cable are one finding",
      drawing: () => whiteCapped().put({ "C5.bk@B1": "cap" }),
      findings: [{ on: "C5 BK C5 WH B1", data: { conductors: 2 }, says: ["mark them as spare if they are"] }],
    },
    {
      name: "landed in a panel, as somebody told",
      drawing: () => laundryProposed().put({ "C1.wh@B1": "cap" }).knownBy("C1.wh@P", "told"),
      findings: [{ on: "C1 WH B1", basis: "told" }],
    },
    {
      name: "in the panel",
      drawing: () => laundryProposed().put({ "C1.wh@P": "cap" }),
      findings: [{ on: "C1 WH P", says: ["capped in P and landed in B1"] }],
    },
    {
      name: "it rests on who says that it is capped",
      drawing: () => whiteCapped().knownBy("C5.wh@B1", "told"),
      findings: [{ on: "C5 WH B1", basis: "told" }],
    },
  ],
  cannotTell: { never: "a conductor whose other end is not drawn is not asked for" },
});

/** A white that feeds nothing yet: capped where it would go on, and joined where it comes from. */
const forLater = () =>
  laundryProposed()
    .box("B9", 20, { material: "nonmetallic" })
    .cable("C9", "nm-12-2-g", "B1", "B9")
    .put({ "C9.wh@B1": "NL" });

test("where an outlet is dead or without neutral by it, the outlet tells it, and it is folded under that", () => {
  const { findings } = checkDocument(whiteCapped().project());
  const said = inShort(findings);
  expect(said).toContain("open-neutral R5");
  expect(said).not.toContain("capped-neutral-forgotten C5 WH");
  expect(findings.find(({ rule }) => rule === "open-neutral")?.foldedSubjects.map(({ name }) => name)).toContain(
    "C5 WH",
  );
  expect(inShort(checkDocument(forLater().project()).findings)).toContain("capped-neutral-forgotten C9 WH");
});

describe("what it offers", () => {
  test("to mark it as spare", () => {
    const { title } = trySectionFix(forLater(), "capped-neutral-forgotten", "C9 WH", "spare");
    expect(title).toBe("Mark C9 WH in B9 as spare");
  });

  test("both of a cable in one step", () => {
    const drawing = whiteCapped().put({ "C5.bk@B1": "cap" });
    expect(trySectionFix(drawing, "capped-neutral-forgotten", "C5 BK", "spare").title).toBe(
      "Mark C5 BK and C5 WH in B1 as spare",
    );
  });
});
