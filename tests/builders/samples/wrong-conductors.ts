import { asId, type ConductorKey, type EndKey, parseEnd } from "../../../shared-model/model/ids.ts";
import { boxId, cableId, deviceId, jumperId, roomId, spliceId } from "../ids.ts";
import type { SampleDrawing } from "./sample-drawing.ts";
import { cableOf, deviceOf } from "./wrong-stations.ts";

const of = (box: string) => ({ kind: "device", id: deviceId(deviceOf(box)) }) as const;

/** Stations 25 to 30: a fault at the conductors of each box, at what they are made of or at where they run. */
export function conductorFaults(sheet: SampleDrawing): void {
  holding(sheet);
  sizes(sheet);
  reds(sheet);
  routes(sheet);
  aluminium(sheet);
  oldWork(sheet);
}

const cablesOf = (box: string, ...onward: readonly string[]): readonly string[] => [box, ...onward].map(cableOf);

const onTheWay = (sheet: SampleDrawing, box: string, next: string, awg: "12" | "14"): SampleDrawing =>
  sheet
    .pigtailed(box, cablesOf(box, next), `${deviceOf(box)}.H1`, `${deviceOf(box)}.N1`, awg)
    .grounds(box, cablesOf(box, next), [deviceOf(box)], awg);

/** How a device holds its conductors, and what state they are in; 14 AWG. */
function holding(sheet: SampleDrawing): void {
  sheet
    .set(of("25A"), "entryKind", "push-in")
    .throughScrews("25A", "C25A", "C25B", "D25A")
    .grounds("25A", cablesOf("25A", "25B"), ["D25A"], "14");
  onTheWay(sheet, "25B", "25C", "14").setEnd("C25B.wh@25B", "condition", "brittle");
  onTheWay(sheet, "25C", "25D", "14").set({ kind: "jumper", id: jumperId("25Cp") }, "stranded", true);
  sheet
    .set(of("25D"), "hotTab", "removed")
    .joint("25D", "25Dh", ["C25D.bk@25D"], { "25Dp": "D25D.H1", "25Dr": "D25D.H2" }, { awg: "14" })
    .land("C25D.wh@25D", "D25D.N1")
    .grounds("25D", ["C25D"], ["D25D"], "14");
}

/** Grounds on the screw of D26A, and 10 AWG straight into a clamp plate. */
function sizes(sheet: SampleDrawing): void {
  sheet
    .pigtailed("26A", cablesOf("26A", "26B"), "D26A.H1", "D26A.N1")
    .land("C26A.cu@26A", "D26A.G")
    .land("C26B.cu@26A", "D26A.G")
    .land("C26B.bk@26B", "D26B.LINE_H")
    .joint("26B", "26Bn", ["C26B.wh@26B"], { "26Bq": "D26B.LINE_N" }, { colour: "white" })
    .land("C26B.cu@26B", "D26B.G");
}

/** 12 AWG grows 14 on its way; a red of which nobody knows what it was for. */
function reds(sheet: SampleDrawing): void {
  onTheWay(sheet, "27A", "27B", "12");
  sheet
    .joint("27B", "27Bh", ["C27B.bk@27B", "C27C.bk@27B", "C27C.rd@27B"], { "27Bp": "D27B.H1" }, { awg: "14" })
    .joint("27B", "27Bn", ["C27B.wh@27B", "C27C.wh@27B"], { "27Bq": "D27B.N1" }, { awg: "14", colour: "white" })
    .grounds("27B", cablesOf("27B", "27C"), ["D27B"], "14")
    .onto("C27C", "27C", "D27C.H1", "D27C.N1")
    .grounds("27C", ["C27C"], ["D27C"], "14");
}

/** A second cable to 28B and to 28C; the unused conductors are capped at both ends. */
function routes(sheet: SampleDrawing): void {
  sheet.cable("C28Bx", "28A", "28B", { ft: 12 }).cable("C28Cx", "28B", "28C", { ft: 12 });
  sheet
    .joint("28A", "28Ah", ["C28A.bk@28A", "C28B.bk@28A"], { "28Ap": "D28A.H1" })
    .joint("28A", "28An", ["C28A.wh@28A", "C28Bx.wh@28A"], { "28Aq": "D28A.N1" }, { colour: "white" })
    .grounds("28A", ["C28A", "C28B", "C28Bx"], ["D28A"])
    .joint("28B", "28Bh", ["C28B.bk@28B", "C28C.bk@28B"], { "28Bp": "D28B.H1" })
    .joint("28B", "28Bn", ["C28Bx.wh@28B", "C28C.wh@28B", "C28Cx.wh@28B"], { "28Bq": "D28B.N1" }, { colour: "white" })
    .grounds("28B", ["C28B", "C28Bx", "C28C", "C28Cx"], ["D28B"])
    .run("change-connector", { enclosure: boxId("28B"), splice: spliceId("28Be"), connector: "push-in-6" })
    .land("C28C.bk@28C", "D28C.H1")
    .joint("28C", "28Cn", ["C28C.wh@28C", "C28Cx.wh@28C"], { "28Cq": "D28C.N1" }, { colour: "white" })
    .grounds("28C", ["C28C", "C28Cx"], ["D28C"]);
  sheet.land("C28A.wh@P", `P neutral.BAR#${holeOf(sheet, "C27A")}`);
}

/** The hole of the neutral bar that the white of a cable is in. */
function holeOf(sheet: SampleDrawing, cable: string): number {
  const [, place] = Object.entries(sheet.enclosure("P").places).find(([end]) => {
    const parsed = parseEnd(end as EndKey);
    return parsed?.of === "cable" && parsed.cable === cableId(cable) && parsed.conductor === "wh";
  }) ?? ["", undefined];
  if (place?.at.kind !== "terminal") throw new Error(`The white of ${cable} is on no bar.`);
  return place.at.hole;
}

/** 29A joins copper with two cables of aluminium: one hot in a connector for copper, all else as it should be. */
function aluminium(sheet: SampleDrawing): void {
  sheet.remove({ kind: "device", id: deviceId("D29A") });
  for (const [conductor, letter, colour] of [
    ["bk", "h", "black"],
    ["wh", "n", "white"],
    ["cu", "e", "bare"],
  ] as const) {
    const [first, second] = [`29A${letter}1`, `29A${letter}2`];
    const link = `29A${letter}`;
    sheet
      .splice(first, "29A", "al-cu-listed", `C29A.${conductor}@29A`, `C29B.${conductor}@29A`)
      .jumper(link, "29A", `splice ${first}`, "capped", { awg: "12", colour })
      .splice(second, "29A", letter === "h" ? "twist-medium" : "al-cu-listed", `${link}.b`, `C29C.${conductor}@29A`);
  }
  for (const box of ["29B", "29C"])
    sheet
      .set(of(box), "markedForAluminium", box === "29B")
      .onto(cableOf(box), box, `${deviceOf(box)}.H1`, `${deviceOf(box)}.N1`)
      .land(`${cableOf(box)}.cu@${box}`, `${deviceOf(box)}.G`);
}

/** Old ways to feed a box, from 30A on, whose own ground is thin; the open wiring is no longer used. */
function oldWork(sheet: SampleDrawing): void {
  const fed = ["30A", "30B", "30C", "30D"].map(cableOf);
  for (const box of ["30A", "30E"]) sheet.remove({ kind: "device", id: deviceId(deviceOf(box)) });
  sheet
    .joint(
      "30A",
      "30Ah",
      fed.map((cable) => `${cable}.bk@30A`),
    )
    .joint(
      "30A",
      "30An",
      fed.map((cable) => `${cable}.wh@30A`),
    )
    .grounds("30A", ["C30A"]);
  sheet
    .set({ kind: "conductor", cable: cableId("C30A"), id: asId<ConductorKey>("cu") }, "awg", "14")
    .onto("C30B", "30B", "D30B.LINE_H", "D30B.LINE_N")
    .plate("label-D30B", "No Equipment Ground", "D30B", "406.4(D)(2)");
  for (const box of ["30C", "30D"]) sheet.onto(cableOf(box), box, `${deviceOf(box)}.H1`, `${deviceOf(box)}.N1`);
  sheet
    .set({ kind: "cable", id: cableId("C30C") }, "construction", "armoured-bonded")
    .jumper("30Cg", "30C", "bond", "D30C.G", { awg: "12", colour: "bare" })
    .outside("C30Dx", "30D", { item: "single-12-black" })
    .set({ kind: "conductor", cable: cableId("C30Dx"), id: asId<ConductorKey>("bk") }, "grounding", true)
    .set({ kind: "conductor", cable: cableId("C30Dx"), id: asId<ConductorKey>("bk") }, "colour", "green")
    .set({ kind: "cable", id: cableId("C30Dx") }, "groundClampedTo", "water-pipe")
    .set({ kind: "cable", id: cableId("C30Dx") }, "pipeFromEntryFt", 30)
    .land("C30Dx.bk@30D", "D30D.G")
    .set({ kind: "enclosure", id: boxId("30E") }, "roomId", roomId("Attic"))
    .set({ kind: "room", id: roomId("Attic") }, "insulatedCavity", true)
    .set({ kind: "room", id: roomId("Classroom") }, "insulatedCavity", false);
}
