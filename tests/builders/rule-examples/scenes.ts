import { getDeviceType } from "../../../shared-model/catalog/device-types.ts";
import type { Box } from "../../../shared-model/model/enclosure.ts";
import { asId, type EndKey } from "../../../shared-model/model/ids.ts";
import type { RoomKind } from "../../../shared-model/model/room.ts";
import { cubicInches } from "../../../shared-model/units/volume.ts";
import type { WireSize } from "../../../shared-model/units/wire-size.ts";
import { Drawing } from "../../rules/drawing.ts";

/** A device with the kind of room that it is in. */
export type Station = readonly [name: string, type: string, kind?: RoomKind, room?: string];

interface Made {
  readonly amps?: number;
  readonly breaker?: string;
  readonly awg?: "14" | "12" | "10";
  readonly cable?: string;
  readonly plastic?: boolean;
}

const BARE = { colour: "bare" } as const;

/** Hot and neutral terminals on which a device is fed. */
export function feedOf(type: string): readonly [hot: string, neutral: string] {
  if (/gfci|afci|dual/.test(type)) return ["LINE_H", "LINE_N"];
  return type.startsWith("receptacle") && !type.startsWith("receptacle-single") ? ["H1", "N1"] : ["H", "N"];
}

const hasGround = (type: string): boolean => getDeviceType(type).terminals.some(({ name }) => name === "G");

const marked = (in3: number) => ({ kind: "marked", volumeIn3: cubicInches(in3) }) as const;

/** Boxes by what they are, with the volume that the catalogue has for them. */
export const PLASTIC: Partial<Box> = {
  item: "plastic-new-1",
  material: "nonmetallic",
  shape: "device",
  volume: marked(20),
};
export const OCTAGON: Partial<Box> = { item: "octagon-4-2-1-8", shape: "octagon", volume: marked(21.5) };
export const SQUARE: Partial<Box> = { item: "square-4-2-1-8", volume: marked(30.3) };
export const LARGE: Partial<Box> = { item: "square-4-11-16-2-1-8", volume: marked(42) };

/** What all boxes have: room enough, a plate, and connectors that hold the cables. */
const facts = (room: string, plastic: boolean): Partial<Box> => ({
  roomId: asId(room),
  internalClamps: "none",
  cover: "device-plate",
  ...(plastic && PLASTIC),
});

/** A panel with breaker Q1, ready for cable C1. */
export function fed({ amps = 20, breaker = "breaker-1" }: Made = {}): Drawing {
  return new Drawing().panel("P").breaker("Q1", amps, {}, breaker);
}

/** Box `name` in a room of some kind. */
export function boxIn(
  drawing: Drawing,
  name: string,
  kind: RoomKind = "utility",
  plastic = false,
  called = kind,
): Drawing {
  const id = called.replaceAll(" ", "-");
  if (!(id in drawing.rooms)) drawing.room(id, [kind], { name: called[0]?.toUpperCase() + called.slice(1) });
  return drawing.box(name, 30.3, facts(id, plastic));
}

/** Where the first cable starts. */
export const fromPanel = (drawing: Drawing, breaker = "breaker-1"): Drawing =>
  drawing.put({
    "C1.bk@P": "Q1.OUT",
    "C1.wh@P": breaker === "breaker-1" ? "P-NB.BAR" : "Q1.LOAD_N",
    ...("C1.cu.a" in drawing.at("P").places && { "C1.cu@P": "P-GB.BAR" }),
  });

/** The grounds of a box: all bare wires with a pigtail to the device and one to the metal. */
export function grounds(
  drawing: Drawing,
  box: string,
  cables: readonly string[],
  device: string,
  awg: WireSize = "12",
): Drawing {
  const place = drawing.deviceOf(device);
  const [number, metal] = [box.slice(1), (drawing.at(box) as Box).material === "metal"];
  const toDevice = hasGround(place.type);
  if (!metal && cables.length === 1)
    return toDevice ? drawing.put({ [`${cables[0]}.cu@${box}`]: `${device}.G` }) : drawing;
  const count = cables.length + (metal ? 1 : 0) + (toDevice ? 1 : 0);
  const joint = `E${number}`;
  drawing.splice(joint, box, `lever-${count === 2 ? 2 : count === 3 ? 3 : 5}`);
  for (const cable of cables) drawing.put({ [`${cable}.cu@${box}`]: joint });
  if (toDevice) drawing.jumper(`g${number}`, box, joint, `${device}.G`, { ...BARE, awg });
  return metal ? drawing.jumper(`b${number}`, box, joint, "bond", { ...BARE, awg }) : drawing;
}

/**
 * Devices in boxes B1, B2 ... of their own on cables C1, C2 ... from breaker Q1: on pigtails of joints H1, N1 where the run
 * goes on, straight on the cable at its end. Pigtails are h1, n1, g1; b1 bonds the box, E1 joins the grounds.
 */
export function chain(stations: readonly Station[], made: Made = {}): Drawing {
  const { awg = "12", cable = `nm-${awg}-2-g`, plastic = false, breaker = "breaker-1" } = made;
  const drawing = fed(made);
  stations.forEach(([name, type, kind, room], index) => {
    const [box, line, before] = [`B${index + 1}`, `C${index + 1}`, index === 0 ? "P" : `B${index}`];
    boxIn(drawing, box, kind, plastic, (room ?? kind) as RoomKind);
    drawing.cable(line, cable, before, box).device(name, type, box);
    const [hot, neutral] = feedOf(type);
    if (index === 0) fromPanel(drawing, breaker);
    else drawing.put({ [`${line}.bk@${before}`]: `H${index}`, [`${line}.wh@${before}`]: `N${index}` });
    if (index + 1 === stations.length) {
      drawing.put({ [`${line}.bk@${box}`]: `${name}.${hot}`, [`${line}.wh@${box}`]: `${name}.${neutral}` });
      return;
    }
    const n = `${index + 1}`;
    drawing
      .splice(`H${n}`, box, "lever-3")
      .splice(`N${n}`, box, "lever-3")
      .put({ [`${line}.bk@${box}`]: `H${n}`, [`${line}.wh@${box}`]: `N${n}` })
      .jumper(`h${n}`, box, `H${n}`, `${name}.${hot}`, { awg })
      .jumper(`n${n}`, box, `N${n}`, `${name}.${neutral}`, { awg, colour: "white" });
  });
  if (!cable.endsWith("-g")) return drawing;
  stations.forEach(([name], index) => {
    const lines = index + 1 === stations.length ? [`C${index + 1}`] : [`C${index + 1}`, `C${index + 2}`];
    grounds(drawing, `B${index + 1}`, lines, name, awg);
  });
  return drawing;
}

/** Receptacle R1 on pigtails in B1, and R2 at the end of the run in B2. */
export const pair = (made: Made = {}): Drawing =>
  chain(
    [
      ["R1", "receptacle-15"],
      ["R2", "receptacle-15"],
    ],
    made,
  );

/** One device R1 in B1. */
export const one = (kind: RoomKind = "utility", type = "receptacle-15", made: Made = {}): Drawing =>
  chain([["R1", type, kind]], made);

/** The same as `pair`, with the four conductors of the run on the screws of R1. */
export function through(made: Made = {}): Drawing {
  const drawing = pair(made);
  drawing.put({ "C1.bk@B1": "R1.H1", "C1.wh@B1": "R1.N1", "C2.bk@B1": "R1.H2", "C2.wh@B1": "R1.N2" });
  drawing.removeJumper("h1").removeJumper("n1");
  const { splices } = drawing.at("B1");
  for (const name of ["H1", "N1"]) delete splices[name as never];
  return drawing;
}

/** Ground-fault receptacle G1 in B1: C1 on its LINE, and on its LOAD C2 to another device in B2. */
export function behindGfci(
  name = "R2",
  type = "receptacle-15",
  kind: RoomKind = "utility",
  first = "gfci-receptacle-15",
): Drawing {
  const drawing = boxIn(fed(), "B1").device("G1", first, "B1");
  boxIn(drawing, "B2", kind).device(name, type, "B2");
  drawing.cable("C1", "nm-12-2-g", "P", "B1").cable("C2", "nm-12-2-g", "B1", "B2");
  const [hot, neutral] = feedOf(type);
  fromPanel(drawing)
    .put({ "C1.bk@B1": "G1.LINE_H", "C1.wh@B1": "G1.LINE_N", "C2.bk@B1": "G1.LOAD_H", "C2.wh@B1": "G1.LOAD_N" })
    .put({ "C2.bk@B2": `${name}.${hot}`, "C2.wh@B2": `${name}.${neutral}` });
  grounds(drawing, "B1", ["C1", "C2"], "G1");
  return grounds(drawing, "B2", ["C2"], name);
}

/** What hangs on LOAD of G1 moved to its LINE. */
export const onLine = (drawing: Drawing): Drawing =>
  drawing.put({ "C2.bk@B1": "G1.LINE_H#2", "C2.wh@B1": "G1.LINE_N#2" });

/** Switch S1 in B1 before L1 in B2, 14 AWG on 15 A; whites in joint N1. */
export function light(type = "luminaire-60", by = "switch-single-pole", awg: "14" | "12" = "14"): Drawing {
  const drawing = boxIn(fed({ amps: awg === "14" ? 15 : 20 }), "B1").device("S1", by, "B1");
  boxIn(drawing, "B2").device("L1", type, "B2");
  if (type.startsWith("luminaire")) drawing.setBox("B2", { ...OCTAGON, cover: "luminaire" });
  const [hot, neutral] = feedOf(type);
  drawing
    .cable("C1", `nm-${awg}-2-g`, "P", "B1")
    .cable("C2", `nm-${awg}-2-g`, "B1", "B2")
    .splice("N1", "B1", "lever-2")
    .put({ "C1.wh@B1": "N1", "C2.wh@B1": "N1", "C2.bk@B2": `L1.${hot}`, "C2.wh@B2": `L1.${neutral}` });
  fromPanel(drawing);
  if (by.startsWith("dimmer"))
    drawing
      .splice("I1", "B1", "lever-2")
      .splice("O1", "B1", "lever-2")
      .put({ "C1.bk@B1": "I1", "C2.bk@B1": "O1" })
      .jumper("i1", "B1", "I1", "S1.C", { awg })
      .jumper("o1", "B1", "O1", "S1.L", { awg });
  else drawing.put({ "C1.bk@B1": "S1.C", "C2.bk@B1": "S1.L" });
  grounds(drawing, "B1", ["C1", "C2"], "S1", awg);
  return grounds(drawing, "B2", ["C2"], "L1", awg);
}

/** Conductors of a cable made otherwise, one or all of them. */
export function conductor(drawing: Drawing, cable: string, key: string, more: object): Drawing {
  const found = drawing.cables[cable];
  const own = found?.conductors[key as never] as object | undefined;
  if (found === undefined || own === undefined) throw new Error(`No ${cable}.${key}.`);
  found.conductors = { ...found.conductors, [key]: { ...own, ...more } } as typeof found.conductors;
  return drawing;
}

export function cableIs(drawing: Drawing, cable: string, more: object): Drawing {
  Object.assign(drawing.cables[cable] as object, more);
  return drawing;
}

/** What is known of an end, "C1.bk@B1". */
export function endIs(drawing: Drawing, text: string, more: object): Drawing {
  const [what = "", box = ""] = text.split("@");
  const { places } = drawing.at(box);
  const end = (Object.keys(places) as EndKey[]).find((key) => key.startsWith(`${what}.`));
  if (end === undefined) throw new Error(`No end ${text}.`);
  places[end] = { ...(places[end] as object), ...more } as never;
  return drawing;
}

/** Each conductor on a bar in a hole of its own, as far as holes were not chosen. */
export function spreadOnBars(drawing: Drawing): Drawing {
  for (const { places } of Object.values(drawing.enclosures)) {
    const next = new Map<string, number>();
    for (const [end, place] of Object.entries(places)) {
      const { at } = place;
      if (at.kind !== "terminal" || at.terminal !== "BAR") continue;
      const hole = (next.get(at.device) ?? 0) + 1;
      next.set(at.device, hole);
      places[end as EndKey] = { ...place, at: { ...at, hole } };
    }
  }
  return drawing;
}
