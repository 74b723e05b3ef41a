import type { Device } from "../../shared-model/model/device.ts";
import { asId } from "../../shared-model/model/ids.ts";
import type { Edition } from "../../shared-model/model/project.ts";
import { Drawing } from "./drawing.ts";

interface Made {
  readonly edition?: Edition;
  readonly first?: string;
  readonly second?: string;
  readonly breaker?: string;
}

/**
 * Two-wire 14/2 without a ground: V1 from a 15 A breaker to T1 in BT1, V2 from its LOAD to T2 in BT2; metal boxes in a
 * stair. T1 is a ground-fault receptacle, T2 a grounding duplex, unless told.
 */
export function twoWire(made: Made = {}): Drawing {
  const { edition = 2020, first = "gfci-receptacle-15", second = "receptacle-15", breaker = "breaker-1" } = made;
  const isLineLoad = first.startsWith("gfci");
  const [hot, neutral] = isLineLoad ? ["LINE_H", "LINE_N"] : ["H1", "N1"];
  const [onHot, onNeutral] = isLineLoad ? ["LOAD_H", "LOAD_N"] : ["H2", "N2"];
  return new Drawing(edition)
    .room("Stair", ["stair"])
    .panel("P")
    .breaker("QT", 15, {}, breaker)
    .box("BT1", 42, { roomId: asId("Stair"), internalClamps: "none", cover: "device-plate" })
    .box("BT2", 42, { roomId: asId("Stair"), internalClamps: "none", cover: "device-plate" })
    .cable("V1", "nm-14-2", "P", "BT1")
    .cable("V2", "nm-14-2", "BT1", "BT2")
    .device("T1", first, "BT1")
    .device("T2", second, "BT2")
    .put({ "V1.bk@P": "QT.OUT", "V1.wh@P": breaker === "breaker-1" ? "P-NB.BAR" : "QT.LOAD_N" })
    .put({
      "V1.bk@BT1": `T1.${hot}`,
      "V1.wh@BT1": `T1.${neutral}`,
      "V2.bk@BT1": `T1.${onHot}`,
      "V2.wh@BT1": `T1.${onNeutral}`,
    })
    .put({ "V2.bk@BT2": "T2.H1", "V2.wh@BT2": "T2.N1" });
}

/** T2 fed from the LINE side, so that T1 does not protect it. */
export const onLine = (drawing: Drawing): Drawing =>
  drawing.put({ "V2.bk@BT1": "T1.LINE_H#2", "V2.wh@BT1": "T1.LINE_N#2" });

/** A cable V9 with a ground between the two boxes, its ground on both receptacles. */
export const groundBetween = (drawing: Drawing): Drawing =>
  drawing.cable("V9", "nm-14-2-g", "BT1", "BT2").put({ "V9.cu@BT1": "T1.G", "V9.cu@BT2": "T2.G" });

/** A switch S1 in BT1 before a light in a box of its own, on the circuit by the LINE or the LOAD of T1. */
export function withSwitch(drawing: Drawing, side: "LINE" | "LOAD", facts: Partial<Device> = {}): Drawing {
  return drawing
    .box("BL", 42)
    .cable("V3", "nm-14-2", "BT1", "BL")
    .device("S1", "switch-single-pole", "BT1", facts)
    .device("L1", "luminaire-60", "BL")
    .jumper("s", "BT1", `T1.${side}_H#2`, "S1.C", { awg: "14" })
    .put({ "V3.bk@BT1": "S1.L", "V3.wh@BT1": `T1.${side}_N#2`, "V3.bk@BL": "L1.H", "V3.wh@BL": "L1.N" });
}
