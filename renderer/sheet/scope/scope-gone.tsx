import { useStore as useFlowStore, ViewportPortal } from "@xyflow/react";
import { memo, useEffect, useMemo } from "react";
import type { ScopeAnswer } from "../../../shared-model/answers/scope.ts";
import type { Rect } from "../../../shared-model/geometry/box-drawing.ts";
import { boxDrawing } from "../../../shared-model/geometry/draw-box.ts";
import { WALL } from "../../../shared-model/geometry/metrics.ts";
import { SCOPE_LETTERS } from "../../../shared-model/geometry/scope/scope-drawing.ts";
import type { CableId, EnclosureId } from "../../../shared-model/model/ids.ts";
import type { Point, Project } from "../../../shared-model/model/project.ts";
import { type DocumentState, documentStore } from "../../state/document-store.ts";
import { scopeStore, shownScope } from "../../state/scope/scope-store.ts";
import { placesOf } from "../../state/sheet-places.ts";
import { useStore } from "../../state/use-store.ts";
import { FlagShape } from "../../ui/flag.tsx";
import { stepNow, unitOf } from "../detail.ts";
import { showArea } from "../sheet-view.ts";
import { crossPath } from "./aside-shape.tsx";

interface Gone {
  readonly boxes: readonly { readonly id: EnclosureId; readonly name: string; readonly rect: Rect }[];
  readonly cables: readonly { readonly id: CableId; readonly name: string; readonly points: readonly Point[] }[];
}

/** Boxes and cables of as found that the work takes away: where they stood, with crosses. */
export const ScopeGone = memo(function ScopeGone() {
  const answer = useStore(scopeStore, shownScope);
  const project = useStore(documentStore, (document) => document.project);
  const gone = useMemo(() => (answer ? goneBy(answer, project) : undefined), [answer, project]);
  const step = useFlowStore(stepNow);
  const pressed = useStore(scopeStore, (state) => state.pressed);
  useEffect(() => {
    const meant = gone?.boxes.find(({ id }) => pressed.items.includes(`enclosure ${id}`));
    if (meant !== undefined) showArea(meant.rect);
  }, [gone, pressed]);
  if (gone === undefined || gone.boxes.length + gone.cables.length === 0) return null;
  const unit = step === 0 ? 1 : unitOf(step);
  return (
    <ViewportPortal>
      <svg className="scope-gone" width="1" height="1" aria-hidden="true">
        {gone.cables.map(({ id, points }) => (
          <g key={id} style={{ strokeWidth: 1.6 * unit }}>
            <path d={points.map(({ x, y }, i) => `${i === 0 ? "M" : "L"}${x} ${y}`).join("")} />
            <path d={crossPath(along(points, 22 * unit), 4 * unit)} />
          </g>
        ))}
        {gone.boxes.map(({ id, name, rect }) => (
          <g key={id} style={{ strokeWidth: 1.6 * unit }}>
            <rect {...rect} rx={3} />
            <path d={crossPath(along(outline(rect), 24 * unit), 4 * unit)} />
            <FlagShape
              tone="removed"
              letter={SCOPE_LETTERS.removed}
              x={rect.x + 9 * unit}
              y={rect.y - 12 * unit}
              size={unit}
            />
            <text x={rect.x + 22 * unit} y={rect.y - 7 * unit} fontSize={14 * unit}>
              {name}
            </text>
          </g>
        ))}
      </svg>
    </ViewportPortal>
  );
});

function goneBy({ boxes, elsewhere }: ScopeAnswer, project: Project): Gone {
  const asFound = { ...documentStore.get(), state: "as-found" } satisfies DocumentState;
  const places = placesOf(asFound);
  const rectOf = (id: EnclosureId): Rect | undefined => {
    const at = places[id];
    if (at === undefined || project.asFound.enclosures[id] === undefined) return undefined;
    const { width, height } = boxDrawing(project, project.asFound, id);
    return { x: at.x - WALL, y: at.y - WALL, width: width + 2 * WALL, height: height + 2 * WALL };
  };
  return {
    boxes: boxes.flatMap(({ enclosure: id, name, work }) => {
      const rect = work === "removed" ? rectOf(id) : undefined;
      return rect === undefined ? [] : [{ id, name, rect }];
    }),
    cables: elsewhere.flatMap(({ kind, item }) => {
      const id = item.id as CableId;
      const sides = kind === "removed" && item.kind === "cable" ? project.asFound.cables[id]?.sides : undefined;
      if (sides === undefined || !("enclosure" in sides.a) || !("enclosure" in sides.b)) return [];
      const [a, b] = [rectOf(sides.a.enclosure), rectOf(sides.b.enclosure)];
      return a === undefined || b === undefined ? [] : [{ id, name: item.name, points: between(a, b) }];
    }),
  };
}

/** From wall to wall: straight where the boxes stand beside or over each other, else level and then upright. */
function between(a: Rect, b: Rect): readonly Point[] {
  const y = shared(a.y, a.height, b.y, b.height);
  if (y !== undefined)
    return a.x < b.x
      ? [
          { x: a.x + a.width, y },
          { x: b.x, y },
        ]
      : [
          { x: a.x, y },
          { x: b.x + b.width, y },
        ];
  const x = shared(a.x, a.width, b.x, b.width);
  if (x !== undefined)
    return a.y < b.y
      ? [
          { x, y: a.y + a.height },
          { x, y: b.y },
        ]
      : [
          { x, y: a.y },
          { x, y: b.y + b.height },
        ];
  const [from, to] = [middle(a), middle(b)];
  return [
    { x: to.x < from.x ? a.x : a.x + a.width, y: from.y },
    { x: to.x, y: from.y },
    { x: to.x, y: to.y < from.y ? b.y + b.height : b.y },
  ];
}

/** The middle of what two spans have in common. */
function shared(a: number, long: number, b: number, other: number): number | undefined {
  const [from, to] = [Math.max(a, b), Math.min(a + long, b + other)];
  return from < to ? (from + to) / 2 : undefined;
}

const middle = ({ x, y, width, height }: Rect): Point => ({ x: x + width / 2, y: y + height / 2 });

const outline = ({ x, y, width, height }: Rect): readonly Point[] => [
  { x, y },
  { x: x + width, y },
  { x: x + width, y: y + height },
  { x, y: y + height },
  { x, y },
];

/** Points at even distances on a line. */
function along(points: readonly Point[], each: number): readonly Point[] {
  const found: Point[] = [];
  points.slice(1).forEach((to, i) => {
    const from = points[i];
    if (from === undefined) return;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const count = Math.floor(length / each);
    for (let k = 0; k < count; k++) {
      const share = (k + 0.5) / count;
      found.push({ x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share });
    }
  });
  return found;
}
