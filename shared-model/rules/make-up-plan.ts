import type { CommandCall } from "../answers/command-call.ts";
import type { Fix } from "../answers/finding.ts";
import { type Connector, findConnector } from "../catalog/connectors.ts";
import type { Enclosure } from "../model/enclosure.ts";
import {
  type DeviceId,
  type EndKey,
  type JumperId,
  jumperEnd,
  parseEnd,
  type SpliceId,
  type TerminalName,
} from "../model/ids.ts";
import type { At } from "../model/place.ts";
import type { Installation, StateName } from "../model/project.ts";
import type { SpliceMember } from "../queries/connector-takes.ts";
import { getEndFacts } from "../queries/end-facts.ts";
import { landedAt, membersOf } from "../queries/landings.ts";
import type { Colour } from "../units/colour.ts";
import { compareWireSize, type WireSize } from "../units/wire-size.ts";
import { fittingConnector, likeConnector } from "./fitting-connector.ts";
import { fixBy, fixTogether, makeFresh } from "./fix-parts.ts";
import { wording } from "./make-up-plan-words.ts";

/** What a new jumper is made of; it is solid copper. */
export interface JumperMake {
  readonly awg: WireSize;
  readonly colour: Colour;
}

interface PlannedSplice {
  readonly id: SpliceId;
  readonly name: string;
  /** What it has now; absent for one that the plan makes. */
  readonly connector?: string;
  /** Ends that exist and are in it when the plan is done. */
  readonly ends: EndKey[];
  /** New jumpers that end in it. */
  readonly jumpers: SpliceMember[];
}

/** Makes a call once every splice of the plan has its connector. */
type Step = (connectorOf: (splice: SpliceId) => string) => CommandCall;

/**
 * A change of the make-up of one enclosure, put together step by step. At the end every splice that it touched gets a
 * connector that takes what is then in it: the one it has, else one of its kind, else another; where none does, the
 * splice is parted into two with one link. Nothing of it counts in box fill.
 */
export class MakeUpPlan {
  readonly #installation: Installation;
  readonly #enclosure: Enclosure;
  readonly #where: { readonly state: StateName; readonly enclosure: Enclosure["id"] };
  readonly #fresh: ReturnType<typeof makeFresh>;
  readonly #splices = new Map<SpliceId, PlannedSplice>();
  readonly #steps: Step[] = [];
  readonly #sizes = new Map<JumperId, WireSize>();

  constructor(installation: Installation, enclosure: Enclosure, state: StateName) {
    this.#installation = installation;
    this.#enclosure = enclosure;
    this.#where = { state, enclosure: enclosure.id };
    this.#fresh = makeFresh(enclosure);
  }

  /** Has the connector of a splice looked at, whatever else the plan does. */
  touch(splice: SpliceId): this {
    this.#planned(splice);
    return this;
  }

  join(end: EndKey, splice: SpliceId): this {
    this.#take(end);
    this.#planned(splice).ends.push(end);
    return this.#step("join-splice", { end, splice });
  }

  /** On a terminal, on the bond, capped: anywhere but into a splice. */
  land(end: EndKey, at: At): this {
    this.#take(end);
    return this.#step("land-end", { end, at });
  }

  /** Takes a jumper of the enclosure out. */
  remove(jumper: JumperId): this {
    for (const side of ["a", "b"] as const) this.#take(jumperEnd(jumper, side));
    const { state } = this.#where;
    this.#steps.push(() => ({ command: "remove-items", args: { state, items: [{ kind: "jumper", id: jumper }] } }));
    return this;
  }

  jumper(from: At, to: At, made: JumperMake): this {
    const { id: jumper, name } = this.#fresh("j");
    const { awg, colour } = made;
    const grounding = colour === "bare" || colour === "green";
    for (const at of [from, to])
      if (at.kind === "splice")
        this.#planned(at.splice).jumpers.push({ awg, material: "copper", stranded: false, grounding });
    return this.#step("add-jumper", { jumper, name, awg, colour, from, to });
  }

  /** Two or more ends that exist in a new splice. */
  splice(ends: readonly EndKey[]): SpliceId {
    const { id, name } = this.#make(ends);
    this.#steps.push((connectorOf) =>
      this.#call("splice-ends", { splice: id, name, connector: connectorOf(id), ends: [...ends] }),
    );
    return id;
  }

  /** Everything on a terminal in a new splice, and one pigtail back to the terminal, made like the thickest of them. */
  pigtail(device: DeviceId, terminal: TerminalName): SpliceId {
    const ends = landedAt(this.#enclosure, device, terminal).map(({ end }) => end);
    const { id, name, jumpers } = this.#make(ends);
    const [thickest] = ends.map((end) => this.#facts(end)).sort((a, b) => compareWireSize(b.awg, a.awg));
    if (thickest !== undefined) jumpers.push(thickest);
    const { id: jumper, name: jumperName } = this.#fresh("j");
    this.#steps.push((connectorOf) =>
      this.#call("pigtail-terminal", {
        device,
        terminal,
        splice: id,
        spliceName: name,
        connector: connectorOf(id),
        jumper,
        jumperName,
      }),
    );
    return id;
  }

  /** Everything on the ground screw of a box in a new splice, and one pigtail back to the screw. */
  pigtailBond(ends: readonly EndKey[], made: JumperMake): SpliceId {
    return this.pigtailTo({ kind: "bond" }, ends, made);
  }

  /** Ends that exist in a new splice, and one pigtail of a given make from it to a place. One end is enough. */
  pigtailTo(place: At, ends: readonly EndKey[], made: JumperMake): SpliceId {
    const { id: splice, name, jumpers } = this.#make(ends);
    const { awg, colour } = made;
    const grounding = colour === "bare" || colour === "green";
    jumpers.push({ awg, material: "copper", stranded: false, grounding });
    const { id, name: jumperName } = this.#fresh("j");
    const jumper = id as JumperId;
    this.#step("add-jumper", { jumper, name: jumperName, awg, colour, from: place, to: { kind: "capped" } });
    this.#steps.push((connectorOf) =>
      this.#call("splice-ends", {
        splice,
        name,
        connector: connectorOf(splice),
        ends: [...ends, jumperEnd(jumper, "b")],
      }),
    );
    return splice;
  }

  /** Another size for a jumper that stays where it is. */
  resize(jumper: JumperId, awg: WireSize): this {
    this.#sizes.set(jumper, awg);
    for (const side of ["a", "b"] as const) {
      const at = this.#enclosure.places[jumperEnd(jumper, side)]?.at;
      if (at?.kind === "splice") this.#planned(at.splice);
    }
    return this.set({ kind: "jumper", id: jumper }, "awg", awg);
  }

  set(target: object, field: string, value: unknown): this {
    const { state } = this.#where;
    this.#steps.push(() => ({ command: "set-property", args: { state, target, field, value } }));
    return this;
  }

  /**
   * The plan as one fix. Undefined when it does nothing, or when a splice of it can neither be given a connector nor be
   * parted so that both halves can. `title` is told in words which connectors change; "" when none does.
   */
  fix(title: (connectorWords: string) => string): Fix | undefined {
    const chosen = new Map<SpliceId, string>();
    const first: CommandCall[] = [];
    const words: string[] = [];
    for (const splice of [...this.#splices.values()]) {
      const members = this.#membersIn(splice);
      if (members.length < 2) continue;
      const connector = fittingConnector(splice.connector, members);
      const parted = connector === undefined ? this.#part(splice) : undefined;
      const here = connector?.id ?? parted?.here.id;
      if (here === undefined) return undefined;
      chosen.set(splice.id, here);
      if (parted !== undefined) {
        first.push(...parted.calls);
        words.push(wording.becomesTwo(splice.name));
      }
      if (splice.connector === undefined || splice.connector === here) continue;
      first.push(this.#call("change-connector", { splice: splice.id, connector: here }));
      if (parted === undefined) words.push(wording.gets(splice.name, findConnector(here)?.title ?? here));
    }
    const calls = [...first, ...this.#steps.map((step) => step((splice) => chosen.get(splice) ?? "unknown"))];
    const [only] = calls;
    if (only === undefined) return undefined;
    const said = title(words.join("; "));
    return calls.length === 1 ? fixBy(said, only.command, only.args as object) : fixTogether(said, calls);
  }

  #planned(id: SpliceId): PlannedSplice {
    const known = this.#splices.get(id);
    if (known !== undefined) return known;
    const { name = id, connector = "unknown" } = this.#enclosure.splices[id] ?? {};
    const planned: PlannedSplice = { id, name, connector, ends: [...membersOf(this.#enclosure, id)], jumpers: [] };
    this.#splices.set(id, planned);
    return planned;
  }

  #make(ends: readonly EndKey[]): PlannedSplice {
    const { id, name } = this.#fresh("s");
    for (const end of ends) this.#take(end);
    const made: PlannedSplice = { id: id as SpliceId, name, ends: [...ends], jumpers: [] };
    this.#splices.set(made.id, made);
    return made;
  }

  /** Out of the splice that it is in. */
  #take(end: EndKey): void {
    const at = this.#enclosure.places[end]?.at;
    if (at?.kind !== "splice") return;
    const { ends } = this.#planned(at.splice);
    if (ends.includes(end)) ends.splice(ends.indexOf(end), 1);
  }

  #membersIn = ({ ends, jumpers }: PlannedSplice): readonly SpliceMember[] => [
    ...ends.map((end) => this.#facts(end)),
    ...jumpers,
  ];

  #facts = (end: EndKey): SpliceMember & { readonly colour: Colour } => {
    const facts = getEndFacts(this.#installation, this.#enclosure, end);
    const awg = facts.parsed.of === "jumper" ? this.#sizes.get(facts.parsed.jumper) : undefined;
    return awg === undefined ? facts : { ...facts, awg };
  };

  #call = (command: string, args: object): CommandCall => ({ command, args: { ...this.#where, ...args } });

  #step(command: string, args: object): this {
    const call = this.#call(command, args);
    this.#steps.push(() => call);
    return this;
  }

  /**
   * Some of the ends of a splice into a second one, joined to it by a link as thick as the thickest. Halves of equal
   * number first, like sizes together; then one here, one there.
   */
  #part(splice: PlannedSplice): { readonly here: Connector; readonly calls: readonly CommandCall[] } | undefined {
    const own = membersOf(this.#enclosure, splice.id).filter((end) => splice.ends.includes(end));
    const others = splice.ends.filter((end) => !own.includes(end)).map((end) => this.#facts(end));
    const sorted = [...own].sort((a, b) => bySize(this.#facts(a), this.#facts(b)) || (a < b ? -1 : 1));
    const [thickest] = sorted.map((end) => this.#facts(end));
    if (splice.connector === undefined || thickest === undefined) return undefined;
    const grounding = sorted.every((end) => this.#facts(end).grounding);
    // Grounds among circuit conductors are a fault of their own: which of them belong together is not known here.
    if (!grounding && sorted.some((end) => this.#facts(end).grounding)) return undefined;
    const { colour } = this.#facts(sorted.find((end) => parseEnd(end)?.of === "cable") ?? (sorted[0] as EndKey));
    const link: SpliceMember = { awg: thickest.awg, material: "copper", stranded: false, grounding };
    for (const moved of waysToPart(sorted)) {
      const stays = sorted.filter((end) => !moved.includes(end)).map((end) => this.#facts(end));
      const here = fittingConnector(splice.connector, [...stays, ...others, ...splice.jumpers, link]);
      const there = likeConnector(splice.connector, [...moved.map((end) => this.#facts(end)), link]);
      if (here === undefined || there === undefined) continue;
      const second = this.#fresh("s");
      const jumper = this.#fresh("j");
      const calls = [
        this.#call("splice-ends", { splice: second.id, name: second.name, connector: there.id, ends: moved }),
        this.#call("add-jumper", {
          jumper: jumper.id,
          name: jumper.name,
          awg: link.awg,
          colour: grounding ? "bare" : colour,
          from: { kind: "splice", splice: splice.id },
          to: { kind: "splice", splice: second.id },
        }),
      ];
      return { here, calls };
    }
    return undefined;
  }
}

const bySize = (a: SpliceMember, b: SpliceMember): number =>
  compareWireSize(b.awg, a.awg) || (a.material < b.material ? -1 : a.material > b.material ? 1 : 0);

/** Which ends go to the second splice: at least two of them, and one at least stays. */
function waysToPart(sorted: readonly EndKey[]): readonly (readonly EndKey[])[] {
  const count = sorted.length;
  const cuts = Array.from({ length: Math.max(0, count - 2) }, (_, index) => index + 1);
  const balanced = cuts.sort((a, b) => Math.abs(count - 2 * a) - Math.abs(count - 2 * b) || a - b);
  return [...balanced.map((cut) => sorted.slice(cut)), sorted.filter((_, index) => index % 2 === 1)].filter(
    (moved) => moved.length >= 2,
  );
}
