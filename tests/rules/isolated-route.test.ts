import { expect, test } from "vitest";
import { isolatedRoute } from "../../shared-model/rules/checks/isolated-route.ts";
import { rawAnswers } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { laundryProposed, multiwire } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

type Facts = Parameters<Drawing["box"]>[2];

/** The hot of R comes by one cable from A to B, its neutral goes back by another; `sheath` makes both of one item. */
const apart = (black: string, white: string, box: Facts = {}): Drawing =>
  new Drawing()
    .panel()
    .breaker("Q", 15)
    .box("A", 60, box)
    .box("B", 60, box)
    .cable("C0", "nm-12-2-g", "P", "A")
    .cable("X", black, "A", "B")
    .cable("Y", white, "A", "B")
    .device("R", "receptacle-15", "B")
    .splice("h", "A", "lever-3")
    .splice("n", "A", "lever-3")
    .put({ "C0.bk@P": "Q.OUT", "C0.wh@P": "P-NB.BAR", "C0.bk@A": "h", "C0.wh@A": "n" })
    .put({ "X.bk@A": "h", "X.bk@B": "R.H1", "Y.wh@A": "n", "Y.wh@B": "R.N1" });

const inRoute = (drawing: Drawing, routes: Readonly<Record<string, string>>): Drawing => {
  for (const [name, route] of Object.entries(routes)) {
    const cable = drawing.cables[name];
    if (cable !== undefined) cable.route = route;
  }
  return drawing;
};

const PLASTIC = { material: "nonmetallic" } as const;

ruleTester(isolatedRoute, {
  passes: [
    { name: "each circuit in one cable", drawing: () => laundryProposed() },
    { name: "a multiwire circuit", drawing: () => multiwire() },
    { name: "two conductors of one raceway", drawing: () => apart("single-12-black", "single-12-white") },
    {
      name: "two conductors with one route",
      drawing: () => inRoute(apart("single-12-black", "single-12-white"), { X: "north wall", Y: "north wall" }),
    },
    {
      name: "two cables with one route",
      drawing: () => inRoute(apart("nm-12-2-g", "nm-12-2-g"), { X: "attic", Y: "attic" }),
    },
    {
      name: "knobs and tubes, apart by their nature",
      drawing: () => apart("knob-tube-14", "single-12-white").put({ "X.bk@A": "h" }),
    },
    {
      name: "a switch loop: out and back in one cable",
      drawing: () =>
        new Drawing()
          .panel()
          .breaker("Q", 15)
          .box("A", 60)
          .box("B", 60)
          .cable("C0", "nm-12-2-g", "P", "A")
          .cable("L", "nm-12-2-g", "A", "B")
          .cable("M", "nm-12-2-g", "A", "B")
          .device("D", "luminaire-60", "A")
          .device("S", "switch-single-pole", "B")
          .splice("h", "A", "lever-3")
          .put({ "C0.bk@P": "Q.OUT", "C0.wh@P": "P-NB.BAR", "C0.bk@A": "h", "C0.wh@A": "D.N" })
          .put({ "L.wh@A": "h", "L.wh@B": "S.C", "L.bk@B": "S.L", "L.bk@A": "D.H" }),
    },
  ],
  finds: [
    {
      name: "the neutral in another cable",
      drawing: () => apart("nm-12-2-g", "nm-12-2-g"),
      findings: [
        {
          on: "X Y",
          severity: "violation",
          data: { outlets: 1 },
          says: ["Out and back currents of R run apart: X and Y carry one without the other between A and B"],
        },
      ],
    },
    {
      name: "two raceways: the routes differ",
      drawing: () => inRoute(apart("single-12-black", "single-12-white"), { X: "north wall", Y: "south wall" }),
      findings: [{ on: "X Y" }],
    },
    {
      name: "between nonmetallic boxes",
      drawing: () => apart("nm-12-2-g", "nm-12-2-g", PLASTIC),
      findings: [{ on: "X Y", severity: "caution", says: ["The boxes are nonmetallic"] }],
    },
    {
      name: "a switch loop whose way back takes another cable",
      drawing: () =>
        new Drawing()
          .panel()
          .breaker("Q", 15)
          .box("A", 60)
          .box("B", 60)
          .cable("C0", "nm-12-2-g", "P", "A")
          .cable("L", "nm-12-2-g", "A", "B")
          .cable("M", "nm-12-2-g", "A", "B")
          .device("D", "luminaire-60", "A")
          .device("S", "switch-single-pole", "B")
          .splice("h", "A", "lever-3")
          .put({ "C0.bk@P": "Q.OUT", "C0.wh@P": "P-NB.BAR", "C0.bk@A": "h", "C0.wh@A": "D.N" })
          .put({ "L.wh@A": "h", "L.wh@B": "S.C", "M.bk@B": "S.L", "M.bk@A": "D.H" }),
      findings: [{ on: "L M", says: ["of D run apart"] }],
    },
  ],
  cannotTell: { never: "conductors of a raceway without a recorded route are taken to run together" },
});

test("two whites in parallel are not told a second time", () => {
  const drawing = apart("nm-12-2-g", "nm-12-2-g").put({ "X.wh@A": "n", "X.wh@B": "R.N2" });
  const said = rawAnswers(drawing.project())
    .flat()
    .flatMap(({ reports }) => reports)
    .map(({ rule }) => rule.id);
  expect(said).toContain("parallel-small");
  expect(said).not.toContain("isolated-route");
});
