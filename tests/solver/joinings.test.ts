import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { getDeviceType } from "../../shared-model/catalog/device-types.ts";
import { cableEnd, type EndKey, jumperEnd } from "../../shared-model/model/ids.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import type { Joining, Section } from "../../shared-model/solver/section.ts";
import { allSections } from "../../shared-model/solver/sections.ts";
import { Drawing } from "../rules/drawing.ts";
import { laundryProposed } from "../rules/laundry.ts";
import { type BruteForce, bruteForce, nameOfNode, type Positions } from "./brute-force.ts";
import { onlySection } from "./look-at.ts";
import { randomDrawing } from "./random-drawing.ts";

const RUNS = process.env.LOADSIDE_LONG === "1" ? 1000 : 80;

const installations = randomDrawing.map((drawing) => drawing.installation());

/** The same with every switch moved from the hot joints of its box to the neutral ones. */
const switchedNeutrals = randomDrawing.map((drawing) => {
  for (const { name, jumpers } of Object.values(drawing.enclosures))
    for (const { id } of Object.values(jumpers)) {
      const joint = /-(C|L|T1)$/.exec(id)?.[1];
      if (joint !== undefined) drawing.put({ [`${id}.1`]: `${name}-${joint === "C" ? "N" : "ND"}` });
    }
  return drawing.installation();
});

/** Names of everything in the boxes of a section: terminals, slots, ends, splices and the metal. */
function namesIn(slow: BruteForce, section: Section): readonly string[] {
  const names = new Set<string>();
  for (const { id, devices, splices, places } of section.enclosures) {
    names.add(`bond ${id}`);
    for (const splice of Object.keys(splices)) names.add(`splice ${splice}`);
    for (const end of Object.keys(places)) names.add(slow.nameOfEnd(end as EndKey));
    for (const device of Object.values(devices))
      for (const { a, b } of getDeviceType(device.type).paths)
        names.add(nameOfNode(device, a)).add(nameOfNode(device, b));
    for (const device of Object.values(devices))
      for (const { name } of getDeviceType(device.type).terminals) names.add(nameOfNode(device, name));
  }
  return [...names];
}

const isHot = (sources: readonly string[]): boolean => sources.some((one) => one.startsWith("@bus"));
const isShorted = (slow: BruteForce, names: readonly string[], positions: Positions): boolean =>
  names.some((name) => {
    const sources = slow.sourcesAt(name, positions);
    return isHot(sources) && sources.includes("@neutral");
  });

/** In some setting the neutral is on a green screw, on the metal of a box, or on what the ground reaches too. */
const isOnGround = (slow: BruteForce, names: readonly string[], positions: Positions): boolean =>
  names.some((name) => {
    const sources = slow.sourcesAt(name, positions);
    const made = name.startsWith("bond ") || /\.(G|UG|LG)$/.test(name);
    return sources.includes("@neutral") && (made || sources.includes("@ground"));
  });

/** In some setting a hot is on a green screw, on the metal of a box, or on what the ground reaches too. */
const isLiveGround = (slow: BruteForce, names: readonly string[], positions: Positions): boolean =>
  names.some((name) => {
    const sources = slow.sourcesAt(name, positions);
    const made = name.startsWith("bond ") || /\.(G|UG|LG)$/.test(name);
    return isHot(sources) && (made || sources.includes("@ground"));
  });

/** The drawing with what joins taken out; undefined where that is a switch. */
function without(installation: Installation, joinings: readonly Joining[]): Installation | undefined {
  const capped = new Map<string, EndKey[]>();
  for (const { by } of joinings) {
    if (by.kind === "device") return undefined;
    const ends = by.kind === "cable" ? [[by.fromEnclosure, by.from] as const] : [[by.enclosure, by.from] as const];
    for (const [enclosure, end] of ends) capped.set(enclosure, [...(capped.get(enclosure) ?? []), end]);
  }
  const enclosures = Object.fromEntries(
    Object.entries(installation.enclosures).map(([id, box]) => {
      const places = { ...box.places };
      for (const end of capped.get(id) ?? []) places[end] = { at: { kind: "capped" } };
      return [id, { ...box, places }];
    }),
  );
  return { ...installation, enclosures };
}

const holdsIn = ({ when }: Joining, positions: Positions): boolean =>
  when.every(({ device, position }) => positions.get(device) === position);

/**
 * What is found is there, taking it out leaves nothing of the kind, and its positions are such in which it is so. They
 * are enough for it; unless it is said to be so in others too, it is so in no others.
 */
function judge(
  installation: Installation,
  find: (section: Section) => readonly Joining[],
  isSo: (slow: BruteForce, names: readonly string[], positions: Positions) => boolean,
): number {
  const slow = bruteForce(installation);
  let found = 0;
  for (const section of allSections(installation)) {
    const names = namesIn(slow, section);
    const joinings = find(section);
    const so = slow.settings.filter((positions) => isSo(slow, names, positions));
    expect(joinings.length > 0).toBe(so.length > 0);
    found += joinings.length;
    for (const joining of joinings)
      for (const positions of slow.settings) if (holdsIn(joining, positions)) expect(so).toContain(positions);
    if (joinings.every(({ alsoElse }) => !alsoElse))
      for (const positions of so) expect(joinings.some((joining) => holdsIn(joining, positions))).toBe(true);
    const mended = without(installation, joinings);
    if (mended === undefined || joinings.length === 0) continue;
    const again = bruteForce(mended);
    const left = again.settings.filter((positions) => isSo(again, names, positions));
    expect(left).toEqual([]);
  }
  return found;
}

describe("on random drawings", { timeout: 300_000 }, () => {
  test("short circuits are those of a search of every setting, and are gone with what is said to make them", () => {
    let found = 0;
    fc.assert(
      fc.property(installations, (one) => {
        found += judge(one, (section) => section.shorts(), isShorted);
      }),
      { numRuns: RUNS },
    );
    expect(found).toBeGreaterThan(5);
  });

  test("so are the places where neutral and ground meet", () => {
    let found = 0;
    fc.assert(
      fc.property(installations, (one) => {
        found += judge(one, (section) => section.neutralsOnGround(), isOnGround);
      }),
      { numRuns: RUNS },
    );
    expect(found).toBeGreaterThan(5);
  });

  test("and those where hot and ground meet", () => {
    let found = 0;
    fc.assert(
      fc.property(installations, (one) => {
        found += judge(one, (section) => section.hotsOnGround(), isLiveGround);
      }),
      { numRuns: RUNS },
    );
    expect(found).toBeGreaterThan(5);
  });

  test("a way round the neutral contacts is found where a search finds one, and is gone without it", () => {
    let found = 0;
    fc.assert(
      fc.property(installations, (installation) => {
        const slow = bruteForce(installation);
        for (const section of allSections(installation))
          for (const { device, enclosure } of section.sensingDevices()) {
            if (enclosure.kind === "panel") continue;
            const load = nameOfNode(device, "LOAD_N");
            const isRound = (by: BruteForce): boolean =>
              by.settings.some((positions) => by.sourcesAt(load, positions, device.id).includes("@neutral"));
            const joinings = section.neutralsAround(device.id);
            expect(joinings.length > 0).toBe(isRound(slow));
            const mended = joinings.length > 0 && without(installation, joinings);
            if (mended === false || mended === undefined) continue;
            found += 1;
            if (slow.settings.length === 1) expect(isRound(bruteForce(mended))).toBe(false);
          }
      }),
      { numRuns: RUNS },
    );
    expect(found).toBeGreaterThan(5);
  });

  test("switches in the neutral are those whose other position gives it back while the hot stays", () => {
    let found = 0;
    fc.assert(
      fc.property(switchedNeutrals, (installation) => {
        const slow = bruteForce(installation);
        for (const section of allSections(installation)) {
          const expected = new Set<string>();
          for (const { outlet } of section.outlets()) {
            const hot = nameOfNode(outlet.device, outlet.hot);
            const neutral = nameOfNode(outlet.device, outlet.neutral);
            for (const one of slow.settings)
              for (const other of slow.settings) {
                const flipped = [...one].filter(([device, position]) => other.get(device) !== position);
                const [first, ...more] = flipped;
                if (first === undefined || more.length > 0) continue;
                const open = !slow.sourcesAt(neutral, one).includes("@neutral") && isHot(slow.sourcesAt(hot, one));
                const closed = slow.sourcesAt(neutral, other);
                if (open && closed.includes("@neutral") && !isHot(closed)) expected.add(`${first[0]} ${outlet.key}`);
              }
          }
          const said = section.switchesInNeutral().flatMap((one) => one.outlets.map((key) => `${one.device} ${key}`));
          expect(said.sort()).toEqual([...expected].sort());
          found += said.length;
        }
      }),
      { numRuns: 4 * RUNS },
    );
    expect(found).toBeGreaterThan(0);
  });
});

describe("where two things join", () => {
  const joins = (joinings: readonly Joining[]) =>
    joinings.map(({ by }) =>
      by.kind === "cable" ? `${by.cable} ${by.conductor}` : by.kind === "jumper" ? by.jumper : by.device,
    );

  test("contacts behind one conductor are told one by one", () => {
    const drawing = laundryProposed()
      .jumper("x", "B2", "R2.N1", "bond")
      .jumper("y", "B3", "R3.N1", "bond")
      .jumper("z", "B6", "R5.N1", "bond");
    expect(joins(onlySection(drawing).neutralsOnGround())).toEqual(["x", "y", "z"]);
  });

  test("pigtails on green screws are told one by one, not the one hot that feeds them, behind a switch too", () => {
    const drawing = new Drawing()
      .panel("P")
      .breaker("Q1", 20)
      .box("B1", 18)
      .cable("C1", "nm-12-2-g", "P", "B1")
      .device("R1", "receptacle-15", "B1")
      .device("S1", "switch-single-pole", "B1")
      .device("S2", "switch-single-pole", "B1")
      .splice("H", "B1", "twist-large")
      .put({ "C1.bk@P": "Q1.OUT", "C1.wh@P": "P-NB.BAR", "C1.cu@P": "P-GB.BAR", "C1.bk@B1": "H" })
      .jumper("a", "B1", "H", "S2.C")
      .jumper("x", "B1", "H", "R1.G")
      .jumper("y", "B1", "H", "S1.G")
      .jumper("z", "B1", "S2.L", "S2.G");
    const joinings = onlySection(drawing).hotsOnGround();
    expect(joins(joinings)).toEqual(["x", "y", "z"]);
    expect(joinings.map(({ when }) => when.map(({ device, position }) => `${device} ${position}`))).toEqual([
      [],
      [],
      ["S2 on"],
    ]);
  });

  test("a neutral that comes to a ground by way of a short circuit and a switch is not hidden by the short circuit", () => {
    const drawing = new Drawing()
      .panel("P")
      .breaker("Q1", 20)
      .box("B1", 18)
      .box("B2", 18)
      .cable("C1", "nm-12-2-g", "P", "B1")
      .cable("C2", "nm-12-2-g", "B1", "B2")
      .device("S1", "switch-single-pole", "B1")
      .splice("H", "B1", "twist-large")
      .splice("N", "B1", "twist-large")
      .put({ "C1.bk@P": "Q1.OUT", "C1.wh@P": "P-NB.BAR", "C1.cu@P": "P-GB.BAR" })
      .put({ "C1.bk@B1": "H", "C1.wh@B1": "N", "C2.cu@B1": "S1.L", "C2.cu@B2": "bond" })
      .jumper("a", "B1", "H", "S1.C")
      .jumper("short", "B1", "H", "N");
    const joinings = onlySection(drawing).neutralsOnGround();
    expect(joinings).toHaveLength(1);
    expect(joinings[0]?.when).toEqual([{ device: "S1", position: "on" }]);
  });

  test("a receptacle that is exchanged as well is no part of a short circuit elsewhere", () => {
    const drawing = laundryProposed().swap("C5.bk@B6", "C5.wh@B6").jumper("y", "B3", "R3.H2", "R3.N2");
    expect(joins(onlySection(drawing).shorts())).toEqual(["y"]);
  });

  test("a short circuit at a receptacle that is exchanged is found all the same", () => {
    const drawing = laundryProposed().swap("C5.bk@B6", "C5.wh@B6").jumper("y", "B6", "R5.H2", "R5.N2");
    expect(joins(onlySection(drawing).shorts())).toHaveLength(1);
  });

  test("the ends of a piece are walked from hot to neutral", () => {
    const [one] = onlySection(laundryProposed().jumper("y", "B6", "R5.N2", "R5.H2")).shorts();
    expect(one?.by).toMatchObject({ from: jumperEnd("y" as never, "b"), to: jumperEnd("y" as never, "a") });
    const [other] = onlySection(laundryProposed().put({ "C6.bk@B3": "R3.N1" })).shorts();
    expect(other?.by).toMatchObject({
      from: cableEnd("C6" as never, "bk" as never, "a"),
      to: cableEnd("C6" as never, "bk" as never, "b"),
    });
  });
});
