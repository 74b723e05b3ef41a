import type { SampleDrawing } from "./sample-drawing.ts";
import { goodGrounds } from "./wrong-stations.ts";

/** Stations 9 to 15: a ground-fault receptacle and one outlet behind it, wired wrong at the first. */
export function groundFaultFaults(sheet: SampleDrawing): void {
  for (let number = 9; number <= 14; number++) {
    sheet.onto(`C${number}B`, `${number}B`, `D${number}B.H1`, `D${number}B.N1`);
    goodGrounds(sheet, number);
  }
  exchanged(sheet);
  aroundContacts(sheet);
  split(sheet);
  sheet.land("C15A.bk@15A", "D15A.LINE_H").land("C15A.wh@15A", "loose");
  goodGrounds(sheet, 15, "A");
}

function exchanged(sheet: SampleDrawing): void {
  sheet
    .onto("C9A", "9A", "D9A.LOAD_H", "D9A.LOAD_N")
    .onto("C9B", "9A", "D9A.LINE_H", "D9A.LINE_N")
    .onto("C10A", "10A", "D10A.LINE_H", "D10A.LOAD_N")
    .onto("C10B", "10A", "D10A.LOAD_H", "D10A.LINE_N");
}

/** One joint with a pigtail to LINE and one to LOAD; the other pole as it should be. */
function aroundContacts(sheet: SampleDrawing): void {
  sheet
    .joint("11A", "11Ah", ["C11A.bk@11A", "C11B.bk@11A"], { "11Ap": "D11A.LINE_H", "11Aq": "D11A.LOAD_H" })
    .land("C11A.wh@11A", "D11A.LINE_N")
    .land("C11B.wh@11A", "D11A.LOAD_N")
    .joint(
      "12A",
      "12An",
      ["C12A.wh@12A", "C12B.wh@12A"],
      { "12Ap": "D12A.LINE_N", "12Aq": "D12A.LOAD_N" },
      { colour: "white" },
    )
    .land("C12A.bk@12A", "D12A.LINE_H")
    .land("C12B.bk@12A", "D12A.LOAD_H");
}

/** One conductor of the cable onward on LOAD, the other with the supply. */
function split(sheet: SampleDrawing): void {
  sheet
    .land("C13A.bk@13A", "D13A.LINE_H")
    .land("C13B.bk@13A", "D13A.LOAD_H")
    .joint("13A", "13An", ["C13A.wh@13A", "C13B.wh@13A"], { "13Ap": "D13A.LINE_N" }, { colour: "white" })
    .joint("14A", "14Ah", ["C14A.bk@14A", "C14B.bk@14A"], { "14Ap": "D14A.LINE_H" })
    .land("C14A.wh@14A", "D14A.LINE_N")
    .land("C14B.wh@14A", "D14A.LOAD_N");
}
