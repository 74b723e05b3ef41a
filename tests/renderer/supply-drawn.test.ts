import { expect, test } from "vitest";
import { isSupplyDrawn, rolesWithoutFloating } from "../../renderer/state/supply-drawn.ts";
import type { BoxRoles } from "../../shared-model/answers/circuit.ts";
import { Drawing } from "../rules/drawing.ts";

test("a supply is drawn for a box when cables lead to a panel, through other boxes too", () => {
  const { asFound } = new Drawing()
    .panel()
    .box("A", 30)
    .box("B", 30)
    .box("C", 30)
    .box("D", 30)
    .cable("C1", "nm-12-2-g", "P", "A")
    .cable("C2", "nm-12-2-g", "A", "B")
    .cable("C3", "nm-12-2-g", "C", "D")
    .cable("C4", "nm-12-2-g", "D", "country")
    .project();
  const fed = Object.values(asFound.enclosures)
    .filter(({ id }) => isSupplyDrawn(asFound, id))
    .map(({ name }) => name);
  expect(fed.sort()).toEqual(["A", "B", "P"]);
});

test("only what floats loses its letter", () => {
  const roles = { splices: { a: "floating", b: "ground" }, behind: {} } as unknown as BoxRoles;
  expect(rolesWithoutFloating(roles).splices).toEqual({ b: "ground" });
});
