/** Houses in two states, with their difference and the drawings of proposed. */
import type { ScopeBox } from "../../../shared-model/answers/scope.ts";
import { runCommand } from "../../../shared-model/commands/run-command.ts";
import type { BoxDrawing } from "../../../shared-model/geometry/box-drawing.ts";
import { boxDrawing } from "../../../shared-model/geometry/draw-box.ts";
import { scopeDrawing } from "../../../shared-model/geometry/scope/draw-scope.ts";
import type { ScopeDrawing } from "../../../shared-model/geometry/scope/scope-drawing.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { DeviceId, EndKey, JumperId } from "../../../shared-model/model/ids.ts";
import type { Project } from "../../../shared-model/model/project.ts";
import { scopeDifference } from "../../../shared-model/planning/scope/difference.ts";

export interface Scoped {
  readonly box: ScopeBox;
  readonly drawing: BoxDrawing;
  readonly scope: ScopeDrawing;
}

/** Every box of proposed that changes, drawn. */
export function scoped(project: Project): readonly Scoped[] {
  const { asFound, proposed } = project;
  if (proposed === undefined) throw new Error("Nothing is proposed.");
  return scopeDifference(asFound, proposed).boxes.flatMap((box) => {
    if (box.work === "removed") return [];
    const drawing = boxDrawing(project, proposed, box.enclosure);
    return [{ box, drawing, scope: scopeDrawing(drawing, box, asFound) }];
  });
}

export function scopedBox(project: Project, name: string): Scoped {
  const found = scoped(project).find(({ box }) => box.name === name);
  if (found === undefined) throw new Error(`${name} does not change.`);
  return found;
}

/** A copy in which proposed was started and some commands were run; what is refused is left out. */
export function withProposed(project: Project, calls: readonly Parameters<typeof runCommand>[1][]): Project {
  let now = project;
  for (const call of [{ command: "start-proposed", args: {} } as const, ...calls]) {
    const done = runCommand(now, call);
    if (done.ok) now = done.project;
  }
  return now;
}

/** In every box, the first end of every splice is taken out and capped: all of them have an old way. */
export function opened(project: Project): Project {
  const boxes: readonly Enclosure[] = Object.values(project.asFound.enclosures);
  return withProposed(
    project,
    boxes.flatMap(({ id, places, splices }) =>
      Object.keys(splices).flatMap((splice) => {
        const at = Object.entries(places).find(([, place]) => place.at.kind === "splice" && place.at.splice === splice);
        return at === undefined
          ? []
          : [{ command: "cap-end", args: { state: "proposed", enclosure: id, end: at[0] as EndKey } } as const];
      }),
    ),
  );
}

/** In every box, the devices and the jumpers are taken out: all of them are laid aside. */
export function emptied(project: Project): Project {
  const boxes: readonly Enclosure[] = Object.values(project.asFound.enclosures);
  return withProposed(
    project,
    boxes.flatMap(({ devices, jumpers }) =>
      [
        ...(Object.keys(jumpers) as JumperId[]).map((id) => ({ kind: "jumper", id }) as const),
        ...(Object.keys(devices) as DeviceId[]).map((id) => ({ kind: "device", id }) as const),
      ].map((item) => ({ command: "remove-items", args: { state: "proposed", items: [item] } }) as const),
    ),
  );
}
