/** The drawings of the tests, made by whatever hands are given. Names are those that the window gives by itself. */
import { deviceTypes } from "../../../shared-model/catalog/device-types.ts";
import { enclosureItems } from "../../../shared-model/catalog/enclosure-items.ts";
import type { Hands } from "./hands.ts";

const titleOfBox = (id: string): string => enclosureItems.find((item) => item.id === id)?.title ?? id;
const titleOfDevice = (id: string): string => deviceTypes.find((type) => type.id === id)?.title ?? id;
const CABLE = "12/2 with ground";

/** A box with a receptacle between two cables: both hots and neutrals on its screws, the grounds made up. */
export async function drawReceptacleBox(hands: Hands): Promise<void> {
  await hands.addEnclosure(titleOfBox("device-3-2-3-1-2"));
  await hands.act("B1", undefined, "Run a cable from B1…", CABLE, "Leaves this drawing");
  await hands.act("B1", undefined, "Run a cable from B1…", CABLE, "Leaves this drawing");
  await hands.act("B1", undefined, "Add a device to B1…", titleOfDevice("receptacle-15"));
  await feedThrough(hands, "B1", "C1", "C2", "R1");
}

/** One cable on the upper screws of a duplex, the other on the lower, the grounds in a splice with two pigtails. */
async function feedThrough(hands: Hands, box: string, first: string, second: string, device: string): Promise<void> {
  for (const cable of [first, second]) {
    for (const [code, terminal] of [
      ["BK", "H"],
      ["WH", "N"],
    ] as const)
      await hands.act(box, `${cable} ${code}`, `Land ${cable} ${code}…`, `${device} ${terminal}`);
  }
  await grounds(hands, box, [first, second], device);
}

/** All bare ends of a box with a pigtail to its device and one to the box. */
async function grounds(hands: Hands, box: string, cables: readonly string[], device: string): Promise<void> {
  const [only = ""] = cables;
  if (cables.length > 1) {
    await hands.splice(box, ...cables.map((cable) => `${cable} bare`));
    await hands.act(box, "E1", "Pigtail or jumper from E1…", `${device} G`, "12 AWG bare");
    await hands.act(box, "E1", "Pigtail or jumper from E1…", "Box ground screw", "12 AWG bare");
    return;
  }
  // One cable alone: its bare end meets a jumper that begins at the device.
  await hands.act(
    box,
    "Box ground screw",
    "Pigtail or jumper from the box ground screw…",
    `${device} G`,
    "12 AWG bare",
  );
  await hands.act(box, "a bare", `Land a bare…`, `Splice with ${only} bare`);
  await hands.act(box, "E1", "Pigtail or jumper from E1…", "Box ground screw", "12 AWG bare");
}

/** The laundry circuit as found, of `tests/builders/drawing.ts`: its boxes, cables, devices and every landing. */
export async function drawLaundry(hands: Hands): Promise<void> {
  for (const id of ["panel-16", "square-4-2-1-8", "device-3-2-3-1-2", "weatherproof-fd", "device-3-2-3-1-2"])
    await hands.addEnclosure(titleOfBox(id));
  for (const id of ["device-3-2-3-1-2", "device-3-2-2-3-4", "octagon-4-1-1-2"])
    await hands.addEnclosure(titleOfBox(id));
  await hands.act("P", undefined, "Add a device to P…", titleOfDevice("breaker-1"));
  for (const [box, type] of DEVICES) await hands.act(box, undefined, `Add a device to ${box}…`, titleOfDevice(type));
  for (const [from, to] of CABLES) await hands.act(from, undefined, `Run a cable from ${from}…`, CABLE, to);
  const land = (box: string, end: string, place: string) => hands.act(box, end, `Land ${end}…`, place);

  await land("P", "C1 BK", "CB1 H");
  await land("P", "C1 WH", "Neutral bar N, hole 1");
  await land("P", "C1 bare", "Ground bar G, hole 1");

  const five = ["C1", "C2", "C3", "C4", "C5"];
  await hands.splice("B1", ...five.map((cable) => `${cable} BK`));
  await hands.act("B1", "H1", "Pigtail or jumper from H1…", "R1 H, upper", "12 AWG black");
  await hands.splice("B1", ...five.map((cable) => `${cable} WH`));
  await hands.act("B1", "N1", "Pigtail or jumper from N1…", "R1 N, upper", "12 AWG white");
  await hands.splice("B1", ...five.map((cable) => `${cable} bare`));
  await hands.act("B1", "E1", "Pigtail or jumper from E1…", "R1 G", "12 AWG bare");
  await hands.act("B1", "E1", "Pigtail or jumper from E1…", "Box ground screw", "12 AWG bare");
  await hands.act("B1", undefined, "Add a ring or extension to B1…", "Plaster ring");

  await feedThrough(hands, "B2", "C2", "C6", "R2");
  for (const [box, cable, device] of [
    ["B3", "C6", "R3"],
    ["B4", "C3", "R4"],
    ["B6", "C5", "R5"],
  ] as const) {
    await land(box, `${cable} BK`, `${device} H`);
    await land(box, `${cable} WH`, `${device} N`);
    await grounds(hands, box, [cable], device);
  }
  await land("B5", "C4 BK", "S1 1");
  await land("B5", "C7 BK", "S1 2");
  await hands.splice("B5", "C4 WH", "C7 WH");
  await grounds(hands, "B5", ["C4", "C7"], "S1");
  await land("B7", "C7 BK", "L1 H");
  await land("B7", "C7 WH", "L1 N");
  await grounds(hands, "B7", ["C7"], "L1");
  await hands.act("B4", "R4", "Plug a load into R4…", "Freezer");
}

const DEVICES = [
  ["B1", "receptacle-15"],
  ["B2", "receptacle-15"],
  ["B3", "receptacle-15"],
  ["B4", "receptacle-15"],
  ["B6", "receptacle-15"],
  ["B5", "switch-single-pole"],
  ["B7", "luminaire-60"],
] as const;

const CABLES = [
  ["P", "B1"],
  ["B1", "B2"],
  ["B1", "B4"],
  ["B1", "B5"],
  ["B1", "B6"],
  ["B2", "B3"],
  ["B5", "B7"],
] as const;
