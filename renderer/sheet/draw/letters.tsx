import { createContext, type ReactNode, useContext } from "react";
import type { Point } from "../../../shared-model/model/project.ts";

const AS_DRAWN: ReadonlyMap<string, number> = new Map();

/** How many times larger letterings of a box are drawn, so that they can be read from where it is seen. */
export const LetterSizes = createContext<ReadonlyMap<string, number>>(AS_DRAWN);

export const useLetterSize = (key: string): number => useContext(LetterSizes).get(key) ?? 1;

/** Lines of text that grow about a point where there is room for it. */
export function Letters({
  of,
  about: { x, y },
  children,
}: {
  readonly of: string;
  readonly about: Point;
  readonly children: ReactNode;
}) {
  const size = useLetterSize(of);
  if (size === 1) return children;
  return <g transform={`translate(${x} ${y}) scale(${size}) translate(${-x} ${-y})`}>{children}</g>;
}
