import { useId } from "react";
import type { ReadingInstrument } from "../../../shared-model/model/project.ts";
import { INSTRUMENT_WORDS } from "../../state/item-actions/reading-action.ts";
import { preferencesStore } from "../../state/preferences-store.ts";
import { testedByStore } from "../../state/test-record.ts";
import { RECORD_WORDS } from "../../state/test-record-words.ts";
import { useStore } from "../../state/use-store.ts";

const METERS: readonly ReadingInstrument[] = ["meter", "low-impedance-meter"];

/** Who tests, when and with what: said once, written with every line from then on. */
export function TestedByForm() {
  const id = useId();
  const { by, day, instrument, instrumentId } = useStore(testedByStore, (state) => state);
  return (
    <div className="record-who">
      <label htmlFor={`${id}by`}>{RECORD_WORDS.by}</label>
      <input
        id={`${id}by`}
        className="field small"
        autoComplete="off"
        maxLength={100}
        value={by}
        onChange={({ target }) => testedByStore.merge({ by: target.value })}
        onBlur={() => by.trim() !== "" && preferencesStore.merge({ name: by.trim() })}
      />
      <label htmlFor={`${id}day`}>{RECORD_WORDS.day}</label>
      <input
        id={`${id}day`}
        className="field small"
        type="date"
        value={day}
        onChange={({ target }) => testedByStore.merge({ day: target.value })}
      />
      <label htmlFor={`${id}with`}>{RECORD_WORDS.instrument}</label>
      <select
        id={`${id}with`}
        className="field small"
        value={instrument}
        onChange={({ target }) => testedByStore.merge({ instrument: target.value as ReadingInstrument })}
      >
        {METERS.map((one) => (
          <option key={one} value={one}>
            {INSTRUMENT_WORDS[one]}
          </option>
        ))}
      </select>
      <label htmlFor={`${id}number`}>{RECORD_WORDS.instrumentId}</label>
      <input
        id={`${id}number`}
        className="field small"
        autoComplete="off"
        maxLength={100}
        value={instrumentId}
        onChange={({ target }) => testedByStore.merge({ instrumentId: target.value })}
      />
    </div>
  );
}
