import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import { ARRANGE_WORDS } from "../../state/arrange-words.ts";
import { pin } from "../../state/arranging.ts";
import { documentStore } from "../../state/document-store.ts";
import { useStore } from "../../state/use-store.ts";
import { Section } from "./section.tsx";

/** Whether boxes keep their places when the drawing is arranged. */
export function PinRow({ ids }: { readonly ids: readonly EnclosureId[] }) {
  const count = useStore(
    documentStore,
    ({ project }) => ids.filter((id) => project.layout.pinned?.[id] === true).length,
  );
  const readOnly = useStore(documentStore, (document) => document.readOnly);
  return (
    <Section title={ARRANGE_WORDS.section}>
      <div className="part-body">
        <label className="check">
          <input
            type="checkbox"
            checked={count === ids.length}
            disabled={readOnly}
            onChange={({ target }) => void pin(ids, target.checked)}
          />
          {ARRANGE_WORDS.pinned}
        </label>
      </div>
    </Section>
  );
}
