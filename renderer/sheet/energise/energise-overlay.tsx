import "./energise.css";
import type { ConditionKind } from "../../../shared-model/answers/energised.ts";
import { energiseStore, readMeter, shownAnswer } from "../../state/energise/energise-store.ts";
import { CONDITION_TAGS, leadWords, meterWords } from "../../state/energise/energise-words.ts";
import { takeLead } from "../../state/energise/instruments.ts";
import { useStore } from "../../state/use-store.ts";
import { ConditionTag } from "./condition-tag.tsx";
import { DeadStrand, Sleeve } from "./sleeve.tsx";

/** What lies over the sheet while it is energised: that it is computed, the meter, the legend. */
export function EnergiseOverlay() {
  const answer = useStore(energiseStore, shownAnswer);
  const on = useStore(energiseStore, (state) => state.on);
  if (!on) return null;
  return (
    <>
      <Meter />
      <Legend shown={answer === undefined ? [] : kindsIn(answer.boxes)} />
      <LeadHint />
    </>
  );
}

function Meter() {
  const leads = useStore(energiseStore, (state) => state.leads);
  const reading = useStore(energiseStore, readMeter);
  if (leads.V === undefined && leads.COM === undefined) return null;
  const { number, unit } = reading === undefined ? { number: "", unit: "" } : meterWords(reading);
  const floating = reading?.kind === "volts" && reading.floating;
  return (
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

const ORDER: readonly ConditionKind[] = [
  "live",
  "switched",
  "through-load",
  "neutral",
  "ground",
  "neutral-and-ground",
  "floating",
  "dead",
];
const USUAL: ReadonlySet<ConditionKind> = new Set(["live", "switched", "neutral", "ground", "floating", "dead"]);

function kindsIn(boxes: NonNullable<ReturnType<typeof shownAnswer>>["boxes"]): readonly ConditionKind[] {
  const found = new Set<ConditionKind>();
  for (const { ends } of Object.values(boxes)) for (const { kind } of Object.values(ends)) found.add(kind);
  return ORDER.filter((kind) => USUAL.has(kind) || found.has(kind));
}

/** Where the legend has no room for the whole. */
const SHORT: Readonly<Partial<Record<ConditionKind, string>>> = { switched: "switched, on", floating: "floating" };

const LINE = "M0 9H34";

function Legend({ shown }: { readonly shown: readonly ConditionKind[] }) {
  if (shown.length === 0) return null;
  return (
    <section className="sheet-legend" aria-label="Conditions of conductors">
      <ul>
        {shown.map((kind) => (
          <li key={kind}>
            <svg width="64" height="18" viewBox="-28 0 64 18" preserveAspectRatio="xMinYMid slice" aria-hidden="true">
              <ConditionTag condition={{ kind, volts: 0 }} x={-15} y={9} />
              <Sleeve path={LINE} condition={{ kind, volts: 0 }} />
              {kind === "dead" ? (
                <DeadStrand path={LINE} />
              ) : (
                <>
                  <path d={LINE} className={`sheet-casing sheet-casing-${colourOf(kind)}`} />
                  <path d={LINE} className={`sheet-core sheet-core-${colourOf(kind)}`} />
                </>
              )}
            </svg>
            {SHORT[kind] ?? CONDITION_TAGS[kind].word}
          </li>
        ))}
        <li>Computed circuit: it authorises no live work.</li>
      </ul>
    </section>
  );
}

const colourOf = (kind: ConditionKind): string => {
  if (kind === "ground") return "bare";
  if (kind === "neutral" || kind === "floating" || kind === "neutral-and-ground" || kind === "through-load")
    return "white";
  return kind === "switched" ? "red" : "black";
};
