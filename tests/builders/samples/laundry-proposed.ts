import { asId, type EntryId } from "../../../shared-model/model/ids.ts";
import type { Project } from "../../../shared-model/model/project.ts";
import { boxId, cableId, jumperId, outlet, spliceId } from "../ids.ts";
import { openSample } from "./open-sample.ts";
import { SampleDrawing } from "./sample-drawing.ts";

/**
 * The bungalow's laundry circuit with what is to be done. In B1 the clamps come out and external connectors go in; the
 * joints of as found stay where they can: X becomes HL, Y becomes NL, Z becomes E1, and C2 and C5 leave for HD and ND.
 */
export function laundryProposed(): Project {
  const asFound = new SampleDrawing(openSample("laundry-box"), "as-found")
    .set({ kind: "project" }, "title", "1962 bungalow, laundry as proposed")
    .notes(
      "As found: B1 holds 32.06 in³ in 30.3, its joints hold more than their connectors take, and the outlets of the laundry, the sink, the porch and the freezer have no ground-fault protection.",
      "Proposed: the clamps of B1 come out and external connectors go in, which leaves 0.49 in³. R1b in place of R1 protects the sink, the porch and, as the customer wishes, the hall: C2 and C5 hang on its LOAD by both conductors.",
      "C3 and C4 stay on LINE: the freezer has its own R4b, so that no trip elsewhere silences it, and the stair light must not go dark.",
      "Joints: HL 4 and NL 4 with the supply, HD 3 and ND 3 behind R1b, seven grounds in two joints E1 5 and E2 4. After pressing TEST on R1b: R1b, R2, R3 and R5 dead; R4b and L1 live.",
      "To settle before ordering: replacing R1 in a laundry may call for arc-fault protection as well; a dual-function receptacle has the same terminals. Volumes and wiring of B2 to B7 are assumed, to be confirmed on site.",
    )
    .directory({ Q14: "Laundry, sink, porch, freezer, stair light, hall receptacle" });
  const plan = asFound.proposing();
  openB1(plan);
  groundsOfB1(plan);
  plan
    .replace("R4", "R4b", "gfci-receptacle-15")
    .run("set-box-intent", {
      enclosure: boxId("B1"),
      intent: {
        supply: cableId("C1"),
        protect: { [cableId("C2")]: true, [cableId("C3")]: false, [cableId("C4")]: false, [cableId("C5")]: true },
      },
    })
    .run("set-outlet-wish", {
      outlet: outlet("L1"),
      wish: { wish: "decided-not", by: "customer", reason: "The stair must not go dark when R1b trips." },
    });
  for (const device of ["R2", "R3", "R5"])
    plan.plate(`label-${device}`, "Resets at the laundry receptacle", device, "own wording");
  return plan.project;
}

/** Clamps out, R1b in, and the conductors of C2 and C5 from the LINE joints to LOAD joints of their own. */
function openB1(plan: SampleDrawing): void {
  const box = boxId("B1");
  plan.set({ kind: "enclosure", id: box }, "internalClamps", "none");
  for (const cable of ["C1", "C2", "C3", "C4", "C5"])
    plan.set({ kind: "entry", enclosure: box, id: asId<EntryId>(`e-${cable}`) }, "means", "external-connector");
  plan
    .replace("R1", "R1b", "gfci-receptacle-15")
    .call({ kind: "splice", id: spliceId("X") }, "HL")
    .call({ kind: "splice", id: spliceId("Y") }, "NL")
    .call({ kind: "jumper", id: jumperId("p") }, "a")
    .call({ kind: "jumper", id: jumperId("q") }, "b")
    .joint("B1", "HD", ["C2.bk@B1", "C5.bk@B1"], { c: "R1b.LOAD_H" })
    .joint("B1", "ND", ["C2.wh@B1", "C5.wh@B1"], { d: "R1b.LOAD_N" }, { colour: "white" })
    .fitConnector("B1", "X")
    .fitConnector("B1", "Y");
}

/** Seven grounds are too many for one connector of the stock: C1 to C4 stay in E1, a link g leads to E2. */
function groundsOfB1(plan: SampleDrawing): void {
  plan
    .call({ kind: "splice", id: spliceId("Z") }, "E1")
    .call({ kind: "jumper", id: jumperId("r") }, "e")
    .call({ kind: "jumper", id: jumperId("t") }, "f")
    .splice("E2", "B1", "unknown", "C5.cu@B1", "r.a", "t.a")
    .jumper("g", "B1", "splice Z", "splice E2", { colour: "bare" })
    .fitConnector("B1", "Z")
    .fitConnector("B1", "E2");
}
