import { deviceId } from "../ids.ts";
import type { SampleDrawing } from "./sample-drawing.ts";

const NM_14 = "nm-14-2-g";

/** Circuits that run to the left of the panel, one a row. */
export function circuitsOfOddSpaces(house: SampleDrawing): void {
  bedroom(house);
  livingRoom(house);
  kitchenSink(house);
  bathroom(house);
  garage(house);
  furnace(house);
}

function bedroom(house: SampleDrawing): void {
  const room = "Bedroom 1";
  for (const [column, box, note] of [
    [-1, "B11", "at the door"],
    [-2, "B12", "bed wall"],
    [-3, "B13", "window"],
  ] as const)
    house.boxAt(column, 0, box, "device-3-2-3-1-2", { room, note }).device(`R${box.slice(1)}`, "receptacle-15", box);
  house
    .boxAt(-4, 0, "B14", "plastic-new-1", { room, note: "light switch" })
    .boxAt(-5, 0, "B15", "octagon-4-1-1-2", { room, note: "ceiling" })
    .device("S14", "switch-single-pole", "B14")
    .device("L15", "luminaire-led-9", "B15")
    .cable("C11", "P", "B11", { item: NM_14, ft: 44 })
    .cable("C12", "B11", "B12", { item: NM_14, ft: 12 })
    .cable("C13", "B12", "B13", { item: NM_14, ft: 14 })
    .cable("C14", "B13", "B14", { item: NM_14, ft: 17 })
    .cable("C15", "B14", "B15", { item: NM_14, ft: 10 })
    .onto("C11", "P", "Q1.OUT", "Q1.LOAD_N")
    .land("C11.cu@P", "P ground.BAR")
    .throughScrews("B11", "C11", "C12", "R11")
    .throughScrews("B12", "C12", "C13", "R12")
    .throughScrews("B13", "C13", "C14", "R13")
    .switched("B14", ["C14"], "S14", "C15", "14")
    .onto("C15", "B15", "L15.H", "L15.N")
    .grounds("B11", ["C11", "C12"], ["R11"], "14")
    .grounds("B12", ["C12", "C13"], ["R12"], "14")
    .grounds("B13", ["C13", "C14"], ["R13"], "14")
    .grounds("B14", ["C14", "C15"], ["S14"], "14")
    .grounds("B15", ["C15"], ["L15"], "14");
}

/** The switch at the door works the lower half of R34: black of C34 is always hot, red is switched, the hot tab is off. */
function livingRoom(house: SampleDrawing): void {
  const room = "Living room";
  house
    .boxAt(-1, 1, "B31", "device-3-2-3-1-2", { room, note: "television wall" })
    .boxAt(-2, 1, "B32", "device-3-2-3-1-2", { room, note: "window" })
    .boxAt(-3, 1, "B33", "plastic-new-1", { room, note: "door switch" })
    .boxAt(-4, 1, "B34", "plastic-new-1", { room, note: "lamp corner" })
    .device("R31", "receptacle-15", "B31")
    .device("R32", "receptacle-15", "B32")
    .device("S33", "switch-single-pole", "B33")
    .device("R34", "receptacle-15", "B34")
    .set({ kind: "device", id: deviceId("R34") }, "hotTab", "removed")
    .cable("C31", "P", "B31", { item: NM_14, ft: 30 })
    .cable("C32", "B31", "B32", { item: NM_14, ft: 16 })
    .cable("C33", "B32", "B33", { item: NM_14, ft: 18 })
    .cable("C34", "B33", "B34", { item: "nm-14-3-g", ft: 15 })
    .home("C31", "Q3")
    .pigtailed("B31", ["C31", "C32"], "R31.H1", "R31.N1", "14")
    .pigtailed("B32", ["C32", "C33"], "R32.H1", "R32.N1", "14")
    .joint("B33", "B33h", ["C33.bk@B33", "C34.bk@B33"], { B33p: "S33.C" }, { awg: "14" })
    .joint("B33", "B33n", ["C33.wh@B33", "C34.wh@B33"])
    .land("C34.rd@B33", "S33.L")
    .onto("C34", "B34", "R34.H1", "R34.N1")
    .land("C34.rd@B34", "R34.H2")
    .grounds("B31", ["C31", "C32"], ["R31"], "14")
    .grounds("B32", ["C32", "C33"], ["R32"], "14")
    .grounds("B33", ["C33", "C34"], ["S33"], "14")
    .grounds("B34", ["C34"], ["R34"], "14");
}

function kitchenSink(house: SampleDrawing): void {
  const room = "Kitchen counter";
  house
    .boxAt(-1, 2, "B51", "plastic-new-1", { room, note: "left of the sink" })
    .boxAt(-2, 2, "B52", "plastic-new-1", { room, note: "right of the sink" })
    .boxAt(-3, 2, "B53", "plastic-new-1", { room, note: "counter end" })
    .device("R51", "gfci-receptacle-15", "B51")
    .device("R52", "receptacle-15", "B52", { zones: ["sink-zone"] })
    .device("R53", "receptacle-15", "B53")
    .cable("C51", "P", "B51", { ft: 32 })
    .cable("C52", "B51", "B52", { ft: 8 })
    .cable("C53", "B52", "B53", { ft: 9 })
    .home("C51", "Q5")
    .onto("C51", "B51", "R51.LINE_H", "R51.LINE_N")
    .onto("C52", "B51", "R51.LOAD_H", "R51.LOAD_N")
    .pigtailed("B52", ["C52", "C53"], "R52.H1", "R52.N1")
    .onto("C53", "B53", "R53.H1", "R53.N1")
    .grounds("B51", ["C51", "C52"], ["R51"])
    .grounds("B52", ["C52", "C53"], ["R52"])
    .grounds("B53", ["C53"], ["R53"]);
}

function bathroom(house: SampleDrawing): void {
  const room = "Bathroom";
  house
    .boxAt(-1, 3, "B71", "plastic-new-1", { room, note: "basin" })
    .boxAt(-2.4, 3, "B72", "plastic-new-2", { room, note: "switches" })
    .boxAt(-3.4, 3, "B73", "fan-rated", { room, note: "ceiling" })
    .device("R71", "gfci-receptacle-15", "B71")
    .device("S72", "switch-single-pole", "B72")
    .device("T72", "switch-single-pole", "B72")
    .device("F73", "fan-light", "B73")
    .cable("C71", "P", "B71", { ft: 38 })
    .cable("C72", "B71", "B72", { ft: 10 })
    .cable("C73", "B72", "B73", { item: "nm-12-3-g", ft: 12 })
    .home("C71", "Q7")
    .pigtailed("B71", ["C71", "C72"], "R71.LINE_H", "R71.LINE_N")
    .joint("B72", "B72h", ["C72.bk@B72"], { B72p: "S72.C", B72q: "T72.C" })
    .joint("B72", "B72n", ["C72.wh@B72", "C73.wh@B72"])
    .land("C73.bk@B72", "S72.L")
    .land("C73.rd@B72", "T72.L")
    .land("C73.bk@B73", "F73.H_FAN")
    .land("C73.rd@B73", "F73.H_LIGHT")
    .land("C73.wh@B73", "F73.N")
    .grounds("B71", ["C71", "C72"], ["R71"])
    .grounds("B72", ["C72", "C73"], ["S72", "T72"])
    .grounds("B73", ["C73"], ["F73"]);
}

/** Everything behind a ground-fault breaker: its neutral goes to the breaker, not to the bar. */
function garage(house: SampleDrawing): void {
  house
    .boxAt(-1, 4, "B91", "square-4-2-1-8", { room: "Garage", note: "at the door" })
    .boxAt(-2, 4, "B92", "square-4-2-1-8", { room: "Garage", note: "freezer" })
    .boxAt(-3, 4, "B93", "weatherproof-fd", { room: "Outdoors", note: "porch" })
    .boxAt(-4, 4, "B94", "weatherproof-fd", { room: "Outdoors", note: "patio" })
    .device("R91", "receptacle-15", "B91")
    .device("R92", "receptacle-15", "B92")
    .device("R93", "receptacle-tr-wr-15", "B93")
    .device("R94", "receptacle-tr-wr-15", "B94")
    .cable("C91", "P", "B91", { ft: 26 })
    .cable("C92", "B91", "B92", { ft: 14 })
    .cable("C93", "B92", "B93", { ft: 22 })
    .cable("C94", "B93", "B94", { ft: 35 })
    .onto("C91", "P", "Q9.OUT", "Q9.LOAD_N")
    .land("C91.cu@P", "P ground.BAR")
    .pigtailed("B91", ["C91", "C92"], "R91.H1", "R91.N1")
    .pigtailed("B92", ["C92", "C93"], "R92.H1", "R92.N1")
    .throughScrews("B93", "C93", "C94", "R93")
    .onto("C94", "B94", "R94.H1", "R94.N1")
    .grounds("B91", ["C91", "C92"], ["R91"])
    .grounds("B92", ["C92", "C93"], ["R92"])
    .grounds("B93", ["C93", "C94"], ["R93"])
    .grounds("B94", ["C94"], ["R94"]);
}

function furnace(house: SampleDrawing): void {
  house
    .boxAt(-1, 5, "B111", "square-4-1-1-2", { room: "Basement", note: "furnace switch" })
    .boxAt(-2, 5, "B112", "square-4-1-1-2", { room: "Basement", note: "furnace" })
    .device("S111", "switch-single-pole", "B111")
    .device("A112", "appliance-120", "B112")
    .cable("C111", "P", "B111", { item: NM_14, ft: 18 })
    .cable("C112", "B111", "B112", { item: NM_14, ft: 7 })
    .home("C111", "Q11")
    .switched("B111", ["C111"], "S111", "C112", "14")
    .onto("C112", "B112", "A112.H", "A112.N")
    .grounds("B111", ["C111", "C112"], ["S111"], "14")
    .grounds("B112", ["C112"], ["A112"], "14");
}
