import type { LabelId } from "../../../shared-model/model/ids.ts";
import type { Label } from "../../../shared-model/model/project.ts";
import { documentStore } from "../document-store.ts";
import { mintId } from "../mint-id.ts";
import { lineFor, openPick } from "../pick-store.ts";

/** Wordings that tables of required markings ask for most; any other is typed. */
const USUAL = ["GFCI protected outlet", "No equipment ground"] as const;

/** Asks for the words of a label and fixes it to a thing. */
export function writeLabel(name: string, on: Label["on"]): void {
  const line = (wording: string) => {
    const { state } = documentStore.get();
    const id = mintId<LabelId>("l");
    return lineFor(`Write “${wording}”`, { command: "add-label", args: { state, id, wording, on } });
  };
  openPick({
    title: `Write a label on ${name}`,
    hint: "Type its words, or take one of these.",
    lines: () => USUAL.map(line),
    typed: { label: "Words of the label", line: (text) => (text === "" ? undefined : line(text)) },
  });
}
