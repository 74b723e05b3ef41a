import { useState } from "react";
import type { Operable } from "../../../shared-model/answers/energised.ts";
import { rounded, standsWords } from "../../state/energise/energise-words.ts";
import { operate, pressReset, pressTest } from "../../state/energise/operating.ts";
import { goTo } from "../../state/session-store.ts";
import { Section } from "../details/section.tsx";
import { wording } from "./words.ts";

/** More than this is searched, not looked through. */
const MOST_UNSEARCHED = 14;

/** Breakers, ground-fault devices, switches and loads with how they stand; a press operates them. */
export function OperatedPart({ operables }: { readonly operables: readonly Operable[] }) {
  const [typed, setTyped] = useState("");
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  const shown = operables.filter(({ name, note }) => {
    const text = `${name} ${note}`.toLowerCase();
    return words.every((word) => text.includes(word));
  });
  return (
    <Section title={wording.settings} note={wording.toOperate(operables.length)}>
      {operables.length > MOST_UNSEARCHED && (
        <div className="part-body">
          <input
            className="field small"
            aria-label={wording.findABreakerSwitchOrLoad}
            placeholder={wording.breakerSwitchLoad}
            value={typed}
            onChange={({ target }) => setTyped(target.value)}
          />
        </div>
      )}
      <ul className="energise-rows">
        {shown.map((one) => (
          <Row key={keyOf(one)} one={one} />
        ))}
      </ul>
      {shown.length === 0 && (
        <p className="empty">{operables.length === 0 ? wording.nothingHereIsOperated : "None."}</p>
      )}
    </Section>
  );
}

const keyOf = (one: Operable): string =>
  one.kind === "switch" ? one.handle : one.kind === "load" ? `load ${one.item}` : `${one.kind} ${one.device}`;

function Row({ one }: { readonly one: Operable }) {
  return (
    <li className="energise-row">
      <button
        type="button"
        className="energise-name"
        aria-label={wording.showOnTheSheet(one.name)}
        onClick={() => goTo({ kind: "device", id: one.device }, "energise")}
      >
        {one.name}
      </button>
      <span className="energise-note">{noteOf(one)}</span>
      <Controls one={one} />
      {one.kind === "ground-fault" && <Why why={one.noReset ?? (one.powered || one.stands !== "set" ? "" : one.why)} />}
    </li>
  );
}

const Why = ({ why }: { readonly why: string }) => (why === "" ? null : <small className="energise-why">{why}</small>);

function noteOf(one: Operable): string {
  if (one.kind === "breaker" && one.amps !== undefined) return wording.drawsA(one.note, rounded(one.amps));
  return one.note;
}

function Controls({ one }: { readonly one: Operable }) {
  switch (one.kind) {
    case "breaker":
      return (
        <span className="energise-controls">
          {one.test && one.stands === "on" && (
            <button
              type="button"
              className="button small"
              aria-label={wording.test(one.name)}
              onClick={() => pressTest(one.device)}
            >
              {wording.test2}
            </button>
          )}
          <Lever one={one} isOn={one.stands === "on"} />
        </span>
      );
    case "ground-fault":
      return (
        <span className="energise-controls">
          <span className={`energise-stands energise-stands-${one.stands}`}>{standsWords(one)}</span>
          <button
            type="button"
            className="button small"
            aria-label={wording.test(one.name)}
            aria-disabled={one.stands === "cannot-be-reset"}
            onClick={() => one.stands !== "cannot-be-reset" && pressTest(one.device)}
          >
            {wording.test2}
          </button>
          <button
            type="button"
            className="button small"
            aria-label={wording.reset(one.name)}
            aria-disabled={one.stands === "set"}
            onClick={() => one.stands !== "set" && pressReset(one.device)}
          >
            {wording.reset2}
          </button>
        </span>
      );
    case "switch":
      return <Lever one={one} isOn={one.positions.length === 2 && one.position === 0} />;
    case "load":
      return <Lever one={one} isOn={one.inUse} />;
  }
}

/** Two positions. "up" and "down" of a three-way switch are neither on nor off: the word says which. */
function Lever({ one, isOn }: { readonly one: Operable; readonly isOn: boolean }) {
  const word = standsWords(one);
  const named = `${one.name}, ${word}`;
  const state =
    one.kind === "switch" && one.positions[0] !== "on" ? {} : ({ role: "switch", "aria-checked": isOn } as const);
  return (
    <button
      type="button"
      className={isOn ? "energise-lever on" : "energise-lever"}
      aria-label={named}
      {...state}
      onClick={() => operate(one)}
    >
      <span className="energise-slot" aria-hidden="true">
        <span />
      </span>
      <span className="energise-word">{word}</span>
    </button>
  );
}
