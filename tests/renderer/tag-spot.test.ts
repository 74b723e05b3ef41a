/** The tag that says how a conductor stands covers no words of that conductor. */
import { readdirSync } from "node:fs";
import { expect, test } from "vitest";
import { drawingOf } from "../../renderer/sheet/drawings.ts";
import { TAG } from "../../renderer/sheet/energise/condition-tag.tsx";
import { tagSpot } from "../../renderer/sheet/energise/tag-spot.ts";
import { documentStore, openDocument, setShownState } from "../../renderer/state/document-store.ts";
import { textWidth } from "../../shared-model/geometry/text-width.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { openSample } from "../builders/samples/open-sample.ts";

const names = readdirSync(new URL("../../assets/samples/", import.meta.url))
  .filter((name) => name.endsWith(".loadside"))
  .map((name) => name.replace(".loadside", ""));

/** Letters of a plate are 11 units high, 8 of them above the line: half of that to each side of its middle. */
const HALF_HEIGHT = 4;

/** Ends that are shorter than their words and a tag, with a neighbour close on each side: there is no room to go to. */
const NO_ROOM: Readonly<Record<string, number>> = { "house-twelve-circuits": 1, "wrong-on-purpose": 14 };

test.each(names)("in %s", (name) => {
  openDocument({ project: openSample(name) });
  const covered: string[] = [];
  let tags = 0;
  for (const state of ["as-found", "proposed"] as const) {
    const installation = documentStore.get().project[state === "proposed" ? "proposed" : "asFound"];
    if (installation === undefined || installation === null) continue;
    setShownState(state);
    for (const id of Object.keys(installation.enclosures) as EnclosureId[]) {
      for (const conductor of drawingOf(documentStore.get(), id)?.conductors ?? []) {
        const spot = tagSpot(conductor);
        if (spot === undefined) continue;
        tags += 1;
        for (const { at, text, vertical } of conductor.plates) {
          const long = textWidth(text, 11, 640) / 2;
          const [wide, high] = vertical ? [HALF_HEIGHT, long] : [long, HALF_HEIGHT];
          if (Math.abs(at.x - spot.x) < wide + TAG / 2 && Math.abs(at.y - spot.y) < high + TAG / 2)
            covered.push(`${installation.enclosures[id]?.name}: ${text}`);
        }
      }
    }
  }
  expect(tags).toBeGreaterThan(0);
  expect(covered.length, covered.join("; ")).toBe(NO_ROOM[name] ?? 0);
});
