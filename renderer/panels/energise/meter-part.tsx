import type { MeterReading } from "../../../shared-model/answers/energised.ts";
import { energiseStore, type LeadName } from "../../state/energise/energise-store.ts";
import { leadWords, meterWords } from "../../state/energise/energise-words.ts";
import { noteMeter, pickLeadPlace, putLead, takeLead } from "../../state/energise/instruments.ts";
import { useStore } from "../../state/use-store.ts";
import { Section } from "../details/section.tsx";

interface Props {
  readonly reading: MeterReading | undefined;
  readonly powerOff: boolean;
}

/** Two leads, each put on a place by a press on the sheet or from a list, and what the meter shows. */
export function MeterPart({ reading, powerOff }: Props) {
  return (
    <Section title="Meter" note={powerOff ? "power off: resistance" : "10 MΩ, computed"}>
      <Lead lead="V" word="red lead, V" />
      <Lead lead="COM" word="black lead, COM" />
      <Reading reading={reading} />
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

function Reading({ reading }: { readonly reading: MeterReading | undefined }) {
  const placed = useStore(energiseStore, ({ leads }) => leads.V !== undefined && leads.COM !== undefined);
  if (reading === undefined)
    return <p className="empty">{placed ? "A lead is on nothing that is drawn." : "Put both leads on places."}</p>;
  const { number, unit, note } = meterWords(reading);
  const floating = reading.kind === "volts" && reading.floating;
  return (
    <div className="energise-reading">
      <p className="energise-figure" role="status">
        <span className="fig">{number}</span> {unit}
        {floating && <span className="energise-tag energise-tag-floating">F</span>}
        <small>computed</small>
      </p>
      {note !== "" && <p className="energise-note-line">{note}</p>}
      <button type="button" className="button small" onClick={() => noteMeter(reading)}>
        Write into the log
      </button>
    </div>
  );
}
