import { lazy, Suspense } from "react";
import { unreachable } from "../../../shared-model/lib/unreachable.ts";
import { closeDialog, dialogStore } from "../../state/dialog-store.ts";
import { useStore } from "../../state/use-store.ts";
import { Modal } from "../../ui/modal.tsx";
import { CautionsDialog } from "./cautions-dialog.tsx";
import { HelpDialog } from "./help-dialog.tsx";
import { SamplesDialog } from "./samples-dialog.tsx";
import { wording } from "./words.ts";
import type { ExamplePictures } from "./wrong-and-right.tsx";

const AmendmentsDialog = lazy(() => import("./amendments-dialog.tsx"));
const KeysDialog = lazy(() => import("./keys-dialog.tsx"));
const LegendDialog = lazy(() => import("./legend-dialog.tsx"));
const RuleBookDialog = lazy(() => import("./rule-book-dialog.tsx"));
const PhotoDialog = lazy(() => import("./photo-dialog.tsx"));
const RecordDialog = lazy(() => import("../record/record-dialog.tsx"));
const PrintDialog = lazy(() => import("../print/print-dialog.tsx"));
const NewBoxDialog = lazy(() => import("../start/new-box-dialog.tsx"));

/** The dialog that is open. A file of its own: dialogs bring a library that the start page does without. */
export default function OpenDialog({ examples }: { readonly examples: ExamplePictures }) {
  const dialog = useStore(dialogStore, (state) => state);
  switch (dialog.kind) {
    case "none":
      return null;
    case "cautions":
      return <CautionsDialog />;
    case "samples":
      return <SamplesDialog />;
    case "new-box":
      return (
        <Suspense fallback={null}>
          <NewBoxDialog />
        </Suspense>
      );
    case "keys":
      return (
        <Suspense fallback={null}>
          <KeysDialog />
        </Suspense>
      );
    case "legend":
      return (
        <Suspense fallback={null}>
          <LegendDialog />
        </Suspense>
      );
    case "amendments":
      return (
        <Suspense fallback={null}>
          <AmendmentsDialog />
        </Suspense>
      );
    case "rule-book":
      return (
        <Suspense fallback={null}>
          <RuleBookDialog search={dialog.search} />
        </Suspense>
      );
    case "test-record":
      return (
        <Suspense fallback={null}>
          <RecordDialog at={dialog.at} />
        </Suspense>
      );
    case "print":
      return (
        <Suspense fallback={null}>
          <PrintDialog />
        </Suspense>
      );
    case "photo":
      return (
        <Suspense fallback={null}>
          <PhotoDialog id={dialog.id} />
        </Suspense>
      );
    case "help":
      return <HelpDialog rule={dialog.rule} message={dialog.message} from={dialog.from} pictures={examples} />;
    case "question":
      return <Question title={dialog.title} lines={dialog.lines} answers={dialog.answers} />;
    default:
      return unreachable(dialog);
  }
}

interface QuestionProps {
  readonly title: string;
  readonly lines: readonly string[];
  readonly answers: readonly string[];
}

function Question({ title, lines, answers }: QuestionProps) {
  const buttons = answers.map((answer, index) => (
    <button
      key={answer}
      type="button"
      className={index === 0 ? "button main" : "button"}
      onClick={() => closeDialog(answer)}
    >
      {answer}
    </button>
  ));
  const cancel = (
    <button type="button" className="button" onClick={() => closeDialog()}>
      {wording.cancel}
    </button>
  );
  return (
    <Modal title={title} onClose={closeDialog} foot={[...buttons, <span key="cancel">{cancel}</span>]}>
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </Modal>
  );
}
