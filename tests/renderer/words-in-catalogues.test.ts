/** Nothing that the window says stands outside a catalogue, and no catalogue holds what nobody says. */
import { readdirSync, readFileSync } from "node:fs";
import { join, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { parseAst } from "vite";
import { describe, expect, test } from "vitest";

const WINDOW = fileURLToPath(new URL("../../renderer", import.meta.url));

/** Read by those who look for something, and words that stand on the labels of an installation as a code gives them. */
const NOT_SAID = new Set(["state/trade-words.ts", "state/item-actions/label-action.ts", "platform/key-chord.ts"]);

const files = readdirSync(WINDOW, { recursive: true, encoding: "utf8" })
  .map((name) => name.split(sep).join("/"))
  .filter((name) => /[.]tsx?$/.test(name) && !name.endsWith(".d.ts"))
  .sort();

interface Node {
  readonly type: string;
  readonly [field: string]: unknown;
}

const isNode = (value: unknown): value is Node =>
  typeof value === "object" && value !== null && typeof (value as Node).type === "string";

const childrenOf = (node: Node): readonly Node[] =>
  Object.entries(node).flatMap(([key, value]) =>
    key === "parent" ? [] : Array.isArray(value) ? value.filter(isNode) : isNode(value) ? [value] : [],
  );

const read = (name: string): string => readFileSync(join(WINDOW, name), "utf8");
const parse = (text: string, name: string): Node =>
  parseAst(text, { lang: name.endsWith("x") ? "tsx" : "ts" }) as unknown as Node;

const SAID_BY =
  /^(aria-label|aria-description|aria-roledescription|aria-valuetext|title|placeholder|label|alt|word|caption|note|hint|message)$/;
const LETTERS = /\p{L}{2,}/u;
/** Two words of which the first begins as a sentence does. */
const SENTENCE = /^\p{Lu}[\p{Ll}’']*[,:]? [\p{L}\d(…]/u;

/** Keys as they are written on them. */
const KEYS = /^(Alt|Arrow|Ctrl|Shift|Space|Enter|Esc) /;

/** Words that a person would read and that stand in the code itself. */
function said(node: Node): readonly string[] {
  switch (node.type) {
    case "ImportDeclaration":
    case "TSTypeAliasDeclaration":
    case "TSInterfaceDeclaration":
    case "TSTypeAnnotation":
    case "ThrowStatement":
      return [];
    // What went wrong in the program itself.
    case "NewExpression":
      if (/(Error|Exception)$/.test(String((node.callee as Node).name))) return [];
      break;
    // A single word that stands where words are shown.
    case "JSXElement":
    case "JSXFragment":
      return [
        ...(node.children as readonly Node[]).flatMap((child) =>
          child.type === "JSXExpressionContainer" ? shown(child.expression as Node) : [],
        ),
        ...childrenOf(node).flatMap(said),
      ];
    // A table of words.
    case "VariableDeclarator":
      return [
        ...(/WORDS?$/.test(String((node.id as Node).name)) && node.init !== null ? inTable(node.init as Node) : []),
        ...childrenOf(node).flatMap(said),
      ];
    case "JSXText": {
      const text = String(node.value).trim();
      return LETTERS.test(text) ? [text] : [];
    }
    case "JSXAttribute": {
      const { name, value } = node as unknown as { readonly name: Node; readonly value: Node | null };
      if (value?.type === "Literal")
        return SAID_BY.test(String(name.name)) && LETTERS.test(String(value.value)) ? [String(value.value)] : [];
      break;
    }
    case "Literal":
      return typeof node.value === "string" && SENTENCE.test(node.value) && !KEYS.test(node.value) ? [node.value] : [];
    case "TemplateLiteral": {
      const text = (node.quasis as readonly { readonly value: { readonly cooked: string } }[])
        .map(({ value }) => value.cooked)
        .join("…");
      if (SENTENCE.test(text)) return [text];
      break;
    }
  }
  return childrenOf(node).flatMap(said);
}

/** One word in small letters or with a capital; what is longer is found wherever it stands. */
const WORD = /^\p{L}?[\p{Ll} ’']+$/u;

const isWord = (node: Node): boolean => node.type === "Literal" && WORD.test(String(node.value).trim());

/** Words that an expression between tags comes to. */
function shown(node: Node): readonly string[] {
  switch (node.type) {
    case "Literal":
      return isWord(node) && LETTERS.test(String(node.value)) && !SENTENCE.test(String(node.value))
        ? [String(node.value)]
        : [];
    case "ConditionalExpression":
      return [...shown(node.consequent as Node), ...shown(node.alternate as Node)];
    case "LogicalExpression":
      return [...(node.operator === "&&" ? [] : shown(node.left as Node)), ...shown(node.right as Node)];
    default:
      return [];
  }
}

/** Words of a table of them, at whatever depth. */
function inTable(node: Node): readonly string[] {
  if (node.type === "TSAsExpression" || node.type === "TSSatisfiesExpression") return inTable(node.expression as Node);
  if (node.type !== "ObjectExpression") return [];
  return (node.properties as readonly Node[]).flatMap((each) =>
    each.type === "Property" ? [...shown(each.value as Node), ...inTable(each.value as Node)] : [],
  );
}

test("what is looked for is found", () => {
  const code = `
    const A = () => <b title="Open it">Some words {x} <i>{y ? "Not yet" : \`Box \${n} is full\`}</i></b>;
    throw new Error("Never shown to a person");
    const style = <b className="Field small" d="M0 0" />;
    const B = () => <i>{x === undefined ? "saved" : (y ?? "none")}{kind === "box" && z}</i>;
    const WORDS: Readonly<Record<string, string>> = { danger: "danger", more: { a: "far" }, id: "B1" } as const;
  `;
  expect(said(parse(code, "a.tsx")).toSorted()).toEqual(
    ["Box … is full", "Not yet", "Open it", "Some words", "danger", "far", "none", "saved"].toSorted(),
  );
});

test.each(files.filter((name) => !/(^|[/])(later-)?words[.]ts$/.test(name) && !NOT_SAID.has(name)))("%s", (name) => {
  expect(said(parse(read(name), name))).toEqual([]);
});

describe("catalogues", () => {
  const code = files
    .filter((name) => !/(^|[/])(later-)?words[.]ts$/.test(name))
    .map(read)
    .join("\n");
  test.each(files.filter((name) => /(^|[/])(later-)?words[.]ts$/.test(name)))("every key of %s is used", (name) => {
    const keys = [...read(name).matchAll(/^ {2}(\w+):/gm)].map(([, key]) => key);
    expect(keys.length).toBeGreaterThan(0);
    expect(keys.filter((key) => !new RegExp(`\\b(wording|laterWording|said)[.]${key}\\b`).test(code))).toEqual([]);
  });
});
