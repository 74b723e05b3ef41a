/** Every rule of `layers.cjs` finds what it is there to find, and none objects to what the architecture allows. */
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";

const ROOT = fileURLToPath(new URL("../", import.meta.url));
const CONFIG = join(ROOT, "layers.cjs");
const RULES: readonly string[] = createRequire(import.meta.url)(CONFIG).forbidden.map(
  ({ name }: { name: string }) => name,
);

/** File to its text. Every import in here is one that the architecture allows. */
const ALLOWED: Record<string, string> = {
  "shared-model/lib/a.ts": "export type T = 1; export const a = 1;",
  "shared-model/units/a.ts": `import "../lib/a.ts";`,
  "shared-model/model/a.ts": `import "../units/a.ts"; import "../lib/a.ts";`,
  "shared-model/answers/a.ts": `import type { T } from "../lib/a.ts"; export type U = T;`,
  "shared-model/catalog/a.ts": `import "../model/a.ts";`,
  "shared-model/queries/a.ts": `import "../catalog/a.ts";`,
  "shared-model/geometry/a.ts": `import "../queries/a.ts"; import "@dagrejs/dagre";`,
  "shared-model/solver/a.ts": `import "../queries/a.ts"; export type T = 1;`,
  "shared-model/commands/a.ts": `import type { Draft } from "immer"; import "../geometry/a.ts"; export type T = Draft<1>;`,
  "shared-model/commands/catalog.ts": `import "../lib/a.ts";`,
  "shared-model/commands/run-command.ts": `import "immer"; import "./a.ts";`,
  "shared-model/format/a.ts": `import "valibot"; import "@valibot/to-json-schema"; import "../model/a.ts";`,
  "shared-model/rules/a.ts": `import "../solver/a.ts"; export type T = 1;`,
  "shared-model/rules/checks/a.ts": `import "../a.ts";`,
  "shared-model/planning/a.ts": `import "../rules/a.ts"; import "../commands/run-command.ts"; export type T = 1;`,
  "shared-model/sheets/a.ts": `import "../geometry/a.ts";`,
  "shared-model/analysis/protocol.ts": `import type { Patch } from "immer"; import "../model/a.ts"; export type P = Patch;`,
  "shared-model/analysis/session.ts": `import "./protocol.ts"; import "../rules/checks/a.ts"; import "../commands/run-command.ts"; export type T = 1;`,
  "shared-model/hosts/worker.ts": `import "../analysis/session.ts"; import "../format/a.ts";`,
  "shared-model/hosts/cli.ts": `import "node:fs"; import "commander"; import "./atomic-file.ts"; import "../analysis/session.ts";`,
  "shared-model/hosts/paper.ts": `import "pdfkit"; import "../sheets/a.ts";`,
  "shared-model/hosts/tables.ts": `import "write-excel-file";`,
  "shared-model/hosts/atomic-file.ts": `import "node:fs/promises";`,
  "shared-model/hosts/build.mjs": `import("vite");`,
  "renderer/main.tsx": `import "react"; import "./app.tsx"; export const Main = () => <b>no import, only text: from "x"</b>;`,
  "renderer/app.tsx": `import "./panels/a.tsx"; import "./sheet/a.tsx"; import "./ui/a.tsx";`,
  "renderer/platform/a.ts": `import type { C } from "../../electron/ipc/contract.ts"; export type D = C;`,
  "renderer/state/a.ts": `import "../../shared-model/commands/run-command.ts"; import "../../shared-model/format/a.ts"; import "../platform/a.ts";`,
  "renderer/analysis/a.ts": `import "../../shared-model/analysis/protocol.ts";`,
  "renderer/sheet/a.tsx": `import "@xyflow/react"; import "../state/a.ts"; import "../../shared-model/geometry/a.ts"; import "../ui/a.tsx";`,
  "renderer/panels/a.tsx": `import "../../shared-model/commands/catalog.ts"; import type { T } from "../../shared-model/commands/a.ts"; export type S = T;`,
  "renderer/ui/a.tsx": `import "react"; import "../../shared-model/units/a.ts"; import "../words/a.ts";`,
  "renderer/words/a.ts": "export const words = 1;",
  "electron/launch.mjs": `import "node:http"; import "./start.mjs";`,
  "electron/start.mjs": "export const start = 1;",
  "electron/ipc/contract.ts": `import "valibot"; export type C = 1;`,
  "electron/main/a.ts": `import "electron"; import "../ipc/contract.ts"; import "../../shared-model/hosts/atomic-file.ts"; import "../../shared-model/commands/catalog.ts";`,
  "electron/main/policies/a.ts": `import "node:path"; import "../../../shared-model/commands/catalog.ts";`,
  "electron/preload/a.ts": `import "electron"; import "../ipc/contract.ts";`,
  "tests/a.test.ts": `import "vitest"; import "immer"; import "@xyflow/react"; import "../shared-model/solver/a.ts"; import "../renderer/panels/a.tsx";`,
  "tests/hosts-atomic-file.test.ts": `import "../shared-model/hosts/atomic-file.ts";`,
};

/** Rule, the file that breaks it, and that file's text. A second file of one rule shows a way round that it closes too. */
const BREAKERS: readonly (readonly [rule: string, file: string, text: string])[] = [
  ["no-circular", "shared-model/model/loop-a.ts", `import "./loop-b.ts";`],
  ["no-unresolvable", "shared-model/model/missing.ts", `import "./nowhere.ts";`],
  ["no-unruled-folder", "shared-model/misc/a.ts", `import "../lib/a.ts";`],
  ["no-unruled-folder", "renderer/misc/a.ts", `import "../ui/a.tsx";`],
  ["no-unruled-folder", "electron/misc/a.ts", `import "../ipc/contract.ts";`],
  ["no-unruled-folder", "renderer/other.ts", `import "./ui/a.tsx";`],
  ["not-to-tests", "renderer/ui/tested.ts", `import "../../tests/a.test.ts";`],
  ["ships-without-tools", "renderer/ui/tool.ts", `import "vitest";`],
  ["lib-is-bottom", "shared-model/lib/up.ts", `import "../units/a.ts";`],
  ["units-see-lib", "shared-model/units/up.ts", `import "../model/a.ts";`],
  ["model-is-plain-data", "shared-model/model/up.ts", `import "../catalog/a.ts";`],
  ["answers-are-types", "shared-model/answers/up.ts", `import type { T } from "../solver/a.ts"; export type U = T;`],
  ["catalog-is-data", "shared-model/catalog/up.ts", `import "../queries/a.ts";`],
  ["queries-read-model", "shared-model/queries/up.ts", `import "../geometry/a.ts";`],
  ["geometry-reads-model", "shared-model/geometry/up.ts", `import "../solver/a.ts";`],
  ["solver-ignores-drawing", "shared-model/solver/up.ts", `import "../geometry/a.ts";`],
  [
    "solver-ignores-drawing",
    "shared-model/solver/to-rules.ts",
    `import type { T } from "../rules/a.ts"; export type U = T;`,
  ],
  ["commands-edit-model", "shared-model/commands/up.ts", `import "../solver/a.ts";`],
  ["format-owns-parsing", "shared-model/format/up.ts", `import "../commands/a.ts";`],
  ["rules-see-results", "shared-model/rules/up.ts", `import "../commands/a.ts";`],
  ["planning-proposes", "shared-model/planning/up.ts", `import "../geometry/a.ts";`],
  ["sheets-lay-out-paper", "shared-model/sheets/up.ts", `import "../solver/a.ts";`],
  ["analysis-joins", "shared-model/analysis/up.ts", `import "../format/a.ts";`],
  ["analysis-joins", "shared-model/analysis/command.ts", `import "../commands/a.ts";`],
  ["checks-are-islands", "shared-model/rules/checks/b.ts", `import "./a.ts";`],
  ["hosts-are-entry-points", "tests/b.test.ts", `import "../shared-model/hosts/cli.ts";`],
  ["hosts-are-entry-points", "renderer/analysis/b.ts", `import "../../shared-model/hosts/worker.ts";`],
  ["atomic-file-has-few-readers", "renderer/platform/b.ts", `import "../../shared-model/hosts/atomic-file.ts";`],
  ["atomic-file-has-few-readers", "electron/saves.mjs", `import "../shared-model/hosts/atomic-file.ts";`],
  ["shared-model-is-bottom", "shared-model/hosts/window.ts", `import "../../renderer/ui/a.tsx";`],
  ["shared-model-is-bottom", "shared-model/hosts/react.ts", `import "react";`],
  ["node-only-in-hosts", "shared-model/queries/node.ts", `import "node:fs";`],
  ["node-only-in-hosts", "shared-model/hosts/worker.ts", `import "path";`],
  ["node-only-in-hosts", "shared-model/hosts/worker/line.ts", `import "path";`],
  ["immer-has-one-owner", "shared-model/commands/b.ts", `import { produce } from "immer"; produce;`],
  ["immer-has-one-owner", "shared-model/analysis/patches.ts", `import { applyPatches } from "immer"; applyPatches;`],
  [
    "react-flow-has-one-owner",
    "renderer/panels/b.tsx",
    `import type { Node } from "@xyflow/react"; export type N = Node;`,
  ],
  ["valibot-stays-at-borders", "renderer/state/b.ts", `const v = await import("valibot"); v;`],
  ["host-libraries-have-one-owner", "shared-model/hosts/worker-too.ts", `import "commander";`],
  ["host-libraries-have-one-owner", "renderer/ui/pdf.ts", `import "pdfkit";`],
  ["bootstrap-is-plain-node", "electron/early.mjs", `import "commander";`],
  ["renderer-gets-findings-by-message", "renderer/state/c.ts", `import "../../shared-model/rules/a.ts";`],
  [
    "renderer-gets-findings-by-message",
    "renderer/analysis/c.ts",
    `import type { T } from "../../shared-model/analysis/session.ts"; export type S = T;`,
  ],
  ["checks-unreachable-from-window", "renderer/state/d.ts", `import "../../shared-model/commands/reaches.ts";`],
  ["renderer-not-to-electron", "renderer/platform/c.ts", `import "../../electron/main/a.ts";`],
  [
    "contract-only-through-platform",
    "renderer/state/e.ts",
    `import type { C } from "../../electron/ipc/contract.ts"; export type D = C;`,
  ],
  ["window-has-no-node", "renderer/platform/d.ts", `import "node:fs";`],
  ["electron-not-to-renderer", "electron/main/b.ts", `import "../../renderer/ui/a.tsx";`],
  ["main-moves-bytes", "electron/main/c.ts", `import "../../shared-model/format/a.ts";`],
  ["policies-are-pure", "electron/main/policies/b.ts", `import "electron";`],
  ["policies-are-pure", "electron/main/policies/c.ts", `import "node:fs";`],
  ["preload-is-thin", "electron/preload/b.ts", `import "node:path";`],
  ["panels-and-sheet-meet-in-state", "renderer/panels/c.tsx", `import "../sheet/a.tsx";`],
  ["panels-and-sheet-meet-in-state", "renderer/sheet/c.tsx", `import "../panels/a.tsx";`],
  ["state-knows-no-view", "renderer/state/f.ts", `import "../ui/a.tsx";`],
  ["views-do-not-import-commands", "renderer/panels/d.tsx", `import "../../shared-model/commands/run-command.ts";`],
  ["views-do-not-import-commands", "renderer/ui/e.ts", `import "../../shared-model/commands/a.ts";`],
  ["ui-is-generic", "renderer/ui/f.ts", `import "../state/a.ts";`],
  ["words-are-bottom", "renderer/words/f.ts", `import "../ui/a.tsx";`],
];

/** What breakers need to break their rule with, itself against a rule or not. */
const PROPS: Record<string, string> = {
  "shared-model/model/loop-b.ts": `import type { T } from "./loop-a.ts"; export type U = T;`,
  "shared-model/commands/reaches.ts": `import "../solver/a.ts";`,
};

const PACKAGES = {
  dependencies: ["react", "@xyflow/react", "immer", "valibot", "@valibot/to-json-schema", "commander", "pdfkit"].concat(
    ["write-excel-file", "@dagrejs/dagre"],
  ),
  devDependencies: ["vitest", "vite", "electron"],
};

interface Violation {
  readonly rule: { readonly name: string };
  readonly from: string;
  readonly to: string;
}

const folders: string[] = [];
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

/** Runs the layer check over a tree of its own, with packages that are no more than a name. */
function violationsIn(files: Record<string, string>): readonly Violation[] {
  const tree = mkdtempSync(join(tmpdir(), "loadside-layers-"));
  folders.push(tree);
  const write = (path: string, text: string) => {
    mkdirSync(dirname(join(tree, path)), { recursive: true });
    writeFileSync(join(tree, path), `${text}\n`);
  };
  for (const [path, text] of Object.entries(files)) write(path, text);
  const versions = (names: readonly string[]) => Object.fromEntries(names.map((name) => [name, "1.0.0"]));
  const { dependencies, devDependencies } = PACKAGES;
  const pins = { dependencies: versions(dependencies), devDependencies: versions(devDependencies) };
  write("package.json", JSON.stringify({ name: "tree", type: "module", ...pins }));
  for (const name of [...dependencies, ...devDependencies]) {
    write(`node_modules/${name}/package.json`, JSON.stringify({ name, version: "1.0.0", main: "index.js" }));
    write(`node_modules/${name}/index.js`, "");
  }
  const script = join(ROOT, "node_modules/dependency-cruiser/bin/dependency-cruise.mjs");
  const args = ["--config", CONFIG, "--output-type", "json", "shared-model", "renderer", "electron", "tests"];
  const { stdout, stderr } = spawnSync(process.execPath, [script, ...args], {
    cwd: tree,
    encoding: "utf8",
    maxBuffer: 1 << 28,
  });
  if (stderr !== "") throw new Error(stderr);
  return JSON.parse(stdout).summary.violations;
}

describe("layers", () => {
  let planted: readonly Violation[] = [];
  beforeAll(() => {
    const broken = Object.fromEntries(BREAKERS.map(([, file, text]) => [file, text]));
    planted = violationsIn({ ...ALLOWED, ...PROPS, ...broken });
  });

  test("everything the architecture allows passes", () => {
    const found = violationsIn(ALLOWED).map(({ rule, from, to }) => `${rule.name}: ${from} -> ${to}`);
    expect(found).toEqual([]);
  });

  test("every rule has a breaker, and every breaker a rule", () => {
    expect([...new Set(BREAKERS.map(([rule]) => rule))].sort()).toEqual([...RULES].sort());
  });

  test.each(BREAKERS)("%s finds %s", (rule, file) => {
    const found = planted.filter(({ from }) => from === file).map((violation) => violation.rule.name);
    expect(found).toContain(rule);
  });

  test("the project is checked in the folders that hold code", () => {
    const { scripts } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"));
    expect(scripts.layers).toBe("depcruise --config layers.cjs shared-model renderer electron tests");
  });
});
