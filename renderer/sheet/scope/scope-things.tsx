import { memo } from "react";
import type { Role } from "../../../shared-model/answers/circuit.ts";
import type { DeviceDrawing, SpliceDrawing } from "../../../shared-model/geometry/box-drawing.ts";
import { SCOPE_LETTERS, type ScopeSign, type SpliceMark } from "../../../shared-model/geometry/scope/scope-drawing.ts";
import { textWidth } from "../../../shared-model/geometry/text-width.ts";
import { FlagShape } from "../../ui/flag.tsx";
import { DeviceShape } from "../draw/device-shape.tsx";
import { Letters } from "../draw/letters.tsx";
import { SpliceShape } from "../draw/splice-shape.tsx";
import { deviceKey, spliceKey } from "../letterings.ts";

/** Roles are not what is looked at. */
const NO_ROLE: Role | undefined = undefined;

/** Between a name and its flag. */
const GAP = 15;

/** A splice with its flag, and what it was called as found. */
export const ScopeSplice = memo(function ScopeSplice({
  splice,
  mark,
  chosen,
}: {
  readonly splice: SpliceDrawing;
  readonly mark: SpliceMark | undefined;
  readonly chosen: boolean;
}) {
  const { labelAt, name } = splice;
  const right = labelAt.x + textWidth(name, 15, 700) / 2 + GAP;
  return (
    <g className={mark?.sign === "new" ? "scope-new" : undefined}>
      <SpliceShape splice={splice} chosen={chosen} lifted={undefined} growing={false} role={NO_ROLE} fresh={false} />
      {mark && (
        <Letters of={spliceKey(splice.splice)} about={{ x: labelAt.x, y: labelAt.y + 17 }}>
          <FlagShape tone={mark.sign} letter={SCOPE_LETTERS[mark.sign]} x={right} y={labelAt.y - 5} />
          {mark.was !== undefined && (
            <text className="scope-was" x={right + 13} y={labelAt.y - 1}>
              {mark.was}
            </text>
          )}
        </Letters>
      )}
    </g>
  );
});

/** A device with its flag, where it is not simply kept. */
export const ScopeDevice = memo(function ScopeDevice({
  device,
  sign,
  chosen,
}: {
  readonly device: DeviceDrawing;
  readonly sign: ScopeSign;
  readonly chosen: boolean;
}) {
  const { labelAt, name, family, body } = device;
  const low = family === "breaker" || family === "fuse" || family === "neutral-bar" || family === "ground-bar";
  const at = low
    ? { x: body.x + body.width / 2, y: body.y }
    : { x: labelAt.x - textWidth(name, 15, 700) / 2 - GAP, y: labelAt.y - 5 };
  return (
    <g className={sign === "new" ? "scope-new" : undefined}>
      <DeviceShape device={device} chosen={chosen} fresh={false} replaces={undefined} />
      {sign !== "kept" && (
        <Letters of={deviceKey(device.device)} about={{ x: labelAt.x, y: labelAt.y + 19 }}>
          <FlagShape tone={sign} letter={SCOPE_LETTERS[sign]} x={at.x} y={at.y} />
        </Letters>
      )}
    </g>
  );
});
