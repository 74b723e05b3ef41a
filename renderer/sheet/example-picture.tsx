import { useMemo } from "react";
import type { Finding } from "../../shared-model/answers/finding.ts";
import type { ExampleBox, ExampleFinding } from "../../shared-model/answers/rule-examples.ts";
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import type { Point, Project } from "../../shared-model/model/project.ts";
import { BoxHeader } from "./box-header.tsx";
import { LetterSizes } from "./draw/letters.tsx";
import { SeveritySign } from "./draw/severity-sign.tsx";
import { Walls } from "./draw/walls.tsx";
import { answersAbout, answersBySubject, type FindingMark, findingMarks } from "./finding-marks.ts";
import { laterWording } from "./later-words.ts";
import { letterSizes } from "./letter-sizes.ts";
import { StillInside } from "./still-inside.tsx";
import { FOR_EYES_ONLY } from "./svg-roles.ts";

/** Larger than on the sheet, as a picture is often shown smaller than it is; signs stand a little off for that. */
const SIGN = 24;
const ASIDE = 7;
/** Letters as well, where there is room for it. */
const LETTERS = 1.5;
/** Room for the make of a box where it stands over its name. */
const ABOVE = 14;
/** How much larger than on the sheet it may be shown. */
const MOST = 1.05;

/** Beside what it is about, and not on its name: over a conductor, under the outer end of a cable. */
function signAt({ at, onHeader, subject: { kind } }: FindingMark, { width }: BoxDrawing): Point {
  if (onHeader) return at;
  if (kind === "end" || kind === "jumper") return { x: at.x, y: at.y - 3 * ASIDE };
  if (kind !== "cable" && kind !== "entry") return { x: at.x + 1.5 * ASIDE, y: at.y - ASIDE / 2 };
  return { x: at.x + (at.x > width / 2 ? -2 : 2) * ASIDE, y: at.y + 3 * ASIDE };
}

/** The sign says nothing: what is wrong stands beside the picture. */
const asFinding = (known: ExampleFinding): Finding => ({
  ...known,
  key: "",
  rule: "",
  status: "draft",
  state: "as-found",
  message: "",
  numbers: {},
  folded: 0,
  foldedSubjects: [],
});

interface Props {
  readonly project: Project;
  readonly box: ExampleBox;
  readonly findings: readonly ExampleFinding[];
  /** Width of the widest picture beside it: all are shown at one scale. */
  readonly widest: number;
}

/** One box of a drawing that is not open, as the sheet draws it near, with the signs of what is found there. */
export function ExamplePicture({ project, box, findings, widest }: Props) {
  const { id, ledger, roles, protects } = box;
  const installation = project.asFound;
  const drawing = useMemo(() => boxDrawing(project, installation, id), [project, installation, id]);
  const marks = useMemo(() => {
    const enclosure = installation.enclosures[id];
    return enclosure
      ? findingMarks(drawing, answersAbout(enclosure, answersBySubject(findings.map(asFinding), [])))
      : [];
  }, [drawing, findings, installation, id]);
  const letters = useMemo(() => {
    const taken = marks.map((mark) => signAt(mark, drawing));
    return letterSizes(drawing, LETTERS, taken);
  }, [drawing, marks]);
  const { x, y, width, height } = drawing.bounds;
  const { name, note } = drawing.header;
  return (
    <svg
      className="sheet-box example-picture"
      viewBox={`${x} ${y - ABOVE} ${width} ${height + ABOVE}`}
      style={{ width: `${(100 * width) / widest}%`, maxWidth: width * MOST }}
      role="img"
    >
      <title>{marks.length === 0 ? `${name}, ${note}` : laterWording.withTheSignOfTheFinding(name, note)}</title>
      <Walls width={drawing.width} height={drawing.height} material={drawing.material} line={0} />
      <LetterSizes value={letters}>
        <StillInside drawing={drawing} roles={roles} protects={protects} cables={installation.cables} />
      </LetterSizes>
      <BoxHeader
        drawing={drawing}
        ledger={ledger}
        marked={marks.some((mark) => mark.onHeader)}
        change={undefined}
        growth={1.3}
      />
      <g {...FOR_EYES_ONLY}>
        {marks.map((mark) => (
          <SeveritySign key={mark.key} kind={mark.worst} {...signAt(mark, drawing)} size={SIGN} />
        ))}
      </g>
    </svg>
  );
}
