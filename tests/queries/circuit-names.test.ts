import { expect, test } from "vitest";
import { circuitNames } from "../../shared-model/queries/circuit-names.ts";
import { boxId, drawing, laundryDrawing } from "../builders/drawing.ts";

/** A panel with two breakers, each with the cable of a box landed on it; the first box has another one behind it. */
const twoCircuits = () =>
  drawing()
    .panel("P")
    .breaker("Q1", "P")
    .breaker("Q2", "P")
    .box("B1", "device-3-2-3-1-2")
    .box("B2", "device-3-2-3-1-2")
    .box("B3", "device-3-2-3-1-2")
    .cable("C1", "P", "B1")
    .cable("C2", "B1", "B2")
    .cable("C3", "P", "B3")
    .land("C1.bk@P", "Q1.OUT")
    .land("C3.bk@P", "Q2.OUT");

const named = (house: ReturnType<typeof twoCircuits>, ...boxes: readonly string[]) =>
  boxes.map((box) => circuitNames(house.project.asFound, boxId(box)));

test("a box is on the breakers on which a cable of its group is landed, through other boxes but not through a panel", () => {
  expect(named(twoCircuits(), "B1", "B2", "B3", "P")).toEqual([["Q1"], ["Q1"], ["Q2"], []]);
});

test("boxes joined by cable are on the breakers of both", () => {
  expect(named(twoCircuits().cable("C4", "B2", "B3"), "B1", "B2", "B3")).toEqual([
    ["Q1", "Q2"],
    ["Q1", "Q2"],
    ["Q1", "Q2"],
  ]);
});

test("a cable that is not landed on a breaker brings no name, and an edit is seen at once", () => {
  const house = twoCircuits();
  expect(named(house, "B3")).toEqual([["Q2"]]);
  house.land("C3.bk@P", "capped");
  expect(named(house, "B1", "B3")).toEqual([["Q1"], []]);
  const { asFound } = house.project;
  expect(circuitNames({ ...asFound, cables: {} }, boxId("B1"))).toEqual([]);
  expect(named(house.box("B9", "device-3-2-3-1-2"), "B9", "gone")).toEqual([[], []]);
});

test("neutral and ground bars name no circuit", () => {
  const house = laundryDrawing();
  house.land("C1.bk@P", "capped");
  expect(named(house, "B1")).toEqual([[]]);
});
