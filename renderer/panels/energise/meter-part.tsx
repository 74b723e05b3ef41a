import type { Energised } from "../../../shared-model/answers/energised.ts";
import { energiseStore, isMeterRead, type LeadName, readMeter } from "../../state/energise/energise-store.ts";
import { leadWords, meterWords } from "../../state/energise/energise-words.ts";
import { noteMeter, pickLeadPlace, putLead, takeLead } from "../../state/energise/instruments.ts";
import { useStore } from "../../state/use-store.ts";
import { Section } from "../details/section.tsx";

/** Two leads, each put on a place by a press on the sheet or from a list, and what the meter shows. */
export function MeterPart({ answer: { powerOff, instruments } }: { readonly answer: Energised }) {
  return (
    <Section title="Meter" note={powerOff ? "power off: resistance" : `${instruments.meterOhm / 1e6} MΩ, computed`}>
      <Lead lead="V" word="red lead, V" />
      <Lead lead="COM" word="black lead, COM" />
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
        <strong>{lead}</strong> {place === undefined ? "not placed" : leadWords(place)}
      </span>
      <span className="energise-controls">
        <button
          type="button"
          className="button small"
          aria-pressed={inHand}
          aria-label={`Place the ${word}, by a press on the sheet`}
          onClick={() => takeLead(inHand ? undefined : lead)}
        >
          {inHand ? "Press a place" : "On sheet"}
        </button>
        <button
          type="button"
          className="button small"
          aria-label={`Place the ${word}, from a list`}
          onClick={() => pickLeadPlace(lead)}
        >
          List
        </button>
        {place !== undefined && (
          <button
            type="button"
            className="button small"
            aria-label={`Take the ${word} away`}
            onClick={() => putLead(lead, undefined)}
          >
            Off
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
  if (!placed) return <p className="empty">Put both leads on places.</p>;
  if (reading === undefined && isRead) return <p className="empty">A lead is on nothing that is drawn.</p>;
  const { number, unit, note } = reading === undefined ? NOT_READ : meterWords(reading);
  const floating = reading?.kind === "volts" && reading.floating;
  return (
    <div className="energise-reading">
      <p className="energise-figure" role="status">
        <span className="fig">{number}</span> {unit}
        {floating && <span className="energise-tag energise-tag-floating">F</span>}
        <small>computed</small>
      </p>
      {note !== "" && <p className="energise-note-line">{note}</p>}
      <button type="button" className="button small" aria-disabled={reading === undefined} onClick={noteMeter}>
        Write into the log
      </button>
    </div>
  );
}
