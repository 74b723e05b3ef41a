import type { BoxRoles } from "../../answers/circuit.ts";
import type { BoxDrawing, ConductorDrawing, SheathDrawing } from "../../geometry/box-drawing.ts";
import { isSheathBehind, protectedLimits } from "../../geometry/protected-limit.ts";
import type { DeviceId } from "../../model/ids.ts";
import type { Mark } from "../display-list.ts";
import { text } from "../marks.ts";
import { SECOND_INK } from "../page/inks.ts";
import { deviceMarks } from "./device.ts";
import { behindWords } from "./draw-words.ts";
import { bondMarks, capMarks, freeSlotMarks, limitMarks, plateMarks, spliceMarks, wallMarks } from "./parts.ts";
import { sheathMarks, sheathWords } from "./sheath.ts";
import { conductorMarks } from "./strand.ts";
import { trimmedInside } from "./trimmed-walls.ts";

export interface NearBox {
  readonly drawing: BoxDrawing;
  readonly roles?: BoxRoles | undefined;
  /** Names of outlets that a device protects beyond this box. */
  readonly protects: (device: DeviceId) => readonly string[];
  /** Of a sheath that ends on this page: true everywhere but where its road is drawn on. */
  readonly torn: (sheath: SheathDrawing) => boolean;
}

/** Grounds lie at the back as they are folded, neutrals above them, hots on top. */
const depth = ({ grounding, colour }: ConductorDrawing): number =>
  grounding ? 0 : colour === "white" || colour === "grey" ? 1 : 2;

/** Everything of a box as it is seen near, in drawing units, in drawing order; its header line is left to the page. */
export function nearBoxMarks({ drawing, roles, protects, torn }: NearBox): readonly Mark[] {
  const behind = roles?.behind;
  const limits = behind === undefined ? [] : protectedLimits(drawing, behind);
  const conductors = [...drawing.conductors].sort((a, b) => depth(a) - depth(b));
  const nameOf = (device: DeviceId): string => drawing.devices.find((each) => each.device === device)?.name ?? "";
  return [
    ...wallMarks(drawing, trimmedInside(drawing)),
    ...(drawing.freeSlots ?? []).flatMap(freeSlotMarks),
    ...limits.flatMap((limit, i) =>
      limitMarks(
        limit,
        limits[i - 1]?.device === limit.device ? undefined : behindWords(nameOf(limit.device), protects(limit.device)),
      ),
    ),
    ...drawing.sheaths.flatMap((sheath) =>
      sheathMarks(sheath, {
        torn: torn(sheath),
        guarded: behind !== undefined && isSheathBehind(drawing, sheath, (end) => behind[end] !== undefined),
      }),
    ),
    ...conductors.flatMap(conductorMarks),
    ...drawing.caps.flatMap(capMarks),
    ...conductors.flatMap(({ plates }) => plates.flatMap(plateMarks)),
    ...drawing.splices.flatMap(spliceMarks),
    ...drawing.devices.flatMap(deviceMarks),
    ...(drawing.bond === undefined ? [] : bondMarks(drawing.bond)),
    ...drawing.rings.map(({ text: words, at }) => text(words, at.x, at.y, { size: 12, ink: SECOND_INK })),
    ...drawing.sheaths.flatMap(sheathWords),
  ];
}
