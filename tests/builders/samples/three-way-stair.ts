import type { Project } from "../../../shared-model/model/project.ts";
import { SampleDrawing } from "./sample-drawing.ts";

/**
 * A stair light on two three-way switches: 14/3 between them with black and red as travellers and the neutral in its
 * white. Right in all four positions: from whichever the handles stand in, either one turns the light over.
 */
export function threeWayStair(): Project {
  const house = SampleDrawing.empty("Stair light on two three-way switches", 2020)
    .notes(
      "The feed ends on the common screw of SA, the light hangs on the common screw of SB. Black and red of V2 carry the hot by turns; the white of all three cables is joined through, so the neutral is at both switches.",
      "Try it: lit with both handles up or both down, dark with one up and one down, and either handle turns it over. With one of the two commons on a traveller the light would work in some positions only.",
      "Everything was seen with covers off; lengths are assumed.",
    )
    .roomAt("below", "Basement", "utility", "basement-unfinished")
    .roomAt("at", "Stair", "stair")
    .panelAt(0, 0, "P", "panel-16", "Basement")
    .breakerIn(10, "Q10", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Stair", note: "stair foot" })
    .boxAt(2, 0, "B2", "plastic-new-1", { room: "Stair", note: "stair head" })
    .boxAt(3, 0, "B3", "octagon-4-1-1-2", { room: "Stair", note: "stair ceiling" })
    .device("SA", "switch-3way", "B1")
    .device("SB", "switch-3way", "B2")
    .device("L1", "luminaire-60", "B3");
  wiring(house);
  return house.directory({ Q10: "Stair light" }).knowAll("seen").project;
}

function wiring(house: SampleDrawing): void {
  house
    .cable("V1", "P", "B1", { item: "nm-14-2-g", ft: 24 })
    .cable("V2", "B1", "B2", { item: "nm-14-3-g", ft: 21 })
    .cable("V3", "B2", "B3", { item: "nm-14-2-g", ft: 9 })
    .home("V1", "Q10")
    .land("V1.bk@B1", "SA.C")
    .land("V2.bk@B1", "SA.T1")
    .land("V2.rd@B1", "SA.T2")
    .joint("B1", "B1n", ["V1.wh@B1", "V2.wh@B1"])
    .grounds("B1", ["V1", "V2"], ["SA"], "14")
    .land("V2.bk@B2", "SB.T1")
    .land("V2.rd@B2", "SB.T2")
    .land("V3.bk@B2", "SB.C")
    .joint("B2", "B2n", ["V2.wh@B2", "V3.wh@B2"])
    .grounds("B2", ["V2", "V3"], ["SB"], "14")
    .onto("V3", "B3", "L1.H", "L1.N")
    .grounds("B3", ["V3"], ["L1"], "14");
}
