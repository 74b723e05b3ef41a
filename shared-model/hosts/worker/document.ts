import { nothingDrawn } from "../../analysis/blank-document.ts";
import type { Energiser } from "../../analysis/energiser.ts";
import type { Answers, Session } from "../../analysis/session.ts";
import { parseProject } from "../../format/parse-project.ts";
import type { Project } from "../../model/project.ts";
import { begin, heldRevision, type Message, post, watch } from "./line.ts";

// The mirror of the window's document: how it comes here, and how each revision of it is answered.

/** Rules and circuits: most of the script, and not needed before something is drawn. */
export type Checking = typeof import("../../analysis/checking.ts")["checking"];

/** The document with everything that was worked out about it. */
interface Checked {
  readonly session: Session;
  readonly energiser: Energiser;
}

let checked: Checked | undefined;
/** A document in which nothing is drawn yet; only as long as nothing is checked. */
let blank: Project | undefined;
/** What was read last, until it is known whether the window opens it. */
let read: { readonly request: number; readonly project: Project } | undefined;

/** What is held, where it is of this revision; of any other there is nothing. */
export const checkedAt = (base: number): Checked | undefined => (base === heldRevision() ? checked : undefined);

/** The document, as long as nothing is drawn in it and no rule was needed. */
export const blankDocument = (): Project | undefined => blank;

/** Rules and circuits have come: what was held without them is checked by them from here on. */
export function checkBlank(checking: Checking): void {
  if (blank !== undefined) checked = openWith(checking, blank);
  blank = undefined;
}

/** Judges the text of a file, and keeps what it says until the window opens it. */
export function parse({ request, text }: Message<"parse">): void {
  read = undefined;
  const parsed = parseProject(text, undefined, () => post({ type: "readable", request }));
  if (parsed.ok) {
    const { project, readOnly } = parsed.value;
    // The window keeps the photos; here nothing would look at them.
    read = { request, project: { ...project, attachments: {} } };
    post({ type: "parsed", request, readOnly });
  } else post({ type: "not-parsed", request, problems: parsed.problems });
}

/** The window has opened what was read here. */
export function opened({ request, revision }: Message<"opened">, checking: Checking | undefined): void {
  if (read?.request === request) open(read.project, revision, checking);
  else askForDocument();
}

/** The window has opened another document. */
export function snapshot({ project, revision }: Message<"snapshot">, checking: Checking | undefined): void {
  open(project, revision, checking);
}

/** The window has edited the document. */
export function patches({ base, revision, patches }: Message<"patches">): void {
  const mirror = checkedAt(base)?.session;
  if (mirror === undefined) askForDocument();
  else answer(revision, () => mirror.applyPatches(patches, revision));
}

const askForDocument = (): void => post({ type: "need-snapshot", have: heldRevision() });

const openWith = (checking: Checking, project: Project): Checked => ({
  session: checking.openSession(project, { watch }),
  energiser: checking.newEnergiser(),
});

/** @param checking Absent only where nothing is drawn in the document. */
function open(project: Project, revision: number, checking: Checking | undefined): void {
  read = undefined;
  answer(revision, () => {
    if (checking === undefined) {
      blank = project;
      return nothingDrawn(revision);
    }
    checked = openWith(checking, project);
    return checked.session.answers(revision);
  });
}

function answer(revision: number, work: () => Answers): void {
  const start = begin(revision);
  const answers = work();
  post({ ...answers, tookMs: performance.now() - start });
}
