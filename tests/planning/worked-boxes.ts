import type { MakeUpIntent } from "../../shared-model/answers/make-up-intent.ts";
import { asId, type ConductorKey } from "../../shared-model/model/ids.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { USUAL_STYLE } from "../../shared-model/planning/joint-group.ts";
import { cubicInches } from "../../shared-model/units/volume.ts";
import { boxId, cableId, deviceId, drawing } from "../builders/drawing.ts";
import type { Drawing } from "../builders/drawing-by-commands.ts";

/** What a downstream cable of a worked box leads to. */
type Far = "receptacle" | "light" | "alarm" | "nothing";

interface Leg {
  readonly item?: string;
  readonly to?: Far;
}

interface BoxOf {
  readonly in3: number;
  readonly supply: string;
  readonly legs: Readonly<Record<string, Leg>>;
  readonly ratingA?: number;
  readonly devices?: Readonly<Record<string, string>>;
  readonly clamps?: boolean;
  readonly nonmetallic?: boolean;
  readonly twoHots?: boolean;
}

const RECEPTACLE: Readonly<Record<string, string>> = { "nm-14-2": "receptacle-two-slot" };

/** Box BX, fed by V1 from breaker Q of panel P; every other cable leads to a box of its own. In BX every end is capped. */
export function workedBox({
  in3,
  supply,
  legs,
  ratingA = 20,
  devices = {},
  clamps,
  nonmetallic,
  twoHots,
}: BoxOf): Project {
  const house = drawing(2020, "Worked box").room("Hall", "hallway").room("Garage", "garage");
  house.panel("P").breaker("Q", "P", { ratingA });
  house.box("BX", nonmetallic ? "plastic-new-2" : "square-4-2-1-8", {
    room: "Hall",
    set: { internalClamps: clamps ? "present" : "none" },
  });
  house.set({ kind: "enclosure", id: boxId("BX") }, "volume", { kind: "marked", volumeIn3: cubicInches(in3) });
  for (const [name, type] of Object.entries(devices)) house.device(name, type, "BX");
  house.cable("V1", "P", "BX", { item: supply, ft: 20, means: "external-connector" });
  house.land("V1.bk@P", "Q.OUT").land("V1.wh@P", "P neutral.BAR");
  if (twoHots) {
    house.breaker("Q2", "P", { ratingA });
    house
      .set({ kind: "device", id: deviceId("Q2") }, "legs", ["B"])
      .set({ kind: "device", id: deviceId("Q") }, "legs", ["A"]);
    house.set({ kind: "device", id: deviceId("Q2") }, "tiedTo", deviceId("Q")).land("V1.rd@P", "Q2.OUT");
  }
  if (supply.endsWith("-g")) house.land("V1.cu@P", "P ground.BAR");
  for (const [name, { item = supply, to = "receptacle" }] of Object.entries(legs)) addLeg(house, name, item, to);
  return house.project;
}

function addLeg(house: Drawing, name: string, item: string, to: Far): void {
  const far = `Z${name}`;
  house.box(far, "device-3-2-3-1-2", { room: "Hall", set: { internalClamps: "none" } });
  house.cable(name, "BX", far, { item, ft: 20, means: "external-connector" });
  if (to === "nothing") return;
  const type = to === "light" ? "luminaire-60" : to === "alarm" ? "smoke-alarm" : (RECEPTACLE[item] ?? "receptacle-15");
  const device = `o${name}`;
  const [hot, neutral] = to === "receptacle" ? ["H1", "N1"] : ["H", "N"];
  house
    .device(device, type, far)
    .land(`${name}.bk@${far}`, `${device}.${hot}`)
    .land(`${name}.wh@${far}`, `${device}.${neutral}`);
  if (!item.endsWith("-g")) return;
  house.splice(`E${far}`, far, "twist-medium", `${name}.cu@${far}`, ...pigtail(house, far, device, to));
  house.jumper(`b${far}`, far, `splice E${far}`, "bond", { colour: "bare", awg: item.includes("12") ? "12" : "14" });
}

function pigtail(house: Drawing, far: string, device: string, to: Far): readonly string[] {
  const awg = "12" as const;
  const target = to === "alarm" ? "capped" : `${device}.G`;
  house.jumper(`g${far}`, far, "capped", target, { colour: "bare", awg });
  return [`g${far}.a`];
}

/** An intent by names. */
export function intent(
  supply: string,
  more: Partial<Omit<MakeUpIntent, "supply">> & { readonly leg?: string } = {},
): MakeUpIntent {
  const { leg, ...uses } = more;
  return {
    supply: { cable: cableId(supply), as: "feed", ...(leg !== undefined && { leg: asId<ConductorKey>(leg) }) },
    downstream: [],
    switched: [],
    loops: [],
    travellers: [],
    devices: [],
    replace: [],
    style: USUAL_STYLE,
    ...uses,
  };
}

export const down = (cable: string, protect: boolean, leg?: string): MakeUpIntent["downstream"][number] => ({
  cable: cableId(cable),
  protect,
  ...(leg !== undefined && { leg: asId<ConductorKey>(leg) }),
});
