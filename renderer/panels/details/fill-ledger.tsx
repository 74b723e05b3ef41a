import type { FillItem, FillLedger, FillLine } from "../../../shared-model/answers/fill.ts";
import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import { exceedsVolume, formatVolume, subtractVolume, toDecimal } from "../../../shared-model/units/volume.ts";
import { documentStore } from "../../state/document-store.ts";
import { findingsStore } from "../../state/findings-store.ts";
import { useStore } from "../../state/use-store.ts";
import { Section } from "./section.tsx";

const ITEM_WORDS: Readonly<Record<FillItem, string>> = {
  conductors: "Conductors",
  clamps: "Clamps",
  supports: "Supports",
  devices: "Devices",
  grounds: "Grounds",
  "terminal-blocks": "Terminal blocks",
};

/** The count of box fill line by line, as the checks made it last. */
export function BoxFill({ enclosure }: { readonly enclosure: EnclosureId }) {
  const ledger = useStore(findingsStore, (state) => state.ledgers[enclosure]);
  const edition = useStore(documentStore, ({ project }) => project.edition);
  const stale = useStore(documentStore, (state) => state.revision) > useStore(findingsStore, (state) => state.revision);
  if (ledger === undefined) return null;
  return (
    <Section title="Fill ledger" note={stale ? "counting" : `edition ${edition}, in³`}>
      {ledger.verdict === "not-applicable" ? <p className="empty">{ledger.reason}</p> : <LedgerTable ledger={ledger} />}
    </Section>
  );
}

function LedgerTable({ ledger }: { readonly ledger: FillLedger }) {
  const { lines, total, available, spare } = ledger;
  const over = available !== undefined && exceedsVolume(total, available);
  return (
    <>
      <table className="ledger">
        <thead className="unseen">
          <tr>
            <th scope="col">What counts</th>
            <th scope="col">How often</th>
            <th scope="col">in³</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <Line key={`${line.item} ${line.awg} ${line.each}`} line={line} />
          ))}
          {lines.length === 0 && (
            <tr className="zero">
              <td colSpan={3}>Nothing counts yet.</td>
            </tr>
          )}
          <tr className="sum">
            <th scope="row" colSpan={2}>
              Needed
            </th>
            <td className="n">{aligned(formatVolume(total))}</td>
          </tr>
          <tr>
            <th scope="row" colSpan={2}>
              Available
            </th>
            <td className="n">{available === undefined ? "not known" : aligned(formatVolume(available))}</td>
          </tr>
          {available !== undefined && spare !== undefined && (
            <tr className={over ? "rest over" : "rest"}>
              <th scope="row" colSpan={2}>
                {over ? "Over by" : "Left"}
              </th>
              <td className="n">{aligned(formatVolume(over ? subtractVolume(total, available) : spare))}</td>
            </tr>
          )}
        </tbody>
      </table>
      {available === undefined ? (
        <p className="empty">{ledger.reason ?? "The volume of this box is not known: enter it under Properties."}</p>
      ) : (
        <FillBar ledger={ledger} available={toDecimal(available)} over={over} />
      )}
    </>
  );
}

function Line({ line }: { readonly line: FillLine }) {
  const { item, awg, count, each, volume, section } = line;
  return (
    <tr>
      <th scope="row">
        {ITEM_WORDS[item]} <small>{section}</small>
      </th>
      <td className="n work">
        {count} × {formatVolume(each)} <small>{awg} AWG</small>
      </td>
      <td className="n">{aligned(formatVolume(volume, 2))}</td>
    </tr>
  );
}

const PLACES = 4;

/** Pads with unseen zeros, so that decimal points stand under one another and no figure claims more than it says. */
function aligned(figure: string) {
  const places = figure.split(".")[1]?.length ?? 0;
  const pad = "0".repeat(PLACES - places);
  return (
    <>
      {figure}
      <i aria-hidden="true">{places === 0 ? `.${pad}` : pad}</i>
    </>
  );
}

const WIDTH = 312;

/** One piece a line of the ledger; what does not fit stands hatched beyond the frame. */
function FillBar({
  ledger,
  available,
  over,
}: {
  readonly ledger: FillLedger;
  readonly available: number;
  readonly over: boolean;
}) {
  const needed = toDecimal(ledger.total);
  const scale = (WIDTH - 4) / Math.max(needed, available);
  const frame = available * scale;
  let from = 2;
  const pieces = ledger.lines.map((line) => {
    const width = toDecimal(line.volume) * scale;
    const piece = (
      <rect key={`${line.item} ${line.awg} ${line.each}`} x={from} y="4" width={Math.max(0, width - 1)} height="9" />
    );
    from += width;
    return piece;
  });
  return (
    <svg className="fill-bar" viewBox={`0 0 ${WIDTH} 18`} aria-hidden="true">
      <defs>
        <pattern id="over-hatch" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V5" stroke="var(--fill-over)" strokeWidth="2.4" />
        </pattern>
      </defs>
      <rect x="2" y="4" width={frame} height="9" fill="var(--fill-track)" />
      <g fill={over ? "var(--fill-over)" : "var(--fill-ok)"}>{pieces}</g>
      {over && (
        <>
          <rect x={frame + 2} y="3" width={WIDTH} height="11" fill="var(--margin)" />
          <rect
            x={frame + 3}
            y="4.5"
            width={(needed - available) * scale - 2}
            height="8"
            fill="url(#over-hatch)"
            stroke="var(--fill-over)"
          />
        </>
      )}
      <path d={`M2 1V16M${frame + 2} 1V16`} stroke="var(--ink-1)" strokeWidth="1.5" />
    </svg>
  );
}
