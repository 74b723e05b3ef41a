import type { FillItem, FillLedger, FillLine } from "../../../shared-model/answers/fill.ts";
import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import type { Project, StateName } from "../../../shared-model/model/project.ts";
import { findInstallation } from "../../../shared-model/queries/installation-of.ts";
import { formatMillilitres } from "../../../shared-model/units/millilitres.ts";
import { exceedsVolume, formatVolume, subtractVolume, toDecimal } from "../../../shared-model/units/volume.ts";
import { documentStore } from "../../state/document-store.ts";
import { editionWords } from "../../state/edition-words.ts";
import { findingsStore } from "../../state/findings-store.ts";
import { useStore } from "../../state/use-store.ts";
import { FillBar } from "./fill-bar.tsx";
import { Section } from "./section.tsx";
import { wording } from "./words.ts";

const ITEM_WORDS: Readonly<Record<FillItem, string>> = {
  conductors: wording.conductors,
  clamps: wording.clamps,
  supports: wording.supports,
  devices: wording.devices,
  grounds: wording.grounds,
  "terminal-blocks": wording.terminalBlocks,
  connectors: wording.connectorsByThePair,
  "deep-devices": wording.deepDevices,
};

/** The count of box fill line by line, as the checks made it last. */
export function BoxFill({ enclosure }: { readonly enclosure: EnclosureId }) {
  const ledger = useStore(findingsStore, (state) => state.ledgers[enclosure]);
  const edition = useStore(documentStore, ({ project }) => project.edition);
  const amended = useStore(documentStore, ({ project }) => isAmended(project));
  const inside = useStore(documentStore, ({ project, state }) => jumpersIn(project, state, enclosure));
  const stale = useStore(documentStore, (state) => state.revision) > useStore(findingsStore, (state) => state.revision);
  if (ledger === undefined) return null;
  return (
    <Section
      title={wording.fillLedger}
      note={stale ? "counting" : wording.editionIn3(editionWords(edition), amended ? wording.amended : "")}
    >
      {ledger.verdict === "not-applicable" ? (
        <p className="empty">{ledger.reason}</p>
      ) : (
        <LedgerTable ledger={ledger} inside={inside} />
      )}
    </Section>
  );
}

/** The ledger counts by the rule that judges it, amendments included. */
const isAmended = ({ amendments }: Project): boolean =>
  amendments.some(({ rule, change }) => rule === "box-overfull" && change.kind === "value");

const jumpersIn = (project: Project, state: StateName, enclosure: EnclosureId): number =>
  Object.keys(findInstallation(project, state)?.enclosures[enclosure]?.jumpers ?? {}).length;

/** `inside`: jumpers, which stay in the box and count nothing; people count them again and again. */
function LedgerTable({ ledger, inside }: { readonly ledger: FillLedger; readonly inside: number }) {
  const { lines, total, totalMl, available, spare } = ledger;
  const over = available !== undefined && exceedsVolume(total, available);
  return (
    <>
      <table className="ledger">
        <thead className="unseen">
          <tr>
            <th scope="col">{wording.whatCounts}</th>
            <th scope="col">{wording.howOften}</th>
            <th scope="col">{wording.in3}</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <Line key={`${line.item} ${line.awg} ${line.each}`} line={line} />
          ))}
          {lines.length === 0 && (
            <tr className="zero">
              <td colSpan={3}>{wording.nothingCountsYet}</td>
            </tr>
          )}
          {inside > 0 && (
            <tr className="zero">
              <td colSpan={3}>
                {inside === 1 ? wording.n1PigtailOrLinkStays : wording.pigtailsAndLinksStay(inside)}
                {wording.insideNotCounted}
              </td>
            </tr>
          )}
          <tr className="sum">
            <th scope="row" colSpan={2}>
              {wording.needed}
              {totalMl !== undefined && <small>{wording.ml(formatMillilitres(totalMl))}</small>}
            </th>
            <td className="n">{aligned(formatVolume(total))}</td>
          </tr>
          <tr>
            <th scope="row" colSpan={2}>
              {wording.available}
            </th>
            <td className="n">{available === undefined ? wording.notKnown : aligned(formatVolume(available))}</td>
          </tr>
          {available !== undefined && spare !== undefined && (
            <tr className={over ? "rest over" : "rest"}>
              <th scope="row" colSpan={2}>
                {over ? wording.overBy : wording.left}
              </th>
              <td className="n">{aligned(formatVolume(over ? subtractVolume(total, available) : spare))}</td>
            </tr>
          )}
        </tbody>
      </table>
      {available === undefined ? (
        <p className="empty">{ledger.reason ?? wording.theVolumeOfThisBoxIs}</p>
      ) : (
        <FillBar ledger={ledger} available={toDecimal(available)} over={over} />
      )}
    </>
  );
}

function Line({ line }: { readonly line: FillLine }) {
  const { item, awg, count, each, volume, section, ml } = line;
  return (
    <tr>
      <th scope="row">
        {ITEM_WORDS[item]} <small>{section}</small>
      </th>
      <td className="n work">
        {count} × {formatVolume(each)}{" "}
        <small>
          {wording.awg3(awg)}
          {ml !== undefined && wording.ml2(formatMillilitres(ml.volume))}
        </small>
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
