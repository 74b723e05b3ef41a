import { useId } from "react";
import type { SheetOffer } from "../../../shared-model/answers/paper-messages.ts";
import type { SheetKind } from "../../../shared-model/answers/sheet-input.ts";
import { documentStore, hasProposed } from "../../state/document-store.ts";
import { whyNot } from "../../state/print/print-choice.ts";
import { printStore } from "../../state/print/print-store.ts";
import { choose } from "../../state/print/printing.ts";
import { useStore } from "../../state/use-store.ts";
import { wording } from "./words.ts";

/** The sheets of a job folder in their order, each with a tick and its number of pages. */
export function SheetTicks() {
  const offers = useStore(printStore, (state) => state.offers) ?? [];
  const without = useStore(printStore, ({ choice }) => choice.without);
  const started = useStore(documentStore, hasProposed);
  const setAll = (on: boolean) => choose({ without: new Set(on ? [] : offers.map(({ kind }) => kind)) });
  return (
    <fieldset className="print-sheets">
      <legend>{wording.sheets}</legend>
      <div className="print-all">
        <button type="button" className="button small" onClick={() => setAll(true)}>
          {wording.all}
        </button>
        <button type="button" className="button small" onClick={() => setAll(false)}>
          {wording.none}
        </button>
      </div>
      {offers.map((offer) => (
        <SheetTick key={offer.kind} offer={offer} without={without} refusal={whyNot(offer, started)} />
      ))}
    </fieldset>
  );
}

interface TickProps {
  readonly offer: SheetOffer;
  readonly without: ReadonlySet<SheetKind>;
  /** Why it cannot be had. */
  readonly refusal: string | undefined;
}

function SheetTick({ offer: { kind, title }, without, refusal }: TickProps) {
  const id = useId();
  const pages = useStore(printStore, ({ laid }) => laid?.sheets.find((sheet) => sheet.kind === kind)?.pages.length);
  const isOn = refusal === undefined && !without.has(kind);
  const note = refusal ?? (isOn && pages !== undefined ? wording.pagesOf(pages) : "");
  return (
    <div className="print-tick">
      <label>
        <input
          type="checkbox"
          checked={isOn}
          disabled={refusal !== undefined}
          aria-describedby={note === "" ? undefined : id}
          onChange={({ target }) => {
            const next = new Set(without);
            if (target.checked) next.delete(kind);
            else next.add(kind);
            choose({ without: next });
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
