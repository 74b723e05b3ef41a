import { Screw } from "./draw/screw.tsx";
import { SeveritySign } from "./draw/severity-sign.tsx";
import { type LandingTarget, RADIUS, UNDRAWN_RADIUS } from "./landing-targets.ts";
import { laterWording } from "./later-words.ts";
import { asButton } from "./svg-roles.ts";

/**
 * Places for what is held. Ring and dot: nothing against it; ring and severity sign: possible, that finding would follow;
 * struck ring: not possible. All stay pressable. At rest a sign is no larger than its place, so that none covers a
 * neighbour; under the pointer or the focus it grows, and what is known of it is written beside it.
 */
export function TargetLayer({ targets }: { readonly targets: readonly LandingTarget[] }) {
  return (
    <g className="sheet-targets">
      {targets.map((target) => (
        <Target key={target.key} target={target} />
      ))}
    </g>
  );
}

function Target({ target }: { readonly target: LandingTarget }) {
  const { verdict, at, kind } = target;
  const radius = target.undrawn ? UNDRAWN_RADIUS : RADIUS[kind];
  const capped = kind === "capped";
  return (
    <g
      {...asButton(targetWords(target))}
      aria-disabled={verdict.kind === "refused" ? true : undefined}
      className={`sheet-target sheet-target-${verdict.kind} nodrag nopan`}
      data-target={target.key}
      transform={`translate(${at.x} ${at.y})`}
    >
      <circle className="sheet-hit" r={radius} />
      <g className="sheet-target-sign">
        {verdict.kind === "refused" ? (
          <>
            <circle className="sheet-struck" r={radius - 1} />
            <path className="sheet-struck" d="M-4.5 4.5L4.5 -4.5" />
          </>
        ) : (
          <circle className="sheet-target-ring" r={radius - 1} />
        )}
        {capped && <path className="sheet-target-cap" d="M-7 -6h7a6 6 0 0 1 0 12h-7z" />}
        {target.undrawn && verdict.kind !== "refused" && <Screw finish="green" x={0} y={0} />}
        {verdict.kind === "open" && !capped && !target.undrawn && <circle className="sheet-target-dot" r={3.2} />}
        {verdict.kind === "finding" && <SeveritySign kind={verdict.severity} {...signAt(target)} />}
      </g>
    </g>
  );
}

/** In the ring; where the ring holds a picture of the place already, on its rim. */
const signAt = ({ kind, undrawn, outward }: LandingTarget) =>
  kind === "capped" || undrawn ? { x: outward * 10, y: -9, size: 10 } : { x: 0, y: 0, size: 10.5 };

/** "R1 LINE H, hole 2, free: possible", with the reason or the finding after it. */
export function targetWords({ name, note, verdict }: LandingTarget): string {
  const place = note === "" ? name : `${name}, ${note}`;
  if (verdict.kind === "refused") return laterWording.notPossible3(place, verdict.reason);
  if (verdict.kind === "finding") return laterWording.possibleWouldFollow(place, verdict.severity, verdict.message);
  if (verdict.kind === "open" && verdict.everywhere !== undefined)
    return laterWording.possibleAsEverywhere(place, verdict.everywhere.severity, verdict.everywhere.message);
  return laterWording.possible(place);
}
