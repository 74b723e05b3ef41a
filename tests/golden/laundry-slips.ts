import type { Project } from "../../shared-model/model/project.ts";
import { deviceId, jumperId } from "../builders/ids.ts";
import { openSample } from "../builders/samples/open-sample.ts";
import { SampleDrawing } from "../builders/samples/sample-drawing.ts";

/** Joints of B1 in the plan: HL, NL and E1 keep the ids X, Y and Z of as found. */
const JOINTS = ["X", "Y", "HD", "ND", "Z", "E2"];

/** The laundry plan with a change, most of them a slip on the way; joints get connectors that fit. */
function slip(edit: (plan: SampleDrawing) => unknown): () => Project {
  return () => {
    const plan = new SampleDrawing(openSample("laundry-proposed"), "proposed");
    edit(plan);
    for (const joint of JOINTS) plan.fitConnector("B1", joint);
    return plan.project;
  };
}

const onto = (plan: SampleDrawing, cable: string, hot: string, neutral: string): SampleDrawing =>
  plan.land(`${cable}.bk@B1`, `splice ${hot}`).land(`${cable}.wh@B1`, `splice ${neutral}`);

export const laundryDual = slip((plan) =>
  plan.run("replace-device", {
    device: deviceId("R1b"),
    id: deviceId("R1d"),
    type: "dual-function-receptacle-15",
    name: "R1d",
  }),
);
export const laundryWhiteOfSink = slip((plan) => plan.land("C2.wh@B1", "splice Y"));
export const laundryWhiteOfHall = slip((plan) => plan.land("C5.wh@B1", "splice Y"));
export const laundryWhiteOfStair = slip((plan) => plan.land("C4.wh@B1", "splice ND"));
export const laundrySinkOnLine = slip((plan) => onto(plan, "C2", "X", "Y"));
export const laundryHallOnLine = slip((plan) => onto(plan, "C5", "X", "Y"));
export const laundryFreezerOnLoad = slip((plan) => onto(plan, "C3", "HD", "ND"));
export const laundryStairOnLoad = slip((plan) => onto(plan, "C4", "HD", "ND"));
export const laundryLineLoadExchanged = slip((plan) =>
  plan.land("p.b", "R1b.LOAD_H").land("c.b", "R1b.LINE_H").land("q.b", "R1b.LOAD_N").land("d.b", "R1b.LINE_N"),
);
export const laundryHotAround = slip((plan) => plan.jumper("y", "B1", "splice X", "splice HD"));
export const laundryNoPigtails = slip((plan) =>
  plan.remove({ kind: "jumper", id: jumperId("r") }, { kind: "jumper", id: jumperId("t") }),
);
export const laundryThirtyAmperes = slip((plan) =>
  plan.set({ kind: "device", id: deviceId("Q14") }, "breakerRatingA", 30),
);
/** The plan is carried out and said to be done, and nobody has pressed TEST. */
export const laundryUntested = slip((plan) => plan.set({ kind: "project" }, "workDone", true));
