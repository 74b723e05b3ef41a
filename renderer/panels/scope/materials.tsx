import type { ScopeAnswer, ScopeMaterial } from "../../../shared-model/answers/scope.ts";
import { wording } from "./words.ts";

/** What has to be brought, in generic words, and what comes out. */
export function Materials({ answer: { materials, removed } }: { readonly answer: ScopeAnswer }) {
  return (
    <>
      {materials.length === 0 ? (
        <p className="empty">{wording.nothingNeeded}</p>
      ) : (
        <>
          <p className="scope-note">{wording.verify}</p>
          <ul className="scope-materials" aria-label={wording.material}>
            {materials.map((line) => (
              <Line key={line.key} figure={quantityWords(line)} what={line.what} where={line.where} note={line.note} />
            ))}
          </ul>
        </>
      )}
      {removed.length > 0 && (
        <section className="scope-part">
          <h3 className="scope-heading">{wording.comesOut}</h3>
          <ul className="scope-materials" aria-label={wording.comesOut}>
            {removed.map((line) => (
              <Line key={line.key} figure={`${line.quantity}`} what={line.what} where={line.where} />
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

const quantityWords = ({ quantity, unit }: ScopeMaterial): string =>
  unit === "piece" ? `${quantity}` : `${quantity} ${unit}`;

function Line({
  figure,
  what,
  where,
  note,
}: {
  readonly figure: string;
  readonly what: string;
  readonly where: readonly string[];
  readonly note?: string | undefined;
}) {
  return (
    <li>
      <span className="fig scope-quantity">{figure}</span>
      <span>
        <strong>{what}</strong>
        {where.length > 0 && <span className="scope-where">{where.join(", ")}</span>}
        {note !== undefined && <em className="scope-material-note">{note}</em>}
      </span>
    </li>
  );
}
