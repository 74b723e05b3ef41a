import type { SampleDrawing } from "./sample-drawing.ts";
import { cableOf, deviceOf, goodGrounds } from "./wrong-stations.ts";

/** Stations 1 to 8, 18 and 19: circuits without a ground-fault device. */
export function circuitFaults(sheet: SampleDrawing): void {
  oneReceptacle(sheet);
  openConductors(sheet);
  switches(sheet);
  bootleg(sheet);
  liveMetal(sheet);
  looseEnd(sheet);
}

function oneReceptacle(sheet: SampleDrawing): void {
  sheet.joint("1A", "1Ah", ["C1A.bk@1A"], { "1Ap": "D1A.H1" }, { awg: "14" }).land("C1A.wh@1A", "D1A.N1");
  sheet.onto("C2A", "2A", "D2A.N1", "D2A.H1");
  sheet.onto("C5A", "5A", "D5A.H1", "D5A.N1");
  for (const number of [1, 2, 5]) goodGrounds(sheet, number, "A");
}

/** One of the two conductors onward slipped out in the first box. */
function openConductors(sheet: SampleDrawing): void {
  for (const [number, onward, screw] of [
    [3, "bk", "H2"],
    [4, "wh", "N2"],
  ] as const) {
    const [a, b] = [`${number}A`, `${number}B`];
    sheet
      .onto(cableOf(a), a, `${deviceOf(a)}.H1`, `${deviceOf(a)}.N1`)
      .land(`${cableOf(b)}.${onward}@${a}`, `${deviceOf(a)}.${screw}`)
      .land(`${cableOf(b)}.${onward === "bk" ? "wh" : "bk"}@${a}`, "loose")
      .onto(cableOf(b), b, `${deviceOf(b)}.H1`, `${deviceOf(b)}.N1`);
    goodGrounds(sheet, number);
  }
}

function switches(sheet: SampleDrawing): void {
  sheet
    .joint("6A", "6Ah", ["C6A.bk@6A", "C6B.bk@6A"])
    .land("C6A.wh@6A", "D6A.C")
    .land("C6B.wh@6A", "D6A.L")
    .onto("C6B", "6B", "D6B.H", "D6B.N");
  sheet
    .joint("7A", "7Ah", ["C7A.bk@7A", "C7B.bk@7A"], { "7Ap": "D7A.C" })
    .joint("7A", "7An", ["C7A.wh@7A", "C7B.wh@7A"], { "7Aq": "D7A.L" }, { colour: "white" })
    .onto("C7B", "7B", "D7B.H", "D7B.N");
  for (const number of [6, 7]) goodGrounds(sheet, number);
}

/** A jumper from the second neutral screw to the ground screw's joint. */
function bootleg(sheet: SampleDrawing): void {
  sheet
    .onto("C8A", "8A", "D8A.H1", "D8A.N1")
    .joint("8A", "8Ae", ["C8A.cu@8A"], { "8Ag": "D8A.G", "8Ax": "D8A.N2" }, { colour: "bare" });
}

/** The pigtail of the green screw is in the joint of the blacks; the ground of the cable is left capped. */
function liveMetal(sheet: SampleDrawing): void {
  sheet.joint("18A", "18Ah", ["C18A.bk@18A"], { "18Ap": "D18A.H1", "18Ax": "D18A.G" }).land("C18A.wh@18A", "D18A.N1");
}

/** A second pigtail of the blacks hangs loose. */
function looseEnd(sheet: SampleDrawing): void {
  sheet.joint("19A", "19Ah", ["C19A.bk@19A"], { "19Ap": "D19A.H1", "19Ax": "loose" }).land("C19A.wh@19A", "D19A.N1");
  goodGrounds(sheet, 19, "A");
}
