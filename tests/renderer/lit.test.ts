/** Which condition of an answer a conductor on the sheet is shown with. */
import { expect, test } from "vitest";
import { drawingOf } from "../../renderer/sheet/drawings.ts";
import { litIn } from "../../renderer/sheet/energise/lit.ts";
import { lineKey } from "../../renderer/sheet/line-at.ts";
import { dispatch, documentStore, openDocument } from "../../renderer/state/document-store.ts";
import type { Condition, Energised } from "../../shared-model/answers/energised.ts";
import type { ConductorKey, EntryId, PassThroughId } from "../../shared-model/model/ids.ts";
import { boxId, cableId, drawing } from "../builders/drawing.ts";

test("of a cable with two whites that runs through a box, each is shown as it stands", () => {
  const [box, cable] = [boxId("M"), cableId("AB")];
  const { project } = drawing(2020, "two whites")
    .box("A", "plastic-new-2")
    .box("M", "plastic-new-2")
    .box("B", "plastic-new-2")
    .cable("AB", "A", "B", { item: "nm-12-2-2-g", ft: 20 });
  openDocument({ project });
  const run = dispatch({
    command: "add-pass-through",
    args: {
      state: "as-found",
      enclosure: box,
      id: "through" as PassThroughId,
      cable,
      conductors: Object.keys(project.asFound.cables[cable]?.conductors ?? {}) as ConductorKey[],
      entryIn: { newEntry: "in" as EntryId, means: "none" },
      entryOut: { newEntry: "out" as EntryId, means: "none" },
    },
  });
  expect(run).toEqual({ ok: true });
  const drawn = drawingOf(documentStore.get(), box);
  const passing = drawn?.conductors.filter(({ passThrough }) => passThrough !== undefined) ?? [];
  const whites = passing.filter(({ colour }) => colour === "white");
  expect(passing).toHaveLength(5);
  expect(whites).toHaveLength(2);
  const [first, second] = whites.map(({ conductor }) => conductor);
  const conditions: Record<string, Condition> = {
    [first ?? ""]: { kind: "neutral", volts: 0 },
    [second ?? ""]: { kind: "live", volts: 120 },
  };
  const answer = {
    boxes: { [box]: { ends: {}, splices: {}, devices: {} } },
    cables: { [cable]: conditions },
  } as unknown as Energised;
  expect(whites.map((one) => litIn(answer, box)?.conductor(one)?.kind)).toEqual(["neutral", "live"]);
  expect(new Set(passing.map(lineKey)).size).toBe(5);
});
