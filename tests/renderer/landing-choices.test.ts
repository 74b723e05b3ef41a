import { beforeEach, expect, test } from "vitest";
import { documentStore, openDocument, shownInstallation } from "../../renderer/state/document-store.ts";
import { landingChoices } from "../../renderer/state/landing-choices.ts";
import { landHeld, landingStore, watchHeldEnd } from "../../renderer/state/landing-store.ts";
import { hold, sessionStore } from "../../renderer/state/session-store.ts";
import { type ConductorKey, cableEnd } from "../../shared-model/model/ids.ts";
import { boxId, cableId, laundryAsFound } from "../builders/drawing.ts";

const hot = cableEnd(cableId("C1"), "bk" as ConductorKey, "b");
const held = { enclosure: boxId("B1"), end: hot };
const choices = () => landingChoices(shownInstallation(), "as-found", held);

beforeEach(() => {
  hold(undefined);
  openDocument({ project: laundryAsFound() });
});

test("every place of the box is offered but the one where the end is", () => {
  // C1 BK is in splice X. R1 is a duplex: two brass screws, two silver ones, one green.
  expect(choices().map(({ name }) => name)).toEqual([
    "Splice Y",
    "Splice Z",
    "R1 H",
    "R1 H",
    "R1 N",
    "R1 N",
    "R1 G",
    "Box ground screw",
    "Cap it",
    "Leave it loose",
  ]);
});

test("landing puts the end there, in one step, and opens the hand", () => {
  const stop = watchHeldEnd(() => Promise.resolve(undefined));
  hold(held);
  const cap = landingStore.get().choices.find(({ name }) => name === "Cap it");
  if (cap === undefined) throw new Error("No cap is offered.");
  expect(landHeld(cap).ok).toBe(true);
  expect(shownInstallation().enclosures[held.enclosure]?.places[hot]?.at).toEqual({ kind: "capped" });
  expect(documentStore.get().history.past).toHaveLength(1);
  expect(sessionStore.get().held).toBeUndefined();
  expect(landingStore.get().choices).toEqual([]);
  stop();
});

test("two capped ends are offered to one another as a new splice that its connector takes", () => {
  const white = cableEnd(cableId("C2"), "wh" as ConductorKey, "a");
  const stop = watchHeldEnd(() => Promise.resolve(undefined));
  for (const end of [hot, white]) {
    hold({ enclosure: held.enclosure, end });
    const cap = landingStore.get().choices.find(({ name }) => name === "Cap it");
    if (cap !== undefined) landHeld(cap);
  }
  stop();
  const splice = choices().find(({ name }) => name === "Splice with C2 WH");
  // Two 12 AWG: the smallest twist-on connector of the stock takes 14 and 16 only.
  expect(splice?.call).toMatchObject({
    command: "splice-ends",
    args: { ends: [hot, white], connector: "twist-medium" },
  });
});

test("what would follow is shown only for the drawing that was asked about", async () => {
  let answer: (results: readonly { introduces: []; repairs: number; unprotects: [] }[] | undefined) => void = () =>
    undefined;
  const stop = watchHeldEnd(
    (asked) =>
      new Promise((resolve) => {
        answer = () => resolve(asked.map(() => ({ introduces: [], repairs: 0, unprotects: [] })));
      }),
  );
  hold(held);
  const first = answer;
  hold({ ...held });
  first([]);
  await Promise.resolve();
  expect(landingStore.get().previews.size).toBe(0);
  answer([]);
  await Promise.resolve();
  await Promise.resolve();
  expect(landingStore.get().previews.size).toBe(landingStore.get().choices.length);
  stop();
});
