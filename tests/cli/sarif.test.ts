/** `check --sarif`, against what OASIS SARIF 2.1.0 demands of a log; section numbers of that standard stand beside the checks, from memory. */
import { beforeAll, describe, expect, test } from "vitest";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import { laundryBoth } from "../analysis/laundry-states.ts";
import { buildLoadside, LAUNDRY, loadside, withFile } from "./run-loadside.ts";

beforeAll(buildLoadside, 120_000);

interface Result {
  readonly ruleId: string;
  readonly ruleIndex: number;
  readonly kind: string;
  readonly level: string;
  readonly message: { readonly text: string };
  readonly locations: readonly {
    readonly physicalLocation?: { readonly artifactLocation: { readonly uri: string } };
    readonly logicalLocations: readonly { readonly name: string; readonly fullyQualifiedName: string }[];
  }[];
  readonly partialFingerprints: Readonly<Record<string, string>>;
  readonly baselineState?: string;
  readonly suppressions?: readonly { readonly kind: string; readonly justification: string }[];
  readonly properties: { readonly severity: string; readonly standing?: string };
}
interface Log {
  readonly version: string;
  readonly runs: readonly {
    readonly tool: { readonly driver: { readonly name: string; readonly rules: readonly { readonly id: string }[] } };
    readonly artifacts?: readonly { readonly location: { readonly uri: string } }[];
    readonly results: readonly Result[];
    readonly properties: { readonly state: string };
  }[];
}

const sarif = (args: readonly string[], input?: string) => {
  const { status, stdout, stderr } = loadside(["check", "--sarif", ...args], input === undefined ? {} : { input });
  return { status, stderr, log: JSON.parse(stdout) as Log };
};

describe("a log", () => {
  test("says its version and, in each run, the tool with every rule once (3.13.2, 3.18, 3.19.23)", () => {
    const { status, log } = sarif([LAUNDRY]);
    expect([status, log.version, log.runs.length]).toEqual([1, "2.1.0", 1]);
    const catalogue: readonly { readonly id: string }[] = JSON.parse(loadside(["rules", "--json"]).stdout);
    const { name, rules } = log.runs[0]?.tool.driver ?? { rules: [] };
    expect(name).toBe("Loadside");
    expect(rules.map(({ id }) => id)).toEqual(catalogue.map(({ id }) => id));
  });

  test("has the findings that `--json` has, in their order, and names the rule of each by id and by place (3.27.5, 3.27.6)", () => {
    const { log } = sarif([LAUNDRY]);
    const asked = JSON.parse(loadside(["check", "--json", LAUNDRY]).stdout);
    const [{ results, tool }] = log.runs as [Log["runs"][number]];
    const told = results.map(({ kind, ruleId, message }) => [kind, ruleId, message.text]);
    const expected = [
      ...asked.findings.map(({ rule, message }: { rule: string; message: string }) => ["fail", rule, message]),
      ...asked.couldNotTell.map(({ rule, message }: { rule: string; message: string }) => ["open", rule, message]),
    ];
    expect(expected.length).toBeGreaterThan(5);
    expect(told).toEqual(expected);
    for (const { ruleId, ruleIndex } of results) expect(tool.driver.rules[ruleIndex]?.id).toBe(ruleId);
  });

  test("gives a level to what fails and none to what is open (3.27.10), and tells places by name", () => {
    const results = sarif([LAUNDRY]).log.runs.flatMap((run) => run.results);
    const levels = { danger: "error", violation: "error", caution: "warning", advice: "note" };
    for (const { kind, level, properties, locations } of results) {
      expect(level).toBe(kind === "open" ? "none" : levels[properties.severity as keyof typeof levels]);
      expect(locations).toHaveLength(1);
      for (const { name } of locations[0]?.logicalLocations ?? []) expect(name).not.toBe("");
    }
    expect(new Set(results.map(({ kind }) => kind))).toContain("fail");
  });

  test("names the file by an absolute address, and standard input by none (3.4.3)", () => {
    const { log } = sarif([LAUNDRY]);
    const uri = log.runs[0]?.artifacts?.[0]?.location.uri ?? "";
    expect(new URL(uri).protocol).toBe("file:");
    expect(decodeURIComponent(uri)).toMatch(/assets\/samples\/laundry-box\.loadside$/);
    const piped = withFile("", () => sarif(["-"], textToSave(laundryBoth())).log.runs[0]);
    expect(piped?.artifacts).toBeUndefined();
    expect(piped?.results.every(({ locations }) => locations[0]?.physicalLocation === undefined)).toBe(true);
  });

  test("with both states has a run for each, and says against as found what is new (3.27.24)", () => {
    withFile(textToSave(laundryBoth()), (path) => {
      const { runs } = sarif(["--state", "both", path]).log;
      expect(runs.map(({ properties }) => properties.state)).toEqual(["as-found", "proposed"]);
      const [asFound, proposed] = runs as [Log["runs"][number], Log["runs"][number]];
      expect(asFound.results.every(({ baselineState }) => baselineState === undefined)).toBe(true);
      const told = proposed.results.filter(({ kind }) => kind === "fail");
      expect(told.length).toBeGreaterThan(0);
      for (const { baselineState, properties } of told)
        expect(baselineState).toBe(properties.standing === "introduced" ? "new" : "unchanged");
    });
  });

  test("keeps a finding that a person acknowledged, as suppressed with name and reason (3.27.23, 3.35)", () => {
    const project = laundryBoth();
    const [first] = sarif(["-", "--state", "as-found"], textToSave(project)).log.runs[0]?.results ?? [];
    const key = first?.partialFingerprints["finding/v1"] as string;
    const word = {
      finding: key,
      state: "as-found" as const,
      by: "Foreman",
      reason: "Agreed on site",
      at: "2026-11-02",
    };
    const { log, status } = sarif(["-", "--state", "as-found"], textToSave({ ...project, acknowledgements: [word] }));
    const now = log.runs[0]?.results.find(({ partialFingerprints }) => partialFingerprints["finding/v1"] === key);
    expect(now?.suppressions).toEqual([
      { kind: "external", status: "accepted", justification: "Foreman, 2026-11-02: Agreed on site" },
    ]);
    expect(status).toBe(1);
  });

  /*
   * The published schema, sarif-schema-2.1.0.json of OASIS: its objects are closed, so that a property of another name
   * makes a log invalid. The definitions of result and run were read; those of the others are from memory.
   */
  const PROPERTIES = {
    run: "tool artifacts automationDetails columnKind results properties",
    result:
      "ruleId ruleIndex kind level message locations partialFingerprints baselineState suppressions properties fixes rank guid",
    descriptor: "id name shortDescription fullDescription help helpUri defaultConfiguration properties",
    location: "id physicalLocation logicalLocations message annotations relationships properties",
    logicalLocation: "name index fullyQualifiedName decoratedName parentIndex kind properties",
  } as const;
  const others = (object: object, kind: keyof typeof PROPERTIES): readonly string[] =>
    Object.keys(object).filter((key) => !PROPERTIES[kind].split(" ").includes(key));

  test("has no property that the schema does not know, and what it demands", () => {
    withFile(textToSave(laundryBoth()), (path) => {
      for (const run of sarif(["--state", "both", path]).log.runs) {
        expect(others(run, "run")).toEqual([]);
        // Required: tool of a run, name of a driver, id of a rule, message of a result.
        expect(run.tool.driver.name).not.toBe("");
        const ids = run.tool.driver.rules.map(({ id }) => id);
        expect(new Set(ids).size).toBe(ids.length);
        for (const rule of run.tool.driver.rules) expect(others(rule, "descriptor")).toEqual([]);
        for (const result of run.results) {
          expect(others(result, "result")).toEqual([]);
          expect(result.message.text).not.toBe("");
          expect(["notApplicable", "pass", "fail", "review", "open", "informational"]).toContain(result.kind);
          expect(["none", "note", "warning", "error"]).toContain(result.level);
          // 3.27.10: a level other than none goes with what fails, and with nothing else.
          expect(result.level === "none").toBe(result.kind !== "fail");
          if (result.ruleIndex !== undefined) expect(ids[result.ruleIndex]).toBe(result.ruleId);
          expect([undefined, "new", "unchanged", "updated", "absent"]).toContain(result.baselineState);
          for (const value of Object.values(result.partialFingerprints)) expect(typeof value).toBe("string");
          for (const location of result.locations) {
            expect(others(location, "location")).toEqual([]);
            for (const one of location.logicalLocations) expect(others(one, "logicalLocation")).toEqual([]);
            const at = location.physicalLocation?.artifactLocation.uri ?? "";
            // 3.4.3: an address, with nothing in it that must be escaped.
            expect(at).toBe(new URL(at).href);
          }
        }
      }
    });
  });

  test("cannot be asked for together with --json, and a bad file leaves status 2", () => {
    expect(loadside(["check", "--json", "--sarif", LAUNDRY])).toMatchObject({ status: 2, stdout: "" });
    const bad = withFile("{", (path) => loadside(["check", "--sarif", path]));
    expect(bad.status).toBe(2);
    expect(JSON.parse(bad.stdout).runs).toEqual([]);
  });
});
