import type { StepReading } from "../../answers/scope.ts";
import { findDeviceType } from "../../catalog/device-types.ts";
import type { Device } from "../../model/device.ts";
import type { DeviceId, LoadId } from "../../model/ids.ts";
import type { PlacedOutlet } from "../../queries/outlets-of.ts";
import { listed } from "../../rules/rule-parts.ts";
import { type Commissioned, type Guard, itemOf, itemsOf, namesOf, UNTOLD } from "./commissioned.ts";
import { darkReading, voltReading } from "./commissioning-words.ts";
import type { StepDraft } from "./step-draft.ts";
import { HEATER_OHM, type TestResult } from "./test-bench.ts";
import { LINE_PAIRS, GUARD_WORDS as wording } from "./test-words.ts";

/** CM1 and CM2. New devices are tripped as they are shipped: what is behind them is dead, what is on LINE is not. */
export function beforeReset(all: Commissioned): readonly StepDraft[] {
  const shipped = all.shipped();
  if (shipped.length === 0) return [];
  const arrangement = { ...all.lit, tripped: new Set(shipped.map(({ id }) => id)) };
  const stay = all.onIn(arrangement);
  const own = new Set(all.guards.flatMap(({ device, isNew, feedsOn }) => (isNew && !feedsOn ? [device.id] : [])));
  const dark = all.outlets.filter((outlet) => !stay.includes(outlet));
  const behind = dark.filter(({ device }) => !own.has(device.id));
  const alone = [...dark.filter(({ device }) => own.has(device.id)), ...stay];
  const first = all.draft("CM1", all.key, {
    text: wording.beforeReset(listed(shipped.map(({ name }) => name)), listed(namesOf(behind))),
    items: itemsOf(behind),
    readings: all.readings(arrangement, behind),
    ifNot: wording.crossed,
  });
  const second = all.draft("CM2", all.key, {
    text: wording.look(listed(namesOf(alone))),
    items: itemsOf(alone),
    readings: all.readings(arrangement, alone),
    ifNot: wording.wrongSide,
  });
  return [...(behind.length === 0 ? [] : [first]), ...(alone.length === 0 ? [] : [second])];
}

/** CM3: what arrives at the LINE terminals of each new device. */
export const lineTerminals = (all: Commissioned): readonly StepDraft[] =>
  all.shipped().map((device) => lineOf(all, device));

function lineOf(all: Commissioned, device: Device): StepDraft {
  const { bench } = all;
  const { circuit } = bench.run({ ...all.lit, tripped: new Set(all.shipped().map(({ id }) => id)) });
  const type = findDeviceType(device.type);
  const [hot] = type?.sensing?.line.hot ?? [];
  const neutral = type?.sensing?.line.neutral;
  const ground = type?.terminals.find(({ purpose }) => purpose === "ground")?.name;
  const pairs = [
    [LINE_PAIRS.hotNeutral, hot, neutral, "hot-neutral"],
    [LINE_PAIRS.hotGround, hot, ground, "hot-ground"],
    [LINE_PAIRS.neutralGround, neutral, ground, "neutral-ground"],
  ] as const;
  return all.draft("CM3", device.id, {
    text: wording.lineTerminals(device.name),
    items: [itemOf(device)],
    details: [wording.lineApart],
    readings: pairs.flatMap(([words, from, to, kind]) =>
      from === undefined || to === undefined
        ? []
        : voltReading(
            `${device.id}:${kind}`,
            wording.line(device.name, words),
            bench.volts(circuit, device.id, from, to),
            kind,
          ),
    ),
    ifNot: wording.notArriving,
    cautions: ["WRK5"],
  });
}

/** CM6, and CM7 of a device that feeds nothing on: TEST with everything in use, who goes dark and who must not. */
export const ownTests = (all: Commissioned): readonly StepDraft[] =>
  feedingFirst(all.guards).map(({ device, feedsOn }) => {
    const result = all.bench.ownTest(device.id, {});
    const before = all.onIn({});
    const dark = result === undefined ? [] : all.wentDark(before, result.circuit);
    const stay = before.filter((outlet) => !dark.includes(outlet));
    const what = wording.test(device.name);
    const at = { point: device.id, name: device.name };
    const reading = darkReading(`${device.id}:test`, what, "own-test", at, dark);
    return all.draft(feedsOn ? "CM6" : "CM7", device.id, {
      text: wording.running(what),
      items: [itemOf(device), ...itemsOf(before)],
      details: stay.length === 0 ? [] : [wording.staysOn(namesOf(stay).join(", "))],
      readings: [result?.isPlain === true ? reading : withoutExpected(reading)],
      ifNot: wording.staysLive,
    });
  });

/** As the tests are numbered. */
const feedingFirst = (guards: readonly Guard[]): readonly Guard[] =>
  [...guards].sort((p, q) => Number(q.feedsOn) - Number(p.feedsOn));

const withoutExpected = ({ expected: _none, ...reading }: StepReading): StepReading => ({ ...reading, expect: UNTOLD });

/** CM8 and CM9: it opens neither by what is used behind it nor by what runs beside it. */
export const holding = (all: Commissioned): readonly StepDraft[] =>
  all.guards.filter(({ feedsOn }) => feedsOn).flatMap((guard) => holdingOf(all, guard));

function holdingOf(all: Commissioned, { device, isBreaker }: Guard): readonly StepDraft[] {
  const dark = all.behind(device.id);
  const behind = dark.filter(({ receptacle }) => receptacle);
  const idle = new Set<LoadId | DeviceId>(all.bench.plugged().filter((load) => isPluggedAt(all, load, behind)));
  for (const { receptacle, device: own } of dark) if (!receptacle) idle.add(own.id);
  const loaded = all.draft("CM8", device.id, {
    text: (isBreaker ? wording.everythingElseByHandle : wording.everythingElse)(
      device.name,
      HEATER_OHM,
      listed(namesOf(behind)),
    ),
    items: [itemOf(device), ...itemsOf(behind)],
    readings: behind.map((outlet) => ({
      id: `${device.id}:heater:${outlet.key}`,
      what: wording.heater(device.name, outlet.name),
      expect: holdsWords(all.bench.heated(outlet, {}), device.id),
    })),
    ifNot: wording.tripsOnLoad,
    cautions: ["LIM5"],
  });
  const beside = all.draft("CM9", device.id, {
    text: (isBreaker ? wording.unplugByHandle : wording.unplug)(device.name),
    items: [itemOf(device)],
    readings: [
      {
        id: `${device.id}:beside`,
        what: wording.beside(device.name),
        expect: holdsWords(all.bench.run({ idle }), device.id),
      },
    ],
    ifNot: wording.tripsBeside,
    cautions: ["LIM5"],
  });
  return [...(behind.length === 0 ? [] : [loaded]), beside];
}

const holdsWords = ({ isPlain, opened }: TestResult, device: DeviceId): string =>
  !isPlain ? UNTOLD : opened.has(device) ? wording.trips : wording.holds;

function isPluggedAt({ work }: Commissioned, id: LoadId, outlets: readonly PlacedOutlet[]): boolean {
  const plug = work.section.installation.loads[id]?.plug;
  return outlets.some(({ key, device }) => plug === key || plug?.startsWith(`${device.id}/`) === true);
}

/** CM10: the button of a plug-in tester at every receptacle that some device answers for. */
export function buttons(all: Commissioned): readonly StepDraft[] {
  const before = all.onIn(all.lit);
  const pressed = all.outlets.flatMap((outlet) => {
    const result = outlet.receptacle ? all.bench.button(outlet, all.lit) : undefined;
    if (result === undefined || (result.opened.size === 0 && result.isPlain)) return [];
    const dark = all.wentDark(before, result.circuit);
    const at = { point: outlet.key, name: outlet.name };
    const reading = darkReading(`${outlet.key}:button`, wording.button(outlet.name), "plug-in-button", at, dark);
    const names = [...result.opened].map((id) => all.nameOf(id));
    const told = { ...reading, expect: wording.tripsAll(listed(names), reading.expect) };
    const byHandle = all.guards.some(({ device, isBreaker }) => isBreaker && result.opened.has(device.id));
    return [{ outlet, byHandle, reading: result.isPlain ? told : withoutExpected(reading) }];
  });
  if (pressed.length === 0) return [];
  const outlets = pressed.map(({ outlet }) => outlet);
  const isByHandle = pressed.some(({ byHandle }) => byHandle);
  return [
    all.draft("CM10", all.key, {
      text: (isByHandle ? wording.buttonsByHandle : wording.buttons)(listed(namesOf(outlets))),
      items: itemsOf(outlets),
      readings: pressed.map(({ reading }) => reading),
      ifNot: wording.nothingTrips,
      cautions: ["LIM4"],
    }),
  ];
}
