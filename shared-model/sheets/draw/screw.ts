import type { Finish } from "../../catalog/device-type.ts";
import type { Ink, Mark } from "../display-list.ts";
import { circle, path } from "../marks.ts";
import { INK, PAPER } from "../page/inks.ts";

/** A terminal by the trade's own marking: brass round with a slot, silver with a double ring, green a hexagon, dark filled. */
export function screwMarks(finish: Finish, x: number, y: number): readonly Mark[] {
  const fill: Ink = finish === "black" ? INK : PAPER;
  const stroke = { ink: INK, width: 1.3 } as const;
  return [
    finish === "green"
      ? path(
          `M${x + 8.96} ${y}L${x + 4.48} ${y + 7.76}L${x - 4.48} ${y + 7.76}L${x - 8.96} ${y}L${x - 4.48} ${y - 7.76}L${x + 4.48} ${y - 7.76}Z`,
          { fill, stroke },
        )
      : circle(x, y, 7.5, { fill, stroke }),
    ...(finish === "silver" ? [circle(x, y, 5.2, { stroke: { ink: INK, width: 0.8 } })] : []),
    path(`M${x - 4.65} ${y + 2.4}L${x + 4.65} ${y - 2.4}`, {
      stroke: { ink: finish === "black" ? PAPER : INK, width: 1.6, cap: "round" },
    }),
  ];
}
