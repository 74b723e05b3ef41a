import { useStore as useFlowStore } from "@xyflow/react";
import { useLayoutEffect, useRef } from "react";
import { linePath } from "../../../shared-model/geometry/line-path.ts";
import type { Installation, Point } from "../../../shared-model/model/project.ts";
import { answerWords } from "../../state/answer-words.ts";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { findingsStore } from "../../state/findings-store.ts";
import { useStore } from "../../state/use-store.ts";
import { answersBySubject } from "../finding-marks.ts";
import { boxName, cableName } from "../item-names.ts";
import { pixelOf } from "../over-boxes.tsx";
import { asButton } from "../svg-roles.ts";
import { boxWords } from "../to-flow.ts";
import { areaOf } from "./go.ts";
import { hereStore } from "./here.ts";
import type { Place } from "./place.ts";

interface RoadOf {
  readonly cable: string;
  readonly points: readonly Point[];
}

/**
 * A cable between boxes that keys have come to: the drawing has no element of its own for it, from afar all are one
 * shape. It takes the focus when it comes up.
 */
export function WalkStop({ roads }: { readonly roads: readonly RoadOf[] }) {
  const stop = useStore(hereStore, (here) => here.stop);
  return stop === undefined ? null : <Stop key={keyOf(stop)} stop={stop} roads={roads} />;
}

const keyOf = (stop: Place): string => `${stop.kind} ${stop.box} ${stop.kind === "cable" ? stop.cable : ""}`;

/** Pixels. */
const RING = 3;
const GLOW = 22;

function Stop({ stop, roads }: { readonly stop: Place; readonly roads: readonly RoadOf[] }) {
  const pixel = useFlowStore(pixelOf);
  const installation = useStore(documentStore, installationOf);
  const about = useStore(findingsStore, ({ findings, couldNotTell }) =>
    answerWords(answersBySubject(findings, couldNotTell).get(stop.kind === "cable" ? stop.cable : stop.box) ?? []),
  );
  const root = useRef<SVGGElement>(null);
  useLayoutEffect(() => root.current?.focus({ preventScroll: true }), []);
  const road = stop.kind === "cable" ? roads.find(({ cable }) => cable === stop.cable) : undefined;
  const path = road === undefined ? frameOf(stop) : linePath(road.points, 8 * pixel);
  return (
    <svg className="sheet-over sheet-walk" width="1" height="1" role="presentation">
      <g ref={root} {...asButton(wordsOf(installation, stop, about))} aria-haspopup="menu" data-walk-stop="">
        <path className="sheet-walk-glow" d={path} style={{ strokeWidth: GLOW * pixel }} />
        <path className="sheet-walk-line" d={path} style={{ strokeWidth: RING * pixel }} />
      </g>
    </svg>
  );
}

function frameOf({ box }: Place): string {
  const area = areaOf(box);
  return area === undefined ? "" : `M${area.x} ${area.y}h${area.width}v${area.height}h${-area.width}z`;
}

function wordsOf(installation: Installation, stop: Place, about: string): string {
  const box = installation.enclosures[stop.box];
  if (stop.kind === "cable") return cableName(installation, installation.cables[stop.cable], stop.cable, about);
  return box === undefined ? "" : boxName(box, boxWords(box), about);
}
