import { type EndKey, parseEnd } from "../model/ids.ts";
import type { Project } from "../model/project.ts";
import { getEdition } from "../rules/editions/editions.ts";
import type { Section } from "../solver/section.ts";
import { compareWireSize, WIRE_SIZES, type WireSize } from "../units/wire-size.ts";
import type { LeastSizes } from "./groups-of-intent.ts";

/**
 * The least copper that the breaker ahead of some ends asks of a jumper, by the tables of the edition: for circuit
 * conductors and for grounds. Undefined where no breaker is drawn, its rating is not recorded, or the table ends before.
 */
export function leastSizes(project: Project, section: Section, hots: readonly EndKey[]): LeastSizes {
  const { values } = getEdition(project.edition);
  const on = new Set(hots.filter((end) => parseEnd(end)?.of === "cable"));
  const ratings = section
    .breakers()
    .filter(({ device }) => section.circuitOf(device.id).hotEnds.some((end) => on.has(end)))
    .flatMap(({ device }) => device.breakerRatingA ?? []);
  if (ratings.length === 0) return { circuit: undefined, ground: undefined };
  const rating = Math.max(...ratings);
  const limits = values.smallConductorAmps.value.copper;
  const circuit = [...WIRE_SIZES].sort(compareWireSize).find((awg) => (limits[awg] ?? 0) >= rating);
  const ground: WireSize | undefined = values.equipmentGrounds.value.find(({ upToA }) => rating <= upToA)?.copper;
  return { circuit, ground };
}
