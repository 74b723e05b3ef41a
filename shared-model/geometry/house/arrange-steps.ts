import type { EnclosureId } from "../../model/ids.ts";
import type { Point, Project, StateName } from "../../model/project.ts";
import { findInstallation } from "../../queries/installation-of.ts";
import type { BoxMove } from "../arrange.ts";
import type { InSteps } from "../circuit/settle.ts";
import { layOutCircuit } from "../lay-out.ts";
import { arrangeHouse, type HouseOrder } from "./arrange-house.ts";

/** What is asked for, in the shape in which the window sends it. */
interface Asked {
  readonly order: HouseOrder | { readonly circuitOf: EnclosureId };
  readonly only?: readonly EnclosureId[];
  readonly places: Readonly<Record<EnclosureId, Point>>;
  readonly sizes: readonly (readonly [EnclosureId, number, number, number, number])[];
}

/** The work of arranging boxes of a state; undefined where the document has no such state. */
export function arrangeSteps(
  project: Project,
  state: StateName,
  { order, only, places, sizes }: Asked,
): InSteps<readonly BoxMove[]> | undefined {
  const installation = findInstallation(project, state);
  if (installation === undefined) return undefined;
  const enclosures = { ...project.layout.enclosures, ...places };
  const placed: Project = { ...project, layout: { ...project.layout, enclosures } };
  if (typeof order === "object") return layOutCircuit(placed, installation, order.circuitOf);
  return arrangeHouse(placed, installation, {
    order,
    sizes: new Map(sizes.map(([id, x, y, width, height]) => [id, { x, y, width, height }])),
    ...(only !== undefined && { only }),
  });
}
