import { flushSync } from "react-dom";
import { createRoot } from "react-dom/client";
import type { BoxDrawing, Rect } from "../../shared-model/geometry/box-drawing.ts";
import { hull } from "../../shared-model/geometry/free-group-place.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { documentStore, shownInstallation } from "../state/document-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { BoxHeader } from "./box-header.tsx";
import { WallPatterns, Walls } from "./draw/walls.tsx";
import { drawingOf } from "./drawings.ts";
import { laterWording } from "./later-words.ts";
import { RoadShape } from "./road-shape.tsx";
import { selfContained } from "./self-contained-svg.ts";
import { createRoads, type Road, type RoadMap } from "./sheet-roads.ts";
import { StillInside } from "./still-inside.tsx";

const AROUND = 40;
/** Points for each drawing unit, and the longest side of the picture in points. */
const DENSITY = 1.5;
const LONGEST = 6000;

interface Standing {
  readonly id: EnclosureId;
  readonly at: Point;
  readonly drawing: BoxDrawing;
}

/** Boxes as the sheet draws them near, with the cables between them, light whatever the window is, without the window. */
export async function drawBoxes(ids: readonly EnclosureId[]): Promise<{ readonly svg: string; readonly png: Blob }> {
  const document = documentStore.get();
  const places = placesOf(document);
  const standing = ids.flatMap((id): readonly Standing[] => {
    const at = places[id];
    const drawing = drawingOf(document, id);
    return at && drawing ? [{ id, at, drawing }] : [];
  });
  const drawings = new Map(standing.map(({ id, drawing }) => [id, drawing]));
  const map = createRoads()({ document, drawings, missing: 0 });
  const area = areaOf(standing, map.roads);
  const svg = rendered(<Picture standing={standing} map={map} area={area} />, selfContained);
  return { svg, png: await pointsOf(svg, area) };
}

function areaOf(standing: readonly Standing[], roads: readonly Road[]): Rect {
  const around = hull([
    ...standing.map(({ at, drawing: { bounds } }) => ({ ...bounds, x: at.x + bounds.x, y: at.y + bounds.y })),
    ...roads.flatMap(({ points }) => points.map((point) => ({ ...point, width: 0, height: 0 }))),
  ]);
  return {
    x: around.x - AROUND,
    y: around.y - AROUND,
    width: around.width + 2 * AROUND,
    height: around.height + 2 * AROUND,
  };
}

function Picture({
  standing,
  map,
  area,
}: {
  readonly standing: readonly Standing[];
  readonly map: RoadMap;
  readonly area: Rect;
}) {
  return (
    <>
      <WallPatterns />
      <svg
        className="sheet-box"
        viewBox={`${area.x} ${area.y} ${area.width} ${area.height}`}
        role="img"
        {...sizeOf(area)}
      >
        <title>{standing.map(({ drawing }) => drawing.header.name).join(", ")}</title>
        <g className="sheet-roads">
          {map.roads.map((road) => (
            <RoadShape
              key={road.cable}
              cable={road.cable}
              points={road.points}
              sheath={road.sheath}
              scale={map.scale}
              crossed={undefined}
              unit={0}
              chosen={false}
              guarded={false}
              fresh={false}
            />
          ))}
        </g>
        {standing.map(({ id, at, drawing }) => (
          <g key={id} transform={`translate(${at.x} ${at.y})`}>
            <Walls width={drawing.width} height={drawing.height} material={drawing.material} line={0} />
            <StillInside drawing={drawing} cables={shownInstallation().cables} />
            <BoxHeader drawing={drawing} ledger={undefined} marked={false} change={undefined} growth={1} />
          </g>
        ))}
      </svg>
    </>
  );
}

const sizeOf = ({ width, height }: Rect) => ({ width: Math.round(width), height: Math.round(height) });

/** Draws something out of sight, for as long as it is read. */
function rendered<T>(what: React.ReactNode, read: (svg: SVGSVGElement, around: Element) => T): T {
  const host = document.createElement("div");
  host.className = laterWording.sheetPictureBench;
  host.dataset.theme = "light";
  host.setAttribute("aria-hidden", "true");
  document.body.append(host);
  const root = createRoot(host);
  try {
    flushSync(() => root.render(what));
    const made = host.querySelector<SVGSVGElement>("svg.sheet-box");
    if (made === null) throw new Error("The picture was not drawn.");
    return read(made, host);
  } finally {
    root.unmount();
    host.remove();
  }
}

/** The picture in points, on paper. */
async function pointsOf(svg: string, area: Rect): Promise<Blob> {
  const density = Math.min(DENSITY, LONGEST / Math.max(area.width, area.height));
  const image = new Image();
  const address = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
  try {
    image.src = address;
    await image.decode();
    const canvas = document.createElement("canvas");
    canvas.width = Math.round(area.width * density);
    canvas.height = Math.round(area.height * density);
    const paper = canvas.getContext("2d");
    if (paper === null) throw new Error("This browser gives no place to draw on.");
    paper.fillStyle = "#fff";
    paper.fillRect(0, 0, canvas.width, canvas.height);
    paper.drawImage(image, 0, 0, canvas.width, canvas.height);
    return await new Promise<Blob>((done, fail) =>
      canvas.toBlob((blob) => (blob === null ? fail(new Error("The picture is too large.")) : done(blob)), "image/png"),
    );
  } finally {
    URL.revokeObjectURL(address);
  }
}
