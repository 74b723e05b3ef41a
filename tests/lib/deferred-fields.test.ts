import { expect, test } from "vitest";
import { deferField, valuesAtHand } from "../../shared-model/lib/deferred-fields.ts";
import { freezeThrough } from "../../shared-model/lib/freeze-through.ts";

interface Owner {
  readonly name: string;
  readonly list: readonly number[];
}

/** An object with a name and a list that is read when it is asked for, and how often it was. */
function withList(): { readonly owner: Owner; readonly reads: () => number } {
  let reads = 0;
  const owner = { name: "B1" } as Owner;
  deferField(owner, "list", "[1,2]", (text) => {
    reads++;
    return JSON.parse(text) as object;
  });
  return { owner, reads: () => reads };
}

test("what is deferred is read once, and is an ordinary field to whoever looks", () => {
  const { owner, reads } = withList();
  expect(Object.keys(owner)).toEqual(["name", "list"]);
  expect(reads()).toBe(0);
  const { list } = owner;
  expect(list).toEqual([1, 2]);
  expect(owner.list).toBe(list);
  expect({ ...owner }.list).toBe(list);
  expect(structuredClone(owner)).toEqual({ name: "B1", list: [1, 2] });
  expect(JSON.stringify(owner)).toBe('{"name":"B1","list":[1,2]}');
  expect(reads()).toBe(1);
});

test("freezing reads nothing that nobody asked for, and what is frozen can be read on", () => {
  const { owner, reads } = withList();
  expect(valuesAtHand(owner)).toEqual(["B1"]);
  freezeThrough(owner);
  expect(Object.isFrozen(owner)).toBe(true);
  expect(reads()).toBe(0);
  expect(owner.list).toEqual([1, 2]);
  expect(valuesAtHand(owner)).toEqual(["B1", [1, 2]]);
});

test("what was read is frozen with the rest", () => {
  const { owner } = withList();
  const { list } = owner;
  freezeThrough(owner);
  expect(Object.isFrozen(list)).toBe(true);
});
