import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { getDeviceType } from "../../shared-model/catalog/device-types.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EndKey } from "../../shared-model/model/ids.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { sectionProof } from "../../shared-model/solver/circuit/section-proof.ts";
import type { Section } from "../../shared-model/solver/section.ts";
import { allSections, sectionFingerprint } from "../../shared-model/solver/sections.ts";
import { bigHouse } from "../bench/big-house.ts";
import { withRoom } from "../same-seed.ts";
import { bruteForce, nameOfNode } from "./brute-force.ts";
import { isolationIn } from "./isolation.ts";
import { randomDrawing } from "./random-drawing.ts";
import { renamed, renamedEnd, reversed } from "./renamed.ts";

const RUNS = process.env.LOADSIDE_LONG === "1" ? 1000 : 60;

/** Everything that a section says, as plain data. */
const said = (section: Section) => ({
  roles: section.enclosures.flatMap(({ places }) =>
    (Object.keys(places) as EndKey[]).sort().map((end) => [end, section.roleOfEnd(end)]),
  ),
  outlets: isolationIn(section).map(({ standing: { outlet, hot, neutral, live }, tests, certain }) => [
    outlet.key,
    hot,
    neutral,
    live,
    tests,
    certain,
  ]),
  proofs: sectionProof(section).outlets.map(({ devices, verdict, protectedBy }) => [
    devices.map(({ device, tests, failsWhen }) => [device, tests, failsWhen]),
    verdict,
    protectedBy,
  ]),
  circuits: section.breakers().map(({ device }) => section.circuitOf(device.id)),
});
const saidOf = (installation: Installation) => allSections(installation).map(said);

const installations = randomDrawing.map((drawing) => drawing.installation());

describe("on random drawings", { timeout: withRoom(300_000) }, () => {
  test("roles, live outlets and protection are those of a search of every setting", () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(installations, (installation) => {
        const slow = bruteForce(installation);
        const pairs: [what: string, fast: unknown, slow: unknown][] = [];
        for (const section of allSections(installation)) {
          for (const { places } of section.enclosures)
            for (const end of Object.keys(places) as EndKey[]) {
              const role = section.roleOfEnd(end);
              seen.add(role);
              pairs.push([end, role === "traveller" ? "switched" : role, slow.roleOf(slow.nameOfEnd(end))]);
            }
          for (const { standing, tests } of isolationIn(section)) {
            const { outlet, live } = standing;
            const hot = nameOfNode(outlet.device, outlet.hot);
            const neutral = nameOfNode(outlet.device, outlet.neutral);
            pairs.push([`${outlet.key} live`, live, slow.isLive(hot)]);
            for (const test of tests) {
              const after = section.contactsOpen(test.device).isLive({ device: outlet.device.id, node: outlet.hot });
              pairs.push([`${outlet.key} after ${test.device}`, after, slow.isLive(hot, test.device)]);
              const isHeld = slow.isProtected(hot, neutral, test.device);
              seen.add(`held ${isHeld}`);
              pairs.push([`${outlet.key} by ${test.device}`, test.protects, isHeld && !test.reachedThroughLoad]);
            }
          }
        }
        expect(pairs.filter(([, fast, other]) => fast !== other)).toEqual([]);
      }),
      { numRuns: RUNS },
    );
    // The drawings are varied enough to tell something.
    for (const kind of [
      "ungrounded",
      "switched",
      "grounded",
      "ground",
      "floating",
      "conflict",
      "traveller",
      "held true",
      "held false",
    ])
      expect(seen).toContain(kind);
  });

  test("order of records and names of things change nothing", () => {
    fc.assert(
      fc.property(installations, (installation) => {
        expect(saidOf(reversed(installation))).toEqual(saidOf(installation));
        const other = new Map(
          saidOf(renamed(installation)).flatMap(({ roles }) => roles.map(([end, role]) => [end, role])),
        );
        const roles = saidOf(installation).flatMap((one) => one.roles);
        expect(roles.filter(([end, role]) => other.get(renamedEnd(end as EndKey)) !== role)).toEqual([]);
      }),
      { numRuns: RUNS },
    );
  });

  test("capping an end takes no source to anywhere", () => {
    fc.assert(
      fc.property(installations, fc.nat(), (installation, pick) => {
        const ends = boxesOf(installation).flatMap(({ id, places }) =>
          Object.keys(places).map((end) => [id, end as EndKey] as const),
        );
        const [box, end] = ends[pick % ends.length] ?? [];
        if (box === undefined || end === undefined) return;
        const before = reachOfAll(installation);
        const after = reachOfAll(withEnd(installation, box, end));
        expect([...after].filter((one) => !before.has(one))).toEqual([]);
      }),
      { numRuns: RUNS },
    );
  });

  test("after an edit, what is kept and what is made anew are what a fresh drawing says", () => {
    fc.assert(
      fc.property(installations, fc.array(fc.nat(), { minLength: 1, maxLength: 4 }), (start, picks) => {
        let installation = start;
        for (const pick of picks) {
          saidOf(installation);
          const boxes = Object.values(installation.enclosures);
          const box = boxes[pick % boxes.length];
          const ends = Object.keys(box?.places ?? {}) as EndKey[];
          const end = ends[pick % ends.length];
          if (box === undefined || end === undefined) return;
          installation = withEnd(installation, box.id, end);
          expect(saidOf(installation)).toEqual(saidOf(structuredClone(installation)));
        }
      }),
      { numRuns: RUNS },
    );
  });

  test("the same fingerprint means the same answers", () => {
    let compared = 0;
    fc.assert(
      fc.property(installations, fc.nat(), fc.nat(), (drawn, which, pick) => {
        // A house beside the drawing, so that there are sections that an edit leaves alone.
        const house = bigHouse(6, 2).asFound;
        const installation = {
          ...drawn,
          enclosures: { ...drawn.enclosures, ...house.enclosures },
          cables: { ...drawn.cables, ...house.cables },
        };
        const kept = new Map(allSections(installation).map((section) => [sectionFingerprint(section), said(section)]));
        const wired = Object.values(installation.enclosures).filter(({ places }) => Object.keys(places).length > 0);
        const enclosure = wired[which % wired.length] as Enclosure;
        const ends = Object.keys(enclosure.places) as EndKey[];
        const edited = withEnd(installation, enclosure.id, ends[pick % ends.length] as EndKey);
        const fresh = saidOf(structuredClone(edited));
        for (const section of allSections(edited)) {
          const before = kept.get(sectionFingerprint(section));
          if (before === undefined) continue;
          compared++;
          expect(fresh).toContainEqual(before);
        }
      }),
      { numRuns: RUNS },
    );
    expect(compared).toBeGreaterThan(RUNS);
  });
});

const boxesOf = ({ enclosures }: Installation): readonly Enclosure[] =>
  Object.values(enclosures).filter(({ kind }) => kind === "box");

function withEnd(installation: Installation, box: Enclosure["id"], end: EndKey): Installation {
  const enclosure = installation.enclosures[box] as Enclosure;
  const places = { ...enclosure.places, [end]: { at: { kind: "capped" } as const } };
  return { ...installation, enclosures: { ...installation.enclosures, [box]: { ...enclosure, places } } };
}

/** What some setting brings to each terminal: "D00.H1 live". */
function reachOfAll(installation: Installation): ReadonlySet<string> {
  const found = new Set<string>();
  for (const section of allSections(installation)) {
    const reach = section.reach();
    for (const device of section.enclosures.flatMap(({ devices }) => Object.values(devices)))
      for (const { name } of getDeviceType(device.type).terminals) {
        const spot = { device: device.id, node: name };
        if (reach.isLive(spot)) found.add(`${device.id}.${name} live`);
        if (reach.isGrounded(spot)) found.add(`${device.id}.${name} grounded`);
        if (reach.isOnGround(spot)) found.add(`${device.id}.${name} on ground`);
      }
  }
  return found;
}
