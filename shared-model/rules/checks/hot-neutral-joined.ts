import type { Subject } from "../../answers/finding.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { EvidenceMark } from "../../model/evidence.ts";
import type { TerminalName } from "../../model/ids.ts";
import { landedAt } from "../../queries/landings.ts";
import type { Joining, PathStep, Section, Spot } from "../../solver/section.ts";
import { OWN_CHECK } from "../own-check.ts";
import { enclosuresOfStep, nameOfWhatIsAt, positionWords } from "../path-words.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";
import { hotOf, lineLoadDevices, marksOnWay, nameOfStep, neutralOf } from "../section-parts.ts";

const messages = templates({
  always:
    "Short circuit between hot and neutral: {pieces}. The breaker opens as soon as it is switched on. Part the two there.",
  sometimes:
    "Short circuit between hot and neutral with {positions}: {pieces}. The breaker opens in that position. Part the two there.",
  amongOthers:
    "Short circuit between hot and neutral in some switch positions, for instance with {positions}: {pieces}. The breaker opens in such a position. Part the two there.",
});

const wording = catalogue({
  acrossBoxes: (piece: Part, hot: Part, hotBox: Part, neutral: Part, neutralBox: Part) =>
    `${piece} joins ${hot} in ${hotBox}, which is hot, to ${neutral} in ${neutralBox}, which is neutral`,
  inOneBox: (piece: Part, box: Part, hot: Part, neutral: Part) =>
    `${piece} in ${box} joins ${hot}, which is hot, to ${neutral}, which is neutral`,
});

const OUTLET_CONSEQUENCES = [
  "outlet-not-protected",
  "wish-not-protected",
  "replace-needs-gfci",
  "polarity-swapped",
  "shell-hot",
];
const DEVICE_CONSEQUENCES = ["neutral-both-sides", "hot-both-sides"];

/** Loads removed: what joins the two is metal. Found at what parts them with the least taken out. */
export const hotNeutralJoined = defineRule({
  id: "hot-neutral-joined",
  status: "stable",
  scope: "section",
  severity: "danger",
  summary: "Hot and neutral must meet in a load only.",
  why: "It is a short circuit. One that depends on a switch is found late: everything works until somebody moves a handle, and with three-way switches the bad position may be one of four. Commonly a wire went into the wrong one of two joints, or a switch was put across a hot and a neutral.",
  messages,
  sections: everyEdition(OWN_CHECK, "own-rule"),
  check({ section, report }) {
    const groups = new Map<string, { readonly subject: Subject; readonly joinings: Joining[] }>();
    for (const joining of section.shorts()) {
      const what = subjectOf(section, joining.by);
      const key = `${what.kind}:${what.id}`;
      const known = groups.get(key);
      if (known === undefined) groups.set(key, { subject: what, joinings: [joining] });
      else known.joinings.push(joining);
    }
    if (groups.size === 0) return;
    const outlets = outletsShorted(section);
    const devices = lineLoadDevices(section)
      .filter(({ lineHot }) => isShorted(section, lineHot))
      .map(({ device }) => device.id);
    const switches = section.switchesInNeutral().map(({ device }) => device);
    for (const { subject: what, joinings } of groups.values()) {
      const when = joinings.some((joining) => joining.when.length === 0) ? [] : (joinings[0]?.when ?? []);
      const pieces = listed(joinings.map(({ by }) => pieceWords(section, by)));
      report({
        subjects: [what],
        message:
          when.length === 0
            ? fillIn(messages.always, { pieces })
            : fillIn(isAll(section, joinings) ? messages.sometimes : messages.amongOthers, {
                pieces,
                positions: positionWords(section, when),
              }),
        ...(when.length > 0 && { data: { positions: positionWords(section, when) } }),
        ...basisOf(...joinings.map(({ by }) => marksAt(section, by))),
        hides: [
          ...OUTLET_CONSEQUENCES.map((rule) => ({ rule, subjects: outlets })),
          ...DEVICE_CONSEQUENCES.map((rule) => ({ rule, subjects: devices })),
          { rule: "switch-in-neutral", subjects: switches },
        ],
      });
    }
  },
});

/** Whether the positions of the first are those of all, and there are no others. */
function isAll(section: Section, joinings: readonly Joining[]): boolean {
  const [first, ...more] = new Set(joinings.map(({ when }) => positionWords(section, when)));
  return first !== undefined && more.length === 0 && joinings.every(({ alsoElse }) => !alsoElse);
}

function subjectOf({ installation }: Section, step: PathStep): Subject {
  if (step.kind === "cable") {
    const cable = installation.cables[step.cable];
    return cable === undefined ? { kind: "cable", id: step.cable, name: step.cable } : subject("cable", cable);
  }
  const enclosure = installation.enclosures[step.enclosure];
  if (step.kind === "jumper") {
    const jumper = enclosure?.jumpers[step.jumper];
    return jumper === undefined ? { kind: "jumper", id: step.jumper, name: step.jumper } : subject("jumper", jumper);
  }
  const device = enclosure?.devices[step.device];
  return device === undefined ? { kind: "device", id: step.device, name: step.device } : subject("device", device);
}

/** Who says what is on its ends, or on the terminals of a switch. */
function marksAt(section: Section, by: PathStep): readonly EvidenceMark[] {
  if (by.kind !== "device") return marksOnWay(section, [by]);
  const enclosure = section.installation.enclosures[by.enclosure];
  if (enclosure === undefined) return [];
  const ends = [by.from, by.to].flatMap((node) => landedAt(enclosure, by.device, node as TerminalName));
  return ends.flatMap(({ end }) => marksOn(enclosure.places[end] ?? {}, "at"));
}

/** "jumper y in B5 joins S1 SW, which is hot, to splice B5n, which is neutral". */
function pieceWords(section: Section, by: PathStep): string {
  const [first = "", last = ""] = enclosuresOfStep(by).map((id) => section.installation.enclosures[id]?.name ?? id);
  const name = nameOfStep(section, by);
  const from = nameOfWhatIsAt(section, by, "from");
  const to = nameOfWhatIsAt(section, by, "to");
  if (first === last) return wording.inOneBox(name, first, from, to);
  return wording.acrossBoxes(name, from, first, to, last);
}

const isShorted = (section: Section, spot: Spot): boolean =>
  section.reach().isLive(spot) && section.reach().isGrounded(spot);

const outletsShorted = (section: Section): readonly string[] =>
  section
    .outlets()
    .filter((standing) => isShorted(section, hotOf(standing)) || isShorted(section, neutralOf(standing)))
    .map(({ outlet }) => outlet.key);
