import type { Severity } from "../../../shared-model/answers/finding.ts";

export type SignKind = Severity | "unknown";

const OCTAGON = "M-3.15 -7.6H3.15L7.6 -3.15V3.15L3.15 7.6H-3.15L-7.6 3.15V-3.15Z";

/** Each severity has its own outline and letter, so that colour may be taken away. Drawn about the origin, 16 du across. */
const SHAPES: Readonly<
  Record<SignKind, { readonly letter: string; readonly y: number; readonly outline: React.ReactNode }>
> = {
  danger: { letter: "D", y: 3.9, outline: <path d={OCTAGON} /> },
  violation: { letter: "V", y: 2.3, outline: <path d="M-8.3 -6.4H8.3L0 8.2Z" /> },
  caution: { letter: "C", y: 3.4, outline: <path d="M0 -8.4L8.4 0L0 8.4L-8.4 0Z" /> },
  advice: { letter: "A", y: 3.6, outline: <circle r={7.1} /> },
  unknown: { letter: "?", y: 3.7, outline: <circle r={7.1} strokeDasharray="2.6 2" /> },
};

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
  const shape = SHAPES[kind];
  return (
    <g className={`sheet-sign sheet-sign-${kind}`} transform={`translate(${x} ${y}) scale(${size / 16})`}>
      <circle className="sheet-sign-ring" r={10} />
      {shape.outline}
      <text y={shape.y}>{shape.letter}</text>
    </g>
  );
}
