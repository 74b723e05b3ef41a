/** How heavy a flag is: quiet, in a colour of its own, or filled. */
export type FlagTone = "kept" | "moved" | "removed" | "new";

/** A notched flag with its letter, 17 by 16 about a point: for drawings, and by `Flag` for lines of text. */
export function FlagShape({
  tone,
  letter,
  x = 0,
  y = 0,
  size = 1,
}: {
  readonly tone: FlagTone;
  readonly letter: string;
  readonly x?: number;
  readonly y?: number;
  /** How many times larger. */
  readonly size?: number;
}) {
  return (
    <g className={`flag flag-${tone}`} transform={`translate(${x} ${y})${size === 1 ? "" : ` scale(${size})`}`}>
      <path d="M-8 -8H9L6 0L9 8H-8Z" />
      <text x={-1} y={4}>
        {letter}
      </text>
    </g>
  );
}

/** A flag in a line of text. Decorative: words beside it say what it means. */
export function Flag({ tone, letter }: { readonly tone: FlagTone; readonly letter: string }) {
  return (
    <svg className="flag-sign" width={20} height={20} viewBox="-10 -10 20 20" aria-hidden="true">
      <FlagShape tone={tone} letter={letter} />
    </svg>
  );
}
