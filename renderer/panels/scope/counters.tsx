import type { ScopeAnswer } from "../../../shared-model/answers/scope.ts";
import { wording } from "./words.ts";

/** Four figures of the work by hand. */
export function Counters({ totals }: Pick<ScopeAnswer, "totals">) {
  const { detach, attach, newJoints, devices } = totals;
  return (
    <dl className="scope-counters" aria-label={wording.totals}>
      <Counter figure={detach} word={wording.detach} />
      <Counter figure={attach} word={wording.attach} />
      <Counter figure={newJoints} word={newJoints === 1 ? wording.joint : wording.joints} />
      <Counter figure={devices} word={devices === 1 ? wording.device : wording.devices} />
    </dl>
  );
}

function Counter({ figure, word }: { readonly figure: number; readonly word: string }) {
  return (
    <div>
      <dt>{word}</dt>
      <dd className="fig">{figure}</dd>
    </div>
  );
}
