import { describe, expect, test } from "vitest";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import type { Device } from "../../shared-model/model/device.ts";
import type { OutletKey } from "../../shared-model/model/ids.ts";
import { boxId, deviceId, drawing, laundryDrawing, loadId, outlet, spliceId } from "../builders/drawing.ts";
import { enclosureIn, placeOf, refused } from "./asking.ts";

const inB1 = { state: "as-found" as const, enclosure: boxId("B1") };

describe("place-device", () => {
  test("a device starts with the facts of its type, assumed, to the right of the others", () => {
    const { project } = drawing()
      .box("B1")
      .device("R1", "receptacle-15", "B1")
      .device("R2", "gfci-receptacle-20", "B1");
    expect(enclosureIn(project, "B1").devices[deviceId("R2")]).toEqual({
      id: deviceId("R2"),
      name: "R2",
      type: "gfci-receptacle-20",
      order: 1,
      ratingA: 20,
      tamperResistant: true,
      reversal: "deny",
      faceContact: "separate",
      evidence: { ratingA: "assumed", tamperResistant: "assumed", reversal: "assumed", faceContact: "assumed" },
    });
  });

  test("a breaker goes into a panel only, a receptacle into a box only", () => {
    const { project } = drawing().box("B1").panel("P").device("R1", "receptacle-15", "B1");
    const ask = (args: object) =>
      refused(project, "place-device", { ...inB1, id: deviceId("N"), type: "receptacle-15", name: "N", ...args });
    expect(ask({ type: "breaker-1" })).toBe("device-in-wrong-enclosure");
    expect(ask({ enclosure: boxId("P") })).toBe("device-in-wrong-enclosure");
    expect(ask({ type: "toaster" })).toBe("unknown-catalog-item");
    expect(ask({ id: deviceId("R1") })).toBe("id-in-use");
    expect(ask({ enclosure: boxId("B9") })).toBe("unknown-item");
  });
});

describe("move-device", () => {
  const gang = () =>
    drawing().box("B1").box("B2").device("R1", "receptacle-15", "B1").device("R2", "receptacle-15", "B1");
  const orders = (house: ReturnType<typeof gang>) =>
    Object.values(enclosureIn(house.project, "B1").devices)
      .sort((a, b) => a.order - b.order)
      .map((device) => device.name);

  test("it goes in front of another, or to the end", () => {
    const house = gang().device("R3", "receptacle-15", "B1");
    house.run("move-device", { id: deviceId("R3"), enclosure: boxId("B1"), before: deviceId("R1") });
    expect(orders(house)).toEqual(["R3", "R1", "R2"]);
    house.run("move-device", { id: deviceId("R3"), enclosure: boxId("B1") });
    expect(orders(house)).toEqual(["R1", "R2", "R3"]);
  });

  test("with nothing landed on it, it goes to another box with its loads", () => {
    const house = gang().load("Lamp", "lamp-60", "R1");
    house.run("move-device", { id: deviceId("R1"), enclosure: boxId("B2") });
    expect(Object.keys(enclosureIn(house.project, "B2").devices)).toEqual([deviceId("R1")]);
    expect(orders(house)).toEqual(["R2"]);
    expect(house.project.asFound.loads[loadId("Lamp")]?.plug).toBe(outlet("R1"));
  });

  test("with conductors on it, it stays", () => {
    const house = gang().outside("C1", "B1").land("C1.bk@B1", "R1.H1").panel("P");
    const ask = (args: object) =>
      refused(house.project, "move-device", { state: "as-found", id: deviceId("R1"), enclosure: boxId("B2"), ...args });
    expect(ask({})).toBe("ends-landed");
    expect(ask({ id: deviceId("R2"), enclosure: boxId("P") })).toBe("device-in-wrong-enclosure");
    expect(ask({ enclosure: boxId("B1"), before: deviceId("R1") })).toBe("unknown-device");
    expect(ask({ enclosure: boxId("B9") })).toBe("unknown-item");
  });

  test("a breaker leaves its handle tie behind", () => {
    const house = drawing().panel("P").panel("P2").breaker("Q1", "P").breaker("Q2", "P");
    house.set({ kind: "device", id: deviceId("Q1") }, "tiedTo", deviceId("Q2"));
    house.set({ kind: "device", id: deviceId("Q2") }, "tiedTo", deviceId("Q1"), "seen");
    house.run("move-device", { id: deviceId("Q1"), enclosure: boxId("P2") });
    expect(enclosureIn(house.project, "P2").devices[deviceId("Q1")]).not.toHaveProperty("tiedTo");
    const stayed = enclosureIn(house.project, "P").devices[deviceId("Q2")];
    expect(stayed).not.toHaveProperty("tiedTo");
    expect(stayed?.evidence).not.toHaveProperty("tiedTo");
  });
});

describe("remove-items: a device", () => {
  test("caps the ends that were on it and takes its loads, wishes and directory line", () => {
    const house = laundryDrawing().wish("R4");
    house.remove({ kind: "device", id: deviceId("R4") });
    expect(placeOf(house, "C3.bk@B4").at).toEqual({ kind: "capped" });
    expect(placeOf(house, "C3.wh@B4").at).toEqual({ kind: "capped" });
    expect(placeOf(house, "B4g0.b").at).toEqual({ kind: "capped" });
    expect(placeOf(house, "C3.cu@B4").at).toEqual({ kind: "splice", splice: spliceId("E_B4") });
    expect(house.project.asFound.loads).toEqual({});
    expect(Object.keys(house.project.asFound.intent.outlets)).toEqual([outlet("R5")]);
  });

  test("a breaker takes its directory line and the tie of its neighbour", () => {
    const house = drawing().panel("P").breaker("Q1", "P").breaker("Q2", "P");
    house.set({ kind: "device", id: deviceId("Q2") }, "tiedTo", deviceId("Q1"));
    house.run("set-directory-line", { device: deviceId("Q1"), text: "laundry" });
    house.remove({ kind: "device", id: deviceId("Q1") });
    expect(house.project.asFound.directory).toEqual({});
    expect(enclosureIn(house.project, "P").devices[deviceId("Q2")]).not.toHaveProperty("tiedTo");
  });

  test("a device of the other state no longer replaces it", () => {
    const { project } = drawing().box("B1").device("R1", "receptacle-15", "B1").propose();
    const renewed = drawing().box("B1").device("R1b", "gfci-receptacle-15", "B1").project.asFound;
    const box = enclosureIn({ ...project, asFound: renewed }, "B1");
    const r1b: Device = {
      id: deviceId("R1b"),
      name: "R1b",
      type: "gfci-receptacle-15",
      order: 0,
      replaces: deviceId("R1"),
    };
    const enclosures = { [box.id]: { ...box, devices: { [r1b.id]: r1b } } };
    const done = runCommand(
      { ...project, proposed: { ...renewed, enclosures } },
      { command: "remove-items", args: { state: "as-found", items: [{ kind: "device", id: deviceId("R1") }] } },
    );
    const { replaces: _gone, ...rest } = r1b;
    expect(done.ok && done.project.proposed?.enclosures[box.id]?.devices).toEqual({ [r1b.id]: rest });
  });
});

describe("loads", () => {
  test("a load has the figures of the stock, assumed", () => {
    const { project } = drawing().box("B1").device("R1", "receptacle-15", "B1").load("Freezer", "freezer-180", "R1");
    expect(project.asFound.loads[loadId("Freezer")]).toEqual({
      id: loadId("Freezer"),
      name: "Freezer",
      item: "freezer-180",
      plug: outlet("R1"),
      order: 0,
      loadW: 180,
      loadOhm: 80,
      leakMa: 0.8,
      priority: "freezer",
      evidence: { loadW: "assumed", loadOhm: "assumed", leakMa: "assumed", priority: "assumed" },
    });
  });

  test("it is plugged in elsewhere", () => {
    const house = laundryDrawing().run("move-load", { id: loadId("Freezer"), plug: outlet("R1") });
    expect(house.project.asFound.loads[loadId("Freezer")]?.plug).toBe(outlet("R1"));
  });

  test("only receptacles take plugs, and halves exist only where a tab is off", () => {
    const { project } = laundryDrawing();
    const place = (plug: OutletKey, args: object = {}) =>
      refused(project, "place-load", {
        state: "as-found",
        id: loadId("N"),
        item: "lamp-60",
        name: "Lamp",
        plug,
        ...args,
      });
    expect(place(outlet("L1"))).toBe("not-a-receptacle");
    expect(place(outlet("S1"))).toBe("unknown-outlet");
    expect(place(outlet("R1", "upper"))).toBe("unknown-outlet");
    expect(place(outlet("R9"))).toBe("unknown-item");
    expect(place(outlet("R1"), { item: "sun" })).toBe("unknown-catalog-item");
    expect(place(outlet("R1"), { id: loadId("Freezer") })).toBe("id-in-use");
    const move = (id: string, plug: OutletKey) =>
      refused(project, "move-load", { state: "as-found", id: loadId(id), plug });
    expect(move("Freezer", outlet("S1"))).toBe("unknown-outlet");
    expect(move("Kettle", outlet("R1"))).toBe("unknown-item");
  });

  test("breaking the hot tab off makes two outlets: load and wish follow, and come back when it is put right", () => {
    const house = laundryDrawing().wish("R4");
    const tab = (value: string) =>
      house.set({ kind: "device", id: deviceId("R4") }, "hotTab", value, "seen").project.asFound;
    const split = tab("removed");
    expect(split.loads[loadId("Freezer")]?.plug).toBe(outlet("R4", "upper"));
    expect(Object.keys(split.intent.outlets).sort()).toEqual([
      outlet("R4", "lower"),
      outlet("R4", "upper"),
      outlet("R5"),
    ]);
    const whole = tab("intact");
    expect(whole.loads[loadId("Freezer")]?.plug).toBe(outlet("R4"));
    expect(Object.keys(whole.intent.outlets).sort()).toEqual([outlet("R4"), outlet("R5")]);
  });
});
