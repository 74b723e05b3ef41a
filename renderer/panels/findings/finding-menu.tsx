import type { Finding, Fix, Subject } from "../../../shared-model/answers/finding.ts";
import { systemClipboard } from "../../platform/system-clipboard.ts";
import { openDialog } from "../../state/dialog-store.ts";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { judgeFixes } from "../../state/fix-trials.ts";
import { applyFix, fixesOf, fixStore, keyOfFix } from "../../state/fixes.ts";
import { hasRuleHelp } from "../../state/rule-help.ts";
import type { Selected } from "../../state/selection.ts";
import { goTo, notify, select } from "../../state/session-store.ts";
import { findSubject } from "../../state/subject-target.ts";
import { useStore } from "../../state/use-store.ts";
import { ActionMenu } from "../../ui/action-menu.tsx";
import { MenuItem, MenuLine } from "../../ui/word-menu.tsx";
import { nextFocusAfter } from "./next-focus.ts";
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
  /** The row that it belongs to. */
  readonly row: HTMLElement | null;
  /** It is about the other account of the wiring: nothing is mended from here. */
  readonly onlyRead: boolean;
  readonly onClose: () => void;
}

/** What can be done with a finding: its fixes, as their buttons do them, and what it has no button for. */
export function FindingMenu({ finding, at, row, onlyRead, onClose }: Props) {
  const { subjects, rule, message } = finding;
  const targets = [...new Map(subjects.map((one) => [`${one.kind} ${one.id}`, one])).values()].flatMap(targetOf);
  const fixes = onlyRead || documentStore.get().readOnly ? [] : fixesOf(finding);
  const withdrawn = useStore(fixStore, (state) => state.withdrawn);
  return (
    <ActionMenu label={WORDS.menu} at={at} onClose={onClose}>
      {fixes.map((fix) => (
        <MenuItem
          key={fix.title}
          disabled={withdrawn.has(keyOfFix(finding, fix))}
          onChoose={() => void mend(finding, fix, row)}
        >
          {fix.title}
        </MenuItem>
      ))}
      {fixes.length > 0 && <MenuLine />}
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

/** Tried on a copy first; where it is withdrawn, the reason stands in the row, too, but may be folded there. */
async function mend(finding: Finding, fix: Fix, row: HTMLElement | null): Promise<void> {
  const focusNext = row === null ? undefined : nextFocusAfter(row);
  if (await applyFix(finding, fix, judgeFixes)) focusNext?.();
  else {
    const why = fixStore.get().withdrawn.get(keyOfFix(finding, fix));
    if (why !== undefined) notify("problem", `${fix.title}: ${wording.withdrawn.toLowerCase()}`, [why]);
  }
}

function targetOf(subject: Subject): readonly { readonly name: string; readonly target: Selected }[] {
  const document = documentStore.get();
  const target = findSubject(document.project, installationOf(document), subject);
  return target === undefined ? [] : [{ name: subject.name, target }];
}

async function copy(message: string): Promise<void> {
  if (!(await systemClipboard.write(message))) notify("problem", WORDS.refused, [WORDS.mark]);
}
