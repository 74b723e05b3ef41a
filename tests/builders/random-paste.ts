import type { CommandArgs } from "../../shared-model/commands/command-args.ts";
import type { AnyId } from "../../shared-model/model/ids.ts";
import { emptyInstallation } from "../../shared-model/model/project.ts";
import { type CutOut, cutOut, isFromInside } from "../../shared-model/queries/cut-out.ts";
import { enclosureId, fresh, idsIn, item, point, type Scene } from "./random-scene.ts";

type Args = CommandArgs["paste-items"];

/** Every id in a cut-out, whatever it names. */
export function idsInCutOut({ asFound, rooms }: CutOut): readonly string[] {
  const { enclosures, cables, loads, labels } = asFound;
  const inside = Object.values(enclosures).flatMap((one) => [
    one.entries,
    one.devices,
    one.splices,
    one.jumpers,
    one.passThroughs,
    one.kind === "box" ? one.rings : {},
  ]);
  return [...new Set([rooms, enclosures, cables, loads, labels, ...inside].flatMap((table) => Object.keys(table)))];
}

/** A copy of anything in the drawing, most of the time with new ids for all of it, now and then for inside a box. */
export function randomPaste(scene: Scene): Args {
  const { pick, project, state } = scene;
  const source = pick.chance(0.2) ? "as-found" : state;
  const cut = cutOut(
    project,
    source,
    Array.from({ length: 1 + pick.below(6) }, () => item(scene)),
  );
  const ids = Object.fromEntries(
    (cut === undefined ? [] : idsInCutOut(cut)).flatMap((id, index) =>
      pick.chance(0.002) ? [] : [[id, pick.chance(0.001) ? fresh<AnyId>(scene, "") : `n${scene.index}x${index}`]],
    ),
  );
  const renamed = Object.keys(ids).filter(() => pick.chance(0.3));
  const inside = cut === undefined || isFromInside(cut) ? pick.chance(0.7) : pick.chance(0.02);
  return {
    state,
    from: cut?.asFound ?? emptyInstallation,
    rooms: cut?.rooms ?? {},
    layout: { enclosures: {}, splices: {}, cables: {}, ...pickLayout(cut) },
    ids,
    names: Object.fromEntries(renamed.map((id) => [id, `Copy ${scene.index}`])),
    at: point(scene),
    ...(inside && { into: pick.from(idsIn(project.asFound.enclosures), enclosureId(scene) as never) }),
    ...(pick.chance(0.5) && { as: "duplicate" as const }),
  };
}

const pickLayout = (cut: CutOut | undefined): Partial<Args["layout"]> =>
  cut === undefined
    ? {}
    : { enclosures: cut.layout.enclosures, splices: cut.layout.splices, cables: cut.layout.cables };
