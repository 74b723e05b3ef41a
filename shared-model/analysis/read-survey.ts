import { failed, problem, type Result } from "../lib/result.ts";
import type { Box } from "../model/enclosure.ts";
import { type CableId, type ConductorKey, cableEnd, type DeviceId, type OutletKey } from "../model/ids.ts";
import type { Project, Reading } from "../model/project.ts";
import {
  SURVEY_ARRANGEMENTS,
  SURVEY_INSTRUMENTS,
  SURVEY_ITEM_KINDS,
  SURVEY_LAMPS,
  type SurveyedReading,
  type SurveyFacts,
  type SurveyItem,
  type SurveyKnown,
  type SurveyPoint,
  type SurveyTest,
} from "../model/survey.ts";
import { type CableIn, cablesInto } from "../queries/cables-into.ts";
import { JsonReader, shown } from "../solver/circuit/json-reader.ts";
import { Named } from "../solver/circuit/named-items.ts";
import { wording } from "./read-survey-words.ts";

type Taken = Omit<Reading, "id" | "order">;

const OF_FILE = ["by", "takenAt", "facts", "readings"] as const;
const OF_FACTS = ["groups", "switchesHere", "lamps", "referenceProved", "known"] as const;
const OF_KNOWN = ["cable", "leadsTo", "how"] as const;
const OF_ITEM = ["name", "kind", "lamp", "switches"] as const;
const OF_READING = [
  ...["arrangement", "instrument", "cable", "pair", "between", "joined", "works", "current", "testLamp", "feedAtLight"],
  ...["breaker", "wentDead", "value", "switches", "nothingPlugged", "off", "by", "takenAt", "remark"],
] as const;
type Fields = Partial<Record<string, unknown>>;

/** Letters that a document takes of each. */
const MOST = { by: 100, takenAt: 40, remark: 500, referenceProved: 200, how: 200, name: 80 } as const;

/**
 * Reads facts and readings of a survey from parsed JSON, for one box as found. Cables, outlets, switches and breakers go by
 * id or by a name that only one has, wires by colour or key. Every problem is told with its place.
 */
export function readSurvey(input: unknown, project: Project, box: Box): Result<readonly Taken[]> {
  const reader = new SurveyReader(project, box);
  const taken = reader.read(input);
  return reader.problems.length === 0 ? { ok: true, value: taken } : failed(...reader.problems);
}

class SurveyReader extends JsonReader {
  private readonly box: Box;
  private readonly cables: readonly CableIn[];
  private readonly named: Named;
  private facts: SurveyFacts = {};

  constructor({ asFound }: Project, box: Box) {
    super();
    this.box = box;
    this.cables = cablesInto(asFound.cables, box.id);
    this.named = new Named(asFound);
  }

  read(input: unknown): readonly Taken[] {
    const it = this.record(input, "", OF_FILE);
    const who = this.who(it, "");
    const told: Taken[] = [];
    if (it.facts !== undefined) {
      this.facts = this.readFacts(it.facts, "/facts");
      told.push({
        instrument: "by-eye",
        points: [this.box.id],
        value: "facts",
        state: "as-found",
        ...who,
        survey: { box: this.box.id, test: { kind: "facts", facts: this.facts } },
      });
    }
    if (it.readings === undefined && it.facts === undefined && this.problems.length === 0)
      this.problems.push(problem("missing", "/readings", wording.giveReadings));
    const readings = this.list(it.readings, "/readings").flatMap(([item, path]) => this.reading(item, path, who) ?? []);
    return [...told, ...readings];
  }

  private readFacts(input: unknown, path: string): SurveyFacts {
    const it = this.record(input, path, OF_FACTS);
    const switchesHere = it.switchesHere;
    if (
      switchesHere !== undefined &&
      !(Number.isInteger(switchesHere) && (switchesHere as number) >= 0 && (switchesHere as number) <= 100)
    )
      this.refuse("not-a-count", `${path}/switchesHere`, wording.giveCount(shown(switchesHere)));
    const reference = this.words(it.referenceProved, `${path}/referenceProved`, MOST.referenceProved);
    const groups = this.list(it.groups, `${path}/groups`).map(([group, at]) =>
      this.list(group, at).flatMap(([item, place]) => this.item(item, place) ?? []),
    );
    groups.forEach((group, index) => {
      if (group.length === 0) this.refuse("empty-group", `${path}/groups/${index}`, wording.nameGroup);
    });
    const ids = new Set(groups.flat().map(({ id }) => id));
    if (ids.size < groups.flat().length) this.refuse("listed-twice", `${path}/groups`, wording.listedTwice);
    const lamps = Object.entries(it.lamps === undefined ? {} : this.table(it.lamps, `${path}/lamps`)).flatMap(
      ([name, value]) => {
        const lamp = this.oneOf(value, `${path}/lamps/${name}`, SURVEY_LAMPS);
        const item = this.itemId(name, `${path}/lamps/${name}`);
        return lamp === undefined || item === undefined ? [] : [{ item, lamp }];
      },
    );
    if (it.groups !== undefined) this.facts = { groups };
    const known = this.list(it.known, `${path}/known`).flatMap(([one, at]) => this.known(one, at) ?? []);
    return {
      ...(known.length > 0 && { known }),
      ...(it.groups !== undefined && { groups }),
      ...(typeof switchesHere === "number" && { switchesHere }),
      ...(lamps.length > 0 && { lamps }),
      ...(reference !== undefined && { referenceProved: reference }),
    };
  }

  /** Where a person knows that a cable leads, and how it is known. */
  private known(input: unknown, path: string): SurveyKnown | undefined {
    const it = this.record(input, path, OF_KNOWN);
    const cable = this.cable(it.cable, `${path}/cable`)?.cable.id;
    const how = this.words(it.how, `${path}/how`, MOST.how);
    if (how === undefined || how.trim() === "") this.refuse("missing", `${path}/how`, wording.sayHow);
    const items =
      it.leadsTo === "panel"
        ? []
        : this.list(it.leadsTo, `${path}/leadsTo`).flatMap(([one, at]) =>
            typeof one === "string" ? (this.itemId(one, at) ?? []) : (this.text(one, at) ?? []),
          );
    if (it.leadsTo !== "panel" && items.length === 0) this.refuse("missing", `${path}/leadsTo`, wording.giveLeadsTo);
    if (cable === undefined || how === undefined) return undefined;
    return { cable, leadsTo: it.leadsTo === "panel" ? "panel" : items, how };
  }

  /** An outlet of the drawing by name, or a thing that is not drawn with what it is. */
  private item(input: unknown, path: string): SurveyItem | undefined {
    if (typeof input === "string") {
      const found = this.only(this.named.outlets(input), input, path, wording.noOutlet);
      return found && { id: found.key, name: found.name, kind: found.receptacle ? "outlet" : "light" };
    }
    const it = this.record(input, path, OF_ITEM);
    const name = this.words(it.name, `${path}/name`, MOST.name);
    const kind = this.oneOf(it.kind, `${path}/kind`, SURVEY_ITEM_KINDS);
    if (name === undefined || name.trim() === "") {
      this.refuse("missing", `${path}/name`, wording.sayName);
      return undefined;
    }
    const lamp = it.lamp === undefined ? undefined : this.oneOf(it.lamp, `${path}/lamp`, SURVEY_LAMPS);
    const switches = this.list(it.switches, `${path}/switches`).flatMap(([one, at]) => this.switchName(one, at) ?? []);
    if (kind === undefined) return undefined;
    const drawn = this.named.outlets(name);
    return {
      id: drawn.length === 1 ? (drawn[0]?.key as string) : name,
      name,
      kind,
      ...(lamp !== undefined && { lamp }),
      ...(switches.length > 0 && { switches }),
    };
  }

  private reading(input: unknown, path: string, who: Pick<Taken, "by" | "takenAt">): Taken | undefined {
    const before = this.problems.length;
    const it: Fields = this.record(input, path, OF_READING);
    if (this.problems.length > before) return undefined;
    const arrangement = this.oneOf(it.arrangement, `${path}/arrangement`, SURVEY_ARRANGEMENTS);
    const instrument = this.oneOf(it.instrument, `${path}/instrument`, SURVEY_INSTRUMENTS);
    const found = this.test(it, path);
    const joined = this.list(it.joined, `${path}/joined`).flatMap(([one, at]) => this.cable(one, at)?.cable.id ?? []);
    const switches = Object.entries(
      it.switches === undefined ? {} : this.table(it.switches, `${path}/switches`),
    ).flatMap(([name, value]) => {
      const at = `${path}/switches/${name}`;
      const position = this.oneOf(value, at, ["on", "off"]);
      const id = this.switchName(name, at);
      return position === undefined || id === undefined ? [] : [{ switch: id, on: position === "on" }];
    });
    const off = this.list(it.off, `${path}/off`).flatMap(([one, at]) => this.breaker(one, at) ?? []);
    if (it.nothingPlugged !== undefined && typeof it.nothingPlugged !== "boolean")
      this.refuse("not-a-flag", `${path}/nothingPlugged`, wording.giveFlag(shown(it.nothingPlugged)));
    const own = this.who(it, path);
    const remark = this.words(it.remark, `${path}/remark`, MOST.remark);
    if (found?.test.kind === "works" && joined.length < 2) this.refuse("missing", `${path}/joined`, wording.nameJoined);
    if (this.problems.length > before || arrangement === undefined || instrument === undefined || found === undefined)
      return undefined;
    const { test, value, unit, points } = found;
    const survey: SurveyedReading = {
      box: this.box.id,
      arrangement,
      test,
      ...(joined.length > 0 && { joined }),
      ...(switches.length > 0 && { switches }),
      ...(off.length > 0 && { off }),
      ...(typeof it.nothingPlugged === "boolean" && { nothingPlugged: it.nothingPlugged }),
    };
    return {
      instrument,
      points,
      value,
      ...(unit !== undefined && { unit }),
      state: "as-found",
      ...who,
      ...own,
      ...(remark !== undefined && { remark }),
      survey,
    };
  }

  /** What was read, by the one field that says so. */
  private test(
    it: Fields,
    path: string,
  ):
    | { readonly test: SurveyTest; readonly value: string; readonly unit?: string; readonly points: readonly string[] }
    | undefined {
    const asked = KINDS.filter((field) => it[field] !== undefined);
    const [kind] = asked;
    if (asked.length !== 1 || kind === undefined) {
      this.refuse("not-one-test", path, wording.giveKind(KINDS.map((one) => `"${one}"`).join(", ")));
      return undefined;
    }
    if (kind === "works") {
      const items = this.list(it.works, `${path}/works`).flatMap(([one, at]) =>
        typeof one === "string" ? (this.itemId(one, at) ?? []) : (this.text(one, at) ?? []),
      );
      return { test: { kind, items }, value: String(items.length), points: [this.box.id] };
    }
    if (kind === "between") {
      const ends = this.list(it.between, `${path}/between`).map(([one, at]) => {
        const [cable, wire] = this.list(one, at);
        return this.point(cable?.[0], wire?.[0], at);
      });
      const [from, to] = ends;
      if (ends.length !== 2) this.refuse("not-two", `${path}/between`, wording.giveWires);
      const value = this.figure(it, path);
      if (from === undefined || to === undefined || value === undefined) return undefined;
      return { test: { kind: "pair", from, to }, ...value, points: [from, to].map((one) => this.pointKey(one)) };
    }
    const cable = this.cable(it.cable, `${path}/cable`);
    if (cable === undefined) return undefined;
    const { id } = cable.cable;
    switch (kind) {
      case "pair": {
        const [one, other, ...more] = typeof it.pair === "string" ? it.pair.split("-") : [];
        if (one === undefined || other === undefined || more.length > 0) {
          this.refuse("not-a-pair", `${path}/pair`, wording.giveWirePair(shown(it.pair)));
          return undefined;
        }
        const [from, to] = [one, other].map((wire) => this.point(id, wire, `${path}/pair`));
        const value = this.figure(it, path);
        if (from === undefined || to === undefined || value === undefined) return undefined;
        return { test: { kind: "pair", from, to }, ...value, points: [from, to].map((point) => this.pointKey(point)) };
      }
      case "current": {
        const point = this.point(id, it.current, `${path}/current`);
        const value = this.figure(it, path, "A");
        if (point === undefined || point === "ground" || value === undefined) return undefined;
        return { test: { kind: "current", ...point }, ...value, points: [this.pointKey(point)] };
      }
      case "testLamp": {
        const glows = this.flag(it.testLamp, `${path}/testLamp`, wording.flagGlowed);
        const value = this.figure(it, path, "V");
        if (glows === undefined || value === undefined) return undefined;
        return { test: { kind: "test-lamp", cable: id, lightGlows: glows }, ...value, points: [id] };
      }
      case "feedAtLight": {
        const feedThere = this.flag(it.feedAtLight, `${path}/feedAtLight`, wording.flagFeedThere);
        return feedThere === undefined
          ? undefined
          : { test: { kind: "look", cable: id, feedThere }, value: feedThere ? "yes" : "no", points: [id] };
      }
      case "breaker": {
        const breaker = this.breaker(it.breaker, `${path}/breaker`);
        const wentDead = this.flag(it.wentDead, `${path}/wentDead`, wording.flagWentDead);
        return breaker === undefined || wentDead === undefined
          ? undefined
          : { test: { kind, cable: id, breaker, wentDead }, value: wentDead ? "yes" : "no", points: [id] };
      }
    }
  }

  /** A figure with its unit, or "open" with the power off. */
  private figure(
    it: Fields,
    path: string,
    unit?: "V" | "A",
  ): { readonly value: string; readonly unit?: string } | undefined {
    const isOhms = unit === undefined && it.arrangement === "A1";
    if (isOhms && it.value === "open") return { value: "open" };
    if (typeof it.value === "number" && Number.isFinite(it.value) && Math.abs(it.value) < 1e9)
      return { value: String(Number(it.value.toFixed(3))), unit: unit ?? (isOhms ? "ohm" : "V") };
    const ask = isOhms ? wording.giveOhms : unit === "A" ? wording.giveAmperes : wording.giveVolts;
    this.refuse("not-a-figure", `${path}/value`, ask(shown(it.value)));
    return undefined;
  }

  private point(cable: unknown, wire: unknown, at: string): SurveyPoint | undefined {
    if (wire === "ground") return "ground";
    const found = this.cable(cable, at);
    if (found === undefined) return undefined;
    const { id, name, conductors } = found.cable;
    const keys = Object.entries(conductors).flatMap(([key, { colour }]) =>
      key === wire || colour === wire ? [key] : [],
    );
    if (keys.length === 1) return { cable: id, conductor: keys[0] as ConductorKey };
    const all = Object.values(conductors).map(({ colour }) => `"${colour}"`);
    this.refuse("no-such-wire", at, wording.noOneWire(name, shown(wire), all.join(", ")));
    return undefined;
  }

  private pointKey(point: SurveyPoint): string {
    if (point === "ground") return this.box.id;
    const side = this.cables.find(({ cable }) => cable.id === point.cable)?.side ?? "a";
    return cableEnd(point.cable, point.conductor, side);
  }

  private cable(input: unknown, at: string): CableIn | undefined {
    const text = this.text(input, at);
    if (text === undefined) return undefined;
    const unique = [...new Map(this.cables.map((one) => [one.cable.id, one])).values()];
    const byId = unique.filter(({ cable }) => cable.id === (text as CableId));
    const found = byId.length > 0 ? byId : unique.filter(({ cable }) => cable.name === text);
    if (found.length === 1) return found[0];
    const names = unique.map(({ cable }) => cable.name).join(", ");
    this.refuse("no-such-cable", at, wording.noOneCable(this.box.name, shown(text), names));
    return undefined;
  }

  /** An outlet or light by id or name; what nobody drew or listed stays as it is written. */
  private itemId(text: string, at: string): string | undefined {
    const listed = this.facts.groups?.flat().find(({ id, name }) => id === text || name === text);
    if (listed !== undefined) return listed.id;
    const found: readonly { readonly key: OutletKey }[] = this.named.outlets(text);
    if (found.length <= 1) return found[0]?.key ?? text;
    this.refuse("ambiguous-name", at, wording.severalCalled(found.length, shown(text)));
    return undefined;
  }

  /** A switch of the drawing by its id, or a name of one that is not drawn. */
  private switchName(input: unknown, at: string): string | undefined {
    const text = this.text(input, at);
    if (text === undefined) return undefined;
    const found = this.named.devices(text);
    if (found.length <= 1) return found[0]?.id ?? text;
    this.refuse("ambiguous-name", at, wording.severalCalled(found.length, shown(text)));
    return undefined;
  }

  private breaker(input: unknown, at: string): DeviceId | undefined {
    const text = this.text(input, at);
    return text === undefined ? undefined : this.only(this.named.devices(text), text, at, wording.noBreaker)?.id;
  }

  private only<T>(found: readonly T[], text: string, at: string, none: (text: string) => string): T | undefined {
    if (found.length === 1) return found[0];
    if (found.length === 0) this.refuse("unknown-item", at, none(shown(text)));
    else this.refuse("ambiguous-name", at, wording.severalCalled(found.length, shown(text)));
    return undefined;
  }

  private flag(input: unknown, at: string, ask: (is: string) => string): boolean | undefined {
    if (typeof input === "boolean") return input;
    this.refuse("not-a-flag", at, ask(shown(input)));
    return undefined;
  }

  private table(input: unknown, at: string): Readonly<Record<string, unknown>> {
    if (typeof input === "object" && input !== null && !Array.isArray(input)) return input as Record<string, unknown>;
    this.refuse("not-an-object", at, wording.giveObject(shown(input)));
    return {};
  }

  private who(it: Fields, path: string): Pick<Taken, "by" | "takenAt"> {
    const by = this.words(it.by, `${path}/by`, MOST.by);
    const takenAt = this.words(it.takenAt, `${path}/takenAt`, MOST.takenAt);
    return { ...(by !== undefined && { by }), ...(takenAt !== undefined && { takenAt }) };
  }

  private words(input: unknown, at: string, most: number): string | undefined {
    if (input === undefined) return undefined;
    if (typeof input === "string" && input.length <= most && !/\p{Surrogate}|\p{Cc}/u.test(input)) return input;
    this.refuse("not-a-text", at, wording.giveText(most, shown(input)));
    return undefined;
  }
}

const KINDS = ["pair", "between", "works", "current", "testLamp", "feedAtLight", "breaker"] as const;
