import type { Energised } from "../../../shared-model/answers/energised.ts";
import { energiseStore, isMeterRead, type LeadName, readMeter } from "../../state/energise/energise-store.ts";
import { leadWords, meterWords } from "../../state/energise/energise-words.ts";
import { noteMeter, pickLeadPlace, putLead, takeLead } from "../../state/energise/instruments.ts";
import { useStore } from "../../state/use-store.ts";
import { Section } from "../details/section.tsx";
import { wording } from "./words.ts";

/** Two leads, each put on a place by a press on the sheet or from a list, and what the meter shows. */
export function MeterPart({ answer: { powerOff, instruments } }: { readonly answer: Energised }) {
  return (
    <Section
      title={wording.meter}
      note={powerOff ? wording.powerOffResistance : `${instruments.meterOhm / 1e6} MΩ, computed`}
    >
      <Lead lead="V" word={wording.redLeadV} />
      <Lead lead="COM" word={wording.blackLeadCom} />
      <Reading />
    </Section>
  );
}

function Lead({ lead, word }: { readonly lead: LeadName; readonly word: string }) {
  const place = useStore(energiseStore, ({ leads }) => leads[lead]);
  const inHand = useStore(energiseStore, (state) => state.inHand === lead);
  return (
    <div className="energise-lead">
      <span className={`energise-probe energise-probe-${lead}`} aria-hidden="true" />
      <span className="energise-lead-words">
        <strong>{lead}</strong> {place === undefined ? wording.notPlaced : leadWords(place)}
      </span>
      <span className="energise-controls">
        <button
          type="button"
          className="button small"
          aria-pressed={inHand}
          aria-label={wording.placeTheByAPressOn(word)}
          onClick={() => takeLead(inHand ? undefined : lead)}
        >
          {inHand ? wording.pressAPlace : wording.onSheet}
        </button>
        <button
          type="button"
          className="button small"
          aria-label={wording.placeTheFromAList(word)}
          onClick={() => pickLeadPlace(lead)}
        >
          {wording.list}
        </button>
        {place !== undefined && (
          <button
            type="button"
            className="button small"
            aria-label={wording.takeTheAway(word)}
            onClick={() => putLead(lead, undefined)}
          >
            {wording.off}
          </button>
        )}
      </span>
    </div>
  );
}

/** While the answer for the leads and the setting as they are now is still to come. */
const NOT_READ = { number: "--", unit: "", note: "" } as const;

function Reading() {
  const placed = useStore(energiseStore, ({ leads }) => leads.V !== undefined && leads.COM !== undefined);
  const reading = useStore(energiseStore, readMeter);
  const isRead = useStore(energiseStore, isMeterRead);
  if (!placed) return <p className="empty">{wording.putBothLeadsOnPlaces}</p>;
  if (reading === undefined && isRead) return <p className="empty">{wording.aLeadIsOnNothingThat}</p>;
  const { number, unit, note } = reading === undefined ? NOT_READ : meterWords(reading);
  const floating = reading?.kind === "volts" && reading.floating;
  return (
    <div className="energise-reading">
      <p className="energise-figure" role="status">
        <span className="fig">{number}</span> {unit}
        {floating && <span className="energise-tag energise-tag-floating">F</span>}
        <small>{wording.computed}</small>
      </p>
      {note !== "" && <p className="energise-note-line">{note}</p>}
      <button type="button" className="button small" aria-disabled={reading === undefined} onClick={noteMeter}>
        {wording.writeIntoTheLog}
      </button>
    </div>
  );
}
