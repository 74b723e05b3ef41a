import { memo, useMemo } from "react";
import type { ScopeBox } from "../../../shared-model/answers/scope.ts";
import type { BoxDrawing, ConductorDrawing } from "../../../shared-model/geometry/box-drawing.ts";
import { linePath } from "../../../shared-model/geometry/line-path.ts";
import {
  SCOPE_LETTERS,
  type ScopeDrawing,
  type ScopeSign,
} from "../../../shared-model/geometry/scope/scope-drawing.ts";
import { FlagShape } from "../../ui/flag.tsx";
import { BondShape, CapShape } from "../draw/bond-and-caps.tsx";
import { FreeSlot } from "../draw/free-slot.tsx";
import { CodePlate } from "../draw/plates.tsx";
import { SheathShape, SheathWords } from "../draw/sheath-shape.tsx";
import { FOR_EYES_ONLY } from "../svg-roles.ts";
import { AsideShape } from "./aside-shape.tsx";
import { ScopeDevice, ScopeSplice } from "./scope-things.tsx";
import { useScopeDrawing } from "./use-scope-drawing.ts";

interface Props {
  readonly drawing: BoxDrawing;
  /** Undefined where nothing changes: all is kept. */
  readonly box: ScopeBox | undefined;
  /** As for the inside of any box: "device d1", one a line. */
  readonly chosen: string;
}

/** Grounds at the back as ever; what stays under what moves, and what is new on top. */
const DEPTH: Readonly<Record<ScopeSign, number>> = { kept: 0, removed: 1, moved: 2, new: 3 };

/** The inside of a box of proposed as the work changes it, with what is taken out laid aside. */
export const ScopeInside = memo(function ScopeInside({ drawing, box, chosen }: Props) {
  const scope = useScopeDrawing(drawing, box);
  const picks = useMemo(() => new Set(chosen === "" ? [] : chosen.split("\n")), [chosen]);
  const lines = useMemo(
    () =>
      drawing.conductors
        .map((conductor, i) => ({ conductor, sign: scope?.lines[i] ?? ("kept" as const) }))
        .sort((a, b) => Number(b.conductor.grounding) - Number(a.conductor.grounding) || DEPTH[a.sign] - DEPTH[b.sign]),
    [drawing, scope],
  );
  const newCables = useMemo(() => cablesThatCome(box), [box]);
  return (
    <g className="scope-inside" {...FOR_EYES_ONLY}>
      {drawing.freeSlots?.map(({ slot, at }) => (
        <FreeSlot key={slot} slot={slot} at={at} />
      ))}
      {drawing.sheaths.map((sheath) => (
        <g
          key={`${sheath.cable}.${sheath.side}`}
          className={picks.has(`cable ${sheath.cable}`) ? "sheet-chosen" : undefined}
        >
          <SheathShape sheath={sheath} torn={false} guarded={false} fresh={newCables.has(sheath.cable)} />
        </g>
      ))}
      {scope?.ways.map(({ end, points }) => (
        <path key={end} className="scope-way" d={linePath(points)} />
      ))}
      {lines.map(({ conductor, sign }) => (
        <ScopeLine key={conductor.ends[0]} conductor={conductor} sign={sign} chosen={isChosen(conductor, picks)} />
      ))}
      {drawing.caps.map((cap) => (
        <CapShape key={cap.end} cap={cap} />
      ))}
      {drawing.conductors.map((conductor) =>
        conductor.plates.map((plate) => (
          <CodePlate key={`${conductor.ends[0]} ${plate.at.x} ${plate.at.y}`} plate={plate} />
        )),
      )}
      {drawing.splices.map((splice) => (
        <ScopeSplice
          key={splice.splice}
          splice={splice}
          mark={scope?.splices.get(splice.splice)}
          chosen={picks.has(`splice ${splice.splice}`)}
        />
      ))}
      {scope && <OpenPlaces scope={scope} />}
      {drawing.devices.map((device) => (
        <ScopeDevice
          key={device.device}
          device={device}
          sign={scope?.devices.get(device.device) ?? "kept"}
          chosen={picks.has(`device ${device.device}`)}
        />
      ))}
      {drawing.bond && <BondShape bond={drawing.bond} chosen={false} />}
      {drawing.rings.map((ring) => (
        <text key={ring.id} className="sheet-ring-text" x={ring.at.x} y={ring.at.y}>
          {ring.text}
        </text>
      ))}
      {drawing.sheaths.map((sheath) => (
        <SheathWords key={`${sheath.cable}.${sheath.side}`} sheath={sheath} fresh={newCables.has(sheath.cable)} />
      ))}
      {scope?.aside.map((aside) => (
        <AsideShape key={`${aside.kind} ${aside.id}`} aside={aside} />
      ))}
      {scope?.flags.map(({ sign, at }) => (
        <FlagShape key={`${at.x} ${at.y}`} tone={sign} letter={SCOPE_LETTERS[sign]} x={at.x} y={at.y} />
      ))}
    </g>
  );
});

function isChosen({ ends, jumper }: ConductorDrawing, picks: ReadonlySet<string>): boolean {
  return ends.some((end) => picks.has(`end ${end}`)) || (jumper !== undefined && picks.has(`jumper ${jumper}`));
}

/** One thin line, a double line, or a heavy one: told apart without colour. */
const ScopeLine = memo(function ScopeLine({
  conductor: { points, fanPoints },
  sign,
  chosen,
}: {
  readonly conductor: ConductorDrawing;
  readonly sign: ScopeSign;
  readonly chosen: boolean;
}) {
  const path = linePath(points);
  const halo = fanPoints > 1 ? linePath(points.slice(fanPoints - 1)) : path;
  return (
    <g>
      <path d={halo} className="scope-halo" />
      {chosen && <path d={path} className="sheet-chosen-line" />}
      <path d={path} className={`scope-line scope-line-${sign}`} />
      {sign === "moved" && <path d={path} className="scope-line-middle" />}
    </g>
  );
});

/** The places that moved ends leave, each an open port. */
function OpenPlaces({ scope: { capsules, ports } }: { readonly scope: ScopeDrawing }) {
  return (
    <>
      {capsules.map(({ x, y, width, height }) => (
        <path
          key={`${x} ${y}`}
          className="scope-capsule"
          d={`M${x} ${y + 4.5}V${y + height - width / 2}a${width / 2} ${width / 2} 0 0 0 ${width} 0V${y + 4.5}`}
        />
      ))}
      {ports.map(({ x, y }) => (
        <circle key={`${x} ${y}`} className="scope-port" cx={x} cy={y} r={3.9} />
      ))}
    </>
  );
}

/** Cables of which every end here is new. */
function cablesThatCome(box: ScopeBox | undefined): ReadonlySet<string> {
  const all = new Map<string, boolean>();
  for (const { item, owner, kind } of box?.changes ?? [])
    if (item.kind === "end" && owner?.kind === "cable")
      all.set(owner.id, (all.get(owner.id) ?? true) && (kind === "new" || kind === "replaced"));
  return new Set([...all].flatMap(([cable, isNew]) => (isNew ? [cable] : [])));
}
