import "./css/page.css";
import "./css/box.css";
import "./css/wiring.css";
import "./css/marks.css";
import { useMemo } from "react";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Project, StateName } from "../../shared-model/model/project.ts";
import { getInstallation } from "../../shared-model/queries/installation-of.ts";
import { BoxHeader } from "./box-header.tsx";
import { WallPatterns, Walls } from "./draw/walls.tsx";
import { StillInside } from "./still-inside.tsx";
import { wording } from "./words.ts";

interface Props {
  readonly project: Project;
  readonly state: StateName;
  readonly id: EnclosureId;
}

/** One box of a document that need not be open, as the sheet draws it near, to look at. */
export default function BoxPicture({ project, state, id }: Props) {
  const drawing = useMemo(() => boxDrawing(project, getInstallation(project, state), id), [project, state, id]);
  const { x, y, width, height } = drawing.bounds;
  const { name, note } = drawing.header;
  return (
    <>
      <WallPatterns />
      <svg className="sheet-box box-picture" viewBox={`${x} ${y} ${width} ${height}`} role="img">
        <title>{wording.asItWillBeDrawn(name, note)}</title>
        <Walls width={drawing.width} height={drawing.height} material={drawing.material} line={0} />
        <StillInside drawing={drawing} />
        <BoxHeader drawing={drawing} ledger={undefined} marked={false} change={undefined} growth={1} />
      </svg>
    </>
  );
}
