import { Drawing } from "../../rules/drawing.ts";
import { asFeederPanel } from "../look-at.ts";

/** Two circuits of panel SP. R1 and R2, on its LOAD, in B1; R3 in B2. */
export function fedPanel(): Drawing {
  const drawing = new Drawing()
    .panel("P")
    .panel("SP")
    .breaker("QF", 30, { legs: ["A", "B"] }, "breaker-2", "P")
    .breaker("Q1", 20, { legs: ["A"] }, "breaker-1", "SP")
    .breaker("Q2", 20, { legs: ["A"] }, "breaker-1", "SP")
    .device("LUGS", "main-lugs", "SP")
    .box("B1", 30.3)
    .box("B2", 30.3)
    .cable("F", "nm-10-3-g", "P", "SP")
    .cable("C1", "nm-12-2-g", "SP", "B1")
    .cable("C2", "nm-12-2-g", "SP", "B2")
    .device("R1", "gfci-receptacle-20", "B1")
    .device("R2", "receptacle-20", "B1")
    .device("R3", "receptacle-20", "B2")
    .put({ "F.bk@P": "QF.OUT1", "F.rd@P": "QF.OUT2", "F.wh@P": "P-NB.BAR", "F.cu@P": "P-GB.BAR" })
    .put({ "F.bk@SP": "LUGS.L1", "F.rd@SP": "LUGS.L2", "F.wh@SP": "LUGS.N", "F.cu@SP": "SP-GB.BAR" })
    .put({ "C1.bk@SP": "Q1.OUT", "C1.wh@SP": "SP-NB.BAR", "C1.cu@SP": "SP-GB.BAR" })
    .put({ "C2.bk@SP": "Q2.OUT", "C2.wh@SP": "SP-NB.BAR", "C2.cu@SP": "SP-GB.BAR" })
    .put({ "C1.bk@B1": "R1.LINE_H", "C1.wh@B1": "R1.LINE_N", "C1.cu@B1": "bond" })
    .put({ "C2.bk@B2": "R3.H1", "C2.wh@B2": "R3.N1", "C2.cu@B2": "R3.G" })
    .jumper("h", "B1", "R1.LOAD_H", "R2.H1")
    .jumper("n", "B1", "R1.LOAD_N", "R2.N1", { colour: "white" });
  return asFeederPanel(drawing, "SP");
}
