import type { Project } from "../../shared-model/model/project.ts";
import { jumperId } from "../builders/ids.ts";
import { Job } from "./job.ts";

/** Workbench first, freezer behind it. The plan puts one ground-fault receptacle at the workbench, for both. */
export function garageFreezer(): Project {
  return Job.in("Garage with a freezer")
    .roomAt("at", "Garage", "garage")
    .breakerIn(7, "Q7", "P", { ratingA: 20 })
    .boxAt(1, 0, "B1", "device-3-2-3-1-2", { room: "Garage", note: "workbench" })
    .boxAt(2, 0, "B2", "device-3-2-3-1-2", { room: "Garage", note: "freezer" })
    .device("R1", "receptacle-15", "B1")
    .device("R2", "receptacle-15", "B2")
    .cable("W1", "P", "B1", { ft: 30, means: "external-connector" })
    .cable("W2", "B1", "B2", { ft: 12, means: "external-connector" })
    .boxFacts("B1", { internalClamps: "none" })
    .boxFacts("B2", { internalClamps: "none" })
    .home("W1", "Q7")
    .throughScrews("B1", "W1", "W2", "R1")
    .grounds("B1", ["W1", "W2"], ["R1"])
    .onto("W2", "B2", "R2.H1", "R2.N1")
    .grounds("B2", ["W2"], ["R2"])
    .load("Freezer", "freezer-180", "R2")
    .directory({ Q7: "Garage" })
    .plan()
    .replace("R1", "R1b", "gfci-receptacle-15")
    .onto("W1", "B1", "R1b.LINE_H", "R1b.LINE_N")
    .onto("W2", "B1", "R1b.LOAD_H", "R1b.LOAD_N").project;
}

/** A porch receptacle under a flap, replaced by another one. */
function porch(title: string, face: string, [hot, neutral]: readonly [string, string], inUse: boolean): Project {
  const job = Job.in(title)
    .roomAt("at", "Porch", "outdoor")
    .breakerIn(3, "Q3", "P", { ratingA: 20 })
    .boxAt(1, 0, "B1", "weatherproof-fd", { room: "Porch", note: "porch" })
    .boxFacts("B1", { cover: "weatherproof-closed" })
    .device("R1", "receptacle-15", "B1")
    .cable("W1", "P", "B1", { ft: 34 })
    .home("W1", "Q3")
    .onto("W1", "B1", "R1.H1", "R1.N1")
    .grounds("B1", ["W1"], ["R1"])
    .directory({ Q3: "Porch" })
    .plan()
    .replace("R1", "R1b", face)
    .onto("W1", "B1", `R1b.${hot}`, `R1b.${neutral}`);
  return (inUse ? job.boxFacts("B1", { cover: "weatherproof-in-use" }) : job).project;
}

export const porchRight = (): Project =>
  porch("Porch receptacle replaced", "gfci-receptacle-wr-15", ["LINE_H", "LINE_N"], true);

export const porchWrong = (): Project =>
  porch("Porch receptacle replaced like for like", "receptacle-tr-15", ["H1", "N1"], false);

/** GFCI in the crawl space with its light on LINE; the plan moves the feed of the light to LOAD. */
export function crawlSpace(): Project {
  return Job.in("Crawl space, light and receptacle")
    .roomAt("below", "Crawl space", "crawl-space")
    .breakerIn(9, "Q9", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Crawl space", note: "hatch" })
    .boxAt(2, 0, "B2", "octagon-4-1-1-2", { room: "Crawl space", note: "lamp" })
    .device("R1", "gfci-receptacle-15", "B1")
    .device("L1", "luminaire-led-9", "B2")
    .cable("W1", "P", "B1", { item: "nm-14-2-g", ft: 20 })
    .cable("W2", "B1", "B2", { item: "nm-14-2-g", ft: 15 })
    .home("W1", "Q9")
    .pigtailed("B1", ["W1", "W2"], "R1.LINE_H", "R1.LINE_N", "14")
    .grounds("B1", ["W1", "W2"], ["R1"], "14")
    .onto("W2", "B2", "L1.H", "L1.N")
    .grounds("B2", ["W2"], ["L1"], "14")
    .directory({ Q9: "Crawl space" })
    .plan()
    .onto("W1", "B1", "R1.LINE_H", "R1.LINE_N")
    .onto("W2", "B1", "R1.LOAD_H", "R1.LOAD_N")
    .remove({ kind: "jumper", id: jumperId("B1p") }, { kind: "jumper", id: jumperId("B1q") }).project;
}
