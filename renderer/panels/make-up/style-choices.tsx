import type { MakeUpStyle } from "../../../shared-model/answers/make-up-intent.ts";
import { connectors } from "../../../shared-model/catalog/connectors.ts";
import type { BoxForm } from "./box-form.ts";
import { wording } from "./words.ts";

/** How joints are made: seldom otherwise than usual, so it is folded. */
export function StyleChoices({ form: { intent, change } }: { readonly form: BoxForm }) {
  const { style } = intent;
  const set = (part: Partial<MakeUpStyle>): void => change({ ...intent, style: { ...style, ...part } });
  const atHand = new Set(style.connectors ?? []);
  const toggle = (id: string, on: boolean): void => {
    const next = connectors.flatMap((one) => ((one.id === id ? on : atHand.has(one.id)) ? one.id : []));
    const { connectors: _, ...others } = style;
    change({ ...intent, style: next.length === 0 ? others : { ...others, connectors: next } });
  };
  return (
    <details className="part make-up-style">
      <summary>{wording.howJoined}</summary>
      <div className="part-body">
        <Tick words={wording.direct} on={style.direct} set={(direct) => set({ direct })} />
        <Tick words={wording.bothHoles} on={style.bothHoles} set={(bothHoles) => set({ bothHoles })} />
        <Tick words={wording.noPushIn} on={style.noPushIn} set={(noPushIn) => set({ noPushIn })} />
        <fieldset className="make-up-stock">
          <legend>
            {wording.connectorsAtHand}
            {atHand.size === 0 && <small> {wording.stock}</small>}
          </legend>
          {connectors.map(({ id, title }) => (
            <Tick key={id} words={title} on={atHand.has(id)} set={(on) => toggle(id, on)} />
          ))}
        </fieldset>
      </div>
    </details>
  );
}

interface TickProps {
  readonly words: string;
  readonly on: boolean;
  readonly set: (on: boolean) => void;
}

function Tick({ words, on, set }: TickProps) {
  return (
    <label className="make-up-side">
      <input type="checkbox" checked={on} onChange={({ target }) => set(target.checked)} />
      {words}
    </label>
  );
}
