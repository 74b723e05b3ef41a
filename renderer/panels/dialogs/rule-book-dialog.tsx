import { useState } from "react";
import type { RuleStatus } from "../../../shared-model/answers/finding.ts";
import type { BookRule } from "../../../shared-model/answers/rule-book.ts";
import { SEVERITIES } from "../../../shared-model/model/severity.ts";
import { closeDialog, openDialog } from "../../state/dialog-store.ts";
import { documentStore } from "../../state/document-store.ts";
import { editionWords } from "../../state/edition-words.ts";
import { SEVERITY_WORDS } from "../../state/finding-groups.ts";
import { ALL_RULES, findRules, type RuleSearch } from "../../state/rule-search.ts";
import { useStore } from "../../state/use-store.ts";
import { Modal } from "../../ui/modal.tsx";
import { SeveritySign } from "../severity-sign.tsx";
import { RULE_BOOK_WORDS, rulesShown, STATUS_WORDS } from "./rule-book-words.ts";
import { useRuleBook } from "./use-rule-book.ts";
import "./rule-book.css";

const STATUSES: readonly RuleStatus[] = ["draft", "stable"];

/** Every rule that runs by the edition of the drawing, the gravest first; each opens its page. */
export default function RuleBookDialog({ search = ALL_RULES }: { readonly search?: RuleSearch | undefined }) {
  const edition = useStore(documentStore, ({ project }) => project.edition);
  const book = useRuleBook(edition);
  const [wanted, setWanted] = useState(search);
  const found = findRules(book ?? [], wanted);
  return (
    <Modal title={RULE_BOOK_WORDS.title} onClose={closeDialog} wide>
      <SearchFields search={wanted} onChange={setWanted} />
      <p className="dim" role="status">
        {book === undefined ? RULE_BOOK_WORDS.fetching : rulesShown(editionWords(edition), book.length, found.length)}
      </p>
      {book !== undefined && found.length === 0 && <p className="empty">{RULE_BOOK_WORDS.nothing}</p>}
      {SEVERITIES.map((severity) => {
        const rules = found.filter((rule) => rule.severity === severity);
        if (rules.length === 0) return null;
        return (
          <section key={severity} aria-labelledby={`rules-${severity}`}>
            <h3 id={`rules-${severity}`} className="rules-severity">
              <SeveritySign kind={severity} size={18} />
              {SEVERITY_WORDS[severity]}
              <span className="dim">{rules.length}</span>
            </h3>
            <ul className="rules">
              {rules.map((rule) => (
                <Row key={rule.id} rule={rule} search={wanted} />
              ))}
            </ul>
          </section>
        );
      })}
    </Modal>
  );
}

function Row({
  rule: { id, summary, section, status },
  search,
}: {
  readonly rule: BookRule;
  readonly search: RuleSearch;
}) {
  const text = section?.confidence === "own-rule" ? RULE_BOOK_WORDS.ownRule : section?.section;
  return (
    <li>
      <button type="button" className="rule-row" onClick={() => openDialog({ kind: "help", rule: id, from: search })}>
        <span>{summary}</span>
        <span className="rule-facts">
          <span>{id}</span>
          {text !== undefined && <span>{text}</span>}
          {status === "draft" && <span>{STATUS_WORDS.draft}</span>}
        </span>
      </button>
    </li>
  );
}

interface SearchProps {
  readonly search: RuleSearch;
  readonly onChange: (search: RuleSearch) => void;
}

function SearchFields({ search, onChange }: SearchProps) {
  const { severity, status, ...typed } = search;
  return (
    <div className="rules-search">
      <input
        type="search"
        className="field"
        aria-label={RULE_BOOK_WORDS.search}
        placeholder={RULE_BOOK_WORDS.searchHint}
        value={search.typed}
        onChange={({ target }) => onChange({ ...search, typed: target.value })}
      />
      <select
        className="field small"
        aria-label={RULE_BOOK_WORDS.severity}
        value={severity ?? ""}
        onChange={({ target }) => {
          const chosen = SEVERITIES.find((one) => one === target.value);
          onChange({ ...typed, ...(status && { status }), ...(chosen && { severity: chosen }) });
        }}
      >
        <option value="">{RULE_BOOK_WORDS.everySeverity}</option>
        {SEVERITIES.map((one) => (
          <option key={one} value={one}>
            {SEVERITY_WORDS[one]}
          </option>
        ))}
      </select>
      <select
        className="field small"
        aria-label={RULE_BOOK_WORDS.status}
        value={status ?? ""}
        onChange={({ target }) => {
          const chosen = STATUSES.find((one) => one === target.value);
          onChange({ ...typed, ...(severity && { severity }), ...(chosen && { status: chosen }) });
        }}
      >
        <option value="">{RULE_BOOK_WORDS.everyStatus}</option>
        {STATUSES.map((one) => (
          <option key={one} value={one}>
            {STATUS_WORDS[one]}
          </option>
        ))}
      </select>
    </div>
  );
}
