import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { standsOnBreaker } from "../../renderer/sheet/energise/stands-on-breaker.ts";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import { textWidth } from "../../shared-model/geometry/text-width.ts";

const SAMPLES = new URL("../../assets/samples/", import.meta.url);

test("how a breaker stands is written beside its name, inside its body, in every panel of the samples", () => {
  let breakers = 0;
  for (const file of readdirSync(SAMPLES).filter((name) => name.endsWith(".loadside"))) {
    const opened = parseProject(readFileSync(new URL(file, SAMPLES), "utf8"));
    if (!opened.ok) throw new Error("A shipped drawing cannot be read.");
    const { project } = opened.value;
    for (const { id } of Object.values(project.asFound.enclosures).filter(({ kind }) => kind === "panel"))
      for (const device of boxDrawing(project, project.asFound, id).devices) {
        if (device.family !== "breaker") continue;
        breakers += 1;
        const half = textWidth(device.name, 11, 700) / 2;
        for (const word of ["ON", "OFF", "TRIP"]) {
          const { x, width } = standsOnBreaker(device, textWidth(word, 11, 700) + 10);
          const isBeside = x >= device.labelAt.x + half || x + width <= device.labelAt.x - half;
          expect([file, device.name, word, isBeside]).toEqual([file, device.name, word, true]);
          expect(x).toBeGreaterThanOrEqual(device.body.x);
          expect(x + width).toBeLessThanOrEqual(device.body.x + device.body.width);
        }
      }
  }
  expect(breakers).toBeGreaterThan(20);
});
