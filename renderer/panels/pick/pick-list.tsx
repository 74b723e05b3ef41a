import { type KeyboardEvent, type RefObject, useEffect, useId, useState } from "react";
import { documentStore } from "../../state/document-store.ts";
import { SEVERITY_WORDS } from "../../state/finding-groups.ts";
import { landingStore } from "../../state/landing-store.ts";
import { aimPick, choosePicked, type Pick, type PickLine } from "../../state/pick-store.ts";
import { useStore } from "../../state/use-store.ts";
import { SeveritySign } from "../severity-sign.tsx";
import { findPicked } from "./find-picked.ts";
import { withRefusal } from "./pick-refusal.ts";
import { wording } from "./words.ts";

/** A house has a thousand boxes: so many lines at first, and as many again for each press on "more". */
const PAGE = 60;

interface Props {
  readonly pick: Pick;
  readonly input: RefObject<HTMLInputElement | null>;
}

/** The lines of a choice: type, go up and down, Enter; or press a line. What is not possible says why. */
export function PickList({ pick, input }: Props) {
  const [typed, setTyped] = useState("");
  // By key: lines may change their order while the checks answer.
  const [at, setAt] = useState<string>();
  const [most, setMost] = useState(PAGE);
  const list = useId();
  // The lines look at both; what they say is asked again when either changes.
  useStore(documentStore, ({ revision }) => revision);
  useStore(landingStore, ({ previews }) => previews);
  const found = findPicked(pick, typed);
  const shown = found.slice(0, most).map(withRefusal);
  const place = shown.findIndex(({ key }) => key === at);
  const now = shown.length === 0 ? -1 : Math.max(place, 0);

  const [over, setOver] = useState<string>();
  const aim = (shown.find(({ key }) => key === over) ?? shown[now])?.aim;

  useEffect(() => input.current?.focus(), [input]);
  useEffect(() => aimPick(aim));
  useEffect(() => () => aimPick(undefined), []);
  const choose = (line: PickLine | undefined): void => {
    if (line !== undefined && line.refusal === undefined) choosePicked(line);
  };
  const move = (to: number): void => {
    setOver(undefined);
    if (shown.length > 0) setAt(shown[(to + shown.length) % shown.length]?.key);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === "ArrowDown") move(now + 1);
    else if (event.key === "ArrowUp") move(now - 1);
    else if (event.key === "PageDown") setAt(shown[Math.min(now + 8, shown.length - 1)]?.key);
    else if (event.key === "PageUp") setAt(shown[Math.max(now - 8, 0)]?.key);
    else if (event.key === "Enter") choose(shown[now]);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const label = pick.typed?.label ?? wording.findInTheList;
  return (
    <div className="pick-body">
      {pick.hint !== undefined && (
        <p id={`${list}-hint`} className="pick-hint">
          {pick.hint}
        </p>
      )}
      <input
        ref={input}
        className="field"
        role="combobox"
        aria-label={label}
        aria-describedby={pick.hint === undefined ? undefined : `${list}-hint`}
        aria-expanded="true"
        aria-controls={list}
        aria-autocomplete="list"
        aria-activedescendant={shown[now] === undefined ? undefined : `${list}-${now}`}
        placeholder={label}
        autoComplete="off"
        spellCheck={false}
        value={typed}
        onChange={({ target }) => {
          setTyped(target.value);
          setAt(undefined);
        }}
        onKeyDown={onKeyDown}
      />
      <div className="pick-lines" id={list} role="listbox" aria-label={pick.title}>
        {shown.map((line, index) => (
          <Line
            key={line.key}
            id={`${list}-${index}`}
            line={line}
            active={index === now}
            onChoose={() => choose(line)}
            onOver={setOver}
          />
        ))}
        {shown.length === 0 && (
          <div className="empty" role="option" tabIndex={-1} aria-selected="false" aria-disabled="true">
            {typed === "" ? wording.thereIsNothingToChooseFrom : wording.nothingInTheListIsCalled}
          </div>
        )}
      </div>
      {found.length > shown.length && (
        <button type="button" className="link pick-more" onClick={() => setMost(most + PAGE)}>
          {found.length - shown.length}
          {wording.more}
        </button>
      )}
    </div>
  );
}

interface LineProps {
  readonly id: string;
  readonly line: PickLine;
  readonly active: boolean;
  readonly onChoose: () => void;
  /** The pointer is on it, or no longer. */
  readonly onOver: (key: string | undefined) => void;
}

function Line({ id, line, active, onChoose, onOver }: LineProps) {
  const { title, note, severity, refusal } = line;
  useEffect(() => {
    if (active) document.getElementById(id)?.scrollIntoView({ block: "nearest" });
  }, [active, id]);
  return (
    <div
      id={id}
      role="option"
      tabIndex={-1}
      aria-selected={active}
      aria-disabled={refusal !== undefined}
      className="pick-line"
      // The press must not take the focus from the field before the click arrives.
      onMouseDown={(event) => event.preventDefault()}
      onClick={onChoose}
      onPointerEnter={() => onOver(line.key)}
      onPointerLeave={() => onOver(undefined)}
      onKeyDown={() => undefined}
    >
      {severity !== undefined && <SeveritySign kind={severity} size={18} />}
      <span className="pick-title">{title}</span>
      {severity !== undefined && <span>{SEVERITY_WORDS[severity]}</span>}
      <span className="pick-note">{refusal === undefined ? note : wording.notPossible(refusal)}</span>
    </div>
  );
}
