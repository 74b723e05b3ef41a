import fc from "fast-check";
import { describe, expect, test } from "vitest";
import samples from "../../../assets/samples/index.json" with { type: "json" };
import type { Cable } from "../../../shared-model/model/cable.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import { asId, type CableId, cableEnd, type DeviceId, type LoadId } from "../../../shared-model/model/ids.ts";
import type { Installation } from "../../../shared-model/model/project.ts";
import { getInstallation } from "../../../shared-model/queries/installation-of.ts";
import { buildCircuit } from "../../../shared-model/solver/circuit/build-circuit.ts";
import { type Circuit, EVERYTHING_ON, type Probe } from "../../../shared-model/solver/circuit/circuit.ts";
import { currentThrough, residualOf } from "../../../shared-model/solver/circuit/currents.ts";
import { DeadNetwork } from "../../../shared-model/solver/circuit/dead-network.ts";
import { handlesOf } from "../../../shared-model/solver/circuit/handles.ts";
import type { OutletProof } from "../../../shared-model/solver/circuit/proof-answers.ts";
import { sectionProof } from "../../../shared-model/solver/circuit/section-proof.ts";
import { runTrips } from "../../../shared-model/solver/circuit/trips.ts";
import { allSections } from "../../../shared-model/solver/sections.ts";
import { settingsOf } from "../../../shared-model/solver/settings.ts";
import { ohms } from "../../../shared-model/units/quantity.ts";
import { openSample } from "../../builders/samples/open-sample.ts";
import { laundryProposed } from "../../rules/laundry.ts";
import { withRoom } from "../../same-seed.ts";
import { randomDrawing } from "../random-drawing.ts";
import { newName, renamed, reversed } from "../renamed.ts";
import { proofs, SUPPLY } from "./proofs.ts";

const RUNS = process.env.LOADSIDE_LONG === "1" ? 500 : 60;
const installations = randomDrawing.map((drawing) => drawing.installation());

/** All that a proof says of each outlet; figures to a millionth. */
const said = (all: readonly OutletProof[], name = (id: string): string => id): ReadonlyMap<string, unknown> =>
  new Map(
    all.map(({ standing, verdict, protectedBy, devices }) => [
      nameOfOutlet(standing.outlet.key, name),
      {
        verdict,
        protectedBy: protectedBy.map(name).sort(),
        devices: devices
          .map(({ device, tests, balance, detection, offenders }) => ({
            device: name(device),
            tests,
            figures: [balance, detection].map(rounded),
            offenders: offenders.map(({ outlet, share }) => [nameOfOutlet(outlet, name), rounded(share)]).sort(),
          }))
          .sort((p, q) => (p.device < q.device ? -1 : 1)),
      },
    ]),
  );
const rounded = (value: number): string => (Math.abs(value) + 1e-9).toFixed(6);
const nameOfOutlet = (key: string, name: (id: string) => string): string => {
  const [device = "", ...half] = key.split("/");
  return [name(device), ...half].join("/");
};

describe("on random drawings", { timeout: withRoom(300_000) }, () => {
  test("names and the order of drawing change nothing", () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(installations, (installation) => {
        const all = proofs(installation);
        for (const { verdict } of all) seen.add(verdict);
        expect(said(proofs(reversed(installation)))).toEqual(said(all));
        expect(said(proofs(renamed(installation)))).toEqual(said(all, newName));
      }),
      { numRuns: RUNS },
    );
    for (const verdict of ["all", "none", "not-live"]) expect(seen).toContain(verdict);
  });

  test("a section proved alone says what it says among all: behind a service panel no current leaves it", () => {
    fc.assert(
      fc.property(installations, (installation) => {
        const alone = allSections(installation).flatMap((section) => sectionProof(section).outlets);
        expect(said(alone)).toEqual(said(proofs(installation)));
      }),
      { numRuns: RUNS },
    );
  });

  test("a dead cable between any two boxes changes nothing but which devices are asked", () => {
    fc.assert(
      fc.property(installations, fc.nat(), fc.nat(), (installation, one, other) => {
        const before = proofs(installation);
        const after = proofs(withDeadCable(installation, one, other));
        for (const { standing, verdict, protectedBy, devices } of before) {
          const now = after.find((proof) => proof.standing.outlet.key === standing.outlet.key);
          expect([now?.verdict, now?.protectedBy]).toEqual([verdict, protectedBy]);
          for (const { device, tests } of devices)
            expect(now?.devices.find((found) => found.device === device)?.tests).toEqual(tests);
        }
      }),
      { numRuns: RUNS },
    );
  });

  test("what is in use, and how much, changes nothing", () => {
    fc.assert(
      fc.property(installations, (installation) => {
        expect(said(proofs(withOtherLoads(installation)))).toEqual(said(proofs(installation)));
      }),
      { numRuns: RUNS },
    );
  });

  test("a current in the dead network is seen as in the live one, in every position tried", () => {
    let compared = 0;
    fc.assert(
      fc.property(installations, fc.nat(), (installation, positions) => {
        const idle = everyUse(installation);
        const handles = handlesIn(installation);
        const setting = [...settingsOf(handles)][positions % 2 ** handles.length];
        if (setting === undefined) return;
        const moved = new Map(handles.map((handle) => [handle, setting.positionOf(handle)]));
        const quiet = buildCircuit(installation, SUPPLY, { ...EVERYTHING_ON, idle, positions: moved });
        const dead = new DeadNetwork(buildCircuit(installation, SUPPLY));
        for (const proof of proofs(installation)) {
          const [hot, neutral] = contactsOf(proof);
          const used = quiet.inSetting({ ...quiet.setting, added: [{ from: hot, to: neutral, ohm: 240 }] });
          const at = used.factor.operatingPoint();
          const amps = currentThrough(used, used.network.a.length - 1, at);
          const size = Math.hypot(amps.re, amps.im);
          if (size < 0.1) continue;
          const before = quiet.factor.operatingPoint();
          for (const sensor of quiet.sensors) {
            const view = dead.view(sensor.device, setting);
            const [one, other] = [residualOf(used, sensor, at), residualOf(quiet, sensor, before)];
            const seen = Math.hypot(one.re - other.re, one.im - other.im) / size;
            const share = view && Math.abs(view.shareOf(nodeOf(quiet, hot)) - view.shareOf(nodeOf(quiet, neutral)));
            expect(Math.abs(seen - (share ?? -1))).toBeLessThan(2e-3);
            compared++;
          }
        }
      }),
      { numRuns: RUNS },
    );
    expect(compared).toBeGreaterThan(RUNS);
  });
});

describe("a protected outlet", { timeout: withRoom(300_000) }, () => {
  const drawings: readonly (readonly [string, Installation])[] = [
    ["the laundry", laundryProposed().installation()],
    ...samples.flatMap(({ name, file }) => {
      const project = openSample(file.replace(/[.]loadside$/, ""));
      const states = project.proposed === undefined ? (["as-found"] as const) : (["as-found", "proposed"] as const);
      return states.map((state) => [`${name}, ${state}`, getInstallation(project, state)] as const);
    }),
  ];

  test("has each of its devices opened by 19 kilohms from its hot to the ground outside", () => {
    let opened = 0;
    for (const [name, installation] of drawings)
      opened += leaksThatOpen(
        name,
        proofs(installation),
        buildCircuit(installation, SUPPLY, quietSetting(installation)),
      );
    expect(opened).toBeGreaterThan(25);
  });

  test("and so with everything in use, where the device is quiet", () => {
    let opened = 0;
    for (const [name, installation] of drawings) {
      const quiet = proofs(installation).filter(({ devices, protectedBy }) =>
        devices.every(({ device, tests }) => !protectedBy.includes(device) || tests.P6 === "pass"),
      );
      opened += leaksThatOpen(name, quiet, buildCircuit(installation, SUPPLY));
    }
    expect(opened).toBeGreaterThan(25);
  });

  test("on random drawings too", () => {
    let opened = 0;
    fc.assert(
      fc.property(installations, (installation) => {
        const circuit = buildCircuit(installation, SUPPLY, quietSetting(installation));
        opened += leaksThatOpen("random", proofs(installation), circuit);
      }),
      { numRuns: 3 * RUNS },
    );
    expect(opened).toBeGreaterThan(10);
  });
});

const quietSetting = (installation: Installation) => ({ ...EVERYTHING_ON, idle: everyUse(installation) });

/** How many leaks were put on; each must open what protects the outlet. A hot that a short pulls down gives no such leak. */
function leaksThatOpen(name: string, all: readonly OutletProof[], circuit: Circuit): number {
  let tried = 0;
  const at = runTrips(circuit).energised.factor.operatingPoint();
  for (const proof of all) {
    const [hot] = contactsOf(proof);
    const node = nodeOf(circuit, hot);
    if (proof.verdict !== "all" || Math.hypot(at.re[node] ?? 0, at.im[node] ?? 0) < 118) continue;
    const leak = { from: hot, to: { kind: "earth" }, ohm: 19_000 } as const;
    const run = runTrips(circuit.inSetting({ ...circuit.setting, added: [leak] }));
    for (const device of proof.protectedBy) {
      const trips = run.devices.find((one) => one.device === device)?.trips;
      expect([name, proof.standing.outlet.key, device, trips]).toEqual([
        name,
        proof.standing.outlet.key,
        device,
        "yes",
      ]);
    }
    tried++;
  }
  return tried;
}

function contactsOf({ standing: { outlet } }: OutletProof): readonly [hot: Probe, neutral: Probe] {
  const device = outlet.device.id;
  return [
    { kind: "device", device, node: outlet.hot },
    { kind: "device", device, node: outlet.neutral },
  ];
}

function nodeOf(circuit: Circuit, place: Probe): number {
  const node = circuit.nodeOf(place);
  if (node === undefined) throw new Error(`No ${JSON.stringify(place)}.`);
  return node;
}

const devicesIn = ({ enclosures }: Installation) =>
  Object.values(enclosures).flatMap(({ devices }) => Object.values(devices));

const handlesIn = (installation: Installation): readonly string[] =>
  devicesIn(installation)
    .flatMap((device) => handlesOf(device).map(({ handle }) => handle))
    .sort();

const everyUse = (installation: Installation): ReadonlySet<LoadId | DeviceId> =>
  new Set<LoadId | DeviceId>([
    ...devicesIn(installation).map(({ id }) => id),
    ...Object.values(installation.loads).map(({ id }) => id),
  ]);

/** The same wiring with quite other things in use. */
function withOtherLoads(installation: Installation): Installation {
  const enclosures = Object.values(installation.enclosures).map((enclosure): Enclosure => {
    const devices = Object.values(enclosure.devices).map((device) => [
      device.id,
      { ...device, loadOhm: ohms(17), leakMa: 0.4 },
    ]);
    return { ...enclosure, devices: Object.fromEntries(devices) };
  });
  return { ...installation, enclosures: Object.fromEntries(enclosures.map((one) => [one.id, one])) };
}

/** A cable between two boxes with all its ends capped. */
function withDeadCable(installation: Installation, one: number, other: number): Installation {
  const boxes = Object.values(installation.enclosures).filter(({ kind }) => kind === "box");
  const [from, to] = [boxes[one % boxes.length], boxes[other % boxes.length]];
  const [model] = Object.values(installation.cables);
  if (from === undefined || to === undefined || from === to || model === undefined) return installation;
  const id = asId<CableId>("dead");
  const entry = Object.keys(from.entries)[0] as keyof Enclosure["entries"];
  const cable: Cable = {
    ...model,
    id,
    name: "dead",
    sides: { a: { enclosure: from.id, entry }, b: { enclosure: to.id, entry } },
  } as Cable;
  const capped = (box: Enclosure, side: "a" | "b"): Enclosure => {
    const places = { ...box.places };
    for (const key of Object.keys(model.conductors))
      places[cableEnd(id, key as keyof Cable["conductors"], side)] = { at: { kind: "capped" } };
    return { ...box, places };
  };
  return {
    ...installation,
    cables: { ...installation.cables, [id]: cable },
    enclosures: { ...installation.enclosures, [from.id]: capped(from, "a"), [to.id]: capped(to, "b") },
  };
}
