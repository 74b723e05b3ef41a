import type {
  Act,
  Energised,
  LeadPlace,
  NamedOutlet,
  Operable,
  Operated,
} from "../../../shared-model/answers/energised.ts";
import type { DeviceId } from "../../../shared-model/model/ids.ts";
import type { Reading } from "../../../shared-model/model/project.ts";
import { terminalKey } from "../../../shared-model/queries/landings.ts";
import { preferencesStore } from "../preferences-store.ts";
import type { AnswerAbout, LogLine } from "./energise-store.ts";
import { wording } from "./words.ts";

let serial = 0;

/** A number for each line of the log, in the order of time. */
export const nextLogSerial = (): number => ++serial;

type Read = Pick<Reading, "instrument" | "points" | "value" | "unit">;

/** A line of the log that can be kept: what was read or done, in which setting, when, and that it was computed. */
export function evidenceLine(
  title: string,
  value: string,
  read: Read,
  { operables }: Pick<Energised, "operables">,
  { state, setting }: Pick<AnswerAbout, "state" | "setting">,
): LogLine {
  const at = Date.now();
  const by = preferencesStore.get().name;
  return {
    serial: nextLogSerial(),
    at,
    title,
    value,
    setting: settingWords(setting, operables),
    reading: {
      ...read,
      state,
      arrangement: {
        off: [...setting.off, ...setting.tripped],
        switches: switchWords(operables),
        ...(setting.idle.length > 0 && { idle: setting.idle }),
      },
      computed: true,
      takenAt: new Date(at).toISOString(),
      ...(by !== "" && { by }),
    },
  };
}

/** What does not stand as it is drawn, on and in use: "Q14 off, R1b tripped, Freezer idle"; "all on, as drawn". */
function settingWords({ off, tripped, positions, idle }: Operated, operables: readonly Operable[]): string {
  const said = operables.flatMap((one): readonly string[] => {
    if (one.kind === "load") return idle.includes(one.item) ? [wording.notInUse2(one.name)] : [];
    if (one.kind === "switch") {
      const position = positions[one.handle] ?? 0;
      return position === 0 ? [] : [`${one.name} ${one.positions[position] ?? ""}`];
    }
    if (tripped.includes(one.device)) return [wording.tripped(one.name)];
    return off.includes(one.device) ? [wording.off(one.name)] : [];
  });
  return said.length === 0 ? wording.allOnAsDrawn : said.join(", ");
}

/** How switches stand of which not every handle stands as drawn: "off"; "off; on" of two handles, by their names. */
function switchWords(operables: readonly Operable[]): Readonly<Record<DeviceId, string>> {
  const switches = operables
    .filter((one) => one.kind === "switch")
    .sort((p, q) => (p.handle < q.handle ? -1 : p.handle > q.handle ? 1 : 0));
  const found: Record<DeviceId, string> = {};
  for (const { device, position } of switches) {
    if (position === 0) continue;
    const own = switches.filter((one) => one.device === device);
    found[device] = own.map((one) => one.positions[one.position] ?? "").join("; ");
  }
  return found;
}

/** A file takes so many letters of a value. */
const MOST_LETTERS = 200;

/** What was done and what followed, as a reading: "R1b opened; went dark: R1b, R2; stayed on: L1". */
export function readOfAct(act: Act, value: string, { act: done }: Pick<Energised, "act">): Read {
  // Why it stays open, or is closed and nothing comes on.
  const why = act.kind === "reset" && done?.cameOn.length === 0 ? done.devices[0]?.why.replace(/\.$/, "") : undefined;
  const lists = [
    why ?? "",
    named(wording.wentDark, done?.wentDark),
    named(wording.cameOn, done?.cameOn),
    named(wording.offButLiveToGround, done?.offButLive),
    named(wording.stayedOn, done?.stayedOn),
  ];
  return {
    instrument: act.kind,
    points: ["outlet" in act ? act.outlet : act.device],
    value: shortened([value, ...lists.filter(Boolean)].join("; ")),
  };
}

const named = (words: string, list: readonly NamedOutlet[] = []): string =>
  list.length === 0 ? "" : `${words}: ${[...new Set(list.map(({ name }) => name))].join(", ")}`;

const shortened = (text: string): string =>
  text.length <= MOST_LETTERS ? text : wording.andMore(text.slice(0, MOST_LETTERS - 9)).slice(0, MOST_LETTERS);

/** How a place is written in a reading. */
export function pointOf(place: LeadPlace): string {
  switch (place.kind) {
    case "device":
      return terminalKey(place.device, place.node as never);
    case "end":
      return place.end;
    case "splice":
      return place.splice;
    case "bond":
      return place.enclosure;
    case "panel":
      return `${place.panel}.${place.node}`;
    case "earth":
      return "earth";
  }
}
