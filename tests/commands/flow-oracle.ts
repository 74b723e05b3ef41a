import { canonicalText } from "../../shared-model/lib/canonical-text.ts";
import { parseEnd } from "../../shared-model/model/ids.ts";
import type { Installation } from "../../shared-model/model/project.ts";

/**
 * A second, slow account of how an as-found edit is carried over into proposed: both states are taken apart into
 * statements, "kind id > field: value", and merged statement by statement over the whole house. Nothing here looks at
 * patches or at what an edit touched, and it knows nothing of the program's merge.
 */
export type Statements = Map<string, Map<string, string>>;

type Plain = { readonly [key: string]: unknown };
type Table = { readonly [id: string]: Plain };

const TABLES = ["entries", "devices", "splices", "jumpers", "passThroughs", "rings", "places"];
/** Found by id alone, so the enclosure that they are in is something that is said of them. */
const WITH_HOME = new Set(["devices", "splices", "jumpers"]);

export function takeApart(installation: Installation): Statements {
  const all: Statements = new Map();
  const say = (thing: string, fields: Plain, skip: readonly string[] = []): Map<string, string> => {
    const said = new Map<string, string>();
    all.set(thing, said);
    for (const [field, value] of Object.entries(fields)) {
      if (field === "evidence")
        for (const [of, mark] of Object.entries(value as Plain)) said.set(`mark ${of}`, text(mark));
      else if (value !== undefined && !skip.includes(field)) said.set(field, text(value));
    }
    return said;
  };
  for (const [box, enclosure] of Object.entries(installation.enclosures as unknown as Table)) {
    say(`enclosures ${box}`, enclosure, TABLES);
    for (const table of TABLES)
      for (const [id, thing] of Object.entries((enclosure[table] ?? {}) as Table)) {
        if (table === "places") {
          const { at, spare, jointOhm, ...rest } = thing;
          say(`places ${box} ${id}`, rest).set("joint", text({ at, spare, jointOhm }));
        } else if (WITH_HOME.has(table)) say(`${table} ${id}`, thing).set("home", text(box));
        else say(`${table} ${box} ${id}`, thing);
      }
  }
  for (const [id, cable] of Object.entries(installation.cables as unknown as Table)) {
    const said = say(`cables ${id}`, cable, ["sides", "conductors"]);
    for (const [side, where] of Object.entries(cable.sides as Plain)) said.set(`sides ${side}`, text(where));
    for (const [key, conductor] of Object.entries(cable.conductors as Table))
      for (const [field, value] of Object.entries(conductor)) said.set(`conductors ${key} ${field}`, text(value));
  }
  for (const table of ["loads", "labels"] as const)
    for (const [id, thing] of Object.entries(installation[table] as unknown as Table)) say(`${table} ${id}`, thing);
  for (const [id, value] of Object.entries(installation.directory)) say(`directory ${id}`, { value });
  for (const [id, value] of Object.entries(installation.intent.outlets)) say(`wishes ${id}`, { value });
  for (const [id, { protect, ...rest }] of Object.entries(installation.intent.boxes)) {
    const said = say(`intents ${id}`, rest as Plain);
    for (const [cable, wanted] of Object.entries(protect ?? {})) said.set(`protect ${cable}`, text(wanted));
  }
  return all;
}

const text = (value: unknown): string => canonicalText(value);

export function putTogether(all: Statements): Installation {
  const enclosures: Record<string, Record<string, unknown>> = {};
  const cables: Record<string, Plain> = {};
  const made: Record<string, Record<string, unknown>> = {
    loads: {},
    labels: {},
    directory: {},
    wishes: {},
    intents: {},
  };
  const read = (said: Map<string, string>): Record<string, unknown> => {
    const fields: Record<string, unknown> = {};
    const evidence: Record<string, unknown> = {};
    for (const [field, value] of said)
      if (field.startsWith("mark ")) evidence[field.slice(5)] = JSON.parse(value);
      else fields[field] = JSON.parse(value);
    return Object.keys(evidence).length === 0 ? fields : { ...fields, evidence };
  };
  for (const [thing, said] of all) {
    const [kind = "", id = ""] = thing.split(" ");
    if (kind === "enclosures") {
      const fields = read(said);
      enclosures[id] = fields;
      for (const table of TABLES) if (table !== "rings" || fields.kind === "box") fields[table] = {};
    } else if (kind === "cables") cables[id] = cableOf(read(said));
    else if (kind === "intents") made.intents = { ...made.intents, [id]: intentOf(read(said)) };
    else if (kind === "directory" || kind === "wishes")
      (made[kind] as Plain & Record<string, unknown>)[id] = read(said).value;
    else if (kind === "loads" || kind === "labels") (made[kind] as Record<string, unknown>)[id] = read(said);
  }
  for (const [thing, said] of all) {
    const [kind = "", first = "", second] = thing.split(" ");
    if (!TABLES.includes(kind)) continue;
    const { home, joint, ...fields } = read(said);
    const box = enclosures[WITH_HOME.has(kind) ? String(home) : first];
    if (box === undefined) throw new Error(`${thing} is in no enclosure.`);
    (box[kind] as Record<string, unknown>)[second ?? first] = { ...(joint as Plain | undefined), ...fields };
  }
  const { loads, labels, directory, wishes, intents } = made;
  return {
    enclosures,
    cables,
    loads,
    labels,
    directory,
    intent: { boxes: intents, outlets: wishes },
  } as unknown as Installation;
}

function cableOf(fields: Record<string, unknown>): Plain {
  const cable: Record<string, unknown> = { sides: {}, conductors: {} };
  for (const [field, value] of Object.entries(fields)) {
    const [what, key = "", of = ""] = field.split(" ");
    if (what === "sides") (cable.sides as Record<string, unknown>)[key] = value;
    else if (what === "conductors") {
      const conductors = cable.conductors as Record<string, Record<string, unknown>>;
      conductors[key] = { ...conductors[key], [of]: value };
    } else cable[field] = value;
  }
  return cable;
}

function intentOf(fields: Record<string, unknown>): Plain {
  const protect = Object.entries(fields).filter(([field]) => field.startsWith("protect "));
  const { supply } = fields;
  return {
    ...(supply !== undefined && { supply }),
    ...(protect.length > 0 && {
      protect: Object.fromEntries(protect.map(([field, value]) => [field.slice(8), value])),
    }),
  };
}

/** What proposed says after as found went from `was` to `is`, before anybody asks whether it is sound. */
export function mergeStatements(was: Statements, is: Statements, theirs: Statements): Statements {
  const merged: Statements = new Map();
  const everything = [...new Set([...was.keys(), ...is.keys(), ...theirs.keys()])];
  // Whether a place exists depends on cables and jumpers, and whether anything inside does on enclosures.
  const early = ["jumpers", "cables", "enclosures"];
  const rank = (thing: string) => -early.indexOf(thing.split(" ")[0] ?? "");
  for (const thing of everything.sort((a, b) => rank(a) - rank(b))) {
    const outcome = mergeThing(thing, was, is, theirs, merged);
    if (outcome !== undefined) merged.set(thing, outcome);
  }
  for (const thing of [...merged.keys()])
    if (/^(entries|splices) /.test(thing) && !isUsed(merged, thing)) merged.delete(thing);
  return merged;
}

function mergeThing(
  thing: string,
  ...[was, is, theirs, merged]: readonly Statements[]
): Map<string, string> | undefined {
  const [w, i, t] = [was?.get(thing), is?.get(thing), theirs?.get(thing)];
  // An enclosure that stays although it went as found stays with all that is in it.
  const box = boxOf(thing, t ?? w);
  if (box !== undefined && was?.has(box) && !is?.has(box) && merged?.has(box)) return t;
  const isIntent = thing.startsWith("intents ");
  if (isIntent || (w !== undefined && i !== undefined && t !== undefined)) {
    const fields = mergeFields(thing, w ?? new Map(), i ?? new Map(), t ?? new Map());
    return isIntent && fields.size === 0 ? undefined : fields;
  }
  if (t !== undefined && (w === undefined || i !== undefined)) return t;
  if (t === undefined)
    return w === undefined && i !== undefined && mayCome(thing, i, merged as Statements, theirs as Statements)
      ? i
      : undefined;
  if (/^(entries|splices) /.test(thing)) return t;
  if (thing.startsWith("places ") && lies(thing, merged as Statements)) return t;
  return saysTheSame(thing, was as Statements, theirs as Statements) ? undefined : t;
}

function mergeFields(thing: string, ...[w, i, t]: readonly Map<string, string>[]): Map<string, string> {
  const merged = new Map<string, string>();
  const put = (field: string, value: string | undefined) => value !== undefined && merged.set(field, value);
  const fields = [...new Set([...(w?.keys() ?? []), ...(i?.keys() ?? []), ...(t?.keys() ?? [])])];
  const movedOnItsOwn = thing.startsWith("devices ") && w?.get("home") !== t?.get("home");
  for (const field of fields) {
    if (field.startsWith("mark ")) continue;
    const own = field === "replaces" || (field === "order" && movedOnItsOwn);
    put(field, !own && t?.get(field) === w?.get(field) ? i?.get(field) : t?.get(field));
  }
  for (const field of fields) {
    if (!field.startsWith("mark ")) continue;
    const about = (said: Map<string, string> | undefined) => factsOf(field.slice(5), said);
    const agrees = about(merged) === about(i);
    const came = about(merged) !== about(t);
    put(field, agrees && (came || t?.get(field) === w?.get(field)) ? i?.get(field) : t?.get(field));
  }
  return merged;
}

/** The facts that a mark is about, in one text. Marks of a place are about its joint, whatever they are called. */
function factsOf(field: string, said: Map<string, string> | undefined): string {
  const direct = said?.get(field);
  if (direct !== undefined) return direct;
  const joint = said?.get("joint");
  if (joint !== undefined && ["at", "spare", "jointOhm"].includes(field))
    return text((JSON.parse(joint) as Plain)[field] ?? null);
  const prefix = `${field.replaceAll("-", " ")}`;
  return [...(said ?? [])]
    .filter(([key]) => key === prefix || key.startsWith(`${prefix} `))
    .map(([key, value]) => `${key}=${value}`)
    .sort()
    .join();
}

const mayCome = (thing: string, said: Map<string, string>, merged: Statements, theirs: Statements): boolean => {
  // Nothing is both kept and replaced.
  const link = text(thing.replace("devices ", ""));
  if (thing.startsWith("devices ") && [...theirs.values()].some((other) => other.get("replaces") === link))
    return false;
  // What is in an enclosure that proposed took out is of no interest there.
  const box = boxOf(thing, said);
  if (box !== undefined && !merged.has(box)) return false;
  if (thing.startsWith("places ")) return lies(thing, merged);
  if (thing.startsWith("passThroughs ")) return merged.has(`cables ${JSON.parse(said.get("cable") ?? "")}`);
  return true;
};

/** The enclosure that a thing is in; undefined for what is in none. */
function boxOf(thing: string, said: Map<string, string> | undefined): string | undefined {
  const [kind = "", first] = thing.split(" ");
  if (!TABLES.includes(kind)) return undefined;
  return `enclosures ${WITH_HOME.has(kind) ? JSON.parse(said?.get("home") ?? '""') : first}`;
}

/** Whether the end of a place statement lies in its enclosure. */
function lies(thing: string, all: Statements): boolean {
  const [, box, end = ""] = thing.split(" ");
  const parsed = parseEnd(end);
  if (parsed?.of === "jumper") return all.get(`jumpers ${parsed.jumper}`)?.get("home") === text(box);
  const side = all.get(`cables ${parsed?.cable}`)?.get(`sides ${parsed?.side}`);
  return side !== undefined && (JSON.parse(side) as { enclosure?: string }).enclosure === box;
}

/** A thing with everything inside it, whatever its order among others and the marks of its facts. */
function saysTheSame(thing: string, one: Statements, other: Statements): boolean {
  const told = (all: Statements): string => {
    const [kind, id = ""] = thing.split(" ");
    const inside = [...all].filter(
      ([key, said]) =>
        key === thing ||
        (kind === "enclosures" &&
          (said.get("home") === text(id) || new RegExp(`^(${TABLES.join("|")}) ${id} `).test(key))),
    );
    const lines = inside.flatMap(([key, said]) =>
      [...said].flatMap(([field, value]) =>
        field === "order" || field.startsWith("mark ") ? [] : `${key} ${field} ${value}`,
      ),
    );
    return [...inside.map(([key]) => key), ...lines].sort().join("\n");
  };
  return told(one) === told(other);
}

function isUsed(all: Statements, thing: string): boolean {
  const [kind, first, second] = thing.split(" ");
  for (const [key, said] of all) {
    if (kind === "splices" && key.startsWith("places ") && JSON.parse(said.get("joint") ?? "{}").at?.splice === first)
      return true;
    if (kind !== "entries") continue;
    if (key.startsWith("cables "))
      for (const side of ["a", "b"]) {
        const where = JSON.parse(said.get(`sides ${side}`) ?? "{}") as { enclosure?: string; entry?: string };
        if (where.enclosure === first && where.entry === second) return true;
      }
    if (key.startsWith(`passThroughs ${first} `))
      if (said.get("entryIn") === text(second) || said.get("entryOut") === text(second)) return true;
  }
  return false;
}
