import { describe, expect, test } from "vitest";
import type { OperatingSetting } from "../../../shared-model/solver/circuit/circuit.ts";
import { readSetting } from "../../../shared-model/solver/circuit/read-setting.ts";
import { deviceId, drawing, loadId } from "../../builders/drawing.ts";

const { asFound } = drawing()
  .panel("P")
  .breaker("Q1", "P")
  .breaker("Q2", "P")
  .box("B", "plastic-new-2")
  .box("C", "plastic-new-2")
  .device("R1", "gfci-receptacle-15", "B")
  .device("R2", "receptacle-15", "B", { set: { hotTab: "removed" } })
  .device("R3", "receptacle-two-slot", "B")
  .device("S1", "switch-single-pole", "B")
  .device("S2", "switch-two", "B")
  .device("S3", "switch-3way", "B")
  .device("D1", "disconnect-fused", "C")
  .device("L1", "luminaire-60", "C")
  .device("twin", "receptacle-15", "B")
  .device("twin2", "receptacle-15", "C")
  .load("Freezer", "freezer-180", "R1")
  .run("rename-item", { item: { kind: "device", id: deviceId("twin2") }, name: "twin" }).project;

const read = (input: unknown): OperatingSetting => {
  const result = readSetting(input, asFound);
  if (!result.ok) throw new Error(result.problems.map(({ path, message }) => `${path}: ${message}`).join("\n"));
  return result.value;
};

const problemsOf = (input: unknown): readonly (readonly [string, string])[] => {
  const result = readSetting(input, asFound);
  return result.ok ? [] : result.problems.map(({ code, path }) => [code, path]);
};

describe("a setting", () => {
  test("that names nothing leaves everything on", () => {
    expect(read({})).toEqual({ off: new Set(), positions: new Map(), tripped: new Set(), idle: new Set(), added: [] });
  });

  test("names items by name or by id", () => {
    const byName = { off: ["Q1"], tripped: ["R1"], unplugged: ["Freezer", "L1"], switches: { S1: "off", S3: "down" } };
    const byId = {
      off: ["device-Q1"],
      tripped: ["device-R1"],
      unplugged: ["load-Freezer", "device-L1"],
      switches: { "device-S1": "off", "device-S3": "down" },
    };
    for (const input of [byName, byId]) {
      expect(read(input)).toEqual({
        off: new Set([deviceId("Q1")]),
        tripped: new Set([deviceId("R1")]),
        idle: new Set([loadId("Freezer"), deviceId("L1")]),
        positions: new Map([
          [deviceId("S1"), 1],
          [deviceId("S3"), 1],
        ]),
        added: [],
      });
    }
  });

  test("sets both handles of a yoke, or one by its terminal", () => {
    const handle = (terminal: string) => `${deviceId("S2")} ${terminal}`;
    expect(read({ switches: { S2: "off" } }).positions).toEqual(
      new Map([
        [handle("L1"), 1],
        [handle("L2"), 1],
      ]),
    );
    expect(read({ switches: { "S2/L2": "off" } }).positions).toEqual(new Map([[handle("L2"), 1]]));
  });

  test("leaks go from a contact of an outlet to earth unless told otherwise; a half is an outlet", () => {
    const at = (device: string, node: string) => ({ kind: "device", device: deviceId(device), node });
    const leaks = [{ at: "R2/lower" }, { at: "L1", conductor: "neutral", to: "ground", ohm: 500 }];
    expect(read({ leaks, ownTest: ["R1"], plugInTest: ["R1"] }).added).toEqual([
      { from: at("R2", "LH"), to: { kind: "earth" }, ohm: 19_000 },
      { from: at("L1", "N"), to: at("L1", "G"), ohm: 500 },
      { from: at("R1", "LOAD_H"), to: at("R1", "LINE_N"), ohm: 15_000 },
      { from: at("R1", "UH"), to: at("R1", "UG"), ohm: 15_000 },
    ]);
  });
});

describe("is refused with its place", () => {
  test.each<readonly [string, unknown, string, string]>([
    ["no object", [], "not-an-object", ""],
    ["an unknown field", { of: [] }, "unknown-field", "/of"],
    ["a field with a slash", { "a/b": 1 }, "unknown-field", "/a~1b"],
    ["no list", { off: "Q1" }, "not-a-list", "/off"],
    ["no name", { off: [7] }, "not-a-name", "/off/0"],
    ["an unknown name", { off: ["Q1", "Q9"] }, "unknown-item", "/off/1"],
    ["a name of every object", { off: ["constructor"] }, "unknown-item", "/off/0"],
    ["a receptacle switched off", { off: ["R2"] }, "wrong-kind", "/off/0"],
    ["a receptacle tripped", { tripped: ["R2"] }, "wrong-kind", "/tripped/0"],
    ["off and tripped", { off: ["Q1"], tripped: ["Q1"] }, "contradiction", "/tripped/0"],
    ["two positions", { switches: { S1: "off", "device-S1": "on" } }, "contradiction", "/switches/device-S1"],
    [
      "a yoke against one of its handles",
      { switches: { S2: "on", "S2/L1": "off" } },
      "contradiction",
      "/switches/S2~1L1",
    ],
    ["no such position", { switches: { S1: "up" } }, "no-position", "/switches/S1"],
    ["a position that is no text", { switches: { S1: 1 } }, "no-position", "/switches/S1"],
    ["a breaker as a switch", { switches: { Q1: "off" } }, "no-handle", "/switches/Q1"],
    ["a disconnect as a switch", { switches: { D1: "off" } }, "no-handle", "/switches/D1"],
    ["a handle that it has not", { switches: { "S2/C1": "off" } }, "no-handle", "/switches/S2~1C1"],
    ["two of one name", { leaks: [{ at: "twin" }] }, "ambiguous-name", "/leaks/0/at"],
    ["a leak at a switch", { leaks: [{ at: "S1" }] }, "wrong-kind", "/leaks/0/at"],
    ["a leak at no outlet", { leaks: [{}] }, "not-a-name", "/leaks/0/at"],
    ["a leak at a whole duplex whose tab is off", { leaks: [{ at: "R2" }] }, "wrong-kind", "/leaks/0/at"],
    ["a leak to itself", { leaks: [{ at: "R1", to: "hot" }] }, "contradiction", "/leaks/0/to"],
    ["a ground that is not there", { plugInTest: ["R3"] }, "no-contact", "/plugInTest/0"],
    ["no ohms", { leaks: [{ at: "R1", ohm: 0 }] }, "not-a-resistance", "/leaks/0/ohm"],
    ["negative ohms", { leaks: [{ at: "R1", ohm: -5 }] }, "not-a-resistance", "/leaks/0/ohm"],
    ["infinite ohms", { leaks: [{ at: "R1", ohm: Infinity }] }, "not-a-resistance", "/leaks/0/ohm"],
    ["ohms that are no number", { leaks: [{ at: "R1", ohm: Number.NaN }] }, "not-a-resistance", "/leaks/0/ohm"],
    ["ohms as text", { leaks: [{ at: "R1", ohm: "19k" }] }, "not-a-resistance", "/leaks/0/ohm"],
    ["a switch unplugged", { unplugged: ["S1"] }, "wrong-kind", "/unplugged/0"],
    ["TEST of a plain receptacle", { ownTest: ["R2"] }, "wrong-kind", "/ownTest/0"],
  ])("%s", (_, input, code, path) => {
    expect(problemsOf(input)).toEqual([[code, path]]);
  });

  test("every problem is told, each as one line", () => {
    const result = readSetting({ off: ["a\nb"], tripped: ["R2"], bad: 1 }, asFound);
    const problems = result.ok ? [] : result.problems;
    expect(problems.map(({ path }) => path)).toEqual(["/bad", "/off/0", "/tripped/0"]);
    for (const { message } of problems) expect(message).toMatch(/^[^\n]+[.]$/);
  });
});
