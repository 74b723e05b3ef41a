import "../css/placing.css";
import { useStore as useFlowStore, ViewportPortal } from "@xyflow/react";
import { useEffect, useMemo } from "react";
import { textWidth } from "../../../shared-model/geometry/text-width.ts";
import { documentStore } from "../../state/document-store.ts";
import { type PickAim, pickAimStore } from "../../state/pick-store.ts";
import { sessionStore } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { say } from "../gesture-store.ts";
import { laterWording } from "../later-words.ts";
import { GuideLines, pixelOf } from "../over-boxes.tsx";
import type { SheetDrawings } from "../sheet-drawings.ts";
import { bringAreaIntoView } from "../sheet-view.ts";
import { areaOfBoxes } from "../whole-of.ts";
import { type Aim, aimAt, aimNow, aimStore } from "./aim.ts";
import { freeSpot } from "./free-spot.ts";
import { inLines } from "./in-lines.ts";
import { aimOfListed, outlookOf } from "./outlook.ts";

const LETTERS = 12;
const LINE = 16;
/** Letters a line, about. */
const WIDE = 300;

const aimed = ({ aim }: ReturnType<typeof aimStore.get>): Aim | undefined => aim;
const toolOf = ({ tool }: ReturnType<typeof sessionStore.get>) => tool;
const fromOf = ({ routeFrom }: ReturnType<typeof sessionStore.get>) => routeFrom;

/** What would be placed, where it would come to lie, in what, and whether it may. */
export function PlacingGhost({ shown }: { readonly shown: SheetDrawings }) {
  const tool = useStore(sessionStore, toolOf);
  const from = useStore(sessionStore, fromOf);
  const aim = useStore(aimStore, aimed);
  useEffect(() => {
    // Before a pointer has aimed at anything, a box has the first free place in view.
    if (tool?.kind !== "enclosure" || aimNow() !== undefined) return;
    aimAt({ at: freeSpot(), enclosure: undefined, device: undefined, by: "keys" });
    say(laterWording.arrowKeysMoveIt);
  }, [tool]);
  const listed = useStore(pickAimStore, ({ aim: picked }) => picked);
  if (listed !== undefined) return <ListedGhost shown={shown} listed={listed} />;
  if (tool === undefined || aim === undefined || aim.tool !== tool || from !== undefined) return null;
  return <Ghost shown={shown} aim={aim} />;
}

/** What the line of a list would place that a person has come to: its box is brought into view. */
function ListedGhost({ shown, listed }: { readonly shown: SheetDrawings; readonly listed: PickAim }) {
  const aim = useMemo(() => aimOfListed(shown.document, listed), [shown.document, listed]);
  const { enclosure } = listed;
  useEffect(() => {
    const area = areaOfBoxes(documentStore.get(), [enclosure]);
    // Narrow, the window may have been scrolled down to its lists.
    document.querySelector(".sheet")?.scrollIntoView({ block: "nearest" });
    if (area !== undefined) bringAreaIntoView(area);
  }, [enclosure]);
  return aim && <Ghost shown={shown} aim={aim} />;
}

function Ghost({ shown: { document }, aim }: { readonly shown: SheetDrawings; readonly aim: Aim }) {
  const pixel = useFlowStore(pixelOf);
  const outlook = useMemo(() => outlookOf(document, aim), [document, aim]);
  if (outlook === undefined) return null;
  const { legal, words, at, into, part, line, guides, gaps } = outlook;
  const thick = { strokeWidth: 2.5 * pixel };
  const dashed = { strokeWidth: 2 * pixel, strokeDasharray: `${7 * pixel} ${5 * pixel}` };
  return (
    <ViewportPortal>
      <svg
        className={legal ? "sheet-placing" : "sheet-placing sheet-placing-no"}
        width="1"
        height="1"
        aria-hidden="true"
      >
        {into && <rect className="sheet-placing-into" {...grown(into, 5 * pixel)} rx={3 * pixel} style={thick} />}
        {line && (
          <path
            className="sheet-placing-line"
            d={`M${line.from.x} ${line.from.y}L${line.to.x} ${line.to.y}`}
            style={dashed}
          />
        )}
        {part && <rect className="sheet-placing-part" {...part} rx={6} style={dashed} />}
        <GuideLines guides={guides} gaps={gaps} pixel={pixel} />
        <Tag words={words} legal={legal} x={at.x} y={at.y} pixel={pixel} />
      </svg>
    </ViewportPortal>
  );
}

const grown = ({ x, y, width, height }: { x: number; y: number; width: number; height: number }, by: number) => ({
  x: x - by,
  y: y - by,
  width: width + 2 * by,
  height: height + 2 * by,
});

/** At the pointer, with a sign that does not need its colour: a tick, or a bar through a ring. */
function Tag({
  words,
  legal,
  x,
  y,
  pixel,
}: {
  readonly words: string;
  readonly legal: boolean;
  readonly x: number;
  readonly y: number;
  readonly pixel: number;
}) {
  const lines = inLines(words, WIDE, LETTERS);
  const width = Math.max(...lines.map((line) => textWidth(line, LETTERS, 600))) + 36;
  return (
    <g className="sheet-placing-tag" transform={`translate(${x + 14 * pixel} ${y + 16 * pixel}) scale(${pixel})`}>
      <rect width={width} height={lines.length * LINE + 6} rx={2} />
      <path d={legal ? "M8 11l3.5 4L17 7" : "M12.5 5.5a6 6 0 1 0 .01 0M8.3 15.7l8.4-8.4"} />
      {lines.map((line, i) => (
        <text key={line} x={24} y={15 + i * LINE} fontSize={LETTERS}>
          {line}
        </text>
      ))}
    </g>
  );
}
