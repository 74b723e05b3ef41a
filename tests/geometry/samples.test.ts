import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import { faultsOf } from "./drawing-faults.ts";

const SAMPLES = new URL("../../assets/samples/", import.meta.url);

test.each(readdirSync(SAMPLES).filter((name) => name.endsWith(".loadside")))(
  "no box of %s has a fault in its drawing, in either state",
  (name) => {
    const parsed = parseProject(readFileSync(new URL(name, SAMPLES), "utf8"));
    if (!parsed.ok) throw new Error(parsed.problems.map((one) => one.message).join("\n"));
    const { project } = parsed.value;
    const faults = [project.asFound, project.proposed].flatMap((installation) =>
      Object.values(installation?.enclosures ?? {}).flatMap((box) =>
        installation === undefined
          ? []
          : faultsOf(boxDrawing(project, installation, box.id), box).map((fault) => `${box.name}: ${fault}`),
      ),
    );
    expect(faults).toEqual([]);
  },
);
