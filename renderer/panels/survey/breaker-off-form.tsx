import { useId, useState } from "react";
import type { CircuitMap } from "../../../shared-model/answers/survey.ts";
import type { DeviceId, OutletKey } from "../../../shared-model/model/ids.ts";
import { documentStore } from "../../state/document-store.ts";
import { breakersOf } from "../../state/survey/breakers.ts";
import { breakerOff, writeBreakerOff } from "../../state/survey/write-reading.ts";
import { useStore } from "../../state/use-store.ts";
import { Section } from "../details/section.tsx";
import { Refused } from "../refused.tsx";
import { type WentOf, wentOf } from "./went.ts";
import { WentRows } from "./went-rows.tsx";
import { wording } from "./words.ts";

/** One breaker off: what of the drawn outlets, lights and appliances went dead, half dead, or stayed live. */
export function BreakerOffForm({ map }: { readonly map: CircuitMap }) {
  const id = useId();
  const asFound = useStore(documentStore, ({ project }) => project.asFound);
  const readings = useStore(documentStore, ({ project }) => project.readings);
  const readOnly = useStore(documentStore, (document) => document.readOnly);
  const breakers = breakersOf(asFound);
  const [picked, setPicked] = useState<DeviceId>();
  const [changed, setChanged] = useState<WentOf>();
  const [said, setSaid] = useState<string>();
  const [refusal, setRefusal] = useState<string>();
  const first = breakers.find((one) => map.notObserved.some((open) => open.id === one.id)) ?? breakers[0];
  const breaker = breakers.find((one) => one.id === picked) ?? first;
  if (breaker === undefined) return <p className="empty">{wording.noBreakerIsDrawn}</p>;
  if (readOnly) return null;
  const old = breakerOff(readings, breaker.id);
  const went = changed ?? wentOf(old);
  const keysOf = (...kinds: readonly string[]): readonly OutletKey[] =>
    map.outlets.flatMap(({ outlet }) => (kinds.includes(went[outlet] ?? "") ? [outlet as OutletKey] : []));
  const write = (dead: readonly OutletKey[], live: readonly OutletKey[]): void => {
    const done = writeBreakerOff(breaker.id, breaker.name, dead, live);
    setRefusal(done.ok || done.refusal.code === "nothing-to-change" ? undefined : done.refusal.message);
    if (!done.ok) return;
    setSaid(wording.writtenDown(breaker.name));
    setChanged(undefined);
    setPicked(undefined);
  };
  const dead = keysOf("dead", "half");
  const live = keysOf("live", "half");
  const open = map.outlets.filter(({ outlet }) => went[outlet] === undefined);
  const restLive = (): void =>
    setChanged({ ...went, ...Object.fromEntries(open.map(({ outlet }) => [outlet, "live"])) });
  return (
    <Section title={wording.oneBreakerOff} note={wording.notOffYet(map.notObserved.length)}>
      <form
        className="part-body survey-breaker"
        aria-label={wording.oneBreakerOff}
        onSubmit={(event) => {
          event.preventDefault();
          if (dead.length + live.length > 0) write(dead, live);
          else setRefusal(wording.sayWhatWasLookedAt);
        }}
      >
        <div className="survey-around">
          <label htmlFor={id}>{wording.turnOff}</label>
          <select
            id={id}
            className="field small"
            value={breaker.id}
            onChange={({ target }) => {
              setPicked(target.value as DeviceId);
              setChanged(undefined);
              setSaid(undefined);
            }}
          >
            {breakers.map((one) => (
              <option key={one.id} value={one.id}>
                {map.notObserved.some((open) => open.id === one.id) ? one.name : wording.wasOff(one.name)}
              </option>
            ))}
          </select>
        </div>
        {old !== undefined && <p className="dim">{wording.takesThePlaceOf(breaker.name)}</p>}
        <WentRows key={breaker.id} map={map} breaker={breaker.id} went={went} onWent={setChanged} />
        <p className="dim">{wording.whatWasNotLookedAt}</p>
        <div className="part-buttons">
          <button type="submit" className="button main" aria-disabled={dead.length + live.length === 0}>
            {wording.writeItDown}
          </button>
          <button type="button" className="button" aria-disabled={open.length === 0} onClick={restLive}>
            {wording.allOthersLive}
          </button>
        </div>
        <p className="dim" role="status">
          {said}
        </p>
        <Refused message={refusal} />
      </form>
    </Section>
  );
}
