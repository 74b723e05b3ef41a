import { expect, test } from "vitest";
import { liveLooseEnd } from "../../shared-model/rules/checks/live-loose-end.ts";
import { checkDocument, inShort, ofWiring } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

const atHall = (): Drawing => laundryProposed().put({ "C5.bk@B6": "loose" });

ruleTester(liveLooseEnd, {
  passes: [
    { name: "nothing loose", drawing: () => laundryProposed() },
    { name: "a live end that is capped", drawing: () => laundryProposed().put({ "C5.bk@B6": "cap" }) },
    { name: "loose on the side that no source reaches", drawing: () => laundryProposed().put({ "C5.bk@B1": "loose" }) },
    { name: "a loose neutral", drawing: () => laundryProposed().put({ "C5.wh@B6": "loose" }) },
    { name: "a loose ground", drawing: () => laundryProposed().put({ "C5.cu@B6": "loose" }) },
    { name: "in a box that is being surveyed", drawing: () => atHall().setBox("B6", { beingSurveyed: true }) },
    { name: "of a cable that is on no breaker", drawing: () => atHall().put({ "C1.bk@P": "cap" }) },
  ],
  finds: [
    {
      name: "a black loose in the last box",
      drawing: atHall,
      findings: [{ on: "C5 BK B6", severity: "danger", says: ["C5 BK in B6 is loose and live"] }],
    },
    {
      name: "while another box is being surveyed",
      drawing: () => atHall().setBox("B1", { beingSurveyed: true }),
      findings: [{ on: "C5 BK B6" }],
    },
    {
      name: "it rests on who says that it is loose",
      drawing: () => atHall().knownBy("C5.bk@B6", "assumed"),
      findings: [{ on: "C5 BK B6", basis: "assumed" }],
    },
    {
      name: "a switch leg",
      drawing: () => laundryProposed().put({ "C7.bk@B7": "loose" }),
      findings: [{ on: "C7 BK B7", says: ["a switch makes it live"] }],
    },
    {
      name: "the free end of a pigtail",
      drawing: () => laundryProposed().jumper("y", "B1", "HL", "loose"),
      findings: [{ on: "y BK B1" }],
    },
    {
      name: "a white that is live",
      drawing: () => laundryProposed().put({ "C5.wh@B1": "HD", "C5.wh@B6": "loose" }),
      findings: [{ on: "C5 WH B6" }],
    },
    {
      name: "in a panel, the other end on the breaker of another",
      drawing: () =>
        laundryProposed().cable("C9", "nm-12-2-g", "B1", "P").put({ "C9.bk@B1": "HL", "C9.bk@P": "loose" }),
      findings: [{ on: "C9 BK P" }],
    },
    {
      name: "both ends of a cable between two live boxes",
      drawing: () => laundryProposed().put({ "C2.bk@B2": "loose", "C5.bk@B6": "loose" }),
      findings: [{ on: "C2 BK B2" }, { on: "C5 BK B6" }],
    },
  ],
  cannotTell: { never: "an end is loose or it is not, and a source that is not drawn makes nothing live" },
});

test("the dead outlet behind it is folded under it", () => {
  expect(inShort(ofWiring(checkDocument(atHall().project()).findings))).toEqual(["live-loose-end C5 BK"]);
  const dead = laundryProposed().put({ "C5.bk@B1": "loose" });
  expect(inShort(ofWiring(checkDocument(dead.project()).findings))).toEqual(["open-hot R5"]);
});

test("it is capped", () => {
  const { title, left } = trySectionFix(atHall(), "live-loose-end", "C5 BK");
  expect(title).toBe("Cap C5 BK in B6");
  expect(left).toContain("open-hot R5");
});
