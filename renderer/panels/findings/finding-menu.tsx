import type { Finding, Subject } from "../../../shared-model/answers/finding.ts";
import { systemClipboard } from "../../platform/system-clipboard.ts";
import { openDialog } from "../../state/dialog-store.ts";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { hasRuleHelp } from "../../state/rule-help.ts";
import type { Selected } from "../../state/selection.ts";
import { goTo, notify, select } from "../../state/session-store.ts";
import { findSubject } from "../../state/subject-target.ts";
import { ActionMenu } from "../../ui/action-menu.tsx";
import { MenuItem, MenuLine } from "../../ui/word-menu.tsx";
import { wording } from "./words.ts";

const WORDS = {
  menu: wording.whatCanBeDoneWithThe,
  show: (name: string) => wording.showOnTheSheet(name),
  selectAll: wording.selectAllThatItIsAbout,
  explain: wording.explain,
  copy: wording.copyWhatItSays,
  refused: wording.theClipboardWasNotReached,
  mark: wording.markTheWordsAndPressThe,
} as const;

interface Props {
  readonly finding: Finding;
  readonly at: { readonly x: number; readonly y: number };
  readonly onClose: () => void;
}

/** What can be done with a finding, beside the buttons that it shows. */
export function FindingMenu({ finding, at, onClose }: Props) {
  const { subjects, rule, message } = finding;
  const targets = [...new Map(subjects.map((one) => [`${one.kind} ${one.id}`, one])).values()].flatMap(targetOf);
  return (
    <ActionMenu label={WORDS.menu} at={at} onClose={onClose}>
      {targets.map(({ name, target }) => (
        <MenuItem key={`${target.kind} ${target.id}`} onChoose={() => goTo(target)}>
          {WORDS.show(name)}
        </MenuItem>
      ))}
      {targets.length > 1 && (
        <MenuItem onChoose={() => select(...targets.map(({ target }) => target))}>{WORDS.selectAll}</MenuItem>
      )}
      {targets.length > 0 && <MenuLine />}
      {hasRuleHelp(rule) && (
        <MenuItem onChoose={() => openDialog({ kind: "help", rule, message })}>{WORDS.explain}</MenuItem>
      )}
      <MenuItem onChoose={() => void copy(message)}>{WORDS.copy}</MenuItem>
    </ActionMenu>
  );
}

function targetOf(subject: Subject): readonly { readonly name: string; readonly target: Selected }[] {
  const document = documentStore.get();
  const target = findSubject(document.project, installationOf(document), subject);
  return target === undefined ? [] : [{ name: subject.name, target }];
}

async function copy(message: string): Promise<void> {
  if (!(await systemClipboard.write(message))) notify("problem", WORDS.refused, [WORDS.mark]);
}
