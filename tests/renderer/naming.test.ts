import { expect, test } from "vitest";
import { mintId } from "../../renderer/state/mint-id.ts";
import {
  freeRoomName,
  nextDeviceName,
  nextEnclosureName,
  nextJumperName,
  nextName,
} from "../../renderer/state/naming.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import { type EnclosureId, isId } from "../../shared-model/model/ids.ts";
import { emptyInstallation, emptyProject, type Installation } from "../../shared-model/model/project.ts";

const withBoxes = (...names: readonly string[]): Installation => ({
  ...emptyInstallation,
  enclosures: Object.fromEntries(
    names.map((name) => [name, { name, devices: { d: { name: `R${name}` } } }]),
  ) as unknown as Installation["enclosures"],
});

test("the lowest free number is taken", () => {
  expect(nextName("B", new Set(["B1", "B3"]))).toBe("B2");
  expect(nextEnclosureName(withBoxes("B1", "B2"), "box")).toBe("B3");
});

test("the first panel is plain P, the second P2", () => {
  expect(nextEnclosureName(emptyInstallation, "panel")).toBe("P");
  expect(nextEnclosureName(withBoxes("P"), "panel")).toBe("P2");
});

test("device names count over the whole drawing", () => {
  expect(nextDeviceName(withBoxes("1", "2"), "receptacle-15")).toBe("R3");
});

test("jumpers go by small letters", () => {
  const letters = [..."abcdefghijklmnopqrstuvwxyz"];
  const box = (names: readonly string[]) =>
    ({ jumpers: Object.fromEntries(names.map((name) => [name, { name }])) }) as unknown as Enclosure;
  expect(nextJumperName(box([]))).toBe("a");
  expect(nextJumperName(box(["a", "c"]))).toBe("b");
  expect(nextJumperName(box(letters))).toBe("a2");
});

test("a room name is made free by a number", () => {
  const project = { ...emptyProject("t", 2020), rooms: { r: { name: "Laundry" } } } as unknown as ReturnType<
    typeof emptyProject
  >;
  expect(freeRoomName(project, "Laundry")).toBe("Laundry 2");
  expect(freeRoomName(project, "Porch")).toBe("Porch");
});

test("minted ids are ids, and no two of many are equal", () => {
  const ids = Array.from({ length: 5000 }, () => mintId<EnclosureId>("b"));
  expect(ids.every((id) => isId(id) && id.startsWith("b"))).toBe(true);
  expect(new Set(ids).size).toBe(ids.length);
});
