import type { Project } from "../../../shared-model/model/project.ts";
import { TemplateDrawing } from "./template-drawing.ts";

const TWO = { item: "nm-14-2-g" };
const THREE = { item: "nm-14-3-g" };

export const switchFed = (title: string): Project =>
  TemplateDrawing.begin(title)
    .notes("C1 brings the supply to the switch, C2 leads to the light. The neutral is joined in the box of the switch.")
    .boxAt(0, 0, "B1", "plastic-new-1", { note: "switch" })
    .boxAt(1, 0, "B2", "octagon-4-1-1-2", { note: "light" })
    .covered("B1", "device-plate")
    .covered("B2", "luminaire")
    .device("S1", "switch-single-pole", "B1")
    .device("L1", "luminaire-led-9", "B2")
    .feed("C1", "B1", TWO.item)
    .cable("C2", "B1", "B2", TWO)
    .switched("B1", ["C1"], "S1", "C2", "14")
    .grounds("B1", ["C1", "C2"], ["S1"], "14")
    .onto("C2", "B2", "L1.H", "L1.N")
    .grounds("B2", ["C2"], ["L1"], "14").project;

export const switchLoop = (title: string): Project =>
  TemplateDrawing.begin(title)
    .notes(
      "The supply comes to the light. C2 takes the hot down on black and brings it back switched on red; its white is the neutral, capped at the switch for a device that needs one.",
    )
    .boxAt(0, 0, "B1", "octagon-4-2-1-8", { note: "light" })
    .boxAt(1, 0, "B2", "plastic-new-1", { note: "switch" })
    .covered("B1", "luminaire")
    .covered("B2", "device-plate")
    .device("L1", "luminaire-led-9", "B1")
    .device("S1", "switch-single-pole", "B2")
    .feed("C1", "B1", TWO.item)
    .cable("C2", "B1", "B2", THREE)
    .joint("B1", "B1h", ["C1.bk@B1", "C2.bk@B1"])
    .joint("B1", "B1n", ["C1.wh@B1", "C2.wh@B1"], { B1q: "L1.N" }, { awg: "14", colour: "white" })
    .land("C2.rd@B1", "L1.H")
    .grounds("B1", ["C1", "C2"], ["L1"], "14")
    .land("C2.bk@B2", "S1.C")
    .land("C2.rd@B2", "S1.L")
    .spare("C2.wh@B2")
    .grounds("B2", ["C2"], ["S1"], "14").project;

export const threeWayPair = (title: string): Project =>
  TemplateDrawing.begin(title)
    .notes(
      "The supply lands on the common of S1, the light hangs on the common of S2; black and red between them are the travellers, the white is joined through.",
    )
    .boxAt(0, 0, "B1", "plastic-new-1", { note: "first switch" })
    .boxAt(1, 0, "B2", "plastic-new-1", { note: "second switch" })
    .boxAt(2, 0, "B3", "octagon-4-1-1-2", { note: "light" })
    .covered("B1", "device-plate")
    .covered("B2", "device-plate")
    .covered("B3", "luminaire")
    .device("S1", "switch-3way", "B1")
    .device("S2", "switch-3way", "B2")
    .device("L1", "luminaire-led-9", "B3")
    .feed("C1", "B1", TWO.item)
    .cable("C2", "B1", "B2", THREE)
    .cable("C3", "B2", "B3", TWO)
    .land("C1.bk@B1", "S1.C")
    .land("C2.bk@B1", "S1.T1")
    .land("C2.rd@B1", "S1.T2")
    .joint("B1", "B1n", ["C1.wh@B1", "C2.wh@B1"])
    .grounds("B1", ["C1", "C2"], ["S1"], "14")
    .land("C2.bk@B2", "S2.T1")
    .land("C2.rd@B2", "S2.T2")
    .land("C3.bk@B2", "S2.C")
    .joint("B2", "B2n", ["C2.wh@B2", "C3.wh@B2"])
    .grounds("B2", ["C2", "C3"], ["S2"], "14")
    .onto("C3", "B3", "L1.H", "L1.N")
    .grounds("B3", ["C3"], ["L1"], "14").project;

export const switchAndReceptacle = (title: string): Project =>
  TemplateDrawing.begin(title)
    .notes("One supply for both devices, each on a pigtail of its own; C2 leads to the light of the switch.")
    .boxAt(0, 0, "B1", "plastic-new-2")
    .covered("B1", "device-plate")
    .device("S1", "switch-single-pole", "B1")
    .device("R1", "receptacle-tr-15", "B1")
    .feed("C1", "B1", TWO.item)
    .stub("C2", "B1", "the light", TWO.item)
    .joint("B1", "hot", ["C1.bk@B1"], { s: "S1.C", r: "R1.H1" }, { awg: "14" })
    .joint("B1", "neutral", ["C1.wh@B1", "C2.wh@B1"], { n: "R1.N1" }, { awg: "14", colour: "white" })
    .land("C2.bk@B1", "S1.L")
    .grounds("B1", ["C1", "C2"], ["S1", "R1"], "14").project;
