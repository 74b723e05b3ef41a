import type { Severity } from "../model/severity.ts";

export type SignKind = Severity | "unknown";

const OCTAGON = "M-3.15 -7.6H3.15L7.6 -3.15V3.15L3.15 7.6H-3.15L-7.6 3.15V-3.15Z";
const CIRCLE = "M7.1 0A7.1 7.1 0 0 1 -7.1 0A7.1 7.1 0 0 1 7.1 0Z";

/** Each severity has its own outline and letter, so that colour may be taken away. Drawn about the origin, 16 du across. */
export const SIGN_SHAPES: Readonly<
  Record<
    SignKind,
    { readonly letter: string; readonly y: number; readonly path: string; readonly dash?: readonly [number, number] }
  >
> = {
  danger: { letter: "D", y: 3.9, path: OCTAGON },
  violation: { letter: "V", y: 2.3, path: "M-8.3 -6.4H8.3L0 8.2Z" },
  caution: { letter: "C", y: 3.4, path: "M0 -8.4L8.4 0L0 8.4L-8.4 0Z" },
  advice: { letter: "A", y: 3.6, path: CIRCLE },
  unknown: { letter: "?", y: 3.7, path: CIRCLE, dash: [2.6, 2] },
};
