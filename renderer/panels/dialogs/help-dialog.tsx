import { Suspense, use } from "react";
import { closeDialog } from "../../state/dialog-store.ts";
import { loadRuleHelp } from "../../state/rule-help.ts";
import { Modal } from "../../ui/modal.tsx";
import { Prose } from "../../ui/prose.tsx";

/** Explains a finding by its rule: what must hold, why, what is wrong here, and where the numbers come from. */
export function HelpDialog({ rule, message }: { readonly rule: string; readonly message: string }) {
  const text = loadRuleHelp(rule);
  const title = (
    <Suspense fallback="Explanation">
      <Title text={text} />
    </Suspense>
  );
  return (
    <Modal title={title} onClose={closeDialog} wide>
      <Suspense fallback={<p>Fetching the explanation.</p>}>
        <Page text={text} message={message} />
      </Suspense>
    </Modal>
  );
}

const TITLE = /^# (.*)\n/;

/** Up to the next heading: patterns with names in braces, which the finding at hand has filled in. */
const SAYS = /^## What it says\n(?:.|\n)*?(?=^## )/m;

const Title = ({ text }: { readonly text: Promise<string> }) => TITLE.exec(use(text))?.[1] ?? "Explanation";

function Page({ text, message }: { readonly text: Promise<string>; readonly message: string }) {
  const page = use(text).replace(TITLE, "");
  return <Prose markdown={page.replace(SAYS, () => `## What it says here\n\n${message}\n\n`)} />;
}
