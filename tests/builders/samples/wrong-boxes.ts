import { asId, type EntryId } from "../../../shared-model/model/ids.ts";
import { boxId, deviceId, spliceId } from "../ids.ts";
import type { SampleDrawing } from "./sample-drawing.ts";
import { cableOf, deviceOf } from "./wrong-stations.ts";

const LETTERS = ["A", "B", "C", "D", "E", "F", "G"];

/** Stations 16 and 17: chains of receptacles on pigtails, each in a box with one fault; 17G only ends its chain. */
export function boxFaults(sheet: SampleDrawing): void {
  for (const box of ["16A", "16B", "16C", "16D", "17B", "17C", "17D", "17E", "17F", "17G"]) onPigtails(sheet, box);
  for (const box of ["16A", "16B", "16C", "16D", "16E", "16F", "17A", "17B", "17C"])
    sheet.grounds(box, cablesOf(box), [deviceOf(box)]);
  volumes(sheet);
  holding(sheet);
  joints(sheet);
  grounding(sheet);
}

/** The cable that feeds a box and the one that leaves it, if it is not the last. */
function cablesOf(box: string): readonly string[] {
  if (box === "16F") return [cableOf(box)];
  const next = LETTERS[LETTERS.indexOf(box.slice(-1)) + 1];
  return next === undefined ? [cableOf(box)] : [cableOf(box), cableOf(`${box.slice(0, -1)}${next}`)];
}

const onPigtails = (sheet: SampleDrawing, box: string): SampleDrawing =>
  sheet.pigtailed(box, cablesOf(box), `${deviceOf(box)}.H1`, `${deviceOf(box)}.N1`);

function volumes(sheet: SampleDrawing): void {
  sheet
    .volumeUnknown("16B")
    .set({ kind: "entry", enclosure: boxId("16D"), id: asId<EntryId>("e-C16E") }, "means", "none");
}

/** 16E has both blacks under one screw, 16F 12 AWG in push-in holes. */
function holding(sheet: SampleDrawing): void {
  sheet
    .land("C16E.bk@16E", "D16E.H1")
    .land("C16F.bk@16E", "D16E.H1")
    .land("C16E.wh@16E", "D16E.N1")
    .land("C16F.wh@16E", "D16E.N2")
    .set({ kind: "device", id: deviceId("D16F") }, "entryKind", "push-in")
    .onto("C16F", "16F", "D16F.H1", "D16F.N1");
}

/** 17A has both blacks in one hole of a clamp plate, 17B a joint of tape, 17C a connector made for thinner wire. */
function joints(sheet: SampleDrawing): void {
  sheet
    .land("C17A.bk@17A", "D17A.H1#1")
    .land("C17B.bk@17A", "D17A.H1#1")
    .joint("17A", "17An", ["C17A.wh@17A", "C17B.wh@17A"], { "17Aq": "D17A.N1" }, { colour: "white" })
    .run("change-connector", { enclosure: boxId("17B"), splice: spliceId("17Bh"), connector: "taped" })
    .run("change-connector", { enclosure: boxId("17C"), splice: spliceId("17Cn"), connector: "twist-small" });
}

/** 17F leaves the ground of 17G on its receptacle, which nothing there joins to the ground that arrives. */
function grounding(sheet: SampleDrawing): void {
  sheet
    .joint("17D", "17De", ["C17D.cu@17D", "C17E.cu@17D"], { "17Dg": "D17D.G" }, { colour: "bare" })
    .joint("17E", "17Ee", ["C17E.cu@17E", "C17F.cu@17E"], { "17Eb": "bond" }, { colour: "bare" })
    .joint("17F", "17Fe", ["C17F.cu@17F"], { "17Fb": "bond" }, { colour: "bare" })
    .land("C17G.cu@17F", "D17F.G")
    .grounds("17G", ["C17G"], ["D17G"]);
}
