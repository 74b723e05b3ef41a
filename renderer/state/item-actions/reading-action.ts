import type { Device } from "../../../shared-model/model/device.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { EndKey, ReadingId } from "../../../shared-model/model/ids.ts";
import type { ReadingInstrument } from "../../../shared-model/model/project.ts";
import { nameOfEnd } from "../../../shared-model/queries/end-facts.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { terminalKey } from "../../../shared-model/queries/landings.ts";
import { nameOfTerminal, terminalsOf } from "../../../shared-model/queries/terminals-of.ts";
import { documentStore, shownInstallation } from "../document-store.ts";
import { mintId } from "../mint-id.ts";
import { lineFor, openPick, type PickLine } from "../pick-store.ts";
import { preferencesStore } from "../preferences-store.ts";
import { wording } from "./words.ts";

/** Where a lead is put: an end, a terminal ("d1.LINE_H") or an outlet. */
interface ReadingPoint {
  readonly point: string;
  readonly name: string;
}

export const INSTRUMENT_WORDS: Readonly<Record<ReadingInstrument, string>> = {
  meter: wording.meter,
  "low-impedance-meter": wording.lowImpedanceMeter,
  "plug-in-tester": wording.plugInTester,
  noncontact: wording.noncontactDetector,
  continuity: wording.continuityTester,
  insulation: wording.insulationTester,
  "own-test": wording.testOfTheDevice,
  reset: wording.resetOfTheDevice,
  "plug-in-button": wording.buttonOfAPlugInTester,
  leak: wording.leakTest,
  "clamp-meter": wording.clampMeter,
  "test-lamp": wording.testLamp,
  "by-eye": wording.lookedAtWithoutAnInstrument,
};

/** Asks with what a reading was taken, against which second point, and what it read; keeps it as evidence. */
export function recordReading(enclosure: Enclosure, first: ReadingPoint): void {
  openPick({
    title: wording.recordAReadingAt2(first.name),
    hint: wording.whatWasItTakenWith,
    lines: () =>
      (Object.keys(INSTRUMENT_WORDS) as ReadingInstrument[]).map((instrument) => ({
        key: instrument,
        title: INSTRUMENT_WORDS[instrument],
        run: () => chooseSecond(enclosure, instrument, first),
      })),
  });
}

function chooseSecond(enclosure: Enclosure, instrument: ReadingInstrument, first: ReadingPoint): void {
  const take = (points: readonly ReadingPoint[]): void => askValue(instrument, points);
  openPick({
    title: wording.at(INSTRUMENT_WORDS[instrument], first.name),
    hint: wording.againstWhat,
    lines: () => [
      { key: "one", title: wording.thisPointAlone, run: () => take([first]) },
      ...pointsIn(enclosure)
        .filter(({ point }) => point !== first.point)
        .map(
          (second): PickLine => ({
            key: second.point,
            title: wording.to(second.name),
            run: () => take([first, second]),
          }),
        ),
    ],
  });
}

function pointsIn(enclosure: Enclosure): readonly ReadingPoint[] {
  const installation = shownInstallation();
  const ends = Object.keys(enclosure.places) as EndKey[];
  return [
    ...ends.map((end) => ({ point: end, name: nameOfEnd(installation, enclosure, end) })),
    ...inOrder<Device>(enclosure.devices).flatMap((device) =>
      terminalsOf(device).map(({ name }) => ({
        point: terminalKey(device.id, name),
        name: nameOfTerminal(device, name),
      })),
    ),
  ];
}

/** Readings that most instruments give; any other is typed, with its unit. */
const USUAL = ["0 V", "120 V", "240 V", "open", "closed"] as const;

function askValue(instrument: ReadingInstrument, points: readonly ReadingPoint[]): void {
  const where = points.map(({ name }) => name).join(" to ");
  const line = (text: string): PickLine => {
    const [, number, unit] = /^(-?[\d.,]+)\s*([A-Za-zΩµ%]\S*)$/.exec(text) ?? [];
    const { state } = documentStore.get();
    const by = preferencesStore.get().name;
    return lineFor(wording.itRead(text), {
      command: "add-reading",
      args: {
        id: mintId<ReadingId>("m"),
        reading: {
          instrument,
          points: points.map(({ point }) => point),
          value: number ?? text,
          ...(unit !== undefined && { unit }),
          state,
          takenAt: new Date().toISOString(),
          ...(by !== "" && { by }),
        },
      },
    });
  };
  openPick({
    title: `${INSTRUMENT_WORDS[instrument]}, ${where}`,
    hint: wording.whatDidItReadTypeIt,
    lines: () => USUAL.map(line),
    typed: { label: wording.readingWithItsUnit, line: (text) => (text === "" ? undefined : line(text)) },
  });
}
