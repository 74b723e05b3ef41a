import { type ReactFlowState, useStore as useFlow } from "@xyflow/react";
import { useEffect, useRef } from "react";
import { energiseStore, type LeadName } from "../../state/energise/energise-store.ts";
import { useStore } from "../../state/use-store.ts";

const LEADS: readonly LeadName[] = ["COM", "V"];
const viewOf = ({ transform }: ReactFlowState) => transform;
const nodesOf = ({ nodes }: ReactFlowState) => nodes;

/** The cords of the meter, from its card to the probes that are in sight. They follow every move of either. */
export function MeterCords() {
  const layer = useRef<SVGSVGElement>(null);
  useStore(energiseStore, (state) => state.leads);
  useStore(energiseStore, (state) => state.answer);
  useFlow(viewOf);
  useFlow(nodesOf);
  useEffect(() => {
    lay(layer.current);
    // Boxes that come into sight are drawn after this.
    const frame = requestAnimationFrame(() => lay(layer.current));
    return () => cancelAnimationFrame(frame);
  });
  useEffect(() => {
    const watch = new ResizeObserver(() => lay(layer.current));
    if (layer.current !== null) watch.observe(layer.current);
    return () => watch.disconnect();
  }, []);
  return (
    <svg ref={layer} className="sheet-cords" aria-hidden="true">
      {LEADS.map((lead) => (
        <g key={lead} className={`sheet-cord sheet-cord-${lead}`}>
          <path className="sheet-cord-casing" />
          <path className="sheet-cord-core" />
        </g>
      ))}
    </svg>
  );
}

/** Measures where card and probes are now: probes stand in the boxes, which the sheet moves without drawing them again. */
function lay(layer: SVGSVGElement | null): void {
  const sheet = layer?.closest(".sheet");
  const card = sheet?.querySelector(".sheet-meter")?.getBoundingClientRect();
  if (!layer || !sheet || !card) return;
  const origin = layer.getBoundingClientRect();
  for (const lead of LEADS) {
    const butt = sheet.querySelector(`[data-lead="${lead}"]`)?.getBoundingClientRect();
    const path = butt === undefined ? "" : cord(lead, card, butt, origin);
    for (const line of layer.querySelectorAll(`.sheet-cord-${lead} path`)) line.setAttribute("d", path);
  }
}

type At = Pick<DOMRect, "x" | "y" | "width" | "height">;

/** V leaves the card below and hangs; COM leaves it at its side and comes to its probe from above. */
function cord(lead: LeadName, card: At, butt: At, origin: At): string {
  const side = lead === "V" ? 1 : -1;
  const to = { x: butt.x + butt.width / 2 - origin.x, y: butt.y + butt.height / 2 - origin.y };
  const left = card.x - origin.x;
  const top = card.y - origin.y;
  const below = { x: left + card.width * (lead === "V" ? 0.8 : 0.2), y: top + card.height };
  const beside = { x: left, y: top + card.height * 0.62 };
  const fromSide = lead === "COM" && to.x < left - 30;
  const from = fromSide ? beside : below;
  const far = Math.hypot(to.x - from.x, to.y - from.y);
  const slack = Math.min(160, 30 + far * 0.35);
  const first = fromSide ? { x: from.x - slack, y: from.y } : { x: from.x, y: from.y + slack };
  const last = { x: to.x + side * slack * 0.35, y: to.y + side * slack * (lead === "V" ? 0.5 : 0.9) };
  return `M${from.x} ${from.y}C${first.x} ${first.y} ${last.x} ${last.y} ${to.x} ${to.y}`;
}
