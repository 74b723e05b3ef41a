import { Suspense, use } from "react";
import { closeDialog } from "../../state/dialog-store.ts";
import { loadRuleHelp } from "../../state/rule-help.ts";
import { ErrorBoundary } from "../../ui/error-boundary.tsx";
import { Modal } from "../../ui/modal.tsx";
import { Prose } from "../../ui/prose.tsx";
import { type ExamplePictures, WrongAndRight } from "./wrong-and-right.tsx";

interface Props {
  readonly rule: string;
  /** What the finding at hand says. */
  readonly message: string;
  readonly pictures: ExamplePictures;
}

/** Explains a finding by its rule: what is wrong here, wrong and right in drawings, why, and where the numbers come from. */
export function HelpDialog({ rule, message, pictures }: Props) {
  const text = loadRuleHelp(rule);
  const title = (
    <Suspense fallback="Explanation">
      <Title text={text} />
    </Suspense>
  );
  return (
    <Modal title={title} onClose={closeDialog} page>
      <Suspense fallback={<p>Fetching the explanation.</p>}>
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

const Title = ({ text }: { readonly text: Promise<string> }) => TITLE.exec(use(text))?.[1] ?? "Explanation";

function Page({ text, rule, message, pictures }: Props & { readonly text: Promise<string> }) {
  const page = use(text)
    .replace(TITLE, "")
    .replace(SAYS, () => `## What it says here\n\n${message}\n\n`);
  const [before = "", wrong, right, after = ""] = page.split(EXAMPLES);
  if (wrong === undefined || right === undefined) return <Prose markdown={page} />;
  return (
    <>
      <Prose markdown={before} />
      <ErrorBoundary what="The pair of drawings">
        <Suspense fallback={<p className="dim">Fetching the drawings.</p>}>
          <WrongAndRight rule={rule} wrong={wrong} right={right} pictures={pictures} />
        </Suspense>
      </ErrorBoundary>
      <Prose markdown={after} />
    </>
  );
}
