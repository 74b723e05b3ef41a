import { Suspense, use } from "react";
import { closeDialog } from "../../state/dialog-store.ts";
import { loadRuleHelp } from "../../state/rule-help.ts";
import { Modal } from "../../ui/modal.tsx";
import { Prose } from "../../ui/prose.tsx";

/** Explains a rule: what must hold, why, and where its numbers come from. */
export function HelpDialog({ rule }: { readonly rule: string }) {
  return (
    <Modal title={rule} onClose={closeDialog} wide>
      <Suspense fallback={<p>Fetching the explanation.</p>}>
        <Page text={loadRuleHelp(rule)} />
      </Suspense>
    </Modal>
  );
}

function Page({ text }: { readonly text: Promise<string> }) {
  // The dialog has the name of the rule as its own title.
  return <Prose markdown={use(text).replace(/^# .*\n/, "")} />;
}
