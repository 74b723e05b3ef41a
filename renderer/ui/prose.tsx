import type { ReactNode } from "react";

/** Shows the Markdown that help pages use: headings, paragraphs, lists, tables, bold and code. Anything else is plain text. */
export function Prose({ markdown }: { readonly markdown: string }) {
  return <div className="prose">{blocksOf(markdown).map(showBlock)}</div>;
}

function blocksOf(markdown: string): readonly string[] {
  return markdown
    .replaceAll("\r\n", "\n")
    .split(/\n{2,}|\n(?=#)|(?<=^#.*)\n/m)
    .map((block) => block.trim())
    .filter((block) => block !== "");
}

function showBlock(block: string, key: number): ReactNode {
  const heading = /^(#{1,4})\s+(.*)$/.exec(block);
  if (heading) {
    const [, marks = "", words = ""] = heading;
    return marks.length > 2 ? <h4 key={key}>{inline(words)}</h4> : <h3 key={key}>{inline(words)}</h3>;
  }
  const lines = block.split("\n");
  if (lines.every((line) => line.startsWith("|"))) return <Table key={key} lines={lines} />;
  if (lines.every((line) => /^([-*]|\s)\s/.test(line))) return <List key={key} lines={lines} />;
  return <p key={key}>{inline(lines.join(" "))}</p>;
}

function List({ lines }: { readonly lines: readonly string[] }) {
  const items: string[] = [];
  for (const line of lines) {
    if (/^[-*]\s/.test(line)) items.push(line.slice(2));
    else items.push(`${items.pop() ?? ""} ${line.trim()}`);
  }
  return (
    <ul>
      {items.map((item) => (
        <li key={item}>{inline(item)}</li>
      ))}
    </ul>
  );
}

function Table({ lines }: { readonly lines: readonly string[] }) {
  const rows = lines.filter((line) => !/^\|[\s:|-]+\|$/.test(line)).map(cellsOf);
  const [head = [], ...body] = rows;
  return (
    <table>
      <thead>
        <tr>
          {head.map((cell) => (
            <th key={cell} scope="col">
              {inline(cell)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {body.map((row) => (
          <tr key={row.join("|")}>
            {row.map((cell, column) => (
              <td key={`${head[column]}`}>{inline(cell)}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const cellsOf = (line: string): readonly string[] =>
  line
    .replace(/^\||\|$/g, "")
    .split("|")
    .map((cell) => cell.trim());

/** Bold and code inside a line; the pieces between the marks alternate. */
function inline(text: string): ReactNode {
  return text.split(/(\*\*[^*]+\*\*|`[^`]+`)/).map((piece, index) => {
    const key = `${index} ${piece}`;
    if (piece.startsWith("**") && piece.length > 4) return <strong key={key}>{piece.slice(2, -2)}</strong>;
    if (piece.startsWith("`") && piece.length > 2) return <code key={key}>{piece.slice(1, -1)}</code>;
    return piece;
  });
}
