import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { boxId } from "../builders/drawing.ts";
import { Drawing } from "../builders/drawing-by-commands.ts";
import { down, intent, workedBox } from "../planning/worked-boxes.ts";

const LEGS = Array.from({ length: 11 }, (_, index) => `V${index + 2}`);

export const FULL_BOX: EnclosureId = boxId("BX");

/** A box of 12 cables and a ground-fault device; every second run is to be protected. */
export const fullIntent = intent("V1", { downstream: LEGS.map((cable, index) => down(cable, index % 2 === 0)) });

/** `joined`: all conductors of a colour in one joint beforehand. */
export function fullBox(joined: boolean): Project {
  const project = workedBox({
    in3: 120,
    supply: "nm-12-2-g",
    legs: Object.fromEntries(LEGS.map((name) => [name, {}])),
    devices: { GD: "gfci-receptacle-20" },
  });
  if (!joined) return project;
  const box = new Drawing(project, "as-found");
  for (const conductor of ["bk", "wh", "cu"])
    box.splice(conductor, "BX", "unknown", ...["V1", ...LEGS].map((name) => `${name}.${conductor}@BX`));
  return box.project;
}
