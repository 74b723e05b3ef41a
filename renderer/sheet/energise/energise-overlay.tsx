import "./energise.css";
import type { ConditionKind } from "../../../shared-model/answers/energised.ts";
import { energiseStore, isAnswered, readMeter, shownAnswer } from "../../state/energise/energise-store.ts";
import { CONDITION_TAGS, CONDITIONS, leadWords, meterWords } from "../../state/energise/energise-words.ts";
import { takeLead } from "../../state/energise/instruments.ts";
import { useStore } from "../../state/use-store.ts";
import { ConditionSign } from "./condition-sign.tsx";
import { MeterCords } from "./meter-cords.tsx";

/** What lies over the sheet while it is energised: that it is computed, the meter, the legend. */
export function EnergiseOverlay() {
  const answer = useStore(energiseStore, shownAnswer);
  const on = useStore(energiseStore, (state) => state.on);
  if (!on) return null;
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
  if (trouble !== undefined)
    return <p className="sheet-lit-trouble">Not computed: nothing here tells how conductors stand.</p>;
  if (!isBehind) return null;
  return (
    <p className="sheet-lit-trouble sheet-lit-behind" role="status">
      Computing: conditions are still those from before.
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
      <section className="sheet-meter" aria-label="Meter">
        <p className="sheet-meter-head">
          <strong>Meter</strong> <span>computed circuit</span>
        </p>
        <p className="sheet-meter-figure">
          <span className="fig">{number === "" ? "--" : number}</span> {unit}
          {floating && <span className="sheet-meter-floating">F floating</span>}
        </p>
        {(["V", "COM"] as const).map((lead) => (
          <p key={lead} className="sheet-meter-lead">
            <strong>{lead}</strong>
            <span className={`sheet-meter-probe sheet-meter-probe-${lead}`} aria-hidden="true" />
            {leads[lead] === undefined ? "not placed" : leadWords(leads[lead])}
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
      <span className="sheet-hint-title">{lead === "V" ? "Red lead, V" : "Black lead, COM"}</span>
      <span>Press a terminal, a splice or a conductor end.</span>
      <button type="button" className="button small" onClick={() => takeLead(undefined)}>
        Lay it down
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
const SHORT: Readonly<Partial<Record<ConditionKind, string>>> = { switched: "switched, on", floating: "floating" };

function Legend({ shown }: { readonly shown: readonly ConditionKind[] }) {
  if (shown.length === 0) return null;
  return (
    <section className="sheet-legend" aria-label="Conditions of conductors">
      <ul>
        {shown.map((kind) => (
          <li key={kind}>
            <ConditionSign kind={kind} />
            {SHORT[kind] ?? CONDITION_TAGS[kind].word}
          </li>
        ))}
        <li>Computed circuit: it authorises no live work.</li>
      </ul>
    </section>
  );
}
