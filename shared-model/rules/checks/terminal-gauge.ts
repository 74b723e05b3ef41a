import type { Fix } from "../../answers/finding.ts";
import type { EntryKind } from "../../catalog/device-type.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import { type EndKey, parseEnd } from "../../model/ids.ts";
import { farEnd, getEndFacts, nameOfEnd } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { landedAt, membersOf } from "../../queries/landings.ts";
import { nameOfTerminal, type PlacedTerminal, terminalsOf } from "../../queries/terminals-of.ts";
import { isThicker, thickestOf, type WireSize } from "../../units/wire-size.ts";
import { SMALL_LUGS_UP_TO } from "../editions/product-values.ts";
import { titled } from "../line-load-fixes.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { type BoxContext, defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn } from "../rule-parts.ts";

const messages = templates({
  thin: "{terminal} in {box} takes {thinnest} to {thickest} AWG; {ends} {is} {found} AWG, too thin for it to hold. Splice it there with a pigtail of a size that the terminal takes, unless the marking of the device says more.",
  thick:
    "{terminal} in {box} takes {thinnest} to {thickest} AWG; {ends} {is} {found} AWG, too thick for it. Splice it there with a pigtail of a size that the terminal takes and the breaker allows, unless the marking of the device says more.",
});

const wording = catalogue({
  is: (count: number) => (count === 1 ? "is" : "are"),
  make: (jumper: Part, awg: Part) => `Make jumper ${jumper} of ${awg} AWG`,
  splice: (end: Part, awg: Part, terminal: Part) => `Splice ${end} with a pigtail of ${awg} AWG to ${terminal}`,
});

/** Leads are joined in a connector that is not drawn; push-in entries have a rule of their own. */
const UNJUDGED: ReadonlySet<EntryKind> = new Set(["lead", "push-in"]);

/** The sizes of our catalogue are typical of the kind of terminal; the marking of the actual device governs. */
export const terminalGauge = defineRule({
  id: "terminal-gauge",
  status: "stable",
  scope: "box",
  severity: "violation",
  summary: "A terminal holds conductors of the sizes that it is made for.",
  why: "A clamp plate made for 14 and 12 AWG does not close on a 10 AWG conductor, and a screw does not grip a 16 AWG one: the joint looks tight and heats. It happens where a thick home run, pulled against voltage drop, is brought straight to a receptacle. The sizes here are typical of the kind of terminal, and the marking of the actual device governs; lugs of breakers above 30 A, and leads, whose connector is not drawn, are to be judged by hand.",
  messages,
  sections: everyEdition("110.14, 110.3(B)", "from-memory"),
  check(context) {
    const { enclosure, installation, report } = context;
    for (const device of inOrder(enclosure.devices)) {
      for (const terminal of terminalsOf(device)) {
        if (UNJUDGED.has(terminal.entryKind) || isLargeLug(device, terminal)) continue;
        const landed = landedAt(enclosure, device.id, terminal.name).map(({ end }) => end);
        const sizeOf = (end: EndKey): WireSize => getEndFacts(installation, enclosure, end).awg;
        for (const [kind, wrong] of [
          ["thin", landed.filter((end) => isThicker(terminal.thinnest, sizeOf(end)))],
          ["thick", landed.filter((end) => isThicker(sizeOf(end), terminal.thickest))],
        ] as const) {
          if (wrong.length === 0) continue;
          const name = nameOfTerminal(device, terminal.name);
          const found = listed([...new Set(wrong.map(sizeOf))]);
          report({
            subjects: [{ kind: "terminal", id: `${device.id}.${terminal.name}`, name }],
            message: fillIn(messages[kind], {
              terminal: name,
              box: enclosure.name,
              thinnest: terminal.thinnest,
              thickest: terminal.thickest,
              ends: listed(wrong.map((end) => nameOfEnd(installation, enclosure, end))),
              is: wording.is(wrong.length),
              found,
            }),
            data: { found, thinnest: terminal.thinnest, thickest: terminal.thickest },
            ...basisOf(
              marksOn(device, "type", "entryKind"),
              wrong.flatMap((end) => marksOn(enclosure.places[end] ?? {}, "at")),
            ),
            offers: kind === "thin" ? offersFor(context, device, terminal, wrong) : [],
          });
        }
      }
    }
  },
});

const isLargeLug = ({ breakerRatingA }: Device, { entryKind }: PlacedTerminal): boolean =>
  entryKind === "lug" && (breakerRatingA ?? SMALL_LUGS_UP_TO) > SMALL_LUGS_UP_TO;

/** A jumper is easily made anew, as thick as what it is spliced with; a conductor of a cable gets a pigtail. */
function offersFor(
  { enclosure, installation, state }: BoxContext,
  device: Device,
  terminal: PlacedTerminal,
  wrong: readonly EndKey[],
): readonly Fix[] {
  const [end, ...more] = wrong;
  if (end === undefined || more.length > 0 || landedAt(enclosure, device.id, terminal.name).length > 1) return [];
  const { colour, material } = getEndFacts(installation, enclosure, end);
  if (material !== "copper") return [];
  const fitting = (size: WireSize): WireSize =>
    isThicker(size, terminal.thickest)
      ? terminal.thickest
      : isThicker(terminal.thinnest, size)
        ? terminal.thinnest
        : size;
  const plan = new MakeUpPlan(installation, enclosure, state);
  const parsed = parseEnd(end);
  if (parsed?.of === "jumper") {
    const far = enclosure.places[farEnd(end)]?.at;
    const others = far?.kind === "splice" ? membersOf(enclosure, far.splice).filter((one) => one !== farEnd(end)) : [];
    const thickest = thickestOf(others.map((one) => getEndFacts(installation, enclosure, one).awg));
    const awg = fitting(thickest ?? terminal.thinnest);
    const name = enclosure.jumpers[parsed.jumper]?.name ?? parsed.jumper;
    const fix = plan.resize(parsed.jumper, awg).fix((words) => titled(wording.make(name, awg), words));
    return fix === undefined ? [] : [fix];
  }
  const awg = terminal.thinnest;
  plan.pigtailTo({ kind: "terminal", device: device.id, terminal: terminal.name, hole: 1 }, [end], { awg, colour });
  const fix = plan.fix(() =>
    wording.splice(nameOfEnd(installation, enclosure, end), awg, nameOfTerminal(device, terminal.name)),
  );
  return fix === undefined ? [] : [fix];
}
