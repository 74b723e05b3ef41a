import { asId, type EntryId } from "../../../shared-model/model/ids.ts";
import { boxId, cableId, deviceId } from "../ids.ts";
import type { SampleDrawing } from "./sample-drawing.ts";
import { cableOf, deviceOf } from "./wrong-stations.ts";

const on = (box: string) => ({ kind: "enclosure", id: boxId(box) }) as const;
const of = (box: string) => ({ kind: "device", id: deviceId(deviceOf(box)) }) as const;
const entryOf = (cable: string, box: string) =>
  ({ kind: "entry", enclosure: boxId(box), id: asId<EntryId>(`e-${cable}`) }) as const;

/** Stations 20 to 24: wired right, with a fault at each box, at what it holds or at what hangs on it. */
export function enclosureFaults(sheet: SampleDrawing): void {
  grounds(sheet);
  receptacles(sheet);
  walls(sheet);
  lights(sheet);
  readingRoom(sheet);
}

/** A box at the end of its cable. */
const atTheEnd = (sheet: SampleDrawing, box: string): SampleDrawing =>
  sheet
    .onto(cableOf(box), box, `${deviceOf(box)}.H1`, `${deviceOf(box)}.N1`)
    .grounds(box, [cableOf(box)], [deviceOf(box)]);

/** A box with a cable on to the next. */
const onTheWay = (sheet: SampleDrawing, box: string, next: string): SampleDrawing => {
  const cables = [cableOf(box), cableOf(next)];
  return sheet
    .pigtailed(box, cables, `${deviceOf(box)}.H1`, `${deviceOf(box)}.N1`)
    .grounds(box, cables, [deviceOf(box)]);
};

/** 20A is a junction of five cables; what hangs on it is measured. */
function grounds(sheet: SampleDrawing): void {
  const cables = ["20A", "20B", "20C", "20D", "20E"].map(cableOf);
  const all = (conductor: string) => cables.map((cable) => `${cable}.${conductor}@20A`);
  sheet
    .remove({ kind: "device", id: deviceId(deviceOf("20A")) })
    .joint("20A", "20Ah", all("bk"))
    .joint("20A", "20An", all("wh"))
    .joint("20A", "20Ae", all("cu"));
  for (const box of ["20B", "20C", "20D", "20E"]) atTheEnd(sheet, box);
  sheet
    .set(of("20B"), "bodyDepthIn", 1.375)
    .set(entryOf("C20C", "20C"), "sheathInsideIn", 0)
    .setEnd("C20D.bk@20D", "freeLengthIn", 4)
    .set(on("20E"), "openKnockouts", 1);
}

function receptacles(sheet: SampleDrawing): void {
  const entry = asId<EntryId>("e-C21A");
  sheet.run("move-cable-side", { cable: cableId("C21B"), side: "a", to: { enclosure: boxId("21A"), entry } });
  onTheWay(sheet, "21A", "21B");
  onTheWay(sheet, "21B", "21C");
  onTheWay(sheet, "21C", "21D");
  atTheEnd(sheet, "21D")
    .set(entryOf("C21A", "21A"), "markedForCables", 1)
    .set(on("21B"), "cover", "none")
    .set(of("21C"), "fastenedTo", "nothing")
    .ring("21D", { kind: "table", size: "4x1-1/2 square" });
}

function walls(sheet: SampleDrawing): void {
  onTheWay(sheet, "22A", "22B");
  onTheWay(sheet, "22B", "22C");
  atTheEnd(sheet, "22C")
    .set(on("22A"), "accessible", false)
    .set(on("22B"), "setbackIn", 0.5)
    .set(on("22B"), "wallCombustible", false)
    .set(on("22C"), "exposure", "wet")
    .set(on("22C"), "cover", "weatherproof-closed");
}

/** A switch, two lights and a fan in a row. */
function lights(sheet: SampleDrawing): void {
  sheet
    .land("C23A.bk@23A", "D23A.C")
    .land("C23B.bk@23A", "D23A.L")
    .joint("23A", "23An", ["C23A.wh@23A", "C23B.wh@23A"])
    .grounds("23A", ["C23A", "C23B"], ["D23A"])
    .pigtailed("23B", ["C23B", "C23C"], "D23B.H", "D23B.N")
    .grounds("23B", ["C23B", "C23C"], ["D23B"])
    .pigtailed("23C", ["C23C", "C23D"], "D23C.H", "D23C.N")
    .grounds("23C", ["C23C", "C23D"], ["D23C"])
    .joint("23D", "23Dh", ["C23D.bk@23D"], { "23Dp": "D23D.H_FAN", "23Dq": "D23D.H_LIGHT" })
    .land("C23D.wh@23D", "D23D.N")
    .grounds("23D", ["C23D"], ["D23D"])
    .set(on("23B"), "mountedOn", "ceiling")
    .set(of("23B"), "weightLb", 20)
    .set(of("23C"), "supplyC", 90)
    .set({ kind: "cable", id: cableId("C23C") }, "insulationC", 60);
}

/** Two switches: the second works the light of 24C, and the spare red to 24B. */
function readingRoom(sheet: SampleDrawing): void {
  sheet
    .device("D24A2", "switch-single-pole", "24A")
    .joint("24A", "24Ah", ["C24A.bk@24A"], { "24Ap": "D24A.C", "24Aq": "D24A2.C" })
    .joint("24A", "24An", ["C24A.wh@24A", "C24B.wh@24A", "C24C.wh@24A"])
    .land("C24B.bk@24A", "D24A.L")
    .joint("24A", "24As", ["C24B.rd@24A", "C24C.bk@24A"], { "24Ar": "D24A2.L" })
    .grounds("24A", ["C24A", "C24B", "C24C"], ["D24A", "D24A2"])
    .onto("C24B", "24B", "D24B.H", "D24B.N")
    .grounds("24B", ["C24B"], ["D24B"])
    .onto("C24C", "24C", "D24C.H", "D24C.N")
    .grounds("24C", ["C24C"], ["D24C"])
    .set(on("24B"), "mountedOn", "ceiling");
  const { enclosure, key } = sheet.end("C24B.rd@24B");
  sheet.run("mark-spare", { enclosure, end: key, spare: true });
}
