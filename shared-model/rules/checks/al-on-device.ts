import type { DeviceFamily } from "../../catalog/device-type.ts";
import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import { getEndFacts, nameOfEnd } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { type Landing, landedAt } from "../../queries/landings.ts";
import { nameOfTerminal, type PlacedTerminal, terminalsOf } from "../../queries/terminals-of.ts";
import { isThicker, thickestOf } from "../../units/wire-size.ts";
import { MARKED_FOR_ALUMINIUM_UP_TO } from "../editions/product-values.ts";
import { unlikeKinds } from "../kinds-of-ends.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { type BoxContext, defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  unmarked:
    "{ends} of aluminium {is} on {device} in {box}, which is not marked CO/ALR. Bring copper pigtails to it from connectors listed for aluminium with copper, or fit a device with that mark.",
  notRecorded:
    "{ends} of aluminium {is} on {device} in {box}, and no CO/ALR mark is recorded for it: it is taken to have none. Look; without the mark bring copper pigtails to it from connectors listed for aluminium with copper, or fit a device with it.",
  pushIn:
    "{ends} of aluminium {is} in push-in entries of {device} in {box}: no mark allows that. Bring copper pigtails to it from connectors listed for aluminium with copper.",
});

const wording = catalogue({
  is: (count: number) => (count === 1 ? "is" : "are"),
  pigtails: (terminals: Part) => `Bring copper pigtails to ${terminals} from connectors listed for both metals`,
});

/** Families whose terminals hold the conductor itself. */
const FAMILIES: ReadonlySet<DeviceFamily> = new Set([
  "receptacle",
  "ground-fault-receptacle",
  "ground-fault-blank",
  "switch",
  "combination",
]);
/** Of these none is made with that mark. */
const NEVER_MARKED: ReadonlySet<DeviceFamily> = new Set(["ground-fault-receptacle", "ground-fault-blank"]);

/** The leads of a dimmer or a luminaire end in a connector that is not drawn. Copper-clad aluminium is another metal. */
export const alOnDevice = defineRule({
  id: "al-on-device",
  status: "stable",
  scope: "box",
  severity: "danger",
  summary: "Aluminium goes only on receptacles and switches that are marked for it.",
  why: "Under an ordinary screw aluminium creeps away with every load, and the loosened joint heats until the device burns. Receptacles and switches to 20 A on which it may land are marked CO/ALR; push-in entries and ground-fault receptacles have no such mark. Old aluminium circuits are commonly mended with a copper pigtail at each terminal, in a connector listed for both metals.",
  messages,
  sections: everyEdition("406.3(C), 404.14(C)", "from-memory"),
  check(context) {
    const { enclosure, installation, report } = context;
    for (const device of inOrder(enclosure.devices)) {
      const { family } = getDeviceType(device.type);
      if (!FAMILIES.has(family) || (device.ratingA ?? 0) > MARKED_FOR_ALUMINIUM_UP_TO) continue;
      const terminals = terminalsOf(device).filter(
        (terminal) => terminal.entryKind !== "lead" && aluminiumOn(context, device, terminal).length > 0,
      );
      const pushedIn = terminals.filter(({ entryKind }) => entryKind === "push-in");
      const marked = device.markedForAluminium === true && !NEVER_MARKED.has(family);
      const wrong = marked ? pushedIn : terminals;
      if (wrong.length === 0) continue;
      const ends = wrong.flatMap((terminal) => aluminiumOn(context, device, terminal)).map(({ end }) => end);
      const isRecorded = device.markedForAluminium !== undefined || NEVER_MARKED.has(family);
      const message =
        pushedIn.length === wrong.length ? messages.pushIn : isRecorded ? messages.unmarked : messages.notRecorded;
      const fix = pigtails(context, device, wrong);
      report({
        subjects: [subject("device", device)],
        message: fillIn(message, {
          ends: listed(ends.map((end) => nameOfEnd(installation, enclosure, end))),
          is: wording.is(ends.length),
          device: device.name,
          box: enclosure.name,
        }),
        data: { conductors: ends.length },
        ...basisOf(
          message === messages.notRecorded ? ["assumed"] : marksOn(device, "markedForAluminium"),
          ends.flatMap((end) => marksOn(enclosure.places[end] ?? {}, "at")),
        ),
        hides: [{ rule: "push-in-gauge", subjects: pushedIn.length === 0 ? [] : [device.id] }],
        offers: fix === undefined ? [] : [fix],
      });
    }
  },
});

const aluminiumOn = (
  { enclosure, installation }: BoxContext,
  device: Device,
  { name }: PlacedTerminal,
): readonly Landing[] =>
  landedAt(enclosure, device.id, name).filter(
    ({ end }) => getEndFacts(installation, enclosure, end).material === "aluminium",
  );

/**
 * At each terminal everything on it in a connector for both metals, and a copper pigtail as thick as the thickest. None
 * where what is on one does not belong together.
 */
function pigtails(
  { enclosure, installation, state }: BoxContext,
  device: Device,
  terminals: readonly PlacedTerminal[],
) {
  const plan = new MakeUpPlan(installation, enclosure, state);
  for (const terminal of terminals) {
    const ends = landedAt(enclosure, device.id, terminal.name).map(({ end }) => end);
    const facts = ends.map((end) => getEndFacts(installation, enclosure, end));
    const awg = thickestOf(facts.map((one) => one.awg));
    const [first] = facts;
    if (unlikeKinds(installation, enclosure, ends) !== undefined) return undefined;
    if (awg === undefined || first === undefined || isThicker(awg, terminal.thickest)) return undefined;
    const at = { kind: "terminal", device: device.id, terminal: terminal.name, hole: 1 } as const;
    plan.pigtailTo(at, ends, { awg, colour: first.colour });
  }
  const names = listed(terminals.map(({ name }) => nameOfTerminal(device, name)));
  return plan.fix(() => wording.pigtails(names));
}
