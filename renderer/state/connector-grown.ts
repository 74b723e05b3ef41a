import type { Patch } from "immer";
import { findConnector } from "../../shared-model/catalog/connectors.ts";
import type { EnclosureId, SpliceId } from "../../shared-model/model/ids.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { documentStore, followDocument, installationOf } from "./document-store.ts";
import { closeNotice, notify, sessionStore } from "./session-store.ts";
import { wording } from "./words.ts";

const WORDS = {
  title: wording.theConnectorGrewWithTheSplice,
  line: (splice: string, box: string, connector: string) => wording.inHasNowTheOneBefore(splice, box, connector),
} as const;

/** Splices whose assumed connector gave way to the next one, by the patches of one edit. */
export function grownConnectors(
  patches: readonly Patch[],
  part: "asFound" | "proposed",
  { enclosures }: Installation,
): readonly { readonly box: string; readonly splice: string; readonly connector: string }[] {
  return patches.flatMap(({ op, path }) => {
    const [of, table, box, inside, id, field] = path;
    if (op !== "replace" || of !== part || table !== "enclosures" || inside !== "splices" || field !== "connector")
      return [];
    const enclosure = enclosures[box as EnclosureId];
    const splice = enclosure?.splices[id as SpliceId];
    // A person who picks one takes the mark away.
    if (enclosure === undefined || splice?.evidence?.connector !== "assumed") return [];
    const title = findConnector(splice.connector)?.title ?? splice.connector;
    return [{ box: enclosure.name, splice: splice.name, connector: title.toLowerCase() }];
  });
}

/** Says so when a connector gave way, until the returned function is called. Undo and redo tell what they do themselves. */
export function tellGrownConnectors(): () => void {
  let { nextSerial } = documentStore.get().history;
  return followDocument(({ patches }) => {
    const now = documentStore.get();
    const isEdit = now.history.nextSerial !== nextSerial;
    nextSerial = now.history.nextSerial;
    if (!isEdit || patches === undefined) {
      takeBack();
      return;
    }
    const part = now.state === "proposed" ? "proposed" : "asFound";
    const lines = grownConnectors(patches, part, installationOf(now)).map(({ splice, box, connector }) =>
      WORDS.line(splice, box, connector),
    );
    if (lines.length > 0) notify("note", WORDS.title, lines);
    else takeBack();
  });
}

/** What was said of an edit is past once that is undone, something else is done, or another drawing is here. */
function takeBack(): void {
  if (sessionStore.get().notice?.title === WORDS.title) closeNotice();
}
