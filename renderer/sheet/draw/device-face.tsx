import type { DeviceFamily } from "../../../shared-model/catalog/device-type.ts";
import type { DeviceDrawing, Rect } from "../../../shared-model/geometry/box-drawing.ts";
import { GlyphShape } from "./glyph-shape.tsx";
import { wording } from "./words.ts";

/** What a person would see of the device from the room, in the space that the drawing leaves for it. */
export function DeviceFace({ device }: { readonly device: DeviceDrawing }) {
  const { face, family } = device;
  if (PLAIN.has(family)) return null;
  if (face.height < 80 || face.width < 40) return <GlyphFace device={device} />;
  if (family === "receptacle" || family === "ground-fault-receptacle") return <OutletFace device={device} />;
  if (family === "switch") return <SwitchFace device={device} />;
  return <GlyphFace device={device} />;
}

/** Bars show their holes, breakers their names: there is nothing else to see. */
const PLAIN: ReadonlySet<DeviceFamily> = new Set(["neutral-bar", "ground-bar", "breaker", "fuse"]);

const middleOf = ({ x, y, width, height }: Rect) => ({ x: x + width / 2, y: y + height / 2 });

function GlyphFace({ device }: { readonly device: DeviceDrawing }) {
  const { face } = device;
  const { x, y } = middleOf(face);
  const plated = face.width >= 72 && face.height >= 72;
  const size = plated ? Math.min(54, face.width - 20, face.height - 20) : Math.min(40, face.width, face.height);
  if (size < 10) return null;
  return (
    <g>
      {plated && (
        <rect
          className="sheet-face"
          x={x - size / 2 - 10}
          y={y - size / 2 - 10}
          width={size + 20}
          height={size + 20}
          rx={7}
        />
      )}
      <GlyphShape id={device.glyph} x={x} y={y} size={size} />
    </g>
  );
}

function OutletFace({ device }: { readonly device: DeviceDrawing }) {
  const { face } = device;
  const { x, y } = middleOf(face);
  const senses = device.family === "ground-fault-receptacle";
  const width = Math.min(96, face.width);
  const height = Math.min(senses ? 130 : 150, face.height);
  const single = device.glyph === "receptacle-single";
  const earthed = device.glyph !== "receptacle-two-slot";
  const apart = senses ? height / 4 + 8 : height / 4;
  return (
    <g>
      <rect className="sheet-face" x={x - width / 2} y={y - height / 2} width={width} height={height} rx={7} />
      {(single ? [y] : [y - apart, y + apart]).map((at) => (
        <g key={at} className="sheet-slots">
          <rect x={x - 10} y={at - 13} width={3} height={14} rx={0.6} />
          <rect x={x + 7} y={at - 11.5} width={3} height={11} rx={0.6} />
          {earthed && <path d={`M${x - 4.4} ${at + 12}v-2.6a4.4 4.4 0 0 1 8.8 0v2.6z`} />}
        </g>
      ))}
      {senses && (
        <g className="sheet-face-button">
          <rect x={x - 44} y={y - 11} width={39} height={22} rx={3} />
          <text x={x - 24.5} y={y + 4}>
            {wording.test}
          </text>
          <rect x={x - 2} y={y - 11} width={46} height={22} rx={3} />
          <text x={x + 21} y={y + 4}>
            {wording.reset}
          </text>
        </g>
      )}
    </g>
  );
}

/** A toggle with its plate; a three-way handle carries no on and off. */
function SwitchFace({ device }: { readonly device: DeviceDrawing }) {
  const { face } = device;
  const { x, y } = middleOf(face);
  const marked = device.glyph === "switch" || device.glyph === "switch-pilot";
  const half = Math.min(58, face.height / 2);
  // Beside it stand the words of the terminals: COM is as wide as they come.
  const width = Math.min(52, face.width);
  return (
    <g>
      <rect className="sheet-face" x={x - width / 2} y={y - half} width={width} height={half * 2} rx={7} />
      <rect className="sheet-toggle-slot" x={x - 11} y={y - 24} width={22} height={48} rx={3} />
      <path className="sheet-toggle" d={`M${x - 8} ${y - 1}L${x - 6} ${y - 20}h12l2 19z`} />
      {marked && half >= 46 && (
        <text className="sheet-face-word" x={x} y={y - 32}>
          {wording.on}
        </text>
      )}
      {marked && half >= 46 && (
        <text className="sheet-face-word" x={x} y={y + 42}>
          {wording.off}
        </text>
      )}
    </g>
  );
}
