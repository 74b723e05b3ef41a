import { expect, test } from "vitest";
import { ROOM_KINDS } from "../../shared-model/model/room.ts";
import { weatherResistant } from "../../shared-model/rules/checks/weather-resistant.ts";
import { amps } from "../../shared-model/units/quantity.ts";
import { rawAnswers } from "./check-drawing.ts";
import { ruleTester } from "./rule-tester.ts";
import { inRoom, plan, press, replacing, unchanged } from "./two-states.ts";

ruleTester(weatherResistant, {
  passes: [
    { name: "replaced by a weather-resistant one", drawing: () => replacing(["outdoor"], "receptacle-tr-wr-15") },
    {
      name: "a weather-resistant ground-fault receptacle",
      drawing: () => replacing(["outdoor"], "gfci-receptacle-wr-15"),
    },
    { name: "a garage", drawing: () => replacing(["garage"], "receptacle-tr-15") },
    { name: "one that stays as it was", drawing: () => unchanged(inRoom(["outdoor"])) },
    { name: "as found", drawing: () => inRoom(["outdoor"]) },
    { name: "of 30 A", drawing: () => replacing(["outdoor"], "receptacle-tr-15", { more: { ratingA: amps(30) } }) },
  ],
  finds: [
    {
      name: "a tamper-resistant one outdoors in the place of another",
      drawing: () => replacing(["outdoor"], "receptacle-tr-15"),
      findings: [
        {
          on: "R2",
          severity: "violation",
          data: { places: "outdoor" },
          says: ["R2 in A (Room: outdoors) is in the place of R1 and is not weather-resistant"],
        },
      ],
    },
    {
      name: "a damp place indoors, by the zone of the device",
      drawing: () => replacing(["laundry"], "gfci-receptacle-15", { more: { zones: ["damp-wet-indoor"] } }),
      findings: [{ on: "R2" }],
    },
    {
      name: "a new one",
      drawing: () =>
        plan(
          inRoom(["outdoor"]),
          inRoom(["outdoor"]).device("R9", "receptacle-tr-15", "A", { weatherResistant: false }),
        ),
      findings: [{ on: "R9", says: ["R9 in A (Room: outdoors) is new"] }],
    },
    {
      name: "it rests on the room",
      drawing: () => {
        const { project, ...rest } = replacing(["outdoor"], "receptacle-tr-15");
        const marked = () => {
          const copy = structuredClone(project());
          Object.assign(copy.proposed?.enclosures["A" as never] as object, { evidence: { roomId: "told" } });
          return copy;
        };
        return { ...rest, project: marked };
      },
      findings: [{ on: "R2", basis: "told" }],
    },
  ],
  cannotTell: { never: "one that is not recorded as weather-resistant is taken for a plain one" },
});

test("outdoors and damp or wet indoors, and no other place", () => {
  const found = ROOM_KINDS.filter((kind) =>
    rawAnswers(replacing([kind], "receptacle-tr-15").project(), "proposed")
      .flat()
      .some(({ reports }) => reports.some(({ rule }) => rule === weatherResistant)),
  );
  expect(found).toEqual(["outdoor", "damp-wet-indoor"]);
});

test("the fix puts one of the same kind there", () => {
  const { title, left } = press(replacing(["outdoor"], "gfci-receptacle-15"), "weather-resistant", "R2");
  expect(title).toBe("GFCI receptacle, weather-resistant, 15 A in place of R2");
  expect(left).not.toContain("weather-resistant R2b");
});
