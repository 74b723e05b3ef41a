/**
 * Import rules of the project. One rule per boundary, named after the boundary, with a comment that tells the reader
 * where the code should go instead. `tests/layers.test.ts` plants one breaker per rule and expects its name.
 */
const { readFileSync } = require("node:fs");
const swc = require("@swc/core");

const SHARED = "^shared-model/";
const BASE = `${SHARED}(lib|units|model|answers|catalog|queries)/`;
const CLI = `${SHARED}hosts/cli([.]ts$|/)`;

const packages = (...names) => `(^|/)node_modules/(${names.join("|")})/`;

/** Type-only imports vanish when the code runs; the parser below reports them under this name. */
const TYPES = ["type-import"];

const rule = (name, comment, from, to) => ({ name, severity: "error", comment, from, to });

/** Files under `folder` may import only `allowed`, besides their own folder. */
const only = (name, folder, allowed, comment) =>
  rule(name, comment, { path: folder }, { pathNot: [folder, ...allowed] });

const FOLDERS_WITH_RULES = [
  "^shared-model/(lib|units|model|answers|catalog|queries|geometry|commands|solver|rules|planning|sheets|format|analysis|hosts)/",
  "^renderer/(platform|state|analysis|sheet|panels|ui|words)/",
  "^renderer/(main|app|fetched-part|workbench)[.]tsx$",
  "^electron/(main|preload|ipc)/",
  "^electron/[a-z-]+[.]mjs$",
];

module.exports = {
  forbidden: [
    rule(
      "no-circular",
      "Break the cycle by moving the shared part down a layer. Type-only cycles count.",
      {},
      { circular: true },
    ),
    rule("no-unresolvable", "The import does not resolve, so no rule can judge it.", {}, { couldNotResolve: true }),
    rule(
      "no-unruled-folder",
      "A new folder needs a line in this file before it may import anything.",
      { path: "^(shared-model|renderer|electron)/", pathNot: FOLDERS_WITH_RULES },
      {},
    ),
    rule("not-to-tests", "Shipped code never imports tests.", { pathNot: "^tests/" }, { path: "^tests/" }),
    rule(
      "ships-without-tools",
      "Shipped code imports what `dependencies` lists; tools belong to tests and build scripts.",
      { path: "^(shared-model|renderer|electron)/", pathNot: "[.]mjs$" },
      { dependencyTypes: ["npm-dev"], dependencyTypesNot: TYPES, pathNot: packages("electron") },
    ),

    // Closed lists inside shared-model: each layer names everything it may see.
    only("lib-is-bottom", `${SHARED}lib/`, [], "lib/ imports nothing."),
    only("units-see-lib", `${SHARED}units/`, [`${SHARED}lib/`], "units/ sees lib/ only."),
    only(
      "model-is-plain-data",
      `${SHARED}model/`,
      [`${SHARED}(lib|units)/`],
      "Entities know units, and nothing about solving, drawing or saving.",
    ),
    only(
      "answers-are-types",
      `${SHARED}answers/`,
      [`${SHARED}(lib|units|model)/`],
      "What engines say, as types; no code.",
    ),
    only(
      "catalog-is-data",
      `${SHARED}catalog/`,
      [`${SHARED}(lib|units|model)/`],
      "Generic stock as data; it knows the model's types and nothing else.",
    ),
    only("queries-read-model", `${SHARED}queries/`, [BASE], "A query reads the model."),
    only(
      "geometry-reads-model",
      `${SHARED}geometry/`,
      [BASE, packages("@dagrejs")],
      "Geometry is about drawing; it never reads results.",
    ),
    only(
      "solver-ignores-drawing",
      `${SHARED}solver/`,
      [BASE],
      "The answer may not depend on where things are drawn, nor on the rules.",
    ),
    only(
      "commands-edit-model",
      `${SHARED}commands/`,
      [BASE, `${SHARED}geometry/`, packages("immer")],
      "A command edits the draft; it never solves or judges.",
    ),
    only(
      "format-owns-parsing",
      `${SHARED}format/`,
      [BASE, packages("valibot", "@valibot")],
      "Only format/ turns unknown bytes into a Project.",
    ),
    only(
      "rules-see-results",
      `${SHARED}rules/`,
      [BASE, `${SHARED}solver/`],
      "A rule reads model and solver results, never commands or geometry.",
    ),
    only(
      "planning-proposes",
      `${SHARED}planning/`,
      [BASE, `${SHARED}(solver|rules|commands)/`],
      "Planning generates make-ups, scope and plans; it never draws.",
    ),
    only(
      "sheets-lay-out-paper",
      `${SHARED}sheets/`,
      [BASE, `${SHARED}geometry/`],
      "A sheet is a display list; answers arrive as data, writers live in hosts/.",
    ),
    only(
      "analysis-joins",
      `${SHARED}analysis/`,
      [BASE, `${SHARED}(solver|rules|planning)/`, `${SHARED}commands/(run-command|registry)[.]ts$`, packages("immer")],
      "analysis/ joins solver, rules and planning behind one session.",
    ),
    rule(
      "checks-are-islands",
      "Two rules that share logic share it through queries/ or solver/.",
      { path: `${SHARED}rules/checks/([^/]+)[.]ts$` },
      { path: `${SHARED}rules/checks/`, pathNot: `${SHARED}rules/checks/$1[.]ts$` },
    ),

    // Hosts: thin programs around the core.
    rule(
      "hosts-are-entry-points",
      "Nobody imports a host: talk to the worker through analysis/protocol.ts, run the command line as a program. A writer's own test, hosts-*.test.ts, calls it.",
      { pathNot: [`${SHARED}hosts/`, "^tests/hosts-[a-z-]+[.]test[.]ts$"] },
      { path: `${SHARED}hosts/`, pathNot: `${SHARED}hosts/atomic-file[.]ts$` },
    ),
    rule(
      "atomic-file-has-few-readers",
      "Only the desktop process saves files beside the hosts. Its test imports it too: a fault in every file-system call in turn can be planted only from inside.",
      { pathNot: [`${SHARED}hosts/`, "^electron/main/", "^tests/hosts-atomic-file[.]test[.]ts$"] },
      { path: `${SHARED}hosts/atomic-file[.]ts$` },
    ),
    rule(
      "shared-model-is-bottom",
      "shared-model runs without window, React or Electron.",
      { path: SHARED },
      { path: ["^(renderer|electron)/", packages("react", "react-dom", "@xyflow", "electron")] },
    ),
    rule(
      "node-only-in-hosts",
      "Node belongs to the hosts that run under it; the worker runs in the window.",
      { path: SHARED, pathNot: `${SHARED}hosts/(?!(paper-)?worker([.]ts$|/))` },
      { dependencyTypes: ["core"] },
    ),

    // One owner per third-party library.
    rule(
      "immer-has-one-owner",
      "Only run-command.ts imports immer values; types are free.",
      { pathNot: [`${SHARED}commands/run-command[.]ts$`, "^tests/"] },
      { path: packages("immer"), dependencyTypesNot: TYPES },
    ),
    rule(
      "react-flow-has-one-owner",
      "Only renderer/sheet/ knows React Flow.",
      { pathNot: ["^renderer/sheet/", "^tests/"] },
      { path: packages("@xyflow") },
    ),
    rule(
      "valibot-stays-at-borders",
      "Unknown bytes are judged in format/ and in the desktop contract; everything else gets typed values.",
      { pathNot: [`${SHARED}format/`, "^electron/ipc/", "^tests/"] },
      { path: packages("valibot", "@valibot") },
    ),
    rule(
      "host-libraries-have-one-owner",
      "commander belongs to hosts/cli, pdfkit to hosts/paper.ts, write-excel-file to hosts/tables.ts.",
      { pathNot: [CLI, `${SHARED}hosts/(paper|tables)[.]ts$`, "^tests/"] },
      { path: packages("commander", "pdfkit", "write-excel-file") },
    ),

    // Processes.
    rule(
      "bootstrap-is-plain-node",
      "The start-up scripts run before anything is installed: Node and each other only.",
      { path: "^electron/[a-z-]+[.]mjs$" },
      { pathNot: "^electron/[a-z-]+[.]mjs$", dependencyTypesNot: ["core"] },
    ),
    rule(
      "renderer-gets-findings-by-message",
      "The window never solves or judges; ask the worker. Types shared with the worker belong to answers/.",
      { path: "^renderer/" },
      { path: `${SHARED}(solver/|planning/|rules/|analysis/(?!protocol[.]ts$))` },
    ),
    rule(
      "checks-unreachable-from-window",
      "Some import on the way drags rule or solver code into the window.",
      { path: "^renderer/" },
      { path: `${SHARED}(solver|planning|rules)/`, reachable: true },
    ),
    rule(
      "renderer-not-to-electron",
      "Only renderer/platform/ may see the IPC contract, types only.",
      { path: "^renderer/" },
      { path: ["^electron/", packages("electron")], pathNot: "^electron/ipc/contract[.]ts$" },
    ),
    rule(
      "contract-only-through-platform",
      "Use the desktop bridge in renderer/platform/.",
      { path: "^renderer/", pathNot: "^renderer/platform/" },
      { path: "^electron/ipc/" },
    ),
    rule("window-has-no-node", "The window is sandboxed.", { path: "^renderer/" }, { dependencyTypes: ["core"] }),
    rule(
      "electron-not-to-renderer",
      "Main and preload never import window code.",
      { path: "^electron/(main|preload|ipc)/" },
      { path: "^renderer/" },
    ),
    rule(
      "main-moves-bytes",
      "Main may read the command catalogue (menu labels); it never opens a Project.",
      { path: "^electron/(main|preload|ipc)/" },
      { path: SHARED, pathNot: `${SHARED}(commands/catalog|lib/|hosts/atomic-file[.]ts$)` },
    ),
    rule(
      "policies-are-pure",
      "What is allowed is decided by plain functions that a test can ask; the doing of it stays outside.",
      { path: "^electron/main/policies/" },
      { pathNot: ["^electron/main/policies/", `${SHARED}(commands/catalog|lib/)`, "^(node:)?path$"] },
    ),
    rule(
      "preload-is-thin",
      "Preload sees Electron and the contract.",
      { path: "^electron/preload/" },
      { pathNot: ["^electron/(preload|ipc)/", packages("electron"), "^electron$"] },
    ),

    // Inside the window.
    rule(
      "panels-and-sheet-meet-in-state",
      "Side panels and sheet talk through state/.",
      { path: "^renderer/(panels|sheet)/" },
      { path: "^renderer/(panels|sheet)/", pathNot: "^renderer/$1/" },
    ),
    rule(
      "state-knows-no-view",
      "state/ never imports components.",
      { path: "^renderer/state/" },
      { path: ["^renderer/(sheet|panels|ui)/", "[.]tsx$"] },
    ),
    rule(
      "views-do-not-import-commands",
      "Views call dispatch with a command id; only state/ imports command code. Types and the catalogue are free.",
      { path: "^renderer/", pathNot: "^renderer/state/" },
      { path: `${SHARED}commands/`, pathNot: `${SHARED}commands/catalog`, dependencyTypesNot: TYPES },
    ),
    rule(
      "ui-is-generic",
      "ui/ holds domain-free parts (units excepted).",
      { path: "^renderer/ui/" },
      { path: "^(renderer|shared-model|electron)/", pathNot: ["^renderer/(ui|words)/", `${SHARED}(units|lib)/`] },
    ),
    only("words-are-bottom", "^renderer/words/", [`${SHARED}lib/`], "words/ sees lib/ only."),
  ],
  options: {
    parser: "swc",
    doNotFollow: { path: "node_modules" },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["import", "types", "node", "default"],
      extensions: [".ts", ".tsx", ".js", ".mjs", ".d.ts"],
    },
  },
};

/*
 * dependency-cruiser can use swc, but reads neither JSX with it nor whether an import is type-only, and its TypeScript
 * reader wants a compiler interface that TypeScript 7 does not have. So the parse is replaced by one that knows JSX and
 * hands on the imports alone, a type-only import in the shape of `import("x").T`, which is reported as "type-import".
 */
const text = (value) => ({ type: "StringLiteral", value });

const asTypeImport = (source) => ({
  type: "VariableDeclaration",
  kind: "const",
  declare: true,
  declarations: [
    {
      type: "VariableDeclarator",
      id: {
        type: "Identifier",
        value: "t",
        typeAnnotation: { type: "TsTypeAnnotation", typeAnnotation: { type: "TsImportType", argument: text(source) } },
      },
    },
  ],
});

const asImport = (source) => ({ type: "ImportDeclaration", source: text(source), specifiers: [] });

const asCall = (call) => ({ type: "ExpressionStatement", expression: { ...call, typeArguments: null } });

function collectImports(node, found) {
  if (Array.isArray(node)) for (const item of node) collectImports(item, found);
  if (node === null || typeof node !== "object" || Array.isArray(node)) return;
  if (/^(Import|ExportNamed|ExportAll)Declaration$/.test(node.type) && node.source) {
    found.push(node.typeOnly ? asTypeImport(node.source.value) : asImport(node.source.value));
  } else if (node.type === "TsImportType") {
    found.push(asTypeImport(node.argument.value));
  } else if (node.type === "CallExpression" && (node.callee.type === "Import" || node.callee.value === "require")) {
    found.push(asCall(node));
  }
  for (const value of Object.values(node)) collectImports(value, found);
}

swc.parseFileSync = (file) => {
  const tsx = /[.][jt]sx$/.test(file);
  const parsed = swc.parseSync(readFileSync(file, "utf8"), { syntax: "typescript", tsx, target: "es2022" });
  const body = [];
  collectImports(parsed.body, body);
  return { ...parsed, body };
};
