import { Screw } from "./draw/screw.tsx";
import { SeveritySign } from "./draw/severity-sign.tsx";
import type { LandingTarget } from "./landing-targets.ts";
import { asButton } from "./svg-roles.ts";

/** Radius of the ring by what it is around. */
const RADIUS: Readonly<Record<LandingTarget["kind"], number>> = {
  terminal: 8,
  splice: 9,
  bond: 12,
  capped: 13,
  loose: 10,
  "new-splice": 10,
};

/**
 * Places for what is held. Ring and dot: nothing against it; ring and severity sign: possible, that finding would follow;
 * struck ring and reason: not possible. All stay pressable: a struck one answers with its reason.
 */
export function TargetLayer({
  targets,
  active,
}: {
  readonly targets: readonly LandingTarget[];
  /** Key of the one that Tab reaches. */
  readonly active: string | undefined;
}) {
  return (
    <g className="sheet-targets">
      {targets.map((target) => (
        <Target key={target.key} target={target} active={target.key === active} />
      ))}
    </g>
  );
}

function Target({ target, active }: { readonly target: LandingTarget; readonly active: boolean }) {
  const { verdict, at, kind, outward } = target;
  const radius = RADIUS[kind];
  const words = targetWords(target);
  const capped = kind === "capped";
  return (
    <g
      {...asButton(words, active)}
      aria-disabled={verdict.kind === "refused" ? true : undefined}
      className={`sheet-target sheet-target-${verdict.kind} nodrag nopan`}
      data-target={target.key}
      transform={`translate(${at.x} ${at.y})`}
    >
      <circle className="sheet-hit" r={Math.max(radius, 9)} />
      {verdict.kind === "refused" ? (
        <>
          <circle className="sheet-struck" r={7.5} />
          <path className="sheet-struck" d="M-5 5L5 -5" />
          <text className="sheet-target-reason" x={outward * 12} y={4} textAnchor={outward > 0 ? "start" : "end"}>
            {verdict.short}
          </text>
        </>
      ) : (
        <circle className="sheet-target-ring" r={radius} />
      )}
      {capped && <path className="sheet-target-cap" d="M-7 -6h7a6 6 0 0 1 0 12h-7z" />}
      {capped && (
        <text className="sheet-target-caption" y={28}>
          cap it
        </text>
      )}
      {target.undrawn && verdict.kind !== "refused" && <BondHint />}
      {verdict.kind === "open" && !capped && !target.undrawn && <circle className="sheet-target-dot" r={3.4} />}
      {verdict.kind === "finding" && <SeveritySign kind={verdict.severity} {...signAt(target, radius)} />}
      <title>{words}</title>
    </g>
  );
}

/** Beside its ring; under the code of the conductor where one comes into a terminal. */
const signAt = ({ kind, outward }: LandingTarget, radius: number) =>
  kind === "terminal" ? { x: outward * 19, y: 14 } : { x: outward * (radius + 13), y: 2 };

/** A bond screw where none is drawn yet. */
const BondHint = () => (
  <>
    <Screw finish="green" x={0} y={0} />
    <text className="sheet-target-caption" y={27}>
      box bond
    </text>
  </>
);

/** "R1 LINE H, hole 2, free: possible", with the reason or the finding after it. */
export function targetWords({ name, note, verdict }: LandingTarget): string {
  const place = note === "" ? name : `${name}, ${note}`;
  if (verdict.kind === "refused") return `${place}: not possible. ${verdict.reason}`;
  if (verdict.kind === "finding") return `${place}: possible, ${verdict.severity} would follow. ${verdict.message}`;
  return `${place}: possible`;
}
