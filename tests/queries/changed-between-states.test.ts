import { expect, test } from "vitest";
import { sameValue } from "../../shared-model/lib/same-value.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { changedBetweenStates } from "../../shared-model/queries/changed-between-states.ts";
import { replacementFor } from "../../shared-model/queries/replaced.ts";
import { boxId, cableId, deviceId, laundryAsFound, laundryDrawing, spliceId } from "../builders/drawing.ts";
import type { Drawing } from "../builders/drawing-by-commands.ts";

/** Changes of proposed against as found; the states share nothing but values, as after a file was read. */
function changesAfter(edit: (proposed: Drawing) => Drawing) {
  const { asFound, proposed } = edit(laundryDrawing().propose()).project;
  if (proposed === undefined) throw new Error("Nothing is proposed.");
  return changedBetweenStates(structuredClone(asFound), proposed);
}
const opened = (edit: (proposed: Drawing) => Drawing) => Object.fromEntries(changesAfter(edit).enclosures);

test("equal states differ in nothing, whether they share their parts or not", () => {
  const changes = changesAfter((proposed) => proposed);
  expect([...changes.enclosures, ...changes.devices, ...changes.cables, ...changes.newSplices]).toEqual([]);
});

test("names, notes, tags, rooms and how a fact is known open no box", () => {
  const B2 = { kind: "enclosure", id: boxId("B2") } as const;
  expect(
    opened((proposed) =>
      proposed
        .run("rename-item", { item: B2, name: "Sink" })
        .set(B2, "note", "under the sink")
        .set({ kind: "device", id: deviceId("R2") }, "notes", "ivory")
        .run("rename-item", { item: { kind: "splice", id: spliceId("X") }, name: "hots" })
        .setEnd("C2.bk@B2", "tag", "from B1")
        .set({ kind: "cable", id: cableId("C2") }, "notes", "along the joist")
        .run("assign-room", { enclosures: [boxId("B5")], room: null }),
    ),
  ).toEqual({});
});

test("an end that moves opens its box and no other", () => {
  expect(opened((proposed) => proposed.land("C2.bk@B2", "capped"))).toEqual({ [boxId("B2")]: "opened" });
});

test("a fact of a device, of a box or of a connector opens the box", () => {
  const metal = { kind: "enclosure", id: boxId("B4") } as const;
  expect(opened((proposed) => proposed.set(metal, "internalClamps", "none"))).toEqual({ [boxId("B4")]: "opened" });
  expect(opened((proposed) => proposed.set({ kind: "device", id: deviceId("R3") }, "tamperResistant", true))).toEqual({
    [boxId("B3")]: "opened",
  });
});

test("a changed cable opens the boxes at both its ends; a new box is new, not opened", () => {
  const longer = changesAfter((proposed) => proposed.set({ kind: "cable", id: cableId("C6") }, "lengthFt", 30));
  expect(Object.fromEntries(longer.enclosures)).toEqual({ [boxId("B2")]: "opened", [boxId("B3")]: "opened" });
  expect(Object.fromEntries(longer.cables)).toEqual({ [cableId("C6")]: "changed" });
  const more = changesAfter((proposed) => proposed.box("B9").cable("C9", "B3", "B9"));
  expect(Object.fromEntries(more.enclosures)).toEqual({ [boxId("B3")]: "opened", [boxId("B9")]: "new" });
  expect(Object.fromEntries(more.cables)).toEqual({ [cableId("C9")]: "new" });
});

test("what is taken away is named, and opens what it was joined to", () => {
  const changes = changesAfter((proposed) => proposed.remove({ kind: "enclosure", id: boxId("B7") }));
  expect(Object.fromEntries(changes.enclosures)).toMatchObject({ [boxId("B7")]: "removed", [boxId("B5")]: "opened" });
  expect(changes.cables.get(cableId("C7"))).toBeDefined();
});

test("a device that takes another's place says whose; one that does not is new", () => {
  const { asFound } = laundryAsFound();
  const box = asFound.enclosures[boxId("B4")];
  const R4 = box?.devices[deviceId("R4")];
  if (box === undefined || R4 === undefined) throw new Error("B4 has lost its receptacle.");
  const R4b = { ...R4, id: deviceId("R4b"), name: "R4b", replaces: R4.id };
  const R8 = { ...R4, id: deviceId("R8"), name: "R8" };
  const R9 = { ...R4, id: deviceId("R9"), name: "R9", replaces: deviceId("gone") };
  const devices = { [R4b.id]: R4b, [R8.id]: R8, [R9.id]: R9 };
  const proposed: Installation = {
    ...asFound,
    enclosures: { ...asFound.enclosures, [box.id]: { ...box, devices } },
  };
  const changes = changedBetweenStates(asFound, proposed);
  expect(Object.fromEntries(changes.devices)).toEqual({
    [R4b.id]: { kind: "replaces", device: R4.id, name: "R4" },
    [R8.id]: { kind: "new" },
    [R9.id]: { kind: "new" },
  });
  expect(changedBetweenStates(asFound, proposed)).toBe(changes);
});

test("parts that both states share are passed over, and nothing that they say is lost", () => {
  const { asFound, proposed: drawn } = laundryDrawing()
    .propose()
    .run("replace-device", { device: deviceId("R1"), id: deviceId("R1b"), type: "gfci-receptacle-15", name: "R1b" })
    .run("replace-device", { device: deviceId("R4"), id: deviceId("R4b"), type: "gfci-receptacle-15", name: "R4b" })
    .land("C5.bk@B1", "capped").project;
  if (drawn === undefined) throw new Error("Nothing is proposed.");
  const enclosures: Installation["enclosures"] = Object.fromEntries(
    Object.entries(drawn.enclosures).map(([id, one]) => {
      const was = asFound.enclosures[one.id];
      return [id, was !== undefined && sameValue(was, one) ? was : one];
    }),
  );
  const proposed: Installation = { ...drawn, enclosures };
  // Such a claim comes from a file: R3 is in a box that is the same object in both, and is named all the same.
  const b1 = proposed.enclosures[boxId("B1")];
  const claiming = b1?.devices[deviceId("R1b")];
  if (b1 === undefined || claiming === undefined) throw new Error("No device.");
  const devices = { ...b1.devices, [deviceId("R1b")]: { ...claiming, replaces: deviceId("R3") } };
  const claimed: Installation = {
    ...proposed,
    enclosures: { ...proposed.enclosures, [boxId("B1")]: { ...b1, devices } },
  };
  expect(claimed.enclosures[boxId("B3")]).toBe(asFound.enclosures[boxId("B3")]);
  for (const one of [proposed, claimed]) {
    const [shared, apart] = [
      changedBetweenStates(asFound, one),
      changedBetweenStates(structuredClone(asFound), { ...one }),
    ];
    expect([...shared.devices].sort()).toEqual([...apart.devices].sort());
    expect([...shared.newSplices]).toEqual([...apart.newSplices]);
    expect([...replacementFor(one, asFound)]).toEqual([...replacementFor(one, structuredClone(asFound))]);
  }
  expect(changedBetweenStates(asFound, claimed).devices.get(deviceId("R1b"))).toEqual({
    kind: "replaces",
    device: deviceId("R3"),
    name: "R3",
  });
});
