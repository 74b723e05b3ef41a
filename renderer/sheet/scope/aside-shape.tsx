import type { Aside } from "../../../shared-model/geometry/scope/scope-drawing.ts";
import { SCOPE_LETTERS } from "../../../shared-model/geometry/scope/scope-drawing.ts";
import type { Point } from "../../../shared-model/model/project.ts";
import { scopeStore } from "../../state/scope/scope-store.ts";
import { useStore } from "../../state/use-store.ts";
import { FlagShape } from "../../ui/flag.tsx";
import { GlyphShape } from "../draw/glyph-shape.tsx";

const CROSS = 3.4;

export const crossPath = (points: readonly Point[], arm = CROSS): string =>
  points
    .map(({ x, y }) => `M${x - arm} ${y - arm}l${2 * arm} ${2 * arm}M${x + arm} ${y - arm}l${-2 * arm} ${2 * arm}`)
    .join("");

/** A thing that is taken out: its outline with crosses, laid aside at the edge of the box. */
export function AsideShape({ aside }: { readonly aside: Aside }) {
  const { kind, id, name, shape, crosses, flagAt, nameAt, glyph, area } = aside;
  const shown = useStore(scopeStore, (state) => state.pressed.items.includes(`${kind} ${id}`));
  const middle = { x: shape.x + shape.width / 2, y: shape.y + shape.height / 2 };
  return (
    <g className="scope-aside">
      {shown && (
        <rect
          className="scope-shown"
          x={area.x - 5}
          y={area.y - 5}
          width={area.width + 10}
          height={area.height + 10}
          rx={4}
        />
      )}
      {kind === "jumper" || kind === "cable" ? (
        <path className={`scope-aside-${kind}`} d={`M${shape.x} ${middle.y}h${shape.width}`} />
      ) : (
        <rect {...shape} rx={kind === "splice" ? shape.width / 2 : 8} />
      )}
      {glyph !== undefined && shape.height > 40 && <GlyphShape id={glyph} x={middle.x} y={middle.y} size={38} />}
      <path className="scope-crosses" d={crossPath(crosses)} />
      <FlagShape tone="removed" letter={SCOPE_LETTERS.removed} x={flagAt.x} y={flagAt.y} />
      <text x={nameAt.x} y={nameAt.y}>
        {name}
      </text>
    </g>
  );
}
