import type { Finding, Fix } from "../../../shared-model/answers/finding.ts";
import { documentStore } from "../../state/document-store.ts";
import { judgeFixes } from "../../state/fix-trials.ts";
import { applyFix, fixStore, isWord, keyOfFix } from "../../state/fixes.ts";
import { useStore } from "../../state/use-store.ts";
import { nextFocusAfter } from "./next-focus.ts";
import { wording } from "./words.ts";

/** The plain repair of a finding as a button, and what a person may choose from as a list. */
export function FixButtons({ finding }: { readonly finding: Finding }) {
  const readOnly = useStore(documentStore, (state) => state.readOnly);
  const { fix } = finding;
  const words = finding.offers?.filter(isWord) ?? [];
  const offers = finding.offers?.filter((offer) => !isWord(offer)) ?? [];
  if (readOnly || (fix === undefined && offers.length + words.length === 0)) return null;
  return (
    <div className="finding-fixes">
      {fix && <FixButton finding={finding} fix={fix} main />}
      {words.map((word) => (
        <FixButton key={word.title} finding={finding} fix={word} />
      ))}
      {offers.length > 0 && (
        <details className="finding-offers">
          <summary>
            {offers.length} {offers.length === 1 ? wording.way : wording.ways}
            {wording.toMendIt}
            <span className="unseen"> {finding.subjects[0]?.name}</span>
          </summary>
          {offers.map((offer) => (
            <FixButton key={offer.title} finding={finding} fix={offer} />
          ))}
        </details>
      )}
    </div>
  );
}

interface Props {
  readonly finding: Finding;
  readonly fix: Fix;
  readonly main?: boolean;
}

/** Tried on a copy when it is pressed: it is applied, or withdrawn with the reason until the drawing changes. */
function FixButton({ finding, fix, main = false }: Props) {
  const key = keyOfFix(finding, fix);
  const why = useStore(fixStore, (state) => state.withdrawn.get(key));
  const trying = useStore(fixStore, (state) => state.trying === key);
  const press = async (button: HTMLElement): Promise<void> => {
    if (why !== undefined) return;
    const focusNext = nextFocusAfter(button);
    if (await applyFix(finding, fix, judgeFixes)) focusNext();
  };
  return (
    <div className={why === undefined ? "fix" : "fix withdrawn"}>
      <button
        type="button"
        className={main ? "button small fix-main" : "button small"}
        aria-disabled={why !== undefined || trying || undefined}
        onClick={({ currentTarget }) => press(currentTarget)}
      >
        {fix.title}
      </button>
      <p role="status" className={why === undefined && !trying ? "unseen" : "fix-why"}>
        {trying && wording.tryingItOnACopy}
        {why !== undefined && (
          <>
            <strong>{wording.withdrawn}</strong> {why}
          </>
        )}
      </p>
    </div>
  );
}
