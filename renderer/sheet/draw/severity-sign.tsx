import { SIGN_SHAPES, type SignKind } from "../../../shared-model/geometry/sign-shapes.ts";

/** Severity sign as part of a drawing, centred at a point, on a ring of paper. */
export function SeveritySign({
  kind,
  x,
  y,
  size = 16,
}: {
  readonly kind: SignKind;
  readonly x: number;
  readonly y: number;
  readonly size?: number;
}) {
  const shape = SIGN_SHAPES[kind];
  return (
    <g className={`sheet-sign sheet-sign-${kind}`} transform={`translate(${x} ${y}) scale(${size / 16})`}>
      <circle className="sheet-sign-ring" r={10} />
      <path d={shape.path} strokeDasharray={shape.dash?.join(" ")} />
      <text y={shape.y}>{shape.letter}</text>
    </g>
  );
}
