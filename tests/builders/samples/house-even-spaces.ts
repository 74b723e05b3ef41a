import type { SampleDrawing } from "./sample-drawing.ts";

const NM_14 = "nm-14-2-g";

/** Circuits that run to the right of the panel. */
export function circuitsOfEvenSpaces(house: SampleDrawing): void {
  bedrooms(house);
  hall(house);
  alarms(house);
  kitchenRange(house);
  laundry(house);
  basement(house);
  waterHeater(house);
}

/** B21 feeds on to both bedrooms, which is one cable too many for its volume. */
function bedrooms(house: SampleDrawing): void {
  const second = { room: "Bedroom 2" };
  const third = { room: "Bedroom 3" };
  house
    .boxAt(1.5, 0, "B21", "device-3-2-3-1-2", { ...second, note: "at the door" })
    .boxAt(2.5, 0, "B22", "device-3-2-3-1-2", { ...second, note: "window" })
    .boxAt(3.5, 0, "B23", "plastic-new-1", { ...second, note: "light switch" })
    .boxAt(4.5, 0, "B24", "octagon-4-1-1-2", { ...second, note: "ceiling" })
    .boxAt(2.5, 1, "B25", "device-3-2-3-1-2", { ...third, note: "bed wall" })
    .boxAt(3.5, 1, "B26", "plastic-new-1", { ...third, note: "light switch" })
    .boxAt(4.5, 1, "B27", "octagon-4-1-1-2", { ...third, note: "ceiling" })
    .device("R21", "receptacle-15", "B21")
    .device("R22", "receptacle-15", "B22")
    .device("S23", "switch-single-pole", "B23")
    .device("L24", "luminaire-60", "B24")
    .device("R25", "receptacle-15", "B25")
    .device("S26", "switch-single-pole", "B26")
    .device("L27", "luminaire-60", "B27")
    .cable("C21", "P", "B21", { item: NM_14, ft: 40 })
    .cable("C22", "B21", "B22", { item: NM_14, ft: 13 })
    .cable("C23", "B22", "B23", { item: NM_14, ft: 15 })
    .cable("C24", "B23", "B24", { item: NM_14, ft: 9 })
    .cable("C25", "B21", "B25", { item: NM_14, ft: 19 })
    .cable("C26", "B25", "B26", { item: NM_14, ft: 14 })
    .cable("C27", "B26", "B27", { item: NM_14, ft: 9 })
    .home("C21", "Q2")
    .pigtailed("B21", ["C21", "C22", "C25"], "R21.H1", "R21.N1", "14")
    .throughScrews("B22", "C22", "C23", "R22")
    .switched("B23", ["C23"], "S23", "C24", "14")
    .onto("C24", "B24", "L24.H", "L24.N")
    .throughScrews("B25", "C25", "C26", "R25")
    .switched("B26", ["C26"], "S26", "C27", "14")
    .onto("C27", "B27", "L27.H", "L27.N")
    .grounds("B21", ["C21", "C22", "C25"], ["R21"], "14")
    .grounds("B22", ["C22", "C23"], ["R22"], "14")
    .grounds("B23", ["C23", "C24"], ["S23"], "14")
    .grounds("B24", ["C24"], ["L24"], "14")
    .grounds("B25", ["C25", "C26"], ["R25"], "14")
    .grounds("B26", ["C26", "C27"], ["S26"], "14")
    .grounds("B27", ["C27"], ["L27"], "14");
}

/** The stair light on two three-way switches; B41 feeds on to the alarms before its switch and is exactly full. */
function hall(house: SampleDrawing): void {
  house
    .boxAt(1.5, 2, "B41", "plastic-new-1", { room: "Stair", note: "stair foot" })
    .boxAt(2.5, 2, "B42", "plastic-new-1", { room: "Stair", note: "stair head" })
    .boxAt(3.5, 2, "B43", "octagon-4-1-1-2", { room: "Stair", note: "stair ceiling" })
    .device("S41", "switch-3way", "B41")
    .device("S42", "switch-3way", "B42")
    .device("L43", "luminaire-60", "B43")
    .volumeUnknown("B43")
    .boxAt(2.5, 3, "B44", "plastic-ceiling", { room: "Hall", note: "smoke alarm" })
    .cable("C41", "P", "B41", { item: NM_14, ft: 20 })
    .cable("C42", "B41", "B42", { item: "nm-14-3-g", ft: 18 })
    .cable("C43", "B42", "B43", { item: NM_14, ft: 9 })
    .cable("C44", "B41", "B44", { item: NM_14, ft: 24 })
    .home("C41", "Q4")
    .joint("B41", "B41h", ["C41.bk@B41", "C44.bk@B41"], { B41p: "S41.C" }, { awg: "14" })
    .joint("B41", "B41n", ["C41.wh@B41", "C42.wh@B41", "C44.wh@B41"])
    .land("C42.bk@B41", "S41.T1")
    .land("C42.rd@B41", "S41.T2")
    .land("C42.bk@B42", "S42.T1")
    .land("C42.rd@B42", "S42.T2")
    .land("C43.bk@B42", "S42.C")
    .joint("B42", "B42n", ["C42.wh@B42", "C43.wh@B42"])
    .onto("C43", "B43", "L43.H", "L43.N")
    .grounds("B41", ["C41", "C42", "C44"], ["S41"], "14")
    .grounds("B42", ["C42", "C43"], ["S42"], "14")
    .grounds("B43", ["C43"], ["L43"], "14");
}

/** Two alarms that call each other by the red of C45; they have no ground lead. */
function alarms(house: SampleDrawing): void {
  house
    .boxAt(3.5, 3, "B45", "plastic-ceiling", { room: "Bedroom 2", note: "smoke alarm" })
    .device("A44", "smoke-alarm", "B44")
    .device("A45", "smoke-alarm", "B45")
    .cable("C45", "B44", "B45", { item: "nm-14-3-g", ft: 16 })
    .pigtailed("B44", ["C44", "C45"], "A44.H", "A44.N", "14")
    .land("C45.rd@B44", "A44.SIG")
    .onto("C45", "B45", "A45.H", "A45.N")
    .land("C45.rd@B45", "A45.SIG")
    .grounds("B44", ["C44", "C45"], [], "14")
    .grounds("B45", ["C45"], [], "14");
}

function kitchenRange(house: SampleDrawing): void {
  house
    .boxAt(1.5, 4, "B61", "plastic-new-1", { room: "Kitchen counter", note: "by the range" })
    .boxAt(2.5, 4, "B62", "plastic-new-1", { room: "Dining room", note: "sideboard" })
    .boxAt(3.5, 4, "B63", "plastic-new-1", { room: "Refrigerator wall", note: "refrigerator" })
    .device("R61", "receptacle-15", "B61")
    .device("R62", "receptacle-15", "B62")
    .device("R63", "receptacle-15", "B63")
    .cable("C61", "P", "B61", { ft: 34 })
    .cable("C62", "B61", "B62", { ft: 17 })
    .cable("C63", "B62", "B63", { ft: 13 })
    .home("C61", "Q6")
    .pigtailed("B61", ["C61", "C62"], "R61.H1", "R61.N1")
    .pigtailed("B62", ["C62", "C63"], "R62.H1", "R62.N1")
    .onto("C63", "B63", "R63.H1", "R63.N1")
    .grounds("B61", ["C61", "C62"], ["R61"])
    .grounds("B62", ["C62", "C63"], ["R62"])
    .grounds("B63", ["C63"], ["R63"]);
}

/** The receptacle at the sink protects its own face; the washer before it has nothing. */
function laundry(house: SampleDrawing): void {
  house
    .boxAt(1.5, 5, "B81", "square-4-2-1-8", { room: "Laundry", note: "washer" })
    .boxAt(2.5, 5, "B82", "square-4-2-1-8", { room: "Laundry", note: "sink" })
    .device("R81", "receptacle-15", "B81")
    .device("R82", "gfci-receptacle-15", "B82", { zones: ["sink-zone"] })
    .cable("C81", "P", "B81", { ft: 22 })
    .cable("C82", "B81", "B82", { ft: 8 })
    .home("C81", "Q8")
    .pigtailed("B81", ["C81", "C82"], "R81.H1", "R81.N1")
    .onto("C82", "B82", "R82.LINE_H", "R82.LINE_N")
    .grounds("B81", ["C81", "C82"], ["R81"])
    .grounds("B82", ["C82"], ["R82"]);
}

function basement(house: SampleDrawing): void {
  const room = "Basement";
  house
    .boxAt(1.5, 6, "B101", "plastic-new-1", { room, note: "light switch" })
    .boxAt(2.5, 6, "B102", "octagon-4-1-1-2", { room, note: "ceiling, front" })
    .boxAt(3.5, 6, "B103", "octagon-4-1-1-2", { room, note: "ceiling, back" })
    .boxAt(2.5, 7, "B104", "square-4-2-1-8", { room, note: "workbench" })
    .boxAt(3.5, 7, "B105", "square-4-2-1-8", { room, note: "stair foot" })
    .device("S101", "switch-single-pole", "B101")
    .device("L102", "luminaire-60", "B102")
    .device("L103", "luminaire-60", "B103")
    .device("R104", "receptacle-15", "B104")
    .device("R105", "receptacle-15", "B105")
    .cable("C101", "P", "B101", { item: NM_14, ft: 14 })
    .cable("C102", "B101", "B102", { item: NM_14, ft: 11 })
    .cable("C103", "B102", "B103", { item: NM_14, ft: 12 })
    .cable("C104", "B101", "B104", { item: NM_14, ft: 20 })
    .cable("C105", "B104", "B105", { item: NM_14, ft: 18 })
    .home("C101", "Q10")
    .switched("B101", ["C101", "C104"], "S101", "C102", "14")
    .pigtailed("B102", ["C102", "C103"], "L102.H", "L102.N", "14")
    .onto("C103", "B103", "L103.H", "L103.N")
    .pigtailed("B104", ["C104", "C105"], "R104.H1", "R104.N1", "14")
    .onto("C105", "B105", "R105.H1", "R105.N1")
    .grounds("B101", ["C101", "C102", "C104"], ["S101"], "14")
    .grounds("B102", ["C102", "C103"], ["L102"], "14")
    .grounds("B103", ["C103"], ["L103"], "14")
    .grounds("B104", ["C104", "C105"], ["R104"], "14")
    .grounds("B105", ["C105"], ["R105"], "14");
}

/** 240 V by 10/2: the white is the second hot and is marked so at both ends. */
function waterHeater(house: SampleDrawing): void {
  house
    .boxAt(1.5, 8, "B121", "plastic-new-1", { room: "Basement", note: "water heater" })
    .device("A121", "appliance-240", "B121")
    .cable("C121", "P", "B121", { item: "nm-10-2-g", ft: 16 })
    .onto("C121", "P", "Q12.OUT1", "Q12.OUT2")
    .land("C121.cu@P", "P ground.BAR")
    .onto("C121", "B121", "A121.L1", "A121.L2")
    .land("C121.cu@B121", "A121.G")
    .setEnd("C121.wh@P", "markedAs", "red")
    .setEnd("C121.wh@B121", "markedAs", "red");
}
