import type { ScopeItem, StepReading } from "../../answers/scope.ts";
import { findDeviceType } from "../../catalog/device-types.ts";
import { listed } from "../../rules/rule-parts.ts";
import { handlesOf } from "../../solver/circuit/handles.ts";
import { type Commissioned, itemOf, itemsOf, namesOf } from "./commissioned.ts";
import { pairAt, voltReading, voltWords } from "./commissioning-words.ts";
import type { StepDraft } from "./step-draft.ts";
import { type Arrangement, HEATER_OHM } from "./test-bench.ts";
import { POSITION_WORDS, OUTLET_WORDS as wording } from "./test-words.ts";

/** CM4: everything set, lamps on, nothing running at receptacles. */
export function everythingOn(all: Commissioned): readonly StepDraft[] {
  if (all.outlets.length === 0) return [];
  // A breaker is on since its circuit is.
  const names = all.guards.flatMap(({ device, isBreaker }) => (isBreaker ? [] : [device.name]));
  const readings = all.readings(all.lit, all.outlets, true);
  const open = all.outlets.filter(({ key }) =>
    readings.some(({ point, expected }) => point === key && isOpenGround(expected)),
  );
  return [
    all.draft("CM4", all.key, {
      text: names.length === 0 ? wording.everything : wording.everythingReset(listed(names)),
      items: itemsOf(all.outlets),
      details: open.length === 0 ? [] : [wording.leaveButton(listed(namesOf(open)))],
      readings,
      ifNot: wording.badJoint,
      ...(open.length > 0 && { cautions: ["LIM3", "LIM4"] as const }),
    }),
  ];
}

const isOpenGround = (expected: StepReading["expected"]): boolean =>
  expected?.kind === "word" && expected.word === "open-ground";

/** CM5: each switch of the circuits in its other position. */
export function switches(all: Commissioned): readonly StepDraft[] {
  const before = new Set(all.onIn(all.lit).map(({ key }) => key));
  return all.work.section.enclosures.flatMap((box) =>
    Object.values(box.devices).flatMap((device) =>
      handlesOf(device).flatMap(({ handle }) => {
        const other: Arrangement = { ...all.lit, positions: new Map([[handle, 1]]) };
        const after = new Set(all.onIn(other).map(({ key }) => key));
        const turned = all.outlets.filter(({ key }) => before.has(key) !== after.has(key));
        if (turned.length === 0) return [];
        const read = (arrangement: Arrangement, at: keyof typeof POSITION_WORDS): readonly StepReading[] =>
          turned.flatMap((outlet) => {
            const { key, name } = outlet;
            const reading = all.bench.read(all.bench.run(arrangement).circuit, outlet);
            const what = wording.position(name, device.name, POSITION_WORDS[at]);
            return voltReading(`${key}:${at}`, what, reading?.hn, "hot-neutral", { point: key, name });
          });
        const [drawn = "on", moved = "off"] = findDeviceType(device.type)?.positions ?? [];
        return [
          all.draft("CM5", handle, {
            text: wording.positions(device.name, listed(namesOf(turned))),
            items: [itemOf(device), ...itemsOf(turned)],
            readings: [...read(all.lit, drawn), ...read(other, moved)],
            ifNot: wording.notFollowing,
          }),
        ];
      }),
    ),
  );
}

/** What a meter with one place after the point shows: V. */
const READ_FROM_V = 0.05;

/** CM11 and CM12: readings under load, and the worst drop among them. */
export function loadedReadings(all: Commissioned): readonly StepDraft[] {
  const found = all.outlets.flatMap((outlet) => {
    const reading = outlet.receptacle ? all.bench.loaded(outlet, all.quiet) : undefined;
    return reading === undefined ? [] : [{ outlet, reading, volts: reading.hn.volts }];
  });
  const [first] = found;
  if (first === undefined) return [];
  const worst = found.reduce((least, one) => (one.volts < least.volts ? one : least), first);
  const outlets = found.map(({ outlet }) => outlet);
  const supply = all.bench.supplyV;
  const drop = supply - worst.volts;
  const { key, name } = worst.outlet;
  return [
    all.draft("CM11", all.key, {
      text: wording.heater(HEATER_OHM, listed(namesOf(outlets))),
      items: itemsOf(outlets),
      readings: found.flatMap(({ outlet, reading }) => {
        const at = { point: outlet.key, name: outlet.name };
        const read = (pair: "hn" | "ng", test: "hot-neutral" | "neutral-ground"): readonly StepReading[] => {
          const brief = pairAt(outlet.name, pair);
          return voltReading(`${outlet.key}:loaded-${pair}`, wording.loaded(brief), reading[pair], test, {
            ...at,
            brief,
          });
        };
        return [...read("hn", "hot-neutral"), ...read("ng", "neutral-ground")];
      }),
      // Without a ground at an outlet nothing is read to it, joined or not.
      ifNot: found.some(({ reading }) => Math.abs(reading.ng?.volts ?? 0) >= READ_FROM_V)
        ? wording.joined
        : wording.farAbove,
    }),
    all.draft("CM12", all.key, {
      text: wording.dropAt(name, (worst.volts / HEATER_OHM).toFixed(1)),
      items: itemsOf([worst.outlet]),
      readings: [
        {
          id: `${key}:drop`,
          what: wording.drop(name),
          point: key,
          name,
          expected: { kind: "figure", value: Number(drop.toFixed(2)), within: 1, unit: "V" },
          expect: wording.dropOf(voltWords(drop), ((100 * drop) / supply).toFixed(1), supply),
        },
      ],
      ifNot: wording.farMore,
    }),
  ];
}

/** CM13: each breaker off, and everything on it is dead in the boxes that were opened. */
export function breakersOff(all: Commissioned): readonly StepDraft[] {
  const { breakers, section, opened } = all.work;
  const boxes = section.enclosures.filter(({ id }) => opened.has(id));
  const items = boxes.map(({ id, name }): ScopeItem => ({ kind: "enclosure", id, name }));
  return breakers.map(({ device, name }) => {
    const { circuit } = all.bench.run({ off: new Set([device]) });
    const stay = all.on(circuit);
    const dark = all.outlets.filter((outlet) => !stay.includes(outlet));
    return all.draft("CM13", device, {
      text:
        boxes.length === 0
          ? wording.breakerOffAll(name)
          : wording.breakerOff(name, listed(boxes.map((box) => box.name))),
      items: [{ kind: "device", id: device, name }, ...items],
      details: stay.length === 0 ? [] : [wording.staysOn(namesOf(stay).join(", "))],
      readings: dark.map((outlet) => ({
        id: `${outlet.key}:dead`,
        what: outlet.name,
        point: outlet.key,
        name: outlet.name,
        test: "dead",
        expected: { kind: "word", word: "dead" },
        expect: wording.dead,
      })),
      ifNot: wording.secondCircuit,
      cautions: ["WRK2"],
    });
  });
}
