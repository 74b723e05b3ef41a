import { describe, expect, test } from "vitest";
import { asId, type DeviceId } from "../../shared-model/model/ids.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { ROOM_KINDS } from "../../shared-model/model/room.ts";
import { replaceNeedsAfci } from "../../shared-model/rules/checks/replace-needs-afci.ts";
import { amps } from "../../shared-model/units/quantity.ts";
import { findingsOf, inShort } from "../builders/samples/look-into.ts";
import { openSample } from "../builders/samples/open-sample.ts";
import { SampleDrawing } from "../builders/samples/sample-drawing.ts";
import { checkDocument, rawAnswers } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { laundryAsFound, laundryProposed } from "./laundry.ts";
import { type Drawn, ruleTester } from "./rule-tester.ts";
import { inRoom, plan, press, replacing, unchanged, withFace } from "./two-states.ts";

const replaces = (name: string) => ({ replaces: asId<DeviceId>(name) });

/** The laundry plan; its R1b replaces R1, R4b replaces R4. */
const laundry = (type = "gfci-receptacle-15") =>
  plan(
    laundryAsFound(),
    laundryProposed()
      .setDevice("R1b", { type, ...replaces("R1") })
      .setDevice("R4b", replaces("R4")),
  );

ruleTester(replaceNeedsAfci, {
  passes: [
    { name: "the laundry plan with a dual-function receptacle", drawing: () => laundry("dual-function-receptacle-15") },
    { name: "an arc-fault receptacle in a bedroom", drawing: () => replacing(["bedroom"], "afci-receptacle-15") },
    {
      name: "an arc-fault breaker",
      drawing: () => replacing(["bedroom"], "receptacle-tr-15", { breaker: "breaker-afci-1" }),
    },
    {
      name: "a dual-function breaker",
      drawing: () => replacing(["bedroom"], "receptacle-tr-15", { breaker: "breaker-dual-1" }),
    },
    { name: "behind an arc-fault receptacle that was there", drawing: () => behindArcFault("LOAD") },
    { name: "an arc-fault receptacle that nothing feeds yet", drawing: () => unfed("afci-receptacle-15") },
    { name: "a bathroom", drawing: () => replacing(["bathroom"], "gfci-receptacle-15") },
    {
      name: "a face of 30 A",
      drawing: () => replacing(["bedroom"], "receptacle-tr-15", { more: { ratingA: amps(30) } }),
    },
    { name: "not replaced", drawing: () => unchanged(inRoom(["bedroom"])) },
    { name: "as found", drawing: () => inRoom(["bedroom"]) },
    {
      name: "an edition held for counting only",
      drawing: () => replacing(["bedroom"], "receptacle-tr-15", { edition: 2014 }),
    },
  ],
  finds: [
    {
      name: "the laundry plan: a plain ground-fault receptacle, and R4b in the basement is not on the list",
      drawing: () => laundry(),
      findings: [
        {
          on: "R1b",
          severity: "violation",
          data: { places: "laundry" },
          says: [
            "R1b in B1 takes the place of R1, and Laundry is on the arc-fault list",
            "Choose a dual-function receptacle",
          ],
        },
      ],
    },
    {
      name: "a plain receptacle in a bedroom",
      drawing: () => replacing(["bedroom"], "receptacle-tr-15"),
      findings: [{ on: "R2", says: ["Choose an arc-fault receptacle", "if one is listed for P"] }],
    },
    {
      name: "no ground comes to the box: the ground slot of a plain arc-fault receptacle would have nothing",
      drawing: () => withoutGround("receptacle-15"),
      findings: [
        {
          on: "R2",
          says: ["Choose a dual-function receptacle for it. No ground comes to it: a plain arc-fault receptacle would"],
        },
      ],
    },
    {
      name: "the same behind a ground-fault breaker, which stands in for the ground",
      drawing: () => withoutGround("receptacle-15", "breaker-gfci-1"),
      findings: [{ on: "R2", says: ["Choose an arc-fault receptacle for it. An arc-fault breaker"] }],
    },
    {
      name: "a ground that is there and was left off is put back: an arc-fault receptacle will do",
      drawing: () => {
        const { state, project } = replacing(["bedroom"], "receptacle-15");
        return { ...(state !== undefined && { state }), project: () => capGround(project()) };
      },
      findings: [{ on: "R2", says: ["Choose an arc-fault receptacle"] }],
    },
    {
      name: "a ground-fault breaker detects no arcs",
      drawing: () => replacing(["bedroom"], "receptacle-tr-15", { breaker: "breaker-gfci-1" }),
      findings: [{ on: "R2" }],
    },
    {
      name: "fed on LINE of an arc-fault receptacle: not behind it",
      drawing: () => behindArcFault("LINE"),
      findings: [{ on: "R9" }],
    },
  ],
  cannotTell: [
    {
      name: "its supply is not drawn",
      drawing: () => {
        const two = [inRoom(["bedroom"]), inRoom(["bedroom"])] as const;
        const [was, is] = two.map((drawing) => drawing.put({ "C1.bk@P": "cap", "C1.wh@P": "cap" })) as [
          Drawing,
          Drawing,
        ];
        is.setDevice("R1", {});
        delete is.at("A").devices[asId<DeviceId>("R1")];
        is.removeJumper("g");
        return plan(
          was,
          is.device("R2", "receptacle-tr-15", "A", replaces("R1")).put({ "C1.bk@A": "R2.H1", "C1.wh@A": "R2.N1" }),
        );
      },
      on: ["R2"],
      missing: "the supply of R2",
    },
  ],
});

/** R1 on two-wire cable, replaced by R2. */
function withoutGround(type: string, breaker = "breaker-1"): Drawn {
  const { state, project } = replacing(["bedroom"], type, { breaker });
  const bare = () => {
    const copy = structuredClone(project());
    for (const { cables, enclosures } of [copy.asFound, copy.proposed ?? copy.asFound]) {
      const { conductors } = cables["C1" as never] as unknown as { conductors: Record<string, unknown> };
      delete conductors.cu;
      for (const { places } of Object.values(enclosures))
        for (const end of Object.keys(places))
          if (end.startsWith("C1.cu")) delete (places as Record<string, unknown>)[end];
    }
    return copy;
  };
  return { ...(state !== undefined && { state }), project: bare };
}

function capGround(project: Project): Project {
  const copy = structuredClone(project);
  for (const { enclosures } of [copy.asFound, copy.proposed ?? copy.asFound])
    for (const [end, place] of Object.entries(enclosures["A" as never]?.places ?? {}))
      if (end.startsWith("C1.cu")) Object.assign(place as object, { at: { kind: "capped" } });
  return copy;
}

/** Replaced, and its breaker not landed in either state. */
function unfed(type: string) {
  const { state, project } = replacing(["bedroom"], type);
  const cut = () => {
    const copy = structuredClone(project());
    for (const { enclosures } of [copy.asFound, copy.proposed ?? copy.asFound])
      for (const place of Object.values(enclosures["P" as never]?.places ?? {}))
        Object.assign(place, { at: { kind: "capped" } });
    return copy;
  };
  return { ...(state !== undefined && { state }), project: cut };
}

/** An arc-fault receptacle R1 that stays, and R9 in place of R8 fed from its LOAD or from its LINE. */
function behindArcFault(side: "LINE" | "LOAD") {
  const make = (name: string, type: string, more = {}) =>
    inRoom(["bedroom"], { type: "afci-receptacle-15" })
      .box("B", 42, { roomId: asId("Room") })
      .cable("C2", "nm-12-2-g", "A", "B")
      .device(name, type, "B", more)
      .put({
        "C2.bk@A": `R1.${side}_H#2`,
        "C2.wh@A": `R1.${side}_N#2`,
        "C2.bk@B": `${name}.H1`,
        "C2.wh@B": `${name}.N1`,
      });
  return plan(make("R8", "receptacle-15"), make("R9", "receptacle-tr-15", replaces("R8")));
}

/** NFPA 70 210.12 for dwellings, the same in 2017, 2020 and 2023, from memory; listed apart from the table of the program. */
const LISTED =
  "kitchen-counter kitchen-other laundry family dining living library den bedroom sunroom recreation closet hallway".split(
    " ",
  );

describe("rooms of the list", () => {
  test.each(ROOM_KINDS)("%s", (kind) => {
    for (const edition of [2017, 2020, 2023, 2026] as const) {
      const project = replacing([kind], "receptacle-tr-15", { edition }).project();
      const found = rawAnswers(project, "proposed")
        .flat()
        .some(({ reports }) => reports.some(({ rule }) => rule === replaceNeedsAfci));
      expect([edition, found]).toEqual([edition, LISTED.includes(kind)]);
    }
  });
});

test("the offer of the laundry plan leaves nothing at danger or violation", () => {
  const sample = openSample("laundry-proposed");
  const before = findingsOf(sample, "proposed").filter(
    ({ severity }) => severity === "danger" || severity === "violation",
  );
  expect(inShort(before)).toEqual(["replace-needs-afci R1b"]);
  const { title, project } = press({ project: () => sample }, "replace-needs-afci", "R1b", "Dual-function");
  expect(title).toBe("Dual-function receptacle, 15 A in place of R1b");
  const after = findingsOf(project, "proposed").filter(
    ({ severity }) => severity === "danger" || severity === "violation",
  );
  expect(inShort(after)).toEqual([]);
});

test("where the panel lists an arc-fault breaker, one is offered with the neutral on it", () => {
  const two = [inRoom(["bedroom"]), replacing(["bedroom"], "receptacle-tr-15").project()] as const;
  const project = structuredClone(two[1]) as ReturnType<Drawing["project"]>;
  for (const state of [project.asFound, project.proposed])
    Object.assign(state?.enclosures["P" as never] as object, { listedBreakers: ["breaker-1", "breaker-afci-1"] });
  const { title, left } = press({ project: () => project }, "replace-needs-afci", "R2", "AFCI breaker");
  expect(title).toBe("AFCI breaker, one-pole in place of Q1, with its neutral on it");
  expect(left).toEqual([]);
});

test("where it lists none, the message says so and no breaker is offered", () => {
  const drawing = new SampleDrawing(openSample("laundry-proposed"), "proposed");
  const [finding] = findingsOf(drawing.project, "proposed").filter(({ rule }) => rule === "replace-needs-afci");
  expect(finding?.message).toContain("No arc-fault breaker is listed for P.");
  expect(finding?.offers).toHaveLength(1);
});

test("two receptacles of one box on one circuit are told once, in boxes of their own each by itself", () => {
  const pair = (box: string, first: string, second: string, more: (name: string) => object = () => ({})) =>
    withFace(withoutFace(), first, "receptacle-tr-15", more(first))
      .box("B", 42, { roomId: asId("Room") })
      .cable("C2", "nm-12-2-g", "A", "B")
      .device(second, "receptacle-tr-15", box, more(second))
      .put({ "C2.bk@A": `${first}.H2`, "C2.wh@A": `${first}.N2`, ...(box === "B" ? onB(second) : {}) });
  const onB = (name: string) => ({ "C2.bk@B": `${name}.H1`, "C2.wh@B": `${name}.N1` });
  const inOneBox = (drawing: Drawing, first: string, second: string) =>
    drawing
      .put({ "C2.bk@A": "cap", "C2.wh@A": "cap" })
      .jumper("h", "A", `${first}.H2`, `${second}.H1`)
      .jumper("n", "A", `${first}.N2`, `${second}.N1`);
  const work = (name: string) => replaces(name === "R2" ? "R1" : "R8");
  const told = ({ project }: Drawn) =>
    checkDocument(project(), "proposed").findings.filter(({ rule }) => rule === "replace-needs-afci");
  const one = told(
    plan(inOneBox(pair("A", "R1", "R8"), "R1", "R8"), inOneBox(pair("A", "R2", "R9", work), "R2", "R9")),
  );
  expect(one).toMatchObject([{ subjects: [{ name: "R2" }], foldedSubjects: [{ name: "R9" }] }]);
  expect(one[0]?.message).toContain("The same holds for R9 beside it. Choose an arc-fault receptacle");
  expect(inShort(told(plan(pair("B", "R1", "R8"), pair("B", "R2", "R9", work))))).toEqual([
    "replace-needs-afci R2",
    "replace-needs-afci R9",
  ]);
});

/** The bedroom of `inRoom` without its receptacle. */
function withoutFace(): Drawing {
  const drawing = inRoom(["bedroom"]).removeJumper("g");
  delete drawing.at("A").devices[asId<DeviceId>("R1")];
  return drawing;
}
