import { type ComponentType, useEffect, useState } from "react";
import { loadRuleExample, type RuleExample } from "../../state/rule-examples.ts";
import { wording } from "./words.ts";

/** What to look at in the wrong drawing and in the right one. */
interface Words {
  readonly wrong: string;
  readonly right: string;
}

/** Draws an example; panes do not know the sheet, so the window hands it in. */
export type ExamplePictures = ComponentType<Words & { readonly example: RuleExample }>;

type Fetched = RuleExample | "none" | "failed" | undefined;

/** A drawing that breaks a rule and one that keeps it; their words alone where there are none. */
export function WrongAndRight({
  rule,
  pictures: Pictures,
  ...words
}: Words & { readonly rule: string; readonly pictures: ExamplePictures }) {
  const [fetched, setFetched] = useState<Fetched>();
  useEffect(() => {
    if (fetched !== undefined) return;
    let wanted = true;
    const take = (now: Fetched): void => {
      if (wanted) setFetched(now);
    };
    loadRuleExample(rule).then(
      (example) => take(example ?? "none"),
      () => take("failed"),
    );
    return () => {
      wanted = false;
    };
  }, [rule, fetched]);
  if (fetched === undefined) return <p className="dim">{wording.fetchingTheDrawings}</p>;
  if (typeof fetched === "object") return <Pictures example={fetched} {...words} />;
  return (
    <>
      <p>
        <strong>{wording.wrong}</strong> {words.wrong} <strong>{wording.right}</strong> {words.right}
      </p>
      {fetched === "failed" && (
        <p role="alert">
          {wording.theDrawingsCouldNotBeFetched}
          <button type="button" className="button" onClick={() => setFetched(undefined)}>
            {wording.fetchThemAgain}
          </button>
        </p>
      )}
    </>
  );
}
