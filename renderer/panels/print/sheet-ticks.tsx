import { useId } from "react";
import type { SheetOffer } from "../../../shared-model/answers/paper-messages.ts";
import type { SheetKind } from "../../../shared-model/answers/sheet-input.ts";
import { documentStore, hasProposed } from "../../state/document-store.ts";
import { type PrintChoice, ticks, whyNot } from "../../state/print/print-choice.ts";
import { printStore } from "../../state/print/print-store.ts";
import { choose, sceneNow } from "../../state/print/printing.ts";
import { useStore } from "../../state/use-store.ts";
import { wording } from "./words.ts";

/** The sheets of a job folder in their order, each with a tick and its number of pages, or why it cannot be had. */
export function SheetTicks() {
  const offers = useStore(printStore, (state) => state.offers) ?? [];
  const choice = useStore(printStore, (state) => state.choice);
  const started = useStore(documentStore, hasProposed);
  const ticked = ticks(choice, sceneNow());
  return (
    <fieldset className="print-sheets">
      <legend>{wording.sheets}</legend>
      <div className="print-all">
        <Several word={wording.all} sheets={new Set(offers.map(({ kind }) => kind))} />
        <Several word={wording.none} sheets={new Set()} />
        <Several word={wording.usual} sheets="usual" />
      </div>
      {offers.map((offer) => (
        <SheetTick key={offer.kind} offer={offer} ticked={ticked} refusal={whyNot(offer, started)} />
      ))}
    </fieldset>
  );
}

/** Ticks and unticks them all with one press. */
function Several({ word, sheets }: { readonly word: string; readonly sheets: PrintChoice["sheets"] }) {
  return (
    <button type="button" className="button small" onClick={() => choose({ sheets })}>
      {word}
    </button>
  );
}

interface TickProps {
  readonly offer: SheetOffer;
  readonly ticked: ReadonlySet<SheetKind>;
  /** Why it cannot be had. */
  readonly refusal: string | undefined;
}

function SheetTick({ offer: { kind, title }, ticked, refusal }: TickProps) {
  const id = useId();
  const pages = useStore(printStore, ({ laid }) => laid?.sheets.find((sheet) => sheet.kind === kind)?.pages.length);
  const empty = useStore(printStore, ({ laid }) => laid?.empty[kind]);
  const cannot = refusal ?? empty;
  const isOn = cannot === undefined && ticked.has(kind);
  const note = cannot ?? (isOn && pages !== undefined ? wording.pagesOf(pages) : "");
  return (
    <div className="print-tick">
      <label>
        <input
          type="checkbox"
          checked={isOn}
          disabled={cannot !== undefined}
          aria-describedby={note === "" ? undefined : id}
          onChange={({ target }) => {
            const next = new Set(ticked);
            if (target.checked) next.add(kind);
            else next.delete(kind);
            choose({ sheets: next });
          }}
        />
        {title}
      </label>
      <small id={id} className="fig">
        {note}
      </small>
    </div>
  );
}
