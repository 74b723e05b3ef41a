import type { Project } from "../../shared-model/model/project.ts";
import { Job } from "./job.ts";

/** Counter receptacles K1 and K2 on one leg, K3 on the other, behind a junction box in the basement. */
function multiwireKitchen(job: Job, face: string): Job {
  return job
    .boxAt(1, 0, "JB", "square-4-2-1-8", { room: "Basement", note: "junction" })
    .boxAt(2, 0, "BK1", "plastic-new-1", { room: "Kitchen", note: "counter left" })
    .boxAt(3, 0, "BK2", "plastic-new-1", { room: "Kitchen", note: "counter right" })
    .boxAt(2, 1, "BK3", "plastic-new-1", { room: "Kitchen", note: "by the range" })
    .device("K1", face, "BK1")
    .device("K2", face, "BK2")
    .device("K3", face, "BK3")
    .cable("M1", "P", "JB", { item: "nm-12-3-g", ft: 30 })
    .cable("CA", "JB", "BK1", { ft: 12 })
    .cable("CA2", "BK1", "BK2", { ft: 6 })
    .cable("CB", "JB", "BK3", { ft: 14 })
    .land("M1.cu@P", "P ground.BAR")
    .joint("JB", "leg A", ["M1.bk@JB", "CA.bk@JB"])
    .joint("JB", "leg B", ["M1.rd@JB", "CB.bk@JB"])
    .joint("JB", "white", ["M1.wh@JB", "CA.wh@JB", "CB.wh@JB"])
    .grounds("JB", ["M1", "CA", "CB"])
    .pigtailed("BK1", ["CA", "CA2"], "K1.H1", "K1.N1")
    .grounds("BK1", ["CA", "CA2"], ["K1"])
    .endOfRun("CA2", "BK2", "K2")
    .endOfRun("CB", "BK3", "K3");
}

const onTwoPole = (job: Job, breaker: string, neutral: string): Job =>
  job.land("M1.bk@P", `${breaker}.OUT1`).land("M1.rd@P", `${breaker}.OUT2`).land("M1.wh@P", neutral);

/** A new counter circuit, all of it the plan: a two-pole dual-function breaker before a split white. */
export function kitchenMultiwireRight(): Project {
  const job = Job.in("New kitchen counter on a multiwire circuit", 2023)
    .roomAt("at", "Kitchen", "kitchen-counter")
    .plan()
    .breakerIn(2, "Q2/4", "P", { ratingA: 20, type: "breaker-dual-2" });
  return onTwoPole(multiwireKitchen(job, "receptacle-tr-20"), "Q2/4", "Q2/4.LOAD_N").directory({
    "Q2/4": "Kitchen counter",
  }).project;
}

/** Two one-pole breakers on one leg, no tie, and the shared white taken through the screws of K1. */
export function kitchenMultiwireWrong(): Project {
  return Job.in("Kitchen counter after the panel was tidied up")
    .roomAt("at", "Kitchen", "kitchen-counter")
    .breakerIn(2, "Q2", "P", { ratingA: 20 })
    .breakerIn(6, "Q6", "P", { ratingA: 20 })
    .boxAt(1, 0, "BK1", "plastic-new-2", { room: "Kitchen", note: "counter left" })
    .boxAt(2, 0, "BK2", "plastic-new-1", { room: "Kitchen", note: "counter right" })
    .device("K1", "receptacle-20", "BK1")
    .device("K2", "receptacle-20", "BK2")
    .cable("M1", "P", "BK1", { item: "nm-12-3-g", ft: 30 })
    .cable("CB", "BK1", "BK2", { ft: 8 })
    .land("M1.bk@P", "Q2.OUT")
    .land("M1.rd@P", "Q6.OUT")
    .land("M1.wh@P", "P neutral.BAR")
    .land("M1.cu@P", "P ground.BAR")
    .onto("M1", "BK1", "K1.H1", "K1.N1")
    .joint("BK1", "onward", ["M1.rd@BK1", "CB.bk@BK1"])
    .land("CB.wh@BK1", "K1.N2")
    .grounds("BK1", ["M1", "CB"], ["K1"])
    .endOfRun("CB", "BK2", "K2")
    .know("seen", "P").project;
}

/** A one-pole ground-fault receptacle at K1, with both legs and the one white going on behind it. */
export function gfciBeforeTheSplit(): Project {
  return Job.in("Ground-fault receptacle before the split of a shared white")
    .roomAt("at", "Kitchen", "kitchen-counter")
    .breakerIn(2, "Q2/4", "P", { ratingA: 20, type: "breaker-2" })
    .boxAt(1, 0, "BK1", "plastic-new-2", { room: "Kitchen", note: "counter left" })
    .boxAt(2, 0, "BK2", "plastic-new-2", { room: "Kitchen", note: "counter middle" })
    .boxAt(3, 0, "BK3", "plastic-new-1", { room: "Kitchen", note: "counter right" })
    .device("K1", "gfci-receptacle-20", "BK1")
    .device("K2", "receptacle-20", "BK2")
    .device("K3", "receptacle-20", "BK3")
    .cable("M1", "P", "BK1", { item: "nm-12-3-g", ft: 30 })
    .cable("M2", "BK1", "BK2", { item: "nm-12-3-g", ft: 8 })
    .cable("CB", "BK2", "BK3", { ft: 8 })
    .land("M1.bk@P", "Q2/4.OUT1")
    .land("M1.rd@P", "Q2/4.OUT2")
    .land("M1.wh@P", "P neutral.BAR")
    .land("M1.cu@P", "P ground.BAR")
    .onto("M1", "BK1", "K1.LINE_H", "K1.LINE_N")
    .onto("M2", "BK1", "K1.LOAD_H", "K1.LOAD_N")
    .joint("BK1", "red", ["M1.rd@BK1", "M2.rd@BK1"])
    .grounds("BK1", ["M1", "M2"], ["K1"])
    .land("M2.bk@BK2", "K2.H1")
    .joint("BK2", "red on", ["M2.rd@BK2", "CB.bk@BK2"])
    .joint("BK2", "white", ["M2.wh@BK2", "CB.wh@BK2"], { w: "K2.N1" }, { colour: "white" })
    .grounds("BK2", ["M2", "CB"], ["K2"])
    .endOfRun("CB", "BK3", "K3").project;
}

/** As it stands: a two-pole ground-fault breaker, its white on it. */
export function twoPoleGfciRight(): Project {
  const job = Job.in("Kitchen on a two-pole ground-fault breaker", 2017)
    .roomAt("at", "Kitchen", "kitchen-counter")
    .breakerIn(2, "Q2/4", "P", { ratingA: 20, type: "breaker-gfci-2" });
  return onTwoPole(multiwireKitchen(job, "receptacle-20"), "Q2/4", "Q2/4.LOAD_N").project;
}

/** The same with the white left on the bar, where the ordinary breaker had it. */
export function twoPoleGfciNeutralOnBar(): Project {
  const job = Job.in("Two-pole ground-fault breaker, white on the bar", 2017)
    .roomAt("at", "Kitchen", "kitchen-counter")
    .breakerIn(2, "Q2/4", "P", { ratingA: 20, type: "breaker-gfci-2" });
  return onTwoPole(multiwireKitchen(job, "receptacle-20"), "Q2/4", "P neutral.BAR").project;
}

/** A new bathroom on a 20 A circuit of its own: GFCI at the basin; fan and light stay on LINE. */
export function bathRight(): Project {
  return Job.in("New bathroom, fan and light on LINE", 2023)
    .roomAt("above", "Bathroom", "bathroom")
    .plan()
    .breakerIn(8, "Q8", "P", { ratingA: 20 })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Bathroom", note: "basin" })
    .boxAt(2, 0, "B2", "plastic-new-2", { room: "Bathroom", note: "switches" })
    .boxAt(3, 0, "B3", "plastic-ceiling", { room: "Bathroom", note: "fan" })
    .boxAt(3, 1, "B4", "plastic-ceiling", { room: "Bathroom", note: "light" })
    .device("R1", "gfci-receptacle-20", "B1")
    .device("S1", "switch-single-pole", "B2")
    .device("S2", "switch-single-pole", "B2")
    .device("F1", "fan-exhaust", "B3")
    .device("L1", "luminaire-led-9", "B4")
    .cable("W1", "P", "B1", { ft: 36 })
    .cable("W2", "B1", "B2", { ft: 8 })
    .cable("W3", "B2", "B3", { ft: 10 })
    .cable("W4", "B2", "B4", { ft: 10 })
    .home("W1", "Q8")
    .pigtailed("B1", ["W1", "W2"], "R1.LINE_H", "R1.LINE_N")
    .grounds("B1", ["W1", "W2"], ["R1"])
    .joint("B2", "feed", ["W2.bk@B2"], { s1: "S1.C", s2: "S2.C" })
    .joint("B2", "whites", ["W2.wh@B2", "W3.wh@B2", "W4.wh@B2"])
    .land("W3.bk@B2", "S1.L")
    .land("W4.bk@B2", "S2.L")
    .grounds("B2", ["W2", "W3", "W4"], ["S1", "S2"])
    .endOfRun("W3", "B3", "F1", ["H", "N"])
    .endOfRun("W4", "B4", "L1", ["H", "N"])
    .directory({ Q8: "Bathroom" }).project;
}

/** A bathroom receptacle that stands right, and a plan that takes the bedroom next door from its LOAD. */
export function bathExtended(): Project {
  return Job.in("Bathroom circuit taken on into the bedroom")
    .roomAt("above", "Bathroom", "bathroom")
    .roomAt("above", "Bedroom", "bedroom")
    .breakerIn(8, "Q8", "P", { ratingA: 20 })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Bathroom", note: "basin" })
    .device("R1", "gfci-receptacle-20", "B1")
    .cable("W1", "P", "B1", { ft: 36 })
    .home("W1", "Q8")
    .endOfRun("W1", "B1", "R1", ["LINE_H", "LINE_N"])
    .directory({ Q8: "Bathroom" })
    .plan()
    .boxAt(2, 0, "B2", "plastic-old-1", { room: "Bedroom", note: "other side of the wall" })
    .device("R2", "receptacle-tr-20", "B2")
    .cable("W2", "B1", "B2", { ft: 7 })
    .onto("W2", "B1", "R1.LOAD_H", "R1.LOAD_N")
    .land("W1.cu@B1", "capped")
    .grounds("B1", ["W1", "W2"], ["R1"])
    .endOfRun("W2", "B2", "R2").project;
}

/** A dishwasher wired in on a circuit of its own, no ground-fault protection. */
export function dishwasherHardWired(): Project {
  return Job.in("Dishwasher wired in", 2020)
    .roomAt("at", "Kitchen", "kitchen-other")
    .breakerIn(5, "Q5", "P", { ratingA: 20 })
    .boxAt(1, 0, "B1", "square-4-1-1-2", { room: "Kitchen", note: "under the dishwasher" })
    .device("Dishwasher", "appliance-120", "B1")
    .cable("W1", "P", "B1", { ft: 30 })
    .home("W1", "Q5")
    .onto("W1", "B1", "Dishwasher.H", "Dishwasher.N")
    .grounds("B1", ["W1"], ["Dishwasher"])
    .directory({ Q5: "Dishwasher" }).project;
}
