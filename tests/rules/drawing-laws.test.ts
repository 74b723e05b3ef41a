import fc from "fast-check";
import { expect, test } from "vitest";
import type { Cable } from "../../shared-model/model/cable.ts";
import { type EnclosureId, type EndKey, parseEnd } from "../../shared-model/model/ids.ts";
import type { Place } from "../../shared-model/model/place.ts";
import type { Installation, Project } from "../../shared-model/model/project.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { terminalsOf } from "../../shared-model/queries/terminals-of.ts";
import { getEdition } from "../../shared-model/rules/editions/editions.ts";
import { fillLedger } from "../../shared-model/rules/fill/fill-ledger.ts";
import { checkDocument } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { laundryAsFound, laundryProposed, multiwire } from "./laundry.ts";

/** A drawing with some ends put anywhere in their boxes: mistakes of every kind, and still a sound document. */
const mistaken: fc.Arbitrary<Project> = fc
  .record({
    start: fc.constantFrom(laundryAsFound, laundryProposed, multiwire),
    moves: fc.array(fc.tuple(fc.nat(), fc.nat()), { maxLength: 6 }),
  })
  .map(({ start, moves }) => {
    const drawing = start();
    for (const [which, where] of moves) moveAnEnd(drawing, which, where);
    return drawing.project();
  })
  .filter((project) => invariantProblems(project).length === 0);

function moveAnEnd(drawing: Drawing, which: number, where: number): void {
  const ends = Object.values(drawing.enclosures).flatMap((box) =>
    Object.keys(box.places).map((end) => [box, end] as const),
  );
  const found = ends[which % ends.length];
  if (found === undefined) return;
  const [box, end] = found;
  const places: Place["at"][] = [
    { kind: "loose" },
    { kind: "capped" },
    { kind: "bond" },
    ...Object.values(box.splices).map(({ id }) => ({ kind: "splice", splice: id }) as const),
    ...Object.values(box.devices).flatMap((device) =>
      terminalsOf(device).map(
        ({ name }) => ({ kind: "terminal", device: device.id, terminal: name, hole: 1 }) as const,
      ),
    ),
  ];
  const at = places[where % places.length];
  if (at !== undefined) box.places[end as EndKey] = { at };
}

const keysOf = (project: Project): readonly string[] => {
  const { findings, couldNotTell } = checkDocument(project);
  return [...findings, ...couldNotTell].map(({ key }) => key).sort();
};

const withInstallation = (project: Project, asFound: Installation): Project => ({ ...project, asFound });

const mapValues = <T>(table: Readonly<Record<string, T>>, change: (one: T) => T): Record<string, T> =>
  Object.fromEntries(Object.entries(table).map(([key, one]) => [key, change(one)]));

test("the order in which things were drawn changes nothing", () => {
  const turned = <T>(table: Readonly<Record<string, T>>): Record<string, T> =>
    Object.fromEntries(Object.entries(table).toReversed());
  fc.assert(
    fc.property(mistaken, (project) => {
      const enclosures = mapValues(turned(project.asFound.enclosures), (box) => ({
        ...box,
        devices: turned(box.devices),
        splices: turned(box.splices),
        jumpers: turned(box.jumpers),
        places: turned(box.places),
      }));
      const cables = turned(project.asFound.cables);
      expect(checkDocument(withInstallation(project, { ...project.asFound, enclosures, cables }))).toEqual(
        checkDocument(project),
      );
    }),
    { numRuns: 60 },
  );
});

test("what things are called changes the words alone", () => {
  const called = <T extends { readonly name: string }>(one: T): T => ({
    ...one,
    name: `the ${one.name.toLowerCase()}`,
  });
  fc.assert(
    fc.property(mistaken, (project) => {
      const enclosures = mapValues(project.asFound.enclosures, (box) => ({
        ...called(box),
        devices: mapValues(box.devices, called),
        splices: mapValues(box.splices, called),
        jumpers: mapValues(box.jumpers, called),
      }));
      const cables = mapValues(project.asFound.cables, called);
      expect(keysOf(withInstallation(project, { ...project.asFound, enclosures, cables }))).toEqual(keysOf(project));
    }),
    { numRuns: 60 },
  );
});

/** The rules that are about colours, and nothing else; on the ground bar of a panel a white is left alone. */
const ABOUT_COLOURS = /^(white-hot-unmarked|white-as-switched-return|coloured-as-neutral|insulated-as-ground)\|/;

test("the colours of conductors change no finding but those about colours", () => {
  const notOfColours = (project: Project) => keysOf(project).filter((key) => !ABOUT_COLOURS.test(key));
  fc.assert(
    fc.property(mistaken, (project) => {
      const cables = mapValues(project.asFound.cables, (cable) => ({
        ...cable,
        conductors: mapValues(cable.conductors, (one) => ({ ...one, colour: "red" as const })),
      }));
      expect(notOfColours(withInstallation(project, { ...project.asFound, cables }))).toEqual(notOfColours(project));
    }),
    { numRuns: 60 },
  );
});

test("which end of a cable was drawn first changes no finding", () => {
  const turnEnd = (key: string): string => {
    const parsed = parseEnd(key);
    return parsed?.of === "cable" ? `${parsed.cable}.${parsed.conductor}.${parsed.side === "a" ? "b" : "a"}` : key;
  };
  fc.assert(
    fc.property(mistaken, (project) => {
      const enclosures = mapValues(project.asFound.enclosures, (box) => ({
        ...box,
        places: Object.fromEntries(Object.entries(box.places).map(([key, place]) => [turnEnd(key), place])),
      }));
      const cables = mapValues(project.asFound.cables, (cable: Cable) => ({
        ...cable,
        sides: { a: cable.sides.b, b: cable.sides.a },
      }));
      // The key of an end names the side that was drawn first.
      const turned = keysOf(project).map((key) => key.replace(/(?<=\|end:)[^|]+/g, (end) => turnEnd(end)));
      expect(keysOf(withInstallation(project, { ...project.asFound, enclosures, cables }))).toEqual([...turned].sort());
    }),
    { numRuns: 60 },
  );
});

test("a cable more never lowers the fill of a box, and a jumper more leaves it as it is", () => {
  const items = ["nm-12-2-g", "nm-14-3-g", "nm-10-2-g", "nm-14-2", "knob-tube-14"] as const;
  const totals = (drawing: Drawing): readonly number[] => {
    const installation = drawing.installation();
    return [2017, 2020, 2023].map((edition) => {
      const box = installation.enclosures["B1" as EnclosureId];
      if (box === undefined) throw new Error("No B1.");
      return fillLedger(installation, box, getEdition(edition as 2017 | 2020 | 2023)).total;
    });
  };
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...items), { maxLength: 6 }), (added) => {
      const drawing = laundryAsFound();
      let before = totals(drawing);
      for (const [index, item] of added.entries()) {
        const after = totals(drawing.cable(`N${index}`, item, "B1", "country"));
        for (const [at, total] of after.entries()) expect(total).toBeGreaterThan(before[at] ?? 0);
        before = after;
      }
      expect(totals(drawing.jumper("extra", "B1", "X", "Y"))).toEqual(before);
    }),
    { numRuns: 40 },
  );
});

test("a box that nothing joins to the rest changes nothing there", () => {
  fc.assert(
    fc.property(fc.constantFrom(laundryAsFound, laundryProposed, multiwire), (start) => {
      const alone = keysOf(start().project());
      const drawing = start().box("FAR", 4).cable("F1", "nm-12-2-g", "FAR", "country");
      expect(keysOf(drawing.project())).toEqual([...alone, "box-overfull|enclosure:FAR"].sort());
    }),
    { numRuns: 3 },
  );
});
