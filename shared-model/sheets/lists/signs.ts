import type { Severity } from "../../answers/finding.ts";
import type { ScopeKind } from "../../answers/scope.ts";
import type { EvidenceMark } from "../../model/evidence.ts";
import type { Mark, Stroke } from "../display-list.ts";
import { circle, line, path, rect, text, tidy } from "../marks.ts";
import { INK, PAPER } from "../page/inks.ts";

/** A drawn sign about its own origin, as a cell of a table sets it before its words. */
export interface Sign {
  readonly marks: readonly Mark[];
  readonly width: number;
}

const OUTLINE: Stroke = { ink: INK, width: 0.3 };
const SIZE = 3.6;

/** The outlines of road signs, so that no colour is needed; the letter stands for the word. */
export function severitySign(severity: Severity | "cannot-tell"): Sign {
  const r = SIZE / 2;
  switch (severity) {
    case "danger":
      return signOf([path(polygon(8, r, Math.PI / 8), { fill: INK })], "D", true);
    case "violation":
      return signOf(
        [path(`M${-r - 0.2} ${-r + 0.2}H${r + 0.2}L0 ${r}Z`, { fill: INK, stroke: { ...OUTLINE, join: "round" } })],
        "V",
        true,
        -0.5,
      );
    case "caution":
      return signOf([path(polygon(4, r + 0.35, 0), { fill: PAPER, stroke: OUTLINE })], "C");
    case "advice":
      return signOf([circle(0, 0, r, { fill: PAPER, stroke: OUTLINE })], "A");
    case "cannot-tell":
      return signOf([circle(0, 0, r, { fill: PAPER, stroke: { ...OUTLINE, dash: [0.7, 0.5] } })], "?");
  }
}

const polygon = (corners: number, radius: number, turn: number): string =>
  `${Array.from({ length: corners }, (_, i) => {
    const angle = turn + (i * 2 * Math.PI) / corners;
    return `${i === 0 ? "M" : "L"}${tidy(radius * Math.cos(angle))} ${tidy(radius * Math.sin(angle))}`;
  }).join("")}Z`;

const LETTER = 2.3;

const signOf = (marks: readonly Mark[], letter: string, isFilled = false, up = 0): Sign => ({
  width: SIZE + 0.4,
  marks: [
    ...marks,
    text(letter, 0, 0.334 * LETTER + up, {
      size: LETTER,
      weight: 700,
      anchor: "middle",
      ink: isFilled ? PAPER : INK,
    }),
  ],
});

/** Letters on the notched flags of the scope; the first four are those that the sheet draws. */
export const SCOPE_LETTERS: Readonly<Record<ScopeKind, string>> = {
  kept: "K",
  moved: "M",
  removed: "R",
  new: "N",
  replaced: "N",
  relabelled: "L",
  changed: "C",
};

const [FLAG_WIDTH, FLAG_HEIGHT, NOTCH] = [4.4, 3.8, 1];

const flagPath = (): string => {
  const [x, y] = [FLAG_WIDTH / 2, FLAG_HEIGHT / 2];
  return `M${tidy(-x)} ${tidy(-y)}H${tidy(x)}L${tidy(x - NOTCH)} 0L${tidy(x)} ${tidy(y)}H${tidy(-x)}Z`;
};

/** Kept: one thin line. Moved: a double line at the staff. Removed: crosses on the staff. New: filled. */
export function scopeFlag(kind: ScopeKind): Sign {
  const isFilled = kind === "new" || kind === "replaced";
  const outline = kind === "kept" ? { ink: INK, width: 0.2 } : OUTLINE;
  return {
    width: FLAG_WIDTH,
    marks: [
      path(flagPath(), { fill: isFilled ? INK : PAPER, stroke: outline }),
      ...(kind === "moved"
        ? [line(-FLAG_WIDTH / 2 + 0.6, -FLAG_HEIGHT / 2, -FLAG_WIDTH / 2 + 0.6, FLAG_HEIGHT / 2, OUTLINE)]
        : []),
      ...(kind === "removed" ? [-1.2, 0, 1.2].map((y) => cross(-FLAG_WIDTH / 2, y)) : []),
      ...(kind === "changed" || kind === "relabelled"
        ? [rect({ x: -FLAG_WIDTH / 2, y: -FLAG_HEIGHT / 2, width: 0.7, height: FLAG_HEIGHT }, { fill: INK })]
        : []),
      text(SCOPE_LETTERS[kind], -0.1, 0.334 * LETTER, {
        size: LETTER,
        weight: 700,
        anchor: "middle",
        ink: isFilled ? PAPER : INK,
      }),
    ],
  };
}

function cross(x: number, y: number): Mark {
  const arm = 0.4;
  return path(
    `M${tidy(x - arm)} ${tidy(y - arm)}L${tidy(x + arm)} ${tidy(y + arm)}M${tidy(x + arm)} ${tidy(y - arm)}L${tidy(x - arm)} ${tidy(y + arm)}`,
    { stroke: { ink: INK, width: 0.25 } },
  );
}

/** A piece of conductor as the scope draws it, for the legend. */
export function scopeLine(kind: "kept" | "moved" | "old-way" | "removed" | "new", length = 14): Sign {
  const half = length / 2;
  const across = (y: number, stroke: Stroke): Mark => line(-half, y, half, y, stroke);
  const marks: Readonly<Record<typeof kind, readonly Mark[]>> = {
    kept: [across(0, { ink: INK, width: 0.2 })],
    moved: [across(-0.4, { ink: INK, width: 0.25 }), across(0.4, { ink: INK, width: 0.25 })],
    "old-way": [
      across(0, { ink: INK, width: 0.3, dash: [1.4, 1] }),
      circle(half - 0.6, 0, 0.6, { stroke: { ...OUTLINE, dash: [0.5, 0.4] } }),
    ],
    removed: [across(0, { ink: INK, width: 0.25 }), cross(-half / 2, 0), cross(0, 0), cross(half / 2, 0)],
    new: [across(0, { ink: INK, width: 0.9 })],
  };
  return { width: length, marks: marks[kind] };
}

/** Small letter after a fact: how it is known. */
export const EVIDENCE_LETTERS: Readonly<Record<EvidenceMark, string>> = {
  measured: "m",
  seen: "s",
  told: "t",
  assumed: "a",
  unknown: "?",
};
