import { describe, expect, test } from "vitest";
import type { DeviceType } from "../../shared-model/catalog/device-type.ts";
import { deviceTypes } from "../../shared-model/catalog/device-types.ts";
import type { PropertyValue } from "../../shared-model/commands/command-args.ts";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import type { Device } from "../../shared-model/model/device.ts";
import type { At, Place } from "../../shared-model/model/place.ts";
import type { Installation, Project, StateName } from "../../shared-model/model/project.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { replacedBy, replacementFor } from "../../shared-model/queries/replaced.ts";
import { boxId, deviceId, drawing, laundryDrawing, loadId, outlet } from "../builders/drawing.ts";
import type { Drawing } from "../builders/drawing-by-commands.ts";
import { refused, titleOf } from "./asking.ts";

const NEW = deviceId("New");

/** Cables of two conductors and a ground in a box with one device "Old"; `landed` says which end is on which terminal. */
function wired(
  type: string,
  landed: Readonly<Record<string, string>>,
  set: Readonly<Record<string, PropertyValue>> = {},
) {
  const house = drawing().box("B1").device("Old", type, "B1", { set });
  const cables = new Set(Object.keys(landed).map((end) => end.split(".")[0] ?? ""));
  for (const name of cables) house.outside(name, "B1");
  for (const [end, spot] of Object.entries(landed)) house.land(`${end}@B1`, `Old.${spot}`);
  return house;
}

const replace = (house: Drawing, type: string, device = "Old") =>
  house.run("replace-device", { device: deviceId(device), id: NEW, type, name: "New" });

const written = (at: At): string => {
  if (at.kind !== "terminal") return at.kind;
  return `${at.device === NEW ? "" : `${at.device}.`}${at.terminal}${at.hole === 1 ? "" : `#${at.hole}`}`;
};

/** Where each end of `landed` is once the device was replaced in proposed. */
function placesAfter(house: Drawing, type: string, ends: Iterable<string>, device = "Old", box = "B1") {
  const proposed = replace(house.propose(), type, device);
  expect(invariantProblems(proposed.project)).toEqual([]);
  return Object.fromEntries([...ends].map((end) => [end, written(placeIn(proposed, end, box).at)]));
}

function placeIn(house: Drawing, end: string, box: string): Place {
  const { enclosure, key } = house.end(end.includes(".") && /[.][ab]$/.test(end) ? end : `${end}@${box}`);
  const place = stateOf(house.project).enclosures[enclosure]?.places[key];
  if (place === undefined) throw new Error(`No place for ${end}.`);
  return place;
}

const stateOf = (project: Project, state?: StateName): Installation =>
  (state === "as-found" ? project.asFound : (project.proposed ?? project.asFound)) as Installation;

const deviceIn = (project: Project, id = NEW, box = "B1", state?: StateName): Device | undefined =>
  stateOf(project, state).enclosures[boxId(box)]?.devices[id];

/** Worked out by hand from what each terminal does in the trade; "capped" where nothing of the new device does the same. */
const TABLE: readonly (readonly [
  name: string,
  old: string,
  type: string,
  ends: Readonly<Record<string, readonly [was: string, is: string]>>,
  set?: Readonly<Record<string, PropertyValue>>,
])[] = [
  [
    "duplex to ground-fault: everything on LINE, nothing on LOAD",
    "receptacle-15",
    "gfci-receptacle-20",
    {
      "C1.bk": ["H1", "LINE_H"],
      "C2.bk": ["H2", "LINE_H#2"],
      "C1.wh": ["N1", "LINE_N"],
      "C2.wh": ["N2", "LINE_N#2"],
      "C1.cu": ["G", "G"],
    },
  ],
  [
    "four hots, two holes: terminal by terminal, and the rest is capped",
    "receptacle-20",
    "gfci-receptacle-20",
    {
      "C1.bk": ["H1", "LINE_H"],
      "C2.bk": ["H1#2", "LINE_H#2"],
      "C3.bk": ["H2", "capped"],
      "C4.bk": ["H2#2", "capped"],
    },
  ],
  [
    "a split duplex to ground-fault: the lower half is capped, so that two circuits never meet",
    "receptacle-15",
    "gfci-receptacle-15",
    {
      "C1.bk": ["H1", "LINE_H"],
      "C2.bk": ["H2", "capped"],
      "C1.wh": ["N1", "LINE_N"],
      "C2.wh": ["N2", "LINE_N#2"],
    },
    { hotTab: "removed" },
  ],
  [
    "both tabs off: the lower neutral is another circuit's too",
    "receptacle-15",
    "gfci-receptacle-15",
    { "C1.wh": ["N1", "LINE_N"], "C2.wh": ["N2", "capped"], "C2.bk": ["H2", "capped"] },
    { hotTab: "removed", neutralTab: "removed" },
  ],
  [
    "a split duplex to another duplex stays split",
    "receptacle-15",
    "receptacle-tr-20",
    { "C1.bk": ["H1", "H1"], "C2.bk": ["H2", "H2"], "C1.wh": ["N2", "N2"] },
    { hotTab: "removed" },
  ],
  [
    "ground-fault to duplex: LINE and LOAD come together on H and N",
    "gfci-receptacle-20",
    "receptacle-15",
    {
      "C1.bk": ["LINE_H", "H1"],
      "C2.bk": ["LOAD_H", "H2"],
      "C1.wh": ["LINE_N", "N1"],
      "C2.wh": ["LOAD_N", "N2"],
      "C1.cu": ["G", "G"],
    },
  ],
  [
    "ground-fault to another ground-fault: each side keeps its own",
    "gfci-receptacle-20",
    "dual-function-receptacle-15",
    {
      "C1.bk": ["LINE_H#2", "LINE_H#2"],
      "C2.bk": ["LOAD_H", "LOAD_H"],
      "C1.wh": ["LINE_N", "LINE_N"],
      "C2.wh": ["LOAD_N#2", "LOAD_N#2"],
    },
  ],
  [
    "receptacle to single: one hole each",
    "receptacle-15",
    "receptacle-single-20",
    { "C1.bk": ["H1", "H"], "C2.bk": ["H2", "capped"], "C1.wh": ["N2", "N"], "C1.cu": ["G", "G"] },
  ],
  [
    "grounding to two-slot: the ground has no screw",
    "receptacle-15",
    "receptacle-two-slot",
    { "C1.bk": ["H2", "H2"], "C1.cu": ["G", "capped"] },
  ],
  [
    "single-pole to three-way: supply on the common, the switched conductor is no traveller",
    "switch-single-pole",
    "switch-3way",
    { "C1.bk": ["C", "C"], "C2.bk": ["L", "capped"], "C1.cu": ["G", "G"] },
  ],
  [
    "three-way to single-pole: travellers go nowhere",
    "switch-3way",
    "switch-single-pole",
    { "C1.bk": ["C", "C"], "C2.bk": ["T1", "capped"], "C2.wh": ["T2", "capped"] },
  ],
  [
    "three-way to four-way: one pair of travellers",
    "switch-3way",
    "switch-4way",
    { "C1.bk": ["C", "capped"], "C2.bk": ["T1", "A1"], "C2.wh": ["T2", "A2"] },
  ],
  [
    "four-way to three-way: the second pair is capped",
    "switch-4way",
    "switch-3way",
    { "C1.bk": ["A1", "T1"], "C1.wh": ["A2", "T2"], "C2.bk": ["B1", "capped"], "C2.wh": ["B2", "capped"] },
  ],
  [
    "switch to dimmer: screws become leads",
    "switch-single-pole",
    "dimmer",
    { "C1.bk": ["C", "C"], "C2.bk": ["L", "L"], "C1.cu": ["G", "G"] },
  ],
  [
    "timer with neutral to one without: its neutral is capped",
    "timer-neutral",
    "timer-no-neutral",
    { "C1.bk": ["H", "H"], "C2.bk": ["L", "L"], "C1.wh": ["N", "capped"] },
  ],
  [
    "a plain switch does not tell supply from switched: an outlet in its place gets neither",
    "switch-single-pole",
    "receptacle-15",
    { "C1.bk": ["C", "capped"], "C2.bk": ["L", "capped"], "C1.cu": ["G", "G"] },
  ],
  [
    "receptacle to switch: one supply to its supply, the neutral is no business of a switch",
    "receptacle-15",
    "switch-single-pole",
    { "C1.bk": ["H1", "C"], "C2.bk": ["H2", "capped"], "C1.wh": ["N1", "capped"], "C1.cu": ["G", "G"] },
  ],
  [
    "switch and receptacle on one yoke to a plain switch",
    "switch-receptacle",
    "switch-single-pole",
    { "C1.bk": ["H", "C"], "C2.bk": ["SW", "L"], "C1.wh": ["N", "capped"] },
  ],
  [
    "switch and receptacle with the tab off: the switch keeps its own supply",
    "switch-receptacle",
    "switch-single-pole",
    { "C1.bk": ["H", "capped"], "C2.bk": ["HS", "C"], "C3.bk": ["SW", "L"] },
    { hotTab: "removed" },
  ],
  [
    "two switches to one: the second is capped",
    "switch-two",
    "switch-single-pole",
    { "C1.bk": ["C2", "C"], "C2.bk": ["L1", "L"], "C3.bk": ["L2", "capped"] },
  ],
  [
    "luminaire to fan-light: its conductor is the light's",
    "luminaire-60",
    "fan-light",
    { "C1.bk": ["H", "H_LIGHT"], "C1.wh": ["N", "N"], "C1.cu": ["G", "G"] },
  ],
  ["fan to fan-light: its conductor is the fan's", "fan-exhaust", "fan-light", { "C1.bk": ["H", "H_FAN"] }],
  [
    "fan-light to luminaire: the fan's conductor is capped",
    "fan-light",
    "luminaire-led-9",
    { "C1.bk": ["H_FAN", "capped"], "C2.bk": ["H_LIGHT", "H"], "C1.wh": ["N", "N"] },
  ],
  [
    "a 240 V appliance to a 120 V one: the second leg never comes on the neutral",
    "appliance-240",
    "appliance-120",
    { "C1.bk": ["L1", "H"], "C1.wh": ["L2", "capped"] },
  ],
];

describe("replace-device: where conductors go", () => {
  for (const [name, old, type, ends, set] of TABLE) {
    test(name, () => {
      const was = Object.fromEntries(Object.entries(ends).map(([end, [from]]) => [end, from]));
      const is = Object.fromEntries(Object.entries(ends).map(([end, [, to]]) => [end, to]));
      expect(placesAfter(wired(old, was, set), type, Object.keys(ends))).toEqual(is);
    });
  }

  test("two under one screw: one finds the screw again, the other is capped, and the step says so", () => {
    const house = wired("receptacle-15", { "C1.bk": "H1", "C2.bk": "H1", "C3.bk": "H2" }).propose();
    const args = { state: "proposed" as const, device: deviceId("Old"), id: NEW, type: "receptacle-tr-15", name: "R9" };
    expect(titleOf(house.project, "replace-device", args)).toBe("Replace Old with R9, 1 conductor capped");
    replace(house, "receptacle-tr-15");
    expect(["C1.bk", "C2.bk", "C3.bk"].map((end) => written(placeIn(house, end, "B1").at))).toEqual([
      "H1",
      "capped",
      "H2",
    ]);
    expect(titleOf(wired("receptacle-15", { "C1.bk": "H1" }).propose().project, "replace-device", args)).toBe(
      "Replace Old with R9",
    );
  });

  test("a jumper between terminals that become one joins nothing: both its ends are capped", () => {
    const house = drawing().box("B1").device("Old", "receptacle-15", "B1").jumper("p", "B1", "Old.H1", "Old.H2");
    expect(placesAfter(house, "gfci-receptacle-15", ["p.a", "p.b"])).toEqual({ "p.a": "capped", "p.b": "capped" });
    expect(placesAfter(house, "receptacle-20", ["p.a", "p.b"])).toEqual({ "p.a": "H1", "p.b": "H2" });
  });

  test("any type by any other, whole or split: sound, one end to a hole, LOAD only from LOAD, nothing joined anew", () => {
    const inBox = deviceTypes.filter((type) => type.where === "box");
    for (const old of inBox) {
      const split = old.paths.some(({ when }) => when === "hot-tab");
      const cases = split ? [{}, { hotTab: "removed" }, TABS_OFF].filter((set) => takes(old, set)) : [{}];
      const landed = Object.fromEntries(old.terminals.map(({ name }, index) => [`C${index}.bk`, name as string]));
      for (const set of cases) {
        const house = wired(old.id, landed, set);
        const was = joinedIn(old, deviceIn(house.project, deviceId("Old")));
        for (const type of inBox) {
          if (type.id === old.id) continue;
          const places = placesAfter(house, type.id, Object.keys(landed));
          const used = Object.entries(places).filter(([, place]) => place !== "capped");
          expect(new Set(used.map(([, place]) => place)).size).toBe(used.length);
          const proposed = replace(house.propose(), type.id).project;
          const is = joinedIn(type, deviceIn(proposed));
          for (const [end, place] of used) {
            const from = landed[end] ?? "";
            if (place.startsWith("LOAD")) expect(from).toMatch(/^LOAD/);
            for (const [other, there] of used)
              if (is(bare(place), bare(there))) expect(was(from, landed[other] ?? ""), `${end} ${other}`).toBe(true);
          }
        }
      }
    }
  });
});

const TABS_OFF = { hotTab: "removed", neutralTab: "removed" };
const takes = (type: DeviceType, set: object): boolean =>
  !("neutralTab" in set) || type.paths.some(({ when }) => when === "neutral-tab");
const bare = (place: string): string => place.replace(/#\d+$/, "");

/** Whether two terminals of a device are one point with its handles left alone and its contacts closed. */
function joinedIn(type: DeviceType, device: Device | undefined): (a: string, b: string) => boolean {
  const closed = type.paths.filter(
    ({ when }) =>
      when === "always" ||
      when === "reset" ||
      (when === "hot-tab" && device?.hotTab !== "removed") ||
      (when === "neutral-tab" && device?.neutralTab !== "removed"),
  );
  return (a, b) => {
    const reached = new Set([a]);
    for (let size = 0; size < reached.size; ) {
      size = reached.size;
      for (const path of closed) {
        if (reached.has(path.a)) reached.add(path.b);
        if (reached.has(path.b)) reached.add(path.a);
      }
    }
    return reached.has(b);
  };
}

describe("replace-device: in a panel", () => {
  const panel = (set: Readonly<Record<string, PropertyValue>> = {}, type = "breaker-1") => {
    const house = drawing().panel("P").device("Old", type, "P", { set }).outside("C1", "P");
    return house.land("C1.bk@P", type === "breaker-2" ? "Old.OUT2" : "Old.OUT");
  };

  test("a plain breaker to a ground-fault one: the hot stays, the neutral stays on the bar", () => {
    const house = panel().land("C1.wh@P", "P neutral.BAR");
    const is = placesAfter(house, "breaker-gfci-1", ["C1.bk", "C1.wh"], "Old", "P");
    expect(is).toEqual({ "C1.bk": "OUT", "C1.wh": "device-P_neutral.BAR" });
  });

  test("and back: the neutral of the breaker goes to a free hole of the bar", () => {
    const house = panel({}, "breaker-gfci-1").land("C1.wh@P", "Old.LOAD_N").outside("C2", "P");
    house.land("C2.wh@P", "P neutral.BAR");
    expect(placesAfter(house, "breaker-1", ["C1.wh", "C2.wh"], "Old", "P")).toEqual({
      "C1.wh": "device-P_neutral.BAR#2",
      "C2.wh": "device-P_neutral.BAR",
    });
  });

  test("without a bar it is capped", () => {
    const house = panel({}, "breaker-gfci-1").land("C1.wh@P", "Old.LOAD_N");
    house.remove({ kind: "device", id: deviceId("P neutral") });
    expect(placesAfter(house, "breaker-1", ["C1.wh"], "Old", "P")).toEqual({ "C1.wh": "capped" });
  });

  test("rating, space, leg, tie and directory line follow; the function is the new one's", () => {
    const house = panel({ slot: 3, breakerRatingA: 15, legs: ["B"] }).breaker("Q2", "P");
    house.set({ kind: "device", id: deviceId("Old") }, "tiedTo", deviceId("Q2"));
    house.set({ kind: "device", id: deviceId("Q2") }, "tiedTo", deviceId("Old"));
    house.run("set-directory-line", { device: deviceId("Old"), text: "laundry" });
    const proposed = replace(house.propose(), "breaker-dual-1").project;
    expect(deviceIn(proposed, NEW, "P")).toMatchObject({
      slot: 3,
      breakerRatingA: 15,
      legs: ["B"],
      tiedTo: deviceId("Q2"),
      function: "dual",
    });
    expect(deviceIn(proposed, deviceId("Q2"), "P")?.tiedTo).toBe(NEW);
    expect(proposed.proposed?.directory).toEqual({ [NEW]: "laundry" });
    expect(proposed.asFound.directory).toEqual({ [deviceId("Old")]: "laundry" });
  });

  test("one pole to two: the first pole keeps its leg; two to one: the second pole is capped", () => {
    const two = replace(panel({ slot: 3, legs: ["B"] }).propose(), "breaker-2");
    expect(deviceIn(two.project, NEW, "P")?.legs).toEqual(["B", "A"]);
    expect(written(placeIn(two, "C1.bk", "P").at)).toBe("OUT1");
    const one = replace(panel({ legs: ["A", "B"] }, "breaker-2").propose(), "breaker-1");
    expect(deviceIn(one.project, NEW, "P")?.legs).toEqual(["A"]);
    expect(written(placeIn(one, "C1.bk", "P").at)).toBe("capped");
  });

  test("two poles need the space below, free and there", () => {
    const ask = (house: Drawing, type: string) =>
      refused(house.project, "replace-device", {
        state: "as-found",
        device: deviceId("Old"),
        id: NEW,
        type,
        name: "N",
      });
    const taken = panel({ slot: 3 }).device("Q5", "breaker-1", "P", { set: { slot: 5 } });
    expect(ask(taken, "breaker-2")).toBe("space-in-use");
    expect(ask(panel({ slot: 15 }), "breaker-2")).toBe("no-such-space");
    expect(ask(panel(), "neutral-bar")).toBe("nothing-corresponds");
    expect(ask(panel(), "receptacle-15")).toBe("device-in-wrong-enclosure");
  });
});

describe("replace-device: what goes over", () => {
  test("a new device brings its own markings and stands where the old one stood", () => {
    const house = drawing().box("B1").device("R0", "receptacle-15", "B1");
    house.device("Old", "receptacle-tr-wr-15", "B1", {
      zones: ["sink-zone"],
      set: { notes: "loose in the wall", weatherResistant: true, entryKind: "push-in", reachHeightIn: 18 },
    });
    house.device("R2", "receptacle-15", "B1");
    const proposed = replace(house.propose(), "gfci-receptacle-20").project;
    expect(deviceIn(proposed)).toEqual({
      id: NEW,
      name: "New",
      type: "gfci-receptacle-20",
      order: 1,
      replaces: deviceId("Old"),
      zones: ["sink-zone"],
      notes: "loose in the wall",
      reachHeightIn: 18,
      ratingA: 20,
      tamperResistant: true,
      reversal: "deny",
      faceContact: "separate",
      evidence: { ratingA: "assumed", tamperResistant: "assumed", reversal: "assumed", faceContact: "assumed" },
    });
    expect(deviceIn(proposed, deviceId("Old"))).toBeUndefined();
    expect(deviceIn(proposed, deviceId("Old"), "B1", "as-found")).toBe(deviceIn(house.project, deviceId("Old")));
  });

  test("as found it corrects the record: what was seen stays, joints too, and nothing is linked", () => {
    const house = wired("receptacle-15", { "C1.bk": "H1", "C2.bk": "H1" });
    house.set({ kind: "device", id: deviceId("Old") }, "tamperResistant", true, "seen");
    house.set({ kind: "device", id: deviceId("Old") }, "markedForAluminium", true, "seen");
    house.setEnd("C1.bk@B1", "jointOhm", 2);
    replace(house, "receptacle-20");
    const corrected = deviceIn(house.project);
    expect(corrected).toMatchObject({ ratingA: 20, tamperResistant: true, markedForAluminium: true });
    expect(corrected?.evidence).toMatchObject({ tamperResistant: "seen", markedForAluminium: "seen" });
    expect(corrected).not.toHaveProperty("replaces");
    expect(placeIn(house, "C1.bk", "B1")).toMatchObject({ jointOhm: 2 });
    expect(["C1.bk", "C2.bk"].map((end) => written(placeIn(house, end, "B1").at))).toEqual(["H1", "H1"]);
  });

  test("in proposed a joint is made anew", () => {
    const house = wired("receptacle-15", { "C1.bk": "H1" }).setEnd("C1.bk@B1", "jointOhm", 2).propose();
    replace(house, "receptacle-20");
    expect(placeIn(house, "C1.bk", "B1")).not.toHaveProperty("jointOhm");
  });

  test("loads, wishes and labels follow; two halves become one face, and a wish for protection outlives", () => {
    const house = drawing()
      .box("B1")
      .device("Old", "receptacle-15", "B1", { set: { hotTab: "removed" } });
    house.load("Lamp", "lamp-60", "Old", "lower");
    house.run("set-outlet-wish", { outlet: outlet("Old", "upper"), wish: { wish: "decided-not", reason: "cost" } });
    house.run("set-outlet-wish", { outlet: outlet("Old", "lower"), wish: { wish: "protect" } });
    house.run("add-label", { id: "l1" as never, wording: "No equipment ground", on: { device: deviceId("Old") } });
    const { proposed } = replace(house.propose(), "gfci-receptacle-15").project;
    expect(proposed?.loads[loadId("Lamp")]?.plug).toBe(NEW);
    expect(proposed?.intent.outlets).toEqual({ [NEW]: { wish: "protect" } });
    expect(Object.values(proposed?.labels ?? {}).map(({ on }) => on)).toEqual([{ device: NEW }]);
    expect(deviceIn({ ...house.project, proposed: proposed as Installation })?.wasSplit).toBe(true);
    const duplex = replace(house.propose(), "receptacle-tr-15").project.proposed;
    expect(duplex?.loads[loadId("Lamp")]?.plug).toBe(`${NEW}/lower`);
    expect(Object.keys(duplex?.intent.outlets ?? {}).sort()).toEqual([`${NEW}/lower`, `${NEW}/upper`]);
  });
});

describe("replace-device: links and refusals", () => {
  test("a chain leads back to what was found; what is new in proposed replaces nothing", () => {
    const house = laundryDrawing().propose();
    const change = (from: string, to: string, type: string) =>
      house.run("replace-device", { device: deviceId(from), id: deviceId(to), type, name: to });
    change("R1", "R1b", "gfci-receptacle-20");
    expect(deviceIn(house.project, deviceId("R1b"))?.replaces).toBe(deviceId("R1"));
    change("R1b", "R1c", "dual-function-receptacle-20");
    expect(deviceIn(house.project, deviceId("R1c"))?.replaces).toBe(deviceId("R1"));
    const proposed = house.project.proposed as Installation;
    expect([...replacedBy(proposed, house.project.asFound)]).toEqual([[deviceId("R1"), deviceId("R1c")]]);
    expect([...replacementFor(proposed, house.project.asFound)]).toEqual([[deviceId("R1c"), deviceId("R1")]]);
    expect(replacedBy(proposed, house.project.asFound)).toBe(replacedBy(proposed, house.project.asFound));
    house.device("X", "receptacle-15", "B1");
    change("X", "Y", "receptacle-tr-15");
    expect(deviceIn(house.project, deviceId("Y"))).not.toHaveProperty("replaces");
  });

  test("when the record of the old one is corrected, the link follows it", () => {
    const house = drawing().box("B1").device("Old", "receptacle-15", "B1").propose();
    house.run("replace-device", { device: deviceId("Old"), id: deviceId("b"), type: "gfci-receptacle-15", name: "b" });
    const done = runCommand(house.project, {
      command: "replace-device",
      args: { state: "as-found", device: deviceId("Old"), id: NEW, type: "receptacle-20", name: "Old" },
    });
    if (!done.ok) throw new Error(done.refusal.message);
    expect(deviceIn(done.project, deviceId("b"))?.replaces).toBe(NEW);
    expect(invariantProblems(done.project)).toEqual([]);
  });

  test("says no where it would be nothing, or lose something", () => {
    const house = laundryDrawing().propose();
    const ask = (args: object, state: StateName = "proposed") =>
      refused(house.project, "replace-device", {
        state,
        device: deviceId("R4"),
        id: NEW,
        type: "receptacle-20",
        name: "N",
        ...args,
      });
    expect(ask({ type: "receptacle-15" }, "as-found")).toBe("same-device-type");
    expect(ask({ type: "toaster" })).toBe("unknown-catalog-item");
    expect(ask({ type: "breaker-1" })).toBe("device-in-wrong-enclosure");
    expect(ask({ device: deviceId("R9") })).toBe("unknown-item");
    expect(ask({ id: deviceId("R1") })).toBe("id-in-use");
    expect(ask({ type: "gfci-blank" })).toBe("load-plugged-in");
    replace(house, "receptacle-15", "R4");
    expect(deviceIn(house.project, NEW, "B4")?.replaces).toBe(deviceId("R4"));
    expect(ask({ device: NEW, id: deviceId("R9"), type: "receptacle-15" })).toBe("same-device-type");
  });
});
