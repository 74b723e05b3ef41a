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

const ITEM_WORDS: Readonly<Record<FillItem, string>> = {
  conductors: "Conductors",
  clamps: "Clamps",
  supports: "Supports",
  devices: "Devices",
  grounds: "Grounds",
  "terminal-blocks": "Terminal blocks",
  connectors: "Connectors, by the pair",
  "deep-devices": "Deep devices",
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
      title="Fill ledger"
      note={stale ? "counting" : `edition ${editionWords(edition)}, in³${amended ? ", amended" : ""}`}
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
          {inside > 0 && (
            <tr className="zero">
              <td colSpan={3}>
                {inside === 1 ? "1 pigtail or link stays" : `${inside} pigtails and links stay`} inside: not counted.
              </td>
            </tr>
          )}
          <tr className="sum">
            <th scope="row" colSpan={2}>
              Needed
              {totalMl !== undefined && <small> {formatMillilitres(totalMl)} mL</small>}
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
  const { item, awg, count, each, volume, section, ml } = line;
  return (
    <tr>
      <th scope="row">
        {ITEM_WORDS[item]} <small>{section}</small>
      </th>
      <td className="n work">
        {count} × {formatVolume(each)}{" "}
        <small>
          {awg} AWG{ml !== undefined && `, ${formatMillilitres(ml.volume)} mL`}
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
