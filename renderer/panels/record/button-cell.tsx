import { useRef, useState } from "react";
import type { OutletKey } from "../../../shared-model/model/ids.ts";
import { cellName, RECORD_WORDS } from "../../state/test-record-words.ts";
import { focusAfter } from "./next-line.ts";
import type { EntryProps } from "./record-props.ts";
import { wording } from "./words.ts";

/** What a button did: the outlets of its circuit, of which those are ticked that went dark, or by RESET came on. */
export function ButtonCell({ row, stage, seen, found, onEnter }: EntryProps) {
  const [ticked, setTicked] = useState<ReadonlySet<OutletKey>>();
  const opener = useRef<HTMLButtonElement>(null);
  const name = cellName(row.item, row.test, stage);
  const recorded = row[stage]?.record?.outlets;
  const around = seen.expectedOf(row, stage)?.around ?? [];
  const outlets = new Map<OutletKey, string>([
    ...around.map(({ outlet, name: title }) => [outlet, title] as const),
    ...(recorded ?? []).map((key) => [key, seen.nameOf(stage, key) ?? key] as const),
  ]);
  const did = row.test === "reset" ? wording.cameOn : wording.wentDark;
  const close = (): void => {
    setTicked(undefined);
    opener.current?.focus();
  };
  const write = (): void => {
    if (!onEnter({ outlets: [...outlets.keys()].filter((key) => ticked?.has(key)) })) return;
    setTicked(undefined);
    const cell = opener.current?.closest("td");
    const body = opener.current?.closest<HTMLElement>(".record-body");
    if (cell && body) focusAfter(body, cell);
  };
  return (
    <>
      <button
        ref={opener}
        type="button"
        className="button small record-button"
        aria-expanded={ticked !== undefined}
        aria-label={`${name}: ${found ?? RECORD_WORDS.record}`}
        onClick={() => setTicked(ticked === undefined ? new Set(recorded ?? []) : undefined)}
      >
        {found ?? RECORD_WORDS.record}
      </button>
      {ticked !== undefined && (
        <fieldset
          className="record-ticks"
          onKeyDown={(event) => {
            if (event.key !== "Escape") return;
            // The dialog stays open: only this is closed.
            event.stopPropagation();
            close();
          }}
        >
          <legend>{`${did}: ${row.item}`}</legend>
          {outlets.size === 0 && <p className="dim">{RECORD_WORDS.notFound}</p>}
          {[...outlets].map(([key, title]) => (
            <label key={key}>
              <input
                type="checkbox"
                checked={ticked.has(key)}
                onChange={({ target }) => {
                  const next = new Set(ticked);
                  if (target.checked) next.add(key);
                  else next.delete(key);
                  setTicked(next);
                }}
              />
              {title}
            </label>
          ))}
          <button type="button" className="button small" onClick={write}>
            {ticked.size === 0 ? wording.nothing(did.toLowerCase()) : RECORD_WORDS.write}
          </button>
        </fieldset>
      )}
    </>
  );
}
