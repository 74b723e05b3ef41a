import { textToSave } from "../../shared-model/format/text-to-save.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { cubicInches } from "../../shared-model/units/volume.ts";
import { drawing } from "../builders/drawing.ts";

/** A document with one of nearly everything: two boxes and a panel, a ring, a splice, a jumper, a load, a wish. */
export const smallProject = (): Project =>
  drawing(2020, "Small")
    .room("Hall", "hallway")
    .panel("P")
    .box("B1", "square-4-2-1-8", { room: "Hall", note: "hall" })
    .ring("B1", { kind: "marked", volumeIn3: cubicInches(3.5) })
    .box("B2", "plastic-new-1")
    .breaker("Q1", "P")
    .breaker("Q2", "P")
    .breaker("Q3", "P")
    .device("R1", "receptacle-15", "B1")
    .cable("C1", "P", "B1", { ft: 20 })
    .cable("C2", "B1", "B2", { ft: 10 })
    .outside("C3", "B2")
    .land("C1.bk@P", "Q1.OUT")
    .splice("X", "B1", "twist-large", "C1.bk@B1", "C2.bk@B1")
    .jumper("p", "B1", "splice X", "R1.H1")
    .load("Lamp", "lamp-60", "R1")
    .wish("R1").project;

export const smallText = (): string => textToSave(smallProject());

export type JsonValue = null | boolean | number | string | JsonValue[] | { [key: string]: JsonValue };

/** The value at a path such as "/asFound/cables/cable-C1"; throws when there is none, which is a slip of the test. */
export function valueAt(root: JsonValue, path: string): JsonValue {
  let value: JsonValue | undefined = root;
  for (const step of path.split("/").slice(1))
    value = typeof value === "object" && value !== null ? (value as Record<string, JsonValue>)[step] : undefined;
  if (value === undefined) throw new Error(`Nothing at ${path}.`);
  return value;
}

/** The small document as text after the value at a path was replaced, or taken out when there is no new one. */
export function withValue(path: string, value: JsonValue | undefined): string {
  const root = JSON.parse(smallText()) as JsonValue;
  const cut = path.lastIndexOf("/");
  const parent = valueAt(root, path.slice(0, cut)) as Record<string, JsonValue>;
  const key = path.slice(cut + 1);
  if (value === undefined) delete parent[key];
  else parent[key] = value;
  return JSON.stringify(root);
}
