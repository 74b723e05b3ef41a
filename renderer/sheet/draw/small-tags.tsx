import type { Role } from "../../../shared-model/answers/circuit.ts";
import { ROLE_TAGS } from "../../state/role-tags.ts";
import { GlyphShape } from "./glyph-shape.tsx";

/** The flag of what is new against as found. */
export const NewFlag = ({ x, y, size = 18 }: { readonly x: number; readonly y: number; readonly size?: number }) => (
  <GlyphShape id="scope-new" x={x} y={y} size={size} />
);

export const ROLE_TAG = 14;

/** The role of a joint as the checks found it: a letter in a square, its edge broken where it is not always live. */
export function RoleTag({ role, x, y }: { readonly role: Role; readonly x: number; readonly y: number }) {
  return (
    <g className={`sheet-role sheet-role-${role}`} transform={`translate(${x} ${y})`}>
      <rect x={-ROLE_TAG / 2} y={-ROLE_TAG / 2} width={ROLE_TAG} height={ROLE_TAG} rx={2} />
      <text y={4}>{ROLE_TAGS[role].letter}</text>
    </g>
  );
}
