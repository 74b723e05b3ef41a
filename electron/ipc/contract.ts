/**
 * The contract between window and main process: shape of every request, of its reply, and of every event. Main checks
 * requests on their way in and replies and events on their way out; the type of the bridge is derived from here.
 */
import * as v from "valibot";
import { windowCommands } from "../../shared-model/commands/catalog/commands.ts";
import { isChord, keyEntries } from "../../shared-model/commands/catalog/keys.ts";
import type { EventName, RequestName } from "./channels.ts";

/** As many UTF-16 units as a document may hold bytes; the bytes themselves are counted before they are written. */
const TEXT_LIMIT = 64 * 1024 * 1024;
/** Longer names are cut by file systems; paths come from the operating system, which allows more. */
const NAME_LIMIT = 255;
/** A thousand sheets take a tenth of it. */
const COPY_LIMIT_BYTES = 256 * 1024 * 1024;
/** Endings of what is made of a drawing and never opened again. */
const COPY_KINDS = ["pdf", "svg", "png", "csv", "xlsx"] as const;
const PATH_LIMIT = 32_767;

const text = v.pipe(v.string(), v.maxLength(TEXT_LIMIT));
const name = v.pipe(v.string(), v.minLength(1), v.maxLength(NAME_LIMIT));
const sentence = v.pipe(v.string(), v.maxLength(2000));
/** Stands for a file that a person chose; nobody can guess one, and it tells nothing of the path. */
const fileToken = v.pipe(v.string(), v.regex(/^[A-Za-z0-9_-]{32}$/));
const recentId = v.pipe(v.string(), v.regex(/^[0-9a-f]{32}$/));
const chord = v.pipe(v.string(), v.maxLength(40), v.check(isChord));
const nothing = v.undefined();
const done = v.null();

/** A document with what it takes to save it again, or why it was not opened. Null: another window shows it already. */
const opened = v.variant("ok", [
  v.strictObject({ ok: v.literal(true), name, text, file: fileToken, recent: recentId }),
  v.strictObject({ ok: v.literal(false), message: sentence }),
]);

const saved = v.variant("kind", [
  v.strictObject({ kind: v.literal("saved"), note: v.optional(sentence) }),
  v.strictObject({ kind: v.literal("changed-elsewhere"), message: sentence }),
  v.strictObject({ kind: v.literal("failed"), message: sentence }),
]);

const recentFile = v.strictObject({
  id: recentId,
  name,
  folder: v.pipe(v.string(), v.maxLength(PATH_LIMIT)),
  usedAt: v.pipe(v.string(), v.isoTimestamp()),
  isThere: v.boolean(),
});

export const requests = {
  /** Asks the person for a file. Null: they changed their mind. */
  chooseFile: { request: nothing, reply: v.nullable(opened) },
  /** The file that this window was given from outside; null when there is none, or it is not wanted. */
  takeWaitingFile: { request: v.strictObject({ wanted: v.boolean() }), reply: v.nullable(opened) },
  /** The path is filled in by preload from a file that a person dropped; pages cannot make such a file themselves. */
  openDropped: {
    request: v.strictObject({ path: v.pipe(v.string(), v.minLength(1), v.maxLength(PATH_LIMIT)) }),
    reply: v.nullable(opened),
  },
  saveFile: { request: v.strictObject({ file: fileToken, text, overwrite: v.boolean() }), reply: saved },
  /** Asks where to save, then saves. Null: the person changed their mind. */
  saveFileAs: {
    request: v.strictObject({ name, text }),
    reply: v.nullable(
      v.strictObject({
        outcome: saved,
        file: v.nullable(v.strictObject({ file: fileToken, name, recent: recentId })),
      }),
    ),
  },
  /** Asks where to save something made of the drawing, then saves it. Null: the person changed their mind. */
  saveCopyAs: {
    request: v.strictObject({
      name,
      kind: v.picklist(COPY_KINDS),
      bytes: v.pipe(
        v.instance(Uint8Array),
        v.check(({ byteLength }) => byteLength <= COPY_LIMIT_BYTES),
      ),
    }),
    reply: v.nullable(
      v.variant("kind", [
        v.strictObject({ kind: v.literal("saved"), name, note: v.optional(sentence) }),
        v.strictObject({ kind: v.literal("failed"), message: sentence }),
      ]),
    ),
  },
  recentFiles: { request: nothing, reply: v.pipe(v.array(recentFile), v.maxLength(20)) },
  openRecent: { request: v.strictObject({ id: recentId }), reply: v.nullable(opened) },
  forgetRecent: { request: v.strictObject({ id: recentId }), reply: done },
  /** Which file the window shows, and whether it holds changes that the file does not. */
  showDocument: { request: v.strictObject({ file: v.nullable(fileToken), edited: v.boolean() }), reply: done },
  /** What the person said when the window was to be closed. */
  answerClose: { request: v.strictObject({ leave: v.boolean() }), reply: done },
  /** Keys that the person has chosen, for the menus to show. */
  showKeys: {
    request: v.strictObject({
      keys: v.pipe(
        v.array(v.strictObject({ id: v.picklist(keyEntries.map(({ id }) => id)), chord: v.nullable(chord) })),
        v.maxLength(keyEntries.length),
      ),
    }),
    reply: done,
  },
} as const satisfies Record<RequestName, { readonly request: v.GenericSchema; readonly reply: v.GenericSchema }>;

export const events = {
  /** A menu item that the window acts on. */
  runCommand: v.strictObject({ id: v.picklist(windowCommands.map(({ id }) => id)) }),
  /** A file was given from outside: `takeWaitingFile` hands it out. */
  fileWaiting: v.strictObject({}),
  /** The window is to be closed: `answerClose` says whether it may be. */
  closeRequested: v.strictObject({}),
} as const satisfies Record<EventName, v.GenericSchema>;

export type RequestOf<N extends RequestName> = v.InferOutput<(typeof requests)[N]["request"]>;
export type ReplyOf<N extends RequestName> = v.InferOutput<(typeof requests)[N]["reply"]>;
export type EventOf<N extends EventName> = v.InferOutput<(typeof events)[N]>;

/** A request never fails with an exception: those would carry stacks and paths into the window. */
export type Answer<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly message: string };

type Ask<N extends RequestName> =
  RequestOf<N> extends undefined
    ? () => Promise<Answer<ReplyOf<N>>>
    : (request: RequestOf<N>) => Promise<Answer<ReplyOf<N>>>;

/** Calls the listener at every such event; there is one listener an event. */
type Listen<N extends EventName> = (listener: (event: EventOf<N>) => void) => void;

/** What preload puts into the window as `loadside`: a function a channel, and nothing else. */
export type Bridge = { readonly [N in Exclude<RequestName, "openDropped">]: Ask<N> } & {
  /** The file itself goes in: its path never exists in the window. */
  readonly openDropped: (file: File) => Promise<Answer<ReplyOf<"openDropped">>>;
} & { readonly [N in EventName as `on${Capitalize<N>}`]: Listen<N> };
