import { expect, test } from "vitest";
import { mwbcNeutralThroughDevice } from "../../shared-model/rules/checks/mwbc-neutral-through-device.ts";
import type { Drawing } from "./drawing.ts";
import { findingOn, proposing } from "./fix-tester.ts";
import { laundryProposed, multiwire } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

/** RJ in the junction box, on leg A, with the white from the panel on one of its screws and the rest on the other. */
const through = (): Drawing =>
  multiwire()
    .setBox("JB", { volume: { kind: "marked", volumeIn3: 303000 as never } })
    .device("RJ", "receptacle-15", "JB")
    .put({ "M3.wh@JB": "RJ.N2" })
    .jumper("w", "JB", "jN", "RJ.N1", { colour: "white" })
    .jumper("y", "JB", "jE", "RJ.G", { colour: "bare" })
    .jumper("z", "JB", "jA", "RJ.H1");

/** Beyond the split: a second receptacle on leg A behind RA. */
const beyond = (): Drawing =>
  multiwire()
    .box("BC", 18)
    .cable("MC", "nm-12-2-g", "BA", "BC")
    .device("RC", "receptacle-15", "BC")
    .put({ "MC.bk@BA": "RA.H2", "MC.wh@BA": "RA.N2", "MC.bk@BC": "RC.H1", "MC.wh@BC": "RC.N1" });

ruleTester(mwbcNeutralThroughDevice, {
  passes: [
    { name: "the shared white is in a splice", drawing: () => multiwire() },
    { name: "no multiwire circuit: feeding through is as it is", drawing: () => laundryProposed() },
    { name: "beyond the split the white is of one leg", drawing: beyond },
    {
      name: "one pigtail to the device",
      drawing: () => through().put({ "M3.wh@JB": "jN" }),
    },
    { name: "one leg feeds nothing", drawing: () => through().put({ "MB.bk@JB": "cap" }) },
  ],
  finds: [
    {
      name: "through two screws, and by whom it is known",
      drawing: () => through().knownBy("M3.wh@JB", "told"),
      findings: [
        {
          on: "RJ",
          severity: "violation",
          data: { outlets: 2, volts: 240 },
          basis: "told",
          says: ["RA and RB are left in series", "up to 240 V"],
        },
      ],
    },
    {
      name: "two whites under one screw",
      drawing: () => through().removeJumper("w").put({ "MA.wh@JB": "RJ.N2", "MB.wh@JB": "RJ.N2" }),
      findings: [{ on: "RJ", data: { outlets: 2, volts: 240 } }],
    },
    {
      name: "on a three-phase supply",
      drawing: () => {
        const drawing = through();
        drawing.extra.supply = { system: "208Y/120" };
        return drawing;
      },
      findings: [{ on: "RJ", data: { outlets: 2, volts: 208 } }],
    },
    {
      name: "only the other leg hangs on it: no series, and no neutral",
      drawing: () =>
        through()
          .removeJumper("w")
          .jumper("v", "JB", "RJ.N1", "jN", { colour: "white" })
          .put({ "MA.wh@JB": "cap", "MA.bk@JB": "cap" }),
      findings: [{ on: "RJ", data: { outlets: 1 }, says: ["RB keeps a live hot without a neutral"] }],
    },
    {
      name: "a ground-fault receptacle before the split",
      drawing: () =>
        multiwire()
          .device("G1", "gfci-receptacle-20", "JB")
          .put({ "M3.bk@JB": "G1.LINE_H", "M3.wh@JB": "G1.LINE_N" })
          .jumper("y", "JB", "G1.LOAD_H", "jA")
          .jumper("z", "JB", "G1.LOAD_N", "jN", { colour: "white" }),
      findings: [{ on: "G1" }],
    },
  ],
  cannotTell: { never: "what is landed on a device is drawn" },
});

test("the whites are spliced and one pigtail goes back, and nothing of it counts in the box", () => {
  const { title, project } = trySectionFix(through(), "mwbc-neutral-through-device", "RJ");
  expect(title).toContain("Splice w WH and M3 WH and bring one pigtail to RJ");
  const box = project.proposed?.enclosures["JB" as never];
  const onScrews = Object.values(box?.places ?? {}).filter(
    ({ at }) => at.kind === "terminal" && at.device === "RJ" && at.terminal.startsWith("N"),
  );
  expect(onScrews).toHaveLength(1);
});

test("under one screw too; a device that senses is not bridged", () => {
  const doubled = through().removeJumper("w").put({ "MA.wh@JB": "RJ.N2", "MB.wh@JB": "RJ.N2" });
  expect(trySectionFix(doubled, "mwbc-neutral-through-device", "RJ").title).toContain("one pigtail to RJ");
  const sensing = multiwire()
    .device("G1", "gfci-receptacle-20", "JB")
    .put({ "M3.bk@JB": "G1.LINE_H", "M3.wh@JB": "G1.LINE_N" })
    .jumper("y", "JB", "G1.LOAD_H", "jA")
    .jumper("z", "JB", "G1.LOAD_N", "jN", { colour: "white" });
  expect(() => trySectionFix(sensing, "mwbc-neutral-through-device", "G1")).toThrow("No such fix");
});

test("a bare wire on the neutral of the device is not spliced with its whites", () => {
  const drawing = through().put({ "y.2": "RJ.N1" });
  expect(findingOn(proposing(drawing), "mwbc-neutral-through-device", "RJ").fix).toBeUndefined();
});
