import { documentCommands } from "../../../shared-model/commands/catalog/document-commands.ts";
import { type DocumentState, documentStore, installationOf } from "../document-store.ts";
import { findingsStore } from "../findings-store.ts";
import { itemActions } from "../item-actions/item-actions.ts";
import { scopeStore } from "../scope/scope-store.ts";
import { wording as scopeWording } from "../scope/words.ts";
import { goTo, notify, showPane } from "../session-store.ts";
import { type Asked, type CommandLine, findLines } from "./entry.ts";
import { selectionLines } from "./selection-lines.ts";
import { hasSubject, SUBJECT_WORDS, type SubjectLine, subjectsOf } from "./subjects.ts";
import { noneYet, VERB_SAYS, VERB_WAYS, type VerbWay, which } from "./verb-words.ts";

type AboutWay = Extract<VerbWay, { readonly of: unknown }>;

/** Every command by its own name, whatever is selected: what it is about is asked for, or it says why it cannot be now. */
export const verbLines = (document: DocumentState): readonly CommandLine[] =>
  documentCommands.flatMap(({ id, title }): readonly CommandLine[] => {
    const way = VERB_WAYS[id];
    if ("own" in way) return [];
    const common = {
      key: `verb ${id}`,
      title,
      ...(way.also !== undefined && { also: way.also }),
    };
    if ("findings" in way) {
      const none = findingsStore.get().findings.length === 0;
      return [
        {
          ...common,
          note: VERB_SAYS.inFindings,
          run: () => showPane("findings"),
          ...(none && { whyNot: VERB_SAYS.noFindings }),
        },
      ];
    }
    const whyNot = whyNotNow(document, way);
    return [
      {
        ...common,
        title: `${title}…`,
        note: SUBJECT_WORDS[way.of],
        ...(whyNot !== undefined && { whyNot }),
        ask: () => askWhich(title, way),
        run: () => undefined,
      },
    ];
  });

function whyNotNow(document: DocumentState, { of }: AboutWay): string | undefined {
  if (document.readOnly) return VERB_SAYS.readOnly;
  if (scopeStore.get().on) return scopeWording.onlyLooked;
  return hasSubject(of, document.project, installationOf(document)) ? undefined : noneYet(SUBJECT_WORDS[of]);
}

function askWhich(title: string, way: AboutWay): Asked {
  const lines = (typed: string): readonly CommandLine[] => {
    const document = documentStore.get();
    const all = subjectsOf(way.of, document.project, installationOf(document), typed);
    return findLines(
      all.map((subject) => lineOf(title, way, subject)),
      typed,
    );
  };
  return { title: which(title, SUBJECT_WORDS[way.of]), lines };
}

const lineOf = (title: string, way: AboutWay, about: SubjectLine): CommandLine => ({
  key: about.key,
  title: about.title,
  note: about.note,
  ask: () => goOn(title, way, about),
  run: () => undefined,
});

/** With the thing chosen: does the one thing that is meant, or asks which of several. */
function goOn(title: string, way: AboutWay, { subject, select, title: name }: SubjectLine): Asked | undefined {
  goTo(select, "details");
  if ("shows" in way) {
    showPane("details");
    return undefined;
  }
  const meant = linesAbout(subject, select).filter((line) => way.does.test(line.title));
  const [only] = meant;
  if (only === undefined) notify("problem", `${title}: ${name}`, [VERB_SAYS.notNow]);
  else if (meant.length > 1) return { title: `${title}: ${name}`, lines: (typed) => findLines(meant, typed) };
  else only.run();
  return undefined;
}

function linesAbout(subject: SubjectLine["subject"], select: SubjectLine["select"]): readonly CommandLine[] {
  const actions = itemActions(subject).map(
    ({ title, run, keys }): CommandLine => ({
      key: `action ${title}`,
      title,
      note: "",
      run,
      ...(keys !== undefined && { shortcut: keys }),
    }),
  );
  const titles = new Set(actions.map(({ title }) => title));
  const more = subject === select ? selectionLines(documentStore.get(), [select]) : [];
  return [...actions, ...more.filter(({ title }) => !titles.has(title) && !titles.has(`${title}…`))];
}
