import { useId, useState } from "react";
import type { CircuitMap, CircuitOrder } from "../../../shared-model/answers/survey.ts";
import type { OutletKey } from "../../../shared-model/model/ids.ts";
import type { Dispatched } from "../../state/document-store.ts";
import { writeOrder } from "../../state/survey/write-reading.ts";
import { Section } from "../details/section.tsx";
import { Refused } from "../refused.tsx";
import { wording } from "./words.ts";

interface Props {
  readonly map: CircuitMap;
  readonly order: CircuitOrder;
}

/** Which outlet is fed through which: what is known, by what, and how more is found out. */
export function OrderPart({ map, order }: Props) {
  const names = new Map(map.outlets.map(({ outlet, name }) => [outlet, name]));
  const nameOf = (key: string): string => names.get(key) ?? key;
  return (
    <Section
      title={wording.orderAlongTheCircuits}
      note={order.before.length === 0 ? wording.nothingKnownYet : undefined}
    >
      <ul className="survey-sentences">
        {order.first.length > 0 && <li>{wording.nothingUpstreamOf(order.first.map(nameOf).join(", "))}</li>}
        {order.before.map(({ near, far, proved, why }) => (
          <li key={`${near} ${far}`}>
            <strong>{wording.isFedThrough(nameOf(far), nameOf(near))}</strong>{" "}
            <span className="survey-plate">{proved ? wording.proved : wording.likelyOnly}</span> {why}
          </li>
        ))}
        {order.contradictions.map((line) => (
          <li key={line}>
            <strong>{wording.doesNotFit}</strong> {line}
          </li>
        ))}
        {order.notKnown.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <details className="survey-fold">
        <summary>{wording.enterWhatWasFound}</summary>
        <OpenedForm map={map} />
        <DropForm map={map} />
      </details>
    </Section>
  );
}

/** With the joints in one box opened, what went dead. */
function OpenedForm({ map }: Pick<Props, "map">) {
  const [at, setAt] = useState("");
  const [dead, setDead] = useState<readonly string[]>([]);
  const [done, setDone] = useState<Dispatched>();
  const write = (): void => {
    const written = writeOrder({ kind: "opened", at: at as OutletKey, dead: dead as readonly OutletKey[] });
    setDone(written);
    if (written.ok) setDead([]);
  };
  return (
    <fieldset className="survey-order">
      <legend>{wording.jointsOpenedAt}</legend>
      <OutletSelect map={map} label={wording.inTheBoxOf} value={at} onValue={setAt} />
      <span className="survey-works">
        {map.outlets
          .filter(({ outlet }) => outlet !== at)
          .map(({ outlet, name }) => (
            <button
              key={outlet}
              type="button"
              className="button small"
              aria-pressed={dead.includes(outlet)}
              onClick={() => setDead(dead.includes(outlet) ? dead.filter((one) => one !== outlet) : [...dead, outlet])}
            >
              {name}
            </button>
          ))}
      </span>
      <button type="button" className="button small" aria-disabled={at === ""} onClick={() => at !== "" && write()}>
        {wording.writeTheseWentDead}
      </button>
      <Refused message={done?.ok === false ? done.refusal.message : undefined} />
    </fieldset>
  );
}

/** Volts lost at one outlet while a load is on at another. */
function DropForm({ map }: Pick<Props, "map">) {
  const id = useId();
  const [loadAt, setLoadAt] = useState("");
  const [at, setAt] = useState("");
  const [typed, setTyped] = useState("");
  const [done, setDone] = useState<Dispatched>();
  const volts = Number(typed.replace(",", "."));
  const isReady = loadAt !== "" && at !== "" && typed.trim() !== "" && Number.isFinite(volts);
  const write = (): void => {
    const written = writeOrder({ kind: "drop", loadAt: loadAt as OutletKey, at: at as OutletKey, volts });
    setDone(written);
    if (written.ok) setTyped("");
  };
  return (
    <fieldset className="survey-order">
      <legend>{wording.voltsLost}</legend>
      <OutletSelect map={map} label={wording.loadOnAt} value={loadAt} onValue={setLoadAt} />
      <OutletSelect map={map} label={wording.readAt} value={at} onValue={setAt} />
      <label htmlFor={id}>{wording.voltsLostThere}</label>
      <input
        id={id}
        className="field small"
        inputMode="decimal"
        value={typed}
        onChange={({ target }) => setTyped(target.value)}
      />
      <button type="button" className="button small" aria-disabled={!isReady} onClick={() => isReady && write()}>
        {wording.writeTheDrop}
      </button>
      <Refused message={done?.ok === false ? done.refusal.message : undefined} />
    </fieldset>
  );
}

interface SelectProps extends Pick<Props, "map"> {
  readonly label: string;
  readonly value: string;
  readonly onValue: (outlet: string) => void;
}

function OutletSelect({ map, label, value, onValue }: SelectProps) {
  const id = useId();
  return (
    <>
      <label htmlFor={id}>{label}</label>
      <select id={id} className="field small" value={value} onChange={({ target }) => onValue(target.value)}>
        <option value="">{wording.choose}</option>
        {map.outlets.map(({ outlet, name }) => (
          <option key={outlet} value={outlet}>
            {name}
          </option>
        ))}
      </select>
    </>
  );
}
