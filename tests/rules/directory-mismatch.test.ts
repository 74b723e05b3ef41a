import { describe, expect, test } from "vitest";
import { directoryMismatch } from "../../shared-model/rules/checks/directory-mismatch.ts";
import { checkDocument } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { onOneCircuit, type Placed } from "./mixed-circuit.ts";
import { ruleTester } from "./rule-tester.ts";
import { inRoom, press, unchanged, withDirectory } from "./two-states.ts";

/** The laundry plan with its boxes called what the job calls them. */
function laundry(): Drawing {
  const drawing = laundryProposed();
  const notes = {
    B1: "laundry",
    B2: "sink",
    B3: "porch",
    B4: "freezer",
    B5: "stair switch",
    B6: "hall",
    B7: "stair light",
  };
  for (const [box, note] of Object.entries(notes)) drawing.setBox(box, { note });
  return drawing;
}

const says = (line: string) => withDirectory(laundry(), { Q14: line });

ruleTester(directoryMismatch, {
  passes: [
    { name: "all of it", drawing: () => says("laundry, sink, porch, freezer, stair light, hall") },
    { name: "kinds of outlet in place of rooms", drawing: () => says("Receptacles and lights, east side") },
    { name: "no line", drawing: () => laundry() },
    { name: "a line of blanks", drawing: () => says("  ") },
    {
      name: "a breaker that feeds nothing",
      drawing: () => withDirectory(laundry().breaker("Q16", 20), { Q16: "Dryer" }),
    },
    {
      name: "one room named by a word of it",
      drawing: () => withDirectory(inRoom(["hallway"]), { Q1: "Hall" }),
    },
    {
      name: "another room is named, and a cable leads out of the drawing",
      drawing: () => {
        const drawing = inRoom(["hallway"]).room("Attic", ["attic"]).cable("C9", "nm-12-2-g", "A", "not drawn");
        return withDirectory(drawing.put({ "C9.bk@A": "R1.H2", "C9.wh@A": "R1.N2" }), { Q1: "Hall, attic" });
      },
    },
  ],
  finds: [
    {
      name: "lights only",
      drawing: () => says("lights"),
      findings: [
        {
          on: "Q14",
          severity: "advice",
          says: [
            "The directory of P says “lights” for Q14; the wiring also feeds",
            "Laundry",
            "Porch",
            "Basement",
            "Hall",
          ],
        },
      ],
    },
    {
      name: "one place is missing",
      drawing: () => says("laundry, sink, freezer, stair light, hall"),
      findings: [{ on: "Q14", says: ["also feeds Porch."] }],
    },
    {
      name: "a room too much",
      drawing: () => withDirectory(inRoom(["hallway"]).room("Attic", ["attic"]), { Q1: "Hall, attic" }),
      findings: [{ on: "Q1", says: ["says “Hall, attic” for Q1, which does not feed Attic"] }],
    },
  ],
  cannotTell: { never: "a breaker without a line is not judged" },
});

describe("rooms with numbers", () => {
  const rooms: readonly Placed[] = [
    ["R1", "receptacle-15", "Bedroom 1", "bedroom"],
    ["R2", "receptacle-15", "Bedroom 2", "bedroom"],
  ];
  const isSaid = (line: string, placed: readonly Placed[]): boolean =>
    checkDocument(withDirectory(onOneCircuit(15, placed), { Q1: line }).project()).findings.some(
      ({ rule }) => rule === "directory-mismatch",
    );
  test.each([
    ["Bedrooms 1 and 2", false],
    ["Bedroom 1", true],
    ["Bedroom 1, bedroom 2", false],
  ] as const)("%s", (line, found) => {
    expect(isSaid(line, rooms)).toBe(found);
  });
});

test.each(["lights", "Garage"])("the fix of “%s” writes a line that agrees with the wiring", (line) => {
  const { title, left, project } = press(unchangedWith(line), "directory-mismatch", "Q14");
  expect(title).toBe(
    "Write “Laundry (receptacles); Porch (receptacles); Basement (receptacles); Hall (receptacles); Stair (lights)”",
  );
  expect(left).not.toContain("directory-mismatch Q14");
  expect(Object.values(project.proposed?.directory ?? {})).toEqual([title.slice("Write “".length, -1)]);
});

const unchangedWith = (line: string) => withDirectory(unchanged(laundry()), { Q14: line });
