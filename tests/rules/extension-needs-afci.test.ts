import { expect, test } from "vitest";
import { asId } from "../../shared-model/model/ids.ts";
import type { Edition } from "../../shared-model/model/project.ts";
import type { RoomKind } from "../../shared-model/model/room.ts";
import { extensionNeedsAfci } from "../../shared-model/rules/checks/extension-needs-afci.ts";
import { feet } from "../../shared-model/units/quantity.ts";
import { checkDocument } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { laundryAsFound, laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { inRoom, plan, replacing } from "./two-states.ts";

interface Extension {
  readonly ft?: number;
  /** What the new box B holds: an outlet, or a splice only. */
  readonly outlet?: boolean;
  readonly edition?: Edition;
  readonly breaker?: string;
  readonly type?: string;
}

/** R1 in a room as it was, and from it a new cable C2 to a new box B in a room of its own. */
function extended(kinds: readonly RoomKind[], { ft, outlet = false, type = "receptacle-15", ...made }: Extension = {}) {
  const is = inRoom(["bathroom"], { type, ...made })
    .room("Added", kinds)
    .box("B", 42, { roomId: asId("Added") })
    .cable("C2", "nm-12-2-g", "A", "B");
  const [hot, neutral] = type.startsWith("receptacle") ? ["H2", "N2"] : ["LOAD_H", "LOAD_N"];
  is.put({ "C2.bk@A": `R1.${hot}`, "C2.wh@A": `R1.${neutral}` });
  const [cable] = Object.values(is.cables).filter(({ name }) => name === "C2");
  if (ft !== undefined && cable !== undefined) cable.lengthFt = feet(ft);
  if (outlet) is.device("R2", "receptacle-tr-15", "B").put({ "C2.bk@B": "R2.H1", "C2.wh@B": "R2.N1" });
  const was = inRoom(["bathroom"], { type, ...made }).room("Added", kinds);
  return plan(was, is);
}

/** NFPA 70 210.12(D), (E) in 2023: 6 ft and no new outlet or device are free. */
ruleTester(extensionNeedsAfci, {
  passes: [
    { name: "5 ft, splice only", drawing: () => extended(["laundry"], { ft: 5 }) },
    { name: "6 ft, splice only", drawing: () => extended(["laundry"], { ft: 6 }) },
    { name: "an outlet in a garage", drawing: () => extended(["garage"], { ft: 20, outlet: true }) },
    {
      name: "an outlet in a bedroom behind an arc-fault breaker",
      drawing: () => extended(["bedroom"], { ft: 20, outlet: true, breaker: "breaker-afci-1" }),
    },
    {
      name: "an outlet in a bedroom from the LOAD of an arc-fault receptacle",
      drawing: () => extended(["bedroom"], { ft: 20, outlet: true, type: "afci-receptacle-15" }),
    },
    {
      name: "the laundry plan: replaced receptacles extend nothing",
      drawing: () => plan(laundryAsFound(), laundryPlan()),
    },
    { name: "a replaced receptacle in a bedroom", drawing: () => replacing(["bedroom"], "receptacle-tr-15") },
    { name: "the same drawing as found", drawing: () => inRoom(["bedroom"]) },
    {
      name: "an edition held for counting only",
      drawing: () => extended(["bedroom"], { ft: 20, outlet: true, edition: 2014 }),
    },
  ],
  finds: [
    {
      name: "5 ft with one outlet",
      drawing: () => extended(["laundry"], { ft: 5, outlet: true }),
      findings: [
        {
          on: "Q1",
          severity: "violation",
          data: { devices: 1, feet: 5 },
          says: ["extended in a room of the arc-fault list by R2, fed by C2"],
        },
      ],
    },
    {
      name: "6.5 ft, splice only",
      drawing: () => extended(["laundry"], { ft: 6.5 }),
      findings: [{ on: "Q1", data: { devices: 0, feet: 6.5 }, says: ["by 6.5 ft of cable (C2); up to 6 ft"] }],
    },
    {
      name: "an outlet whose cable has no length",
      drawing: () => extended(["bedroom"], { outlet: true }),
      findings: [{ on: "Q1" }],
    },
    {
      name: "a new switch in an old box of a hall",
      drawing: () => plan(inRoom(["hallway"]), withSwitch(inRoom(["hallway"]))),
      findings: [{ on: "Q1", data: { devices: 1, feet: 0 } }],
    },
    {
      name: "an outlet in a bedroom from the LINE of an arc-fault receptacle is not behind it",
      drawing: () => {
        const { project, ...rest } = extended(["bedroom"], { ft: 20, outlet: true, type: "afci-receptacle-15" });
        return { ...rest, project: () => onLine(project()) };
      },
      findings: [{ on: "Q1" }],
    },
  ],
  cannotTell: [
    {
      name: "a splice only, and the length is not recorded",
      drawing: () => extended(["laundry"]),
      on: ["Q1"],
      missing: "the length of C2",
    },
  ],
});

function laundryPlan(): Drawing {
  return laundryProposed()
    .setDevice("R1b", { replaces: asId("R1") })
    .setDevice("R4b", { replaces: asId("R4") });
}

function withSwitch(drawing: Drawing): Drawing {
  return drawing.device("S1", "switch-single-pole", "A").jumper("s", "A", "R1.H2", "S1.C");
}

function onLine(project: ReturnType<Drawing["project"]>): ReturnType<Drawing["project"]> {
  const copy = structuredClone(project);
  for (const place of Object.values(copy.proposed?.enclosures["A" as never]?.places ?? {})) {
    const { at } = place as { at: { kind: string; terminal?: string; hole?: number } };
    if (at.kind === "terminal" && at.terminal?.startsWith("LOAD") === true)
      Object.assign(at, { terminal: at.terminal.replace("LOAD", "LINE"), hole: 2 });
  }
  return copy;
}

test.each([
  [2017, "210.12(D)"],
  [2020, "210.12(D)"],
  [2023, "210.12(E)"],
  [2026, "210.12(E) (2023)"],
] as const)("edition %i points at %s", (edition, section) => {
  const { findings } = checkDocument(extended(["bedroom"], { outlet: true, edition }).project(), "proposed");
  expect(findings.find(({ rule }) => rule === "extension-needs-afci")?.section?.section).toBe(section);
});
