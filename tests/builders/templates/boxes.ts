import type { Project } from "../../../shared-model/model/project.ts";
import { TemplateDrawing } from "./template-drawing.ts";

const NM_14 = "nm-14-2-g";
const NM_12 = "nm-12-2-g";

export const receptacleAtEnd = (title: string): Project =>
  TemplateDrawing.begin(title)
    .notes("One cable ends here. Change cable, box and device to what is there; the checks follow.")
    .boxAt(0, 0, "B1", "plastic-new-1")
    .covered("B1", "device-plate")
    .device("R1", "receptacle-tr-15", "B1")
    .feed("C1", "B1", NM_14)
    .onto("C1", "B1", "R1.H1", "R1.N1")
    .grounds("B1", ["C1"], ["R1"], "14").project;

export const receptacleThrough = (title: string): Project =>
  TemplateDrawing.begin(title)
    .notes(
      "C1 brings the supply, C2 goes on. Each joint has a pigtail to the device: take the device out and the run stays whole.",
    )
    .boxAt(0, 0, "B1", "plastic-new-1")
    .covered("B1", "device-plate")
    .device("R1", "receptacle-tr-15", "B1")
    .feed("C1", "B1", NM_14)
    .stub("C2", "B1", "the next outlet", NM_14)
    .pigtailed("B1", ["C1", "C2"], "R1.H1", "R1.N1", "14")
    .grounds("B1", ["C1", "C2"], ["R1"], "14").project;

export const groundFaultProtects = (title: string): Project =>
  TemplateDrawing.begin(title)
    .notes(
      "The supply lands on LINE. What leads on from LOAD is protected by this device and goes dark with it: press TEST while it is energised.",
    )
    .boxAt(0, 0, "B1", "plastic-new-1")
    .covered("B1", "device-plate")
    .device("R1", "gfci-receptacle-20", "B1")
    .feed("C1", "B1", NM_12)
    .stub("C2", "B1", "outlets to be protected", NM_12)
    .onto("C1", "B1", "R1.LINE_H", "R1.LINE_N")
    .onto("C2", "B1", "R1.LOAD_H", "R1.LOAD_N")
    .grounds("B1", ["C1", "C2"], ["R1"]).project;

export const halfSwitched = (title: string): Project =>
  TemplateDrawing.begin(title)
    .notes(
      "C1 brings the hot on black and the switched hot on red. The tab between the hot screws is out, the one between the neutral screws is in.",
    )
    .boxAt(0, 0, "B1", "plastic-new-1")
    .covered("B1", "device-plate")
    .device("R1", "receptacle-tr-15", "B1", { set: { hotTab: "removed" } })
    .feed("C1", "B1", "nm-14-3-g")
    .land("C1.bk@B1", "R1.H1")
    .land("C1.rd@B1", "R1.H2")
    .land("C1.wh@B1", "R1.N1")
    .grounds("B1", ["C1"], ["R1"], "14").project;

export const ceilingLight = (title: string): Project =>
  TemplateDrawing.begin(title)
    .notes("C1 brings the switched hot and the neutral, C2 goes on to the next light of the same switch.")
    .boxAt(0, 0, "B1", "octagon-4-2-1-8")
    .covered("B1", "luminaire")
    .device("L1", "luminaire-led-9", "B1")
    .feed("C1", "B1", NM_14)
    .stub("C2", "B1", "the next light", NM_14)
    .pigtailed("B1", ["C1", "C2"], "L1.H", "L1.N", "14")
    .grounds("B1", ["C1", "C2"], ["L1"], "14").project;

export function junction(title: string): Project {
  const cables = ["C1", "C2", "C3", "C4"];
  const drawing = TemplateDrawing.begin(title)
    .notes("C1 brings the supply; the other three go on. It needs its blank cover, and must stay within reach.")
    .boxAt(0, 0, "B1", "square-4-2-1-8")
    .covered("B1", "blank")
    .feed("C1", "B1", NM_12);
  for (const cable of cables.slice(1)) drawing.stub(cable, "B1", "the next outlet", NM_12);
  const all = (conductor: string) => cables.map((cable) => `${cable}.${conductor}@B1`);
  return drawing
    .joint("B1", "hot", all("bk"))
    .joint("B1", "neutral", all("wh"), {}, { colour: "white" })
    .grounds("B1", cables).project;
}

export const multiwireSplit = (title: string): Project =>
  TemplateDrawing.begin(title)
    .notes(
      "Black and red come from two legs and one common trip; the neutral carries only the difference. It is joined here and hangs on no device.",
    )
    .boxAt(0, 0, "B1", "square-4-2-1-8")
    .covered("B1", "blank")
    .feed("C1", "B1", "nm-12-3-g")
    .stub("C2", "B1", "the first circuit", NM_12)
    .stub("C3", "B1", "the second circuit", NM_12)
    .joint("B1", "first", ["C1.bk@B1", "C2.bk@B1"])
    .joint("B1", "second", ["C1.rd@B1", "C3.bk@B1"])
    .joint("B1", "neutral", ["C1.wh@B1", "C2.wh@B1", "C3.wh@B1"])
    .grounds("B1", ["C1", "C2", "C3"]).project;
