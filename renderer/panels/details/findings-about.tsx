import { useState } from "react";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { findingsStore } from "../../state/findings-store.ts";
import type { Selected } from "../../state/selection.ts";
import { isAbout } from "../../state/subject-target.ts";
import { useStore } from "../../state/use-store.ts";
import { SeverityCounts } from "../findings/finding-groups.tsx";
import { FindingRow } from "../findings/finding-row.tsx";
import { FixDone } from "../findings/findings.tsx";
import { Section } from "./section.tsx";
import { useKeptFocus } from "./use-kept-focus.ts";
import { wording } from "./words.ts";

/** More than these are folded, so that the other details stay near. */
const FEW = 2;
const MOST = 20;

/** What the checks say about one thing, a box with all that is in it; with the fixes, as in the findings. */
export function FindingsAbout({ item }: { readonly item: Selected }) {
  const findings = useStore(findingsStore, (state) => state.findings);
  const checked = useStore(findingsStore, (state) => state.revision);
  const installation = useStore(documentStore, installationOf);
  const mine = findings.filter(({ subjects }) => subjects.some((subject) => isAbout(installation, item, subject)));
  const [open, setOpen] = useState(false);
  const root = useKeptFocus(String(checked));
  return (
    <div ref={root} tabIndex={-1} className="findings">
      {mine.length > 0 && (
        <Section title={wording.findings} note={mine.length}>
          {mine.length > FEW && (
            <p className="part-body row">
              <SeverityCounts findings={mine} />
              <button type="button" className="link" aria-expanded={open} onClick={() => setOpen(!open)}>
                {open ? wording.foldThem : wording.showFindings(mine.length)}
              </button>
            </p>
          )}
          {(open || mine.length <= FEW) && (
            <ul>
              {mine.slice(0, MOST).map((finding) => (
                <FindingRow key={finding.key} finding={finding} withSeverity withStanding />
              ))}
            </ul>
          )}
          {open && mine.length > MOST && (
            <p className="empty">
              {wording.and}
              {mine.length - MOST}
              {wording.moreInTheFindings}
            </p>
          )}
        </Section>
      )}
      <FixDone item={item} />
    </div>
  );
}
