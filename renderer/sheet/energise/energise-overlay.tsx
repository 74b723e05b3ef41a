import "./energise.css";
import type { ConditionKind } from "../../../shared-model/answers/energised.ts";
import { energiseStore, isAnswered, readMeter, shownAnswer } from "../../state/energise/energise-store.ts";
import { CONDITION_TAGS, CONDITIONS, leadWords, meterWords } from "../../state/energise/energise-words.ts";
import { takeLead } from "../../state/energise/instruments.ts";
import { useStore } from "../../state/use-store.ts";
import { ConditionSign } from "./condition-sign.tsx";
import { MeterCords } from "./meter-cords.tsx";
import { wording } from "./words.ts";

/** What lies over the sheet while it is energised: that it is computed, the meter, the legend. */
export default function EnergiseOverlay() {
  const answer = useStore(energiseStore, shownAnswer);
  return (
    <>
      <Stale />
      <Meter />
      <Legend shown={answer === undefined ? [] : kindsIn(answer.boxes)} />
      <LeadHint />
    </>
  );
}

/** Says after a moment that the sheet still shows what was computed before. */
function Stale() {
  const isBehind = useStore(energiseStore, (state) => state.answer !== undefined && !isAnswered(state));
  const trouble = useStore(energiseStore, (state) => state.trouble);
  if (trouble !== undefined) return <p className="sheet-lit-trouble">{wording.notComputedNothingHereTellsHow}</p>;
  if (!isBehind) return null;
  return (
    <p className="sheet-lit-trouble sheet-lit-behind" role="status">
      {wording.computingConditionsAreStillThoseFrom}
    </p>
  );
}

function Meter() {
  const leads = useStore(energiseStore, (state) => state.leads);
  const reading = useStore(energiseStore, readMeter);
  if (leads.V === undefined && leads.COM === undefined) return null;
  const { number, unit } = reading === undefined ? { number: "", unit: "" } : meterWords(reading);
  const floating = reading?.kind === "volts" && reading.floating;
  return (
    <>
      <MeterCords />
      <section className="sheet-meter" aria-label={wording.meter}>
        <p className="sheet-meter-head">
          <strong>{wording.meter}</strong> <span>{wording.computedCircuit}</span>
        </p>
        <p className="sheet-meter-figure">
          <span className="fig">{number === "" ? "--" : number}</span> {unit}
          {floating && <span className="sheet-meter-floating">{wording.fFloating}</span>}
        </p>
        {(["V", "COM"] as const).map((lead) => (
          <p key={lead} className="sheet-meter-lead">
            <strong>{lead}</strong>
            <span className={`sheet-meter-probe sheet-meter-probe-${lead}`} aria-hidden="true" />
            {leads[lead] === undefined ? wording.notPlaced : leadWords(leads[lead])}
          </p>
        ))}
      </section>
    </>
  );
}

function LeadHint() {
  const lead = useStore(energiseStore, (state) => state.inHand);
  if (lead === undefined) return null;
  return (
    <div className="sheet-hint">
      <span className="sheet-hint-title">{lead === "V" ? wording.redLeadV : wording.blackLeadCom}</span>
      <span>{wording.pressATerminalASpliceOr}</span>
      <button type="button" className="button small" onClick={() => takeLead(undefined)}>
        {wording.layItDown}
      </button>
    </div>
  );
}

const USUAL: ReadonlySet<ConditionKind> = new Set(["live", "switched", "neutral", "ground", "floating", "dead"]);

function kindsIn(boxes: NonNullable<ReturnType<typeof shownAnswer>>["boxes"]): readonly ConditionKind[] {
  const found = new Set<ConditionKind>();
  for (const { ends } of Object.values(boxes)) for (const { kind } of Object.values(ends)) found.add(kind);
  return CONDITIONS.filter((kind) => USUAL.has(kind) || found.has(kind));
}

/** Where the legend has no room for the whole. */
const SHORT: Readonly<Partial<Record<ConditionKind, string>>> = { switched: wording.switchedOn, floating: "floating" };

function Legend({ shown }: { readonly shown: readonly ConditionKind[] }) {
  if (shown.length === 0) return null;
  return (
    <section className="sheet-legend" aria-label={wording.conditionsOfConductors}>
      <ul>
        {shown.map((kind) => (
          <li key={kind}>
            <ConditionSign kind={kind} />
            {SHORT[kind] ?? CONDITION_TAGS[kind].word}
          </li>
        ))}
        <li>{wording.computedCircuitItAuthorisesNoLive}</li>
      </ul>
    </section>
  );
}
