import { Drawing } from "./drawing.ts";

/**
 * A light on two three-way switches: the feed comes to SA in A; V2 goes on to SB in B. With `returns` the light hangs in A
 * and that conductor of V2 comes back from SB; else it hangs in B on its own cable, and the white of V2 is its neutral.
 */
export function threeWay({ returns }: { readonly returns?: "wh" | "bk" } = {}): Drawing {
  const drawing = new Drawing()
    .room("Stair", ["stair"])
    .panel("P")
    .breaker("Q1", 15)
    .box("A", 30, { roomId: "Stair" as never })
    .box("B", 30, { roomId: "Stair" as never })
    .cable("V1", "nm-14-2-g", "P", "A")
    .cable("V2", "nm-14-3-g", "A", "B")
    .device("SA", "switch-3way", "A")
    .device("SB", "switch-3way", "B")
    .device("L1", "luminaire-60", returns === undefined ? "B" : "A")
    .splice("N", "A", "twist-medium")
    .put({ "V1.bk@P": "Q1.OUT", "V1.wh@P": "P-NB.BAR", "V1.cu@P": "P-GB.BAR", "V1.bk@A": "SA.C", "V1.wh@A": "N" });
  if (returns === undefined)
    return drawing
      .splice("M", "B", "twist-medium")
      .put({ "V2.bk@A": "SA.T1", "V2.rd@A": "SA.T2", "V2.wh@A": "N" })
      .put({ "V2.bk@B": "SB.T1", "V2.rd@B": "SB.T2", "V2.wh@B": "M" })
      .jumper("c", "B", "SB.C", "L1.H", { awg: "14" })
      .jumper("d", "B", "M", "L1.N", { awg: "14", colour: "white" });
  const other = returns === "wh" ? "bk" : "wh";
  return drawing
    .jumper("d", "A", "N", "L1.N", { awg: "14", colour: "white" })
    .put({ [`V2.${other}@A`]: "SA.T1", "V2.rd@A": "SA.T2", [`V2.${returns}@A`]: "L1.H" })
    .put({ [`V2.${other}@B`]: "SB.T1", "V2.rd@B": "SB.T2", [`V2.${returns}@B`]: "SB.C" });
}
