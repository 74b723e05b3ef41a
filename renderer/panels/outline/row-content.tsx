import { useState } from "react";
import { SEVERITY_WORDS } from "../../state/finding-groups.ts";
import type { Nameable } from "../../state/item-actions/nameable.ts";
import { Glyph } from "../../ui/glyph.tsx";
import { SeveritySign } from "../severity-sign.tsx";
import { Swatch } from "../swatch.tsx";
import type { FindingCount } from "./finding-counts.ts";
import type { OutlineRow } from "./outline-rows.ts";
import { wording } from "./words.ts";

interface Props {
  readonly row: OutlineRow;
  readonly found: FindingCount | undefined;
  /** Set while the name of the row is being changed. */
  readonly renaming: Nameable | undefined;
  readonly onRenamed: (text: string | undefined) => void;
  readonly onMore: (at: { readonly x: number; readonly y: number }) => void;
}

/** What stands in a row of the outline: what it is, its name, where it is, the findings about it, and more. */
export function RowContent({ row, found, renaming, onRenamed, onMore }: Props) {
  const { name, note, glyph, colour, kind } = row.node;
  if (renaming !== undefined) return <RenameField nameable={renaming} onDone={onRenamed} />;
  return (
    <>
      {glyph !== undefined && <Glyph id={glyph} size={18} />}
      {colour !== undefined && <Swatch colour={colour} />}
      <span className="outline-name">{name}</span>
      <span className="outline-note">{note === "" ? kind : note}</span>
      {found !== undefined && (
        <span className="outline-found fig" title={foundWords(found)}>
          <SeveritySign kind={found.worst} size={16} />
          {found.count}
        </span>
      )}
      <button
        type="button"
        tabIndex={-1}
        className="outline-more"
        aria-label={wording.actionsFor(name)}
        aria-haspopup="menu"
        onClick={(event) => {
          event.stopPropagation();
          const { left, bottom } = event.currentTarget.getBoundingClientRect();
          onMore({ x: left, y: bottom });
        }}
      >
        <svg width="14" height="14" viewBox="0 0 14 14" aria-hidden="true">
          <path d="M2 7h.01M7 7h.01M12 7h.01" stroke="currentColor" strokeWidth="2.6" strokeLinecap="round" />
        </svg>
      </button>
    </>
  );
}

/** "3 findings, worst: violation". */
export function foundWords({ count, worst }: FindingCount): string {
  const word = SEVERITY_WORDS[worst].toLowerCase();
  return count === 1 ? wording.n1Finding(word) : wording.findingsWorst(count, word);
}

/** Enter or leaving the field takes the name over, Escape keeps the old one. */
function RenameField({
  nameable,
  onDone,
}: {
  readonly nameable: Nameable;
  readonly onDone: (text: string | undefined) => void;
}) {
  const [typed, setTyped] = useState(nameable.value);
  return (
    <input
      ref={(input) => {
        if (input === null || input === document.activeElement) return;
        input.focus();
        input.select();
      }}
      className="field small outline-rename"
      aria-label={nameable.label}
      spellCheck={false}
      value={typed}
      onChange={({ target }) => setTyped(target.value)}
      onClick={(event) => event.stopPropagation()}
      onBlur={() => onDone(typed.trim())}
      onKeyDown={(event) => {
        event.stopPropagation();
        if (event.key === "Enter") onDone(typed.trim());
        else if (event.key === "Escape") onDone(undefined);
        else return;
        event.preventDefault();
      }}
    />
  );
}
