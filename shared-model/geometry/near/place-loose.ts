import type { BoxPlan, Layer, LooseBody } from "./box-plan.ts";
import type { Rows } from "./rows.ts";

/** Caps stand this far inside their layer. */
export const CAP_INSET = 26;

/** From the left edge of a device layer: the bond stands away from the green screw's conductor, caps at the near edge. */
export function placeLoose(plan: BoxPlan): void {
  for (const body of plan.bodies) {
    const first = body.ports[0];
    const fromLeft = first?.port.facing === -1 || first?.net.alone;
    if (body.what === "bond") body.x = fromLeft ? 24 : 64;
    else body.x = fromLeft ? CAP_INSET : body.layer.width - CAP_INSET;
  }
}

/** A loose body takes the row of what it is joined to, or the nearest free one under the devices. */
export function placeBody(plan: BoxPlan, body: LooseBody, rows: ReadonlyMap<Layer, Rows>, under: number): void {
  const own = rows.get(body.layer);
  const first = body.ports[0];
  if (own === undefined || first === undefined) return;
  const other = first.net.a === first.port ? first.net.b : first.net.a;
  const fixed =
    !first.net.alone &&
    (other.what === "splice" || other.what === "wall" || (other.what === "hole" && plan.centre.length > 1));
  const least = body.layer.kind === "free" ? Number.NEGATIVE_INFINITY : under + 1;
  const wanted = Math.max(least, fixed ? other.row : under + 1);
  const count = first.net.alone ? 1 : body.ports.length;
  const [above, below] = body.what === "bond" ? [0, 1] : [0, 0];
  const fits = (row: number): boolean => {
    if (row - above < least - 1) return false;
    for (let each = row - above; each < row + count + below; each += 1) if (!own.isFree(each)) return false;
    return true;
  };
  for (let away = 0; ; away += 1) {
    const row = fits(wanted + away) ? wanted + away : fits(wanted - away) ? wanted - away : undefined;
    if (row === undefined) continue;
    body.row = row;
    body.ports.forEach(({ port }, index) => {
      port.row = first.net.alone ? row : row + index;
      if (index > 0 && !first.net.alone) port.holeRow = row;
    });
    own.block(row - above, row + count - 1 + below);
    return;
  }
}
