import { catalogue, type Part } from "../lib/catalogue.ts";
import { failed, type Result } from "../lib/result.ts";
import type { DeviceId, OutletKey } from "../model/ids.ts";
import type { Project, Reading } from "../model/project.ts";
import { JsonReader, shown } from "../solver/circuit/json-reader.ts";
import { Named } from "../solver/circuit/named-items.ts";

const wording = catalogue({
  giveSeen: "Give what was seen with each breaker off",
  sayDeadOrLive: 'Say of at least one outlet that it was "dead" or "live": what is not named was not looked at',
  unknown: "Nothing as found has this id or name: check it",
  severalCalledSo: (count: Part) => `${count} items are called so: give an id`,
  giveText: (most: Part, is: Part) => `Give a text of at most ${most} letters on one line; it is ${is}`,
});

type Taken = Omit<Reading, "id" | "order">;

const OF_FILE = ["by", "takenAt", "breakersOff"] as const;
const OF_ONE = ["breaker", "dead", "live"] as const;
/** Letters that a document takes of each. */
const MOST = { by: 100, takenAt: 40 } as const;

/**
 * Reads what was seen with one breaker off at a time from parsed JSON. Breakers and outlets go by id or by a name that only
 * one has; what is in neither list of a breaker was not looked at. Every problem is told with its place.
 */
export function readBreakersOff(input: unknown, project: Project): Result<readonly Taken[]> {
  const reader = new BreakersOffReader(project);
  const taken = reader.read(input);
  return reader.problems.length === 0 ? { ok: true, value: taken } : failed(...reader.problems);
}

class BreakersOffReader extends JsonReader {
  private readonly named: Named;

  constructor({ asFound }: Project) {
    super();
    this.named = new Named(asFound);
  }

  read(input: unknown): readonly Taken[] {
    const it = this.record(input, "", OF_FILE);
    const by = this.word(it.by, "/by", MOST.by);
    const takenAt = this.word(it.takenAt, "/takenAt", MOST.takenAt);
    const list = this.list(it.breakersOff, "/breakersOff");
    if (list.length === 0) this.refuse("missing", "/breakersOff", wording.giveSeen);
    return list.flatMap(([one, path]) => {
      const fields = this.record(one, path, OF_ONE);
      const breaker = this.only(
        this.named.devices(this.text(fields.breaker, `${path}/breaker`) ?? ""),
        `${path}/breaker`,
      );
      const outlets = (input: unknown, at: string): readonly OutletKey[] =>
        this.list(input, at).flatMap(([name, place]) => {
          const text = this.text(name, place);
          return text === undefined ? [] : (this.only(this.named.outlets(text), place)?.key ?? []);
        });
      const dead = outlets(fields.dead, `${path}/dead`);
      const stillLive = outlets(fields.live, `${path}/live`);
      if (dead.length + stillLive.length === 0) this.refuse("missing", path, wording.sayDeadOrLive);
      if (breaker === undefined) return [];
      return [
        {
          instrument: "by-eye" as const,
          points: [breaker.id],
          value: "",
          state: "as-found" as const,
          ...(by !== undefined && { by }),
          ...(takenAt !== undefined && { takenAt }),
          survey: {
            test: {
              kind: "breaker-off" as const,
              breaker: breaker.id as DeviceId,
              dead,
              ...(stillLive.length > 0 && { stillLive }),
            },
          },
        },
      ];
    });
  }

  private only<T>(found: readonly T[], at: string): T | undefined {
    if (found.length === 1) return found[0];
    if (found.length === 0) this.refuse("unknown-item", at, wording.unknown);
    else this.refuse("ambiguous-name", at, wording.severalCalledSo(found.length));
    return undefined;
  }

  private word(input: unknown, at: string, most: number): string | undefined {
    if (input === undefined) return undefined;
    if (typeof input === "string" && input.length <= most && !/\p{Surrogate}|\p{Cc}/u.test(input)) return input;
    this.refuse("not-a-text", at, wording.giveText(most, shown(input)));
    return undefined;
  }
}
