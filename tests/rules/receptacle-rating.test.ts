import { expect, test } from "vitest";
import type { Device } from "../../shared-model/model/device.ts";
import { receptacleRating } from "../../shared-model/rules/checks/receptacle-rating.ts";
import { amps } from "../../shared-model/units/quantity.ts";
import { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { inRoom, press, unchanged } from "./two-states.ts";

/** Receptacles of these types in a row of boxes on one breaker. */
function row(circuitA: number, faces: readonly (readonly [type: string, ratingA?: number])[]): Drawing {
  const drawing = new Drawing().panel("P").breaker("Q1", circuitA);
  faces.forEach(([type, ratingA], index) => {
    const [box, cable] = [`B${index}`, `C${index}`];
    const before = index === 0 ? "P" : `B${index - 1}`;
    const rated: Partial<Device> = ratingA === undefined ? {} : { ratingA: amps(ratingA) };
    drawing
      .box(box, 42)
      .cable(cable, "nm-10-2-g", before, box)
      .device(`R${index}`, type, box, rated)
      .splice(`h${index}`, box, "twist-large")
      .splice(`n${index}`, box, "twist-large");
    drawing.put({ [`${cable}.bk@${box}`]: `h${index}`, [`${cable}.wh@${box}`]: `n${index}` });
    if (index === 0) drawing.put({ "C0.bk@P": "Q1.OUT", "C0.wh@P": "P-NB.BAR" });
    else drawing.put({ [`${cable}.bk@${before}`]: `h${index - 1}`, [`${cable}.wh@${before}`]: `n${index - 1}` });
    const [hot, neutral] = type.startsWith("receptacle-single") ? ["H", "N"] : ["H1", "N1"];
    drawing
      .jumper(`jh${index}`, box, `h${index}`, `R${index}.${hot}`, { awg: "10" })
      .jumper(`jn${index}`, box, `n${index}`, `R${index}.${neutral}`, { awg: "10", colour: "white" });
  });
  return drawing;
}

const duplex = (ratingA: number) => ["receptacle-15", ratingA] as const;

/**
 * Expected by hand from NFPA 70 210.21(B)(1) and Table 210.21(B)(3), from memory: 15 A circuit, not over 15; 20: 15 or 20;
 * 30: 30; 40: 40 or 50; 50: 50; a single receptacle alone on its circuit, not less than the circuit.
 */
ruleTester(receptacleRating, {
  passes: [
    { name: "a 15 A face on 15 A", drawing: () => row(15, [duplex(15), duplex(15)]) },
    { name: "15 and 20 A faces on 20 A", drawing: () => row(20, [duplex(15), duplex(20)]) },
    { name: "one 15 A duplex alone on 20 A: it is two receptacles", drawing: () => row(20, [duplex(15)]) },
    { name: "30 A faces on 30 A", drawing: () => row(30, [duplex(30), duplex(30)]) },
    { name: "40 and 50 A faces on 40 A", drawing: () => row(40, [duplex(40), duplex(50)]) },
    { name: "a single 20 A receptacle alone on 20 A", drawing: () => row(20, [["receptacle-single-20"]]) },
    { name: "and alone on 15 A: not less than the circuit", drawing: () => row(15, [["receptacle-single-20"]]) },
    { name: "the proposed laundry circuit", drawing: () => laundryProposed() },
    { name: "a breaker without a rating", drawing: () => inRoom(["hallway"]).breaker("Q1", undefined) },
  ],
  finds: [
    {
      name: "a 20 A face among others on 15 A",
      drawing: () => row(15, [duplex(15), ["receptacle-20"]]),
      findings: [
        {
          on: "R1 Q1",
          severity: "violation",
          data: { faceA: 20, circuitA: 15 },
          says: [
            "R1 in B1 has a 20 A face on Q1 of 15 A in P",
            ": a 15 A breaker takes 15 A faces only.",
            "Fit a face of 15 A",
          ],
        },
      ],
    },
    {
      name: "the laundry circuit on a 30 A breaker",
      drawing: () => laundryProposed().breaker("Q14", 30),
      findings: ["R1b", "R2", "R3", "R4b", "R5"].map((name) => ({
        on: `${name} Q14`,
        data: { faceA: 15, circuitA: 30 },
      })),
    },
    {
      name: "a single 15 A receptacle alone on 20 A",
      drawing: () => row(20, [["receptacle-single-20", 15]]),
      findings: [
        {
          on: "R0 Q1",
          says: [
            "single receptacle of 15 A, alone on Q1 of 20 A",
            "alone on its circuit it must be of 20 A or more",
            "Fit one of 20 A",
          ],
        },
      ],
    },
    {
      name: "a single 20 A receptacle with another on 15 A",
      drawing: () => row(15, [["receptacle-single-20"], duplex(15)]),
      findings: [{ on: "R0 Q1" }],
    },
    {
      name: "it rests on the rating of the breaker",
      drawing: () => row(15, [["receptacle-20"]]).breaker("Q1", 15, { evidence: { breakerRatingA: "told" } }),
      findings: [{ on: "R0 Q1", basis: "told" }],
    },
  ],
  cannotTell: [
    {
      name: "a face without a rating",
      drawing: () => row(20, [duplex(15)]).setDevice("R0", { ratingA: undefined as never }),
      on: ["R0 Q1"],
      missing: "the rating of R0",
    },
    { name: "a 25 A circuit", drawing: () => row(25, [duplex(20)]), on: ["R0 Q1"], missing: "a 25 A circuit" },
  ],
});

test("the fix puts a face of the right rating there", () => {
  const wrong = inRoom(["stair"], { ratingA: 15, type: "receptacle-tr-20" });
  const { title, project } = press(unchanged(wrong), "receptacle-rating", "R1");
  expect(title).toBe("Tamper-resistant duplex, 15 A in place of R1");
  const faces = Object.values(project.proposed?.enclosures["A" as never]?.devices ?? {});
  expect(faces.map(({ type }) => type)).toEqual(["receptacle-tr-15"]);
});
