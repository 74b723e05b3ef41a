import { describe, expect, test } from "vitest";
import type { Installation } from "../../../shared-model/model/project.ts";
import { outletsOf, type PlacedOutlet } from "../../../shared-model/queries/outlets-of.ts";
import { buildCircuit } from "../../../shared-model/solver/circuit/build-circuit.ts";
import {
  type Added,
  type Circuit,
  EVERYTHING_ON,
  type OperatingSetting,
} from "../../../shared-model/solver/circuit/circuit.ts";
import { ownTestOf, plugInTestAt } from "../../../shared-model/solver/circuit/test-currents.ts";
import { runTrips } from "../../../shared-model/solver/circuit/trips.ts";
import { deviceId, loadId } from "../../builders/ids.ts";
import { openSample } from "../../builders/samples/open-sample.ts";
import { readOutlet } from "./measure.ts";

/*
 * What an electrician finds who tests the laundry after the work, at 122 V. The figures were computed apart from this
 * program by nodal analysis (resistive, Python), with 14 AWG of 2.53 ohm in 1000 ft and perfect joints.
 */
const OUTLETS = ["R1b", "R2", "R3", "R5", "R4b", "L1"] as const;
const BEHIND = ["R1b", "R2", "R3", "R5"];
const FREEZER = loadId("Freezer");

const { proposed } = openSample("laundry-proposed");
if (proposed === undefined) throw new Error("Nothing is proposed in the laundry.");
const outlets = outletsIn(proposed);
const wired = buildCircuit(proposed, { system: "120/240", nominalV: 122 });

function outletsIn({ enclosures }: Installation): ReadonlyMap<string, PlacedOutlet> {
  const all = Object.values(enclosures).flatMap(({ devices }) => Object.values(devices).flatMap(outletsOf));
  return new Map(all.map((outlet) => [outlet.name, outlet]));
}

function outlet(name: string): PlacedOutlet {
  const found = outlets.get(name);
  if (found === undefined) throw new Error(`There is no ${name}.`);
  return found;
}

const inSetting = (setting: Partial<OperatingSetting>): Circuit => wired.inSetting({ ...EVERYTHING_ON, ...setting });
const idle = (...names: readonly string[]) =>
  new Set(names.map((name) => (name === "Freezer" ? FREEZER : deviceId(name))));
const heaterAt = ({ device, hot, neutral }: PlacedOutlet): Added => ({
  from: { kind: "device", device: device.id, node: hot },
  to: { kind: "device", device: device.id, node: neutral },
  ohm: 12,
});
const hotToNeutral = (circuit: Circuit, name: string): number => readOutlet(circuit, outlet(name)).hn.volts;

/** What a run opens, and which outlets are on and which are dead after it, with whatever was held released. */
function doing(setting: Partial<OperatingSetting>) {
  const { outcomes } = runTrips(inSetting(setting));
  const [first] = outcomes;
  if (outcomes.length !== 1 || first === undefined) throw new Error("It may go in several ways.");
  const left = first.circuit.inSetting({ ...first.circuit.setting, added: [] });
  const on = OUTLETS.filter((name) => hotToNeutral(left, name) > 115);
  const dead = OUTLETS.filter((name) => hotToNeutral(left, name) < 0.1);
  return { opened: first.opened.flat().map((device) => device.replace("device-", "")), on, dead };
}

test("with the lamp on: 121.8 to 121.9 / 121.9 / about 0.05 V and correct at every outlet", () => {
  const circuit = inSetting({ idle: idle("Freezer") });
  for (const name of OUTLETS) {
    const { hn, hg, ng, tester } = readOutlet(circuit, outlet(name));
    expect([Math.abs(hn.volts - 121.85) < 0.1, Math.abs((hg?.volts ?? 0) - 121.9) < 0.1]).toEqual([true, true]);
    expect(Math.abs((ng?.volts ?? 0) - 0.05)).toBeLessThan(0.03);
    expect(tester?.name).toBe("correct");
  }
});

test("the switch of the lamp: 121.8 V and nothing", () => {
  const off = new Map([[deviceId("S1"), 1]]);
  expect(Math.abs(hotToNeutral(inSetting({ idle: idle("Freezer") }), "L1") - 121.8)).toBeLessThan(0.1);
  expect(hotToNeutral(inSetting({ positions: off }), "L1")).toBeLessThan(0.1);
});

describe("TEST and RESET", () => {
  const own = (name: string) => [ownTestOf(outlet(name).device) ?? []].flat();

  test("as shipped, open: what is behind R1b is dead, and the lamp on LINE lights", () => {
    const tripped = new Set(["R1b", "R4b"].map(deviceId));
    const circuit = inSetting({ tripped });
    expect(OUTLETS.filter((name) => hotToNeutral(circuit, name) < 0.1)).toEqual([...BEHIND, "R4b"]);
  });

  test("TEST on R1b: R1b, R2, R3 and R5 are dead; R4b with its freezer and the lamp stay", () => {
    expect(doing({ added: own("R1b") })).toEqual({ opened: ["R1b"], on: ["R4b", "L1"], dead: BEHIND });
  });

  test("TEST on R4b: it alone is dead", () => {
    expect(doing({ added: own("R4b") })).toEqual({ opened: ["R4b"], on: [...BEHIND, "L1"], dead: ["R4b"] });
  });

  test("the button of a plug-in tester opens the right device at each outlet", () => {
    for (const name of [...BEHIND, "R4b"]) {
      const added = [plugInTestAt(outlet(name)) ?? []].flat();
      expect(doing({ added }).opened).toEqual([name === "R4b" ? "R4b" : "R1b"]);
    }
  });

  test("it holds with a heater of 12 ohm at each outlet in turn, freezer and lamp on", () => {
    for (const name of BEHIND) expect(doing({ added: [heaterAt(outlet(name))] }).opened).toEqual([]);
  });

  test("it holds with the freezer alone", () => {
    expect(doing({ idle: idle("L1") }).opened).toEqual([]);
  });
});

test.each([
  ["R1b", 119.7, 0.9],
  ["R2", 119.1, 1.19],
  ["R3", 118.4, 1.54],
  ["R5", 118.9, 1.3],
  ["R4b", 118.8, 1.36],
])("a heater of 12 ohm alone at %s: %d V, and %d V from neutral to ground", (name, volts, groundV) => {
  const circuit = inSetting({ idle: idle("Freezer", "L1"), added: [heaterAt(outlet(name))] });
  const { hn, ng } = readOutlet(circuit, outlet(name));
  expect(Math.abs(hn.volts - volts)).toBeLessThan(0.2);
  expect(Math.abs((ng?.volts ?? 0) - groundV)).toBeLessThan(0.1);
});

test("the breaker off: all are dead", () => {
  const circuit = inSetting({ off: new Set([deviceId("Q14")]) });
  expect(OUTLETS.filter((name) => hotToNeutral(circuit, name) < 0.1)).toEqual([...OUTLETS]);
});
