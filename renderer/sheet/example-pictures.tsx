import "./css/page.css";
import "./css/box.css";
import "./css/wiring.css";
import "./css/marks.css";
import "./css/examples.css";
import { useMemo } from "react";
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import type { RuleExample, ShownSide } from "../state/rule-examples.ts";
import { WallPatterns } from "./draw/walls.tsx";
import { ExamplePicture } from "./example-picture.tsx";
import { laterWording } from "./later-words.ts";

/** How small a picture may become before its letters are hard to read: then the two stand one below the other. */
const LEAST = 0.58;
/** What stands beside a picture in its frame. */
const FRAME = 34;

interface Props {
  readonly example: RuleExample;
  /** What to look at. */
  readonly wrong: string;
  readonly right: string;
}

/** A drawing that breaks a rule beside one that keeps it. */
export default function ExamplePictures({ example, wrong, right }: Props) {
  const widest = useMemo(() => Math.max(...widths(example.wrong), ...widths(example.right)), [example]);
  const alike = useMemo(() => areAlike(example), [example]);
  const least = Math.round(widest * LEAST + FRAME);
  return (
    <div className="examples" style={{ gridTemplateColumns: `repeat(auto-fit, minmax(min(100%, ${least}px), 1fr))` }}>
      <WallPatterns />
      <Side title={laterWording.wrong} says={wrong} side={example.wrong} widest={widest} />
      <Side title={laterWording.right} says={right} side={example.right} widest={widest} />
      {alike && <p className="examples-alike">{laterWording.bothAreDrawnAlikeTheDifference}</p>}
    </div>
  );
}

const drawingsOf = ({ project, boxes }: ShownSide): readonly BoxDrawing[] =>
  boxes.map(({ id }) => boxDrawing(project, project.asFound, id));

/** A cover, a listing, a length: no line shows it. */
const areAlike = ({ wrong, right }: RuleExample): boolean =>
  JSON.stringify(drawingsOf(wrong)) === JSON.stringify(drawingsOf(right));

const widths = (side: ShownSide): readonly number[] => drawingsOf(side).map(({ bounds }) => bounds.width);

interface SideProps {
  readonly title: string;
  readonly says: string;
  readonly side: ShownSide;
  readonly widest: number;
}

function Side({ title, says, side: { project, boxes, findings }, widest }: SideProps) {
  return (
    <figure className={`example ${title.toLowerCase()}`}>
      <figcaption>
        <strong>{title}</strong> {says}
      </figcaption>
      {boxes.map((box) => (
        <ExamplePicture key={box.id} project={project} box={box} findings={findings} widest={widest} />
      ))}
    </figure>
  );
}
