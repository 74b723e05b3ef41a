/** Nothing that the core says to a person stands outside a catalogue. */
import { readdirSync, readFileSync } from "node:fs";
import { join, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { parseAst } from "vite";
import { expect, test } from "vitest";

const CORE = fileURLToPath(new URL("../../shared-model", import.meta.url));

/**
 * The command line speaks English: its words are a contract with scripts. The tables of the editions hold sources and the
 * sizes by which a table is read, the schema describes a file to those who write programs.
 */
const ENGLISH = /^(hosts\/(cli[/.]|build)|rules\/editions\/|format\/json-schema[.]ts)/;

/** Labels that a code prescribes word for word. */
const PRESCRIBED = new Set(["No Equipment Ground", "GFCI Protected"]);

const files = readdirSync(CORE, { recursive: true, encoding: "utf8" })
  .map((name) => name.split(sep).join("/"))
  .filter((name) => name.endsWith(".ts") && !name.endsWith(".d.ts") && !ENGLISH.test(name))
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

const parse = (text: string): Node => parseAst(text, { lang: "ts" }) as unknown as Node;

/** A word beside a space: ids and keys have none. */
const SPACED = /\p{L}{2,}[,:;.]? |[ ]\p{L}{2,}/u;

/** Where a value comes from is no word of the product, nor is what a thing is found by. */
const NOT_SAID = /^(source|sources|pattern|font|dash|key|id|size)$/;
const NOT_SAID_VALUE = /^(.*SOURCE|FAMILY|TABLE_SIZES|key)$/;

/** A picture is written in a language of its own. */
const MARKUP = /^<|="|&lt;/;

const isSaid = (text: string): boolean => SPACED.test(text) && !MARKUP.test(text) && !PRESCRIBED.has(text);

const nameOf = (node: unknown): string => {
  const key = node as Node | undefined;
  return String(key?.name ?? key?.value ?? "");
};

/** Words that a person would read and that stand in the code itself. */
function said(node: Node): readonly string[] {
  switch (node.type) {
    case "ImportDeclaration":
    case "ExportAllDeclaration":
    case "TSTypeAliasDeclaration":
    case "TSInterfaceDeclaration":
    case "TSTypeAnnotation":
    case "TSTypeParameterInstantiation":
    case "ThrowStatement":
      return [];
    // What went wrong in the program itself.
    case "NewExpression":
      if (/(Error|Exception|RegExp)$/.test(nameOf(node.callee))) return [];
      break;
    case "CallExpression":
      if (/^(catalogue|templates)$/.test(nameOf(node.callee))) return [];
      // A rule is the catalogue of its own words.
      if (nameOf(node.callee) === "defineRule")
        return childrenOf((node.arguments as readonly Node[])[0] as Node).flatMap((each) =>
          /^(summary|why|messages)$/.test(nameOf(each.key)) ? [] : said(each),
        );
      break;
    case "VariableDeclarator":
      if (NOT_SAID_VALUE.test(nameOf(node.id))) return [];
      break;
    case "Property":
      return NOT_SAID.test(nameOf(node.key)) ? [] : said(node.value as Node);
    case "Literal":
      return typeof node.value === "string" && isSaid(node.value) ? [node.value] : [];
    case "TemplateLiteral": {
      const text = (node.quasis as readonly { readonly value: { readonly cooked: string } }[])
        .map(({ value }) => value.cooked)
        .join("…");
      if (isSaid(text)) return [text];
      break;
    }
  }
  return childrenOf(node).flatMap(said);
}

test("what is looked for is found", () => {
  const code = `
    import { a } from "not said.ts";
    const wording = catalogue({ full: "In a catalogue", of: (n: string) => \`Box \${n}\` });
    const messages = templates({ full: "In a rule" });
    const rule = defineRule({ summary: "In a rule", why: "In a rule", values: ["said here"], messages });
    const ID = "box-overfull"; const PATH = "M 0 0 L 1 1"; const source = { source: "Table 1 of a standard" };
    const between = \`between \${a} and \${b}\`;
    if (x) throw new Error("Never shown to a person");
    const kind = { ring: "plaster ring", at: \` at \${y}\` };
  `;
  expect(said(parse(code)).toSorted()).toEqual([" at …", "between … and …", "plaster ring", "said here"].toSorted());
});

test.each(files)("%s", (name) => {
  expect(said(parse(readFileSync(join(CORE, name), "utf8")))).toEqual([]);
});
