/**
 * A connector that nobody picked gives way to the next twist-on when one conductor more joins. Numbers are those of the
 * stock, which says itself that they are illustrative: of 12 AWG copper, medium takes 2 to 3, large 2 to 5.
 */
import { expect, test } from "vitest";
import type { EndKey } from "../../shared-model/model/ids.ts";
import { boxId, drawing, spliceId } from "../builders/drawing.ts";
import { enclosureIn } from "./asking.ts";

const CABLES = ["C1", "C2", "C3", "C4", "C5", "C6"] as const;
const ground = (cable: string) => `cable-${cable}.cu.a` as EndKey;

/** Two grounds in splice E of B1, under a medium twist-on. */
function joined(connectorAssumed: boolean) {
  const house = drawing().box("B1");
  for (const cable of CABLES) house.outside(cable, "B1");
  return house.run("splice-ends", {
    enclosure: boxId("B1"),
    splice: spliceId("E"),
    name: "E",
    connector: "twist-medium",
    connectorAssumed,
    ends: [ground("C1"), ground("C2")],
  });
}
type House = ReturnType<typeof joined>;

const connectorOf = (house: House) => enclosureIn(house.project, "B1").splices[spliceId("E")]?.connector;
const join = (house: House, cable: string) =>
  house.run("join-splice", { enclosure: boxId("B1"), end: ground(cable), splice: spliceId("E") });

test("the third ground still fits, the fourth takes the next connector, and the mark stays", () => {
  const house = joined(true);
  expect(connectorOf(join(house, "C3"))).toBe("twist-medium");
  expect(connectorOf(join(house, "C4"))).toBe("twist-large");
  expect(enclosureIn(house.project, "B1").splices[spliceId("E")]?.evidence).toEqual({ connector: "assumed" });
});

test("by landing it and by a jumper too", () => {
  const landed = join(joined(true), "C3").land("C4.cu@B1", "splice E");
  expect(connectorOf(landed)).toBe("twist-large");
  const pigtailed = join(joined(true), "C3").jumper("a", "B1", "splice E", "bond", { colour: "bare" });
  expect(connectorOf(pigtailed)).toBe("twist-large");
});

test("one that a person picked stays, at the beginning and later", () => {
  const picked = joined(false);
  expect(connectorOf(join(join(picked, "C3"), "C4"))).toBe("twist-medium");
  const later = joined(true).run("change-connector", {
    enclosure: boxId("B1"),
    splice: spliceId("E"),
    connector: "push-in-2",
  });
  expect(connectorOf(join(later, "C3"))).toBe("push-in-2");
});

test("one that was seen stays", () => {
  const seen = joined(true).run("mark-evidence", {
    target: { kind: "splice", id: spliceId("E") },
    field: "connector",
    evidence: "seen",
  });
  expect(connectorOf(join(join(seen, "C3"), "C4"))).toBe("twist-medium");
});

test("where no twist-on takes them it stays, for another sort is a person's choice", () => {
  const house = joined(true);
  for (const cable of CABLES.slice(2)) join(house, cable);
  expect(connectorOf(house)).toBe("twist-large");
});

test("a connector that is not in stock is no first choice", () => {
  const house = drawing().box("B1").outside("C1", "B1").outside("C2", "B1");
  const ends = [ground("C1"), ground("C2")];
  house.run("splice-ends", {
    enclosure: boxId("B1"),
    splice: spliceId("E"),
    name: "E",
    connector: "unknown",
    connectorAssumed: true,
    ends,
  });
  expect(enclosureIn(house.project, "B1").splices[spliceId("E")]?.evidence).toBeUndefined();
});
