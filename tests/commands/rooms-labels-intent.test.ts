import { describe, expect, test } from "vitest";
import type { CommandArgs } from "../../shared-model/commands/command-args.ts";
import { asId, type LabelId, type ReadingId } from "../../shared-model/model/ids.ts";
import { boxId, cableId, deviceId, drawing, laundryDrawing, outlet, roomId, spliceId } from "../builders/drawing.ts";
import { enclosureIn, refused, titleOf } from "./asking.ts";

const HERE = { state: "as-found" as const };

describe("rooms", () => {
  test("a room is added once, with each kind once", () => {
    const { project } = drawing().room("Laundry", "laundry", "basement-unfinished", "laundry");
    expect(project.rooms[roomId("Laundry")]).toEqual({
      id: roomId("Laundry"),
      name: "Laundry",
      kinds: ["laundry", "basement-unfinished"],
      order: 0,
    });
    expect(refused(project, "add-room", { id: roomId("Laundry"), name: "Laundry", kinds: [] })).toBe("id-in-use");
  });

  test("boxes are put into a room and taken out of it", () => {
    const house = drawing().room("Hall", "hallway").box("B1").box("B2");
    const assign = (room: ReturnType<typeof roomId> | null) =>
      house.run("assign-room", { enclosures: [boxId("B1"), boxId("B2")], room }).project;
    expect(enclosureIn(assign(roomId("Hall")), "B2").roomId).toBe(roomId("Hall"));
    expect(enclosureIn(assign(null), "B2")).not.toHaveProperty("roomId");
    const ask = (args: Partial<CommandArgs["assign-room"]>) =>
      refused(house.project, "assign-room", { ...HERE, enclosures: [boxId("B1")], room: roomId("Hall"), ...args });
    expect(ask({ room: roomId("Attic") })).toBe("unknown-room");
    expect(ask({ enclosures: [boxId("B1"), boxId("B9")] })).toBe("unknown-item");
  });
});

describe("labels, readings, directory, edition", () => {
  test("a label is fixed to a device, an enclosure or a cable", () => {
    const { project } = laundryDrawing();
    const label: CommandArgs["add-label"] = {
      ...HERE,
      id: asId<LabelId>("l1"),
      wording: "No equipment ground",
      on: { device: deviceId("R1") },
    };
    expect(titleOf(project, "add-label", label)).toBe("Add label on R1");
    const ask = (args: object) => refused(project, "add-label", { ...label, ...args });
    expect(ask({ wording: "  " })).toBe("label-without-words");
    expect(ask({ on: { device: deviceId("R9") } })).toBe("unknown-item");
    expect(ask({ on: { cable: cableId("C9") } })).toBe("unknown-item");
    expect(ask({ id: deviceId("R1") })).toBe("id-in-use");
    const done = laundryDrawing().run("add-label", label).project;
    expect(done.asFound.labels[label.id]).toEqual({ id: "l1", wording: label.wording, on: label.on, order: 0 });
  });

  test("a reading stays what it was when what it was taken at is gone", () => {
    const reading = { instrument: "meter", points: ["cable-C1.bk.b"], value: "121.8", unit: "V" } as const;
    const args: CommandArgs["add-reading"] = { id: asId<ReadingId>("r1"), reading };
    const house = laundryDrawing()
      .run("add-reading", args)
      .remove({ kind: "cable", id: cableId("C1") });
    expect(house.project.readings[args.id]).toEqual({ ...reading, id: "r1", order: 0 });
    expect(refused(house.project, "add-reading", args)).toBe("id-in-use");
    const none = { ...args, id: asId<ReadingId>("r2"), reading: { ...reading, points: [] } };
    expect(refused(house.project, "add-reading", none)).toBe("reading-needs-points");
  });

  test("the directory lists breakers", () => {
    const house = laundryDrawing().run("set-directory-line", { device: deviceId("Q14"), text: "dryer" });
    expect(house.project.asFound.directory).toEqual({ [deviceId("Q14")]: "dryer" });
    house.run("set-directory-line", { device: deviceId("Q14"), text: " " });
    expect(house.project.asFound.directory).toEqual({});
    const ask = (name: string) =>
      refused(house.project, "set-directory-line", { ...HERE, device: deviceId(name), text: "x" });
    expect(ask("R1")).toBe("not-a-breaker");
    expect(ask("P neutral")).toBe("not-a-breaker");
    expect(ask("Q99")).toBe("unknown-item");
  });

  test("the edition is chosen, and nothing else is touched", () => {
    const before = laundryDrawing().project;
    expect(laundryDrawing().edition(2017).project).toEqual({ ...before, edition: 2017 });
    expect(refused(before, "set-edition", { edition: 2022 as 2023 })).toBe("malformed-arguments");
  });

  test("a dragged splice stays where it was put until it is let go", () => {
    const house = laundryDrawing();
    const put = (to: { x: number; y: number } | null) =>
      house.run("move-splice", { splice: spliceId("X"), to }).project.layout.splices;
    expect(put({ x: 40, y: 60 })).toEqual({ [spliceId("X")]: { x: 40, y: 60 } });
    expect(put(null)).toEqual({});
    expect(refused(house.project, "move-splice", { splice: spliceId("Q"), to: null })).toBe("unknown-splice");
  });
});

describe("intent", () => {
  test("what a box is meant to do names cables that enter it", () => {
    const house = laundryDrawing();
    const intent = { supply: cableId("C1"), protect: { [cableId("C2")]: true, [cableId("C3")]: false } };
    const set = (value: CommandArgs["set-box-intent"]["intent"]) =>
      house.run("set-box-intent", { enclosure: boxId("B1"), intent: value }).project.asFound.intent.boxes;
    expect(set(intent)).toEqual({ [boxId("B1")]: intent });
    expect(set({})).toEqual({});
    set(intent);
    expect(set(null)).toEqual({});
    const ask = (args: object) =>
      refused(house.project, "set-box-intent", { ...HERE, enclosure: boxId("B1"), intent, ...args });
    expect(ask({ intent: { supply: cableId("C6") } })).toBe("cable-not-here");
    expect(ask({ intent: { protect: { [cableId("C9")]: true } } })).toBe("cable-not-here");
    expect(ask({ enclosure: boxId("B9") })).toBe("unknown-item");
  });

  test("an outlet is wished for, decided against, or left alone", () => {
    const house = laundryDrawing();
    const decided = { wish: "decided-not", by: "the owner", reason: "not worth the cost" } as const;
    house.run("set-outlet-wish", { outlet: outlet("R5"), wish: decided });
    expect(house.project.asFound.intent.outlets).toEqual({ [outlet("R5")]: decided });
    house.run("set-outlet-wish", { outlet: outlet("R5"), wish: null });
    expect(house.project.asFound.intent.outlets).toEqual({});
    const ask = (name: string, half?: "upper") =>
      refused(house.project, "set-outlet-wish", { ...HERE, outlet: outlet(name, half), wish: { wish: "protect" } });
    expect(ask("S1")).toBe("unknown-outlet");
    expect(ask("R5", "upper")).toBe("unknown-outlet");
    expect(ask("R9")).toBe("unknown-item");
  });
});

describe("rings", () => {
  test("a ring goes on a box and off again", () => {
    const house = drawing().box("B1").ring("B1", { kind: "table", size: "4x1-1/2 square" });
    const rings = () => {
      const box = enclosureIn(house.project, "B1");
      return box.kind === "box" ? box.rings : undefined;
    };
    const id = asId<never>("ring-box-B1");
    expect(rings()).toEqual({
      [id]: { id, kind: "plaster-ring", volume: { kind: "table", size: "4x1-1/2 square" }, order: 0 },
    });
    house.run("remove-ring", { enclosure: boxId("B1"), id });
    expect(rings()).toEqual({});
  });

  test("it is refused with what to do instead", () => {
    const { project } = drawing().box("B1").panel("P").ring("B1");
    const args = { ...HERE, enclosure: boxId("B1"), id: asId<never>("ring-box-B1") };
    const ask = (more: object) =>
      refused(project, "add-ring", { ...args, kind: "extension", volume: { kind: "unknown" }, ...more });
    expect(ask({})).toBe("id-in-use");
    expect(ask({ enclosure: boxId("P") })).toBe("not-a-box");
    expect(ask({ id: "r2", volume: { kind: "table", size: "bathtub" } })).toBe("unknown-standard-box");
    expect(refused(project, "remove-ring", { ...args, id: asId<never>("r9") })).toBe("unknown-item");
    expect(refused(project, "remove-ring", { ...args, enclosure: boxId("P") })).toBe("unknown-item");
  });
});

describe("the two states", () => {
  test("an edit touches its own state only", () => {
    const found = laundryDrawing();
    const proposed = found.propose();
    proposed.remove({ kind: "device", id: deviceId("R1") });
    expect(proposed.project.asFound).toBe(found.project.asFound);
    expect(enclosureIn(proposed.project, "B1").devices).toHaveProperty(deviceId("R1"));
    expect(proposed.project.proposed?.enclosures[boxId("B1")]?.devices).toEqual({});
  });

  test("an identity is one thing in both states", () => {
    const proposed = laundryDrawing().propose().device("R9", "receptacle-15", "B1");
    const args = { ...HERE, enclosure: boxId("B2"), id: deviceId("R9"), type: "receptacle-15", name: "R9" };
    expect(refused(proposed.project, "place-device", args)).toBe("id-in-use");
  });
});
