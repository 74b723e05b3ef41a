import { Suspense, use } from "react";
import { closeDialog, openDialog } from "../../state/dialog-store.ts";
import { loadRuleHelp } from "../../state/rule-help.ts";
import type { RuleSearch } from "../../state/rule-search.ts";
import { ErrorBoundary } from "../../ui/error-boundary.tsx";
import { Modal } from "../../ui/modal.tsx";
import { Prose } from "../../ui/prose.tsx";
import { RULE_BOOK_WORDS } from "./rule-book-words.ts";
import { wording } from "./words.ts";
import { type ExamplePictures, WrongAndRight } from "./wrong-and-right.tsx";

interface Props {
  readonly rule: string;
  /** What the finding at hand says; without one the page tells of no case. */
  readonly message?: string | undefined;
  /** Where in the rule book it was opened. */
  readonly from?: RuleSearch | undefined;
  readonly pictures: ExamplePictures;
}

/** Explains a finding by its rule: what is wrong here, wrong and right in drawings, why, and where the numbers come from. */
export function HelpDialog({ rule, message, from, pictures }: Props) {
  const text = loadRuleHelp(rule);
  const title = (
    <Suspense fallback="Explanation">
      <Title text={text} />
    </Suspense>
  );
  const foot = from && (
    <>
      <button type="button" className="button" onClick={() => openDialog({ kind: "rule-book", search: from })}>
        {RULE_BOOK_WORDS.back}
      </button>
      <button type="button" className="button main" onClick={() => closeDialog()}>
        {RULE_BOOK_WORDS.close}
      </button>
    </>
  );
  return (
    <Modal title={title} onClose={closeDialog} foot={foot} page>
      <Suspense fallback={<p>{wording.fetchingTheExplanation}</p>}>
        <Page text={text} rule={rule} message={message} pictures={pictures} />
      </Suspense>
    </Modal>
  );
}

const TITLE = /^# (.*)\n/;

/** Up to the next heading: patterns with names in braces, which the finding at hand has filled in. */
const SAYS = /^## What it says\n(?:.|\n)*?(?=^## )/m;

/** What is said beside the drawings, and where they stand in the page. */
const EXAMPLES = /^## Wrong and right\n\n- Wrong: (.*)\n- Right: (.*)\n/m;

const Title = ({ text }: { readonly text: Promise<string> }) => TITLE.exec(use(text))?.[1] ?? wording.explanation;

function Page({ text, rule, message, pictures }: Omit<Props, "from"> & { readonly text: Promise<string> }) {
  const whole = use(text).replace(TITLE, "");
  const page = whole.replace(SAYS, () => (message === undefined ? "" : `## What it says here\n\n${message}\n\n`));
  const [before = "", wrong, right, after = ""] = page.split(EXAMPLES);
  if (wrong === undefined || right === undefined) return <Prose markdown={page} />;
  return (
    <>
      <Prose markdown={before} />
      <ErrorBoundary what={wording.thePairOfDrawings}>
        <Suspense fallback={<p className="dim">{wording.fetchingTheDrawings}</p>}>
          <WrongAndRight rule={rule} wrong={wrong} right={right} pictures={pictures} />
        </Suspense>
      </ErrorBoundary>
      <Prose markdown={after} />
    </>
  );
}
