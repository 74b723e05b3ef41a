import type { Finding, Standing } from "../../../shared-model/answers/finding.ts";
import { STANDING_WORDS } from "../../state/finding-groups.ts";
import { FINDING_WORDS, isDraft, isUnchecked, MARKS } from "./finding-words.ts";
import { wording } from "./words.ts";

interface Props {
  readonly finding: Finding;
  readonly standing: Standing | undefined;
}

/** What a finding rests on, in a line of small print. What nearly every one shares is a mark, told once for the list. */
export function Backing({ finding, standing }: Props) {
  const { section, basis, textOf } = finding;
  return (
    <p className="finding-meta">
      {standing && <span>{STANDING_WORDS[standing]}</span>}
      {section && (
        <span>
          {section.confidence === "own-rule" ? FINDING_WORDS.ownRule : section.section}
          {section.confidence === "doubtful" && FINDING_WORDS.doubtful}
          {isUnchecked(finding) && <Mark of="unchecked" />}
          {isDraft(finding) && <Mark of="draft" />}
        </span>
      )}
      {!section && isDraft(finding) && <span>{MARKS.draft.words}</span>}
      {textOf !== undefined && <span>{wording.byTheTextNotVerified(textOf)}</span>}
      {basis && <span>{wording.restsOnWhatWas(basis)}</span>}
    </p>
  );
}

function Mark({ of }: { readonly of: keyof typeof MARKS }) {
  const { sign, words } = MARKS[of];
  return (
    <span className="finding-mark" title={words}>
      <span aria-hidden="true">{sign}</span>
      <span className="unseen">, {words}</span>
    </span>
  );
}
