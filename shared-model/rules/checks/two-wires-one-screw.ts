import type { EntryKind } from "../../catalog/device-type.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { EvidenceMark } from "../../model/evidence.ts";
import type { EndKey } from "../../model/ids.ts";
import { nameOfEnd } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { landedAt, landingsOf } from "../../queries/landings.ts";
import { nameOfTerminal, terminalsOf } from "../../queries/terminals-of.ts";
import { oneAtBondFix } from "../ground-fixes.ts";
import { unlikeKinds } from "../kinds-of-ends.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { type BoxContext, defineRule } from "../rule.ts";
import { basisOf, counted, everyEdition, fillIn, listed, marksOn, sectionIn, subject } from "../rule-parts.ts";

const messages = templates({
  doubled:
    "{terminal} in {box} holds {count} conductors ({ends}); its screw takes {allowed}. Splice them and bring one pigtail to the screw: the box fill stays the same.",
  unlike:
    "{terminal} in {box} holds {count} conductors ({ends}); its screw takes {allowed}. Here are {kinds}: take off what does not belong on this screw.",
  lug: "{terminal} in {box} holds {count} conductors ({ends}); its lug takes {allowed} unless the marking of the breaker says more. Look for it; without that mark splice them and bring one conductor to the lug.",
  bond: "The ground screw or clip of {box} holds {count} conductors ({ends}); it takes {allowed}. Splice the grounds and bring one pigtail to it: the box fill stays the same.",
  bondUnlike:
    "The ground screw or clip of {box} holds {count} conductors ({ends}); it takes {allowed}. Here are {kinds}: take off what is no ground.",
});

const wording = catalogue({
  conductors: (count: number) => counted(count, "conductor"),
  splice: (terminal: Part) => `Splice the conductors on ${terminal} and bring one pigtail to it`,
});

const SCREWS: ReadonlySet<EntryKind> = new Set(["side-screw", "green-screw", "lug"]);

/**
 * Plain terminal screws, lugs of breakers, and the one screw or clip that a box has for its ground: holes of clamp plates,
 * push-ins, leads and bars have rules of their own. A listed bonding bar in a box, with a screw for each conductor, is not
 * drawn. Some small breakers are marked for two conductors (110.14(A); trade forum threads and an inspector's article on
 * breakers with two conductors), so a lug is a caution.
 */
export const twoWiresOneScrew = defineRule({
  id: "two-wires-one-screw",
  status: "stable",
  scope: "box",
  severity: "violation",
  summary: "A terminal screw, the lug of a breaker, and the ground screw or clip of a box, holds one conductor.",
  why: "Two conductors under one screw head do not sit flat; one of them is loose from the start. Onward feeds belong in a splice with one pigtail to the device, which also keeps the rest of the circuit joined when the device is taken out. Two hots in the lug of a breaker are what a full panel looks like after a circuit was added; some small breakers are marked for two of a size, so it is a caution. A ground screw or clip of a box holds one conductor as well, unless it is listed for more: a box with a bonding bar is to be judged by hand.",
  messages,
  sections: everyEdition("110.14(A)", "from-memory"),
  values: ["wiresPerScrew"],
  check(context) {
    const { enclosure, installation, edition, state, report } = context;
    const allowed = edition.values.wiresPerScrew.value;
    for (const device of inOrder(enclosure.devices)) {
      for (const { name, entryKind } of terminalsOf(device)) {
        if (!SCREWS.has(entryKind)) continue;
        const landed = landedAt(enclosure, device.id, name).map(({ end }) => end);
        if (landed.length <= allowed) continue;
        const terminal = nameOfTerminal(device, name);
        const kinds = unlikeKinds(installation, enclosure, landed);
        const isLug = entryKind === "lug";
        const plan = new MakeUpPlan(installation, enclosure, state);
        if (kinds === undefined && !isLug) plan.pigtail(device.id, name);
        const fix = plan.fix(() => wording.splice(terminal));
        report({
          subjects: [{ kind: "terminal", id: `${device.id}.${name}`, name: terminal }],
          ...(isLug && kinds === undefined && { severity: "caution" as const }),
          message: fillIn(kinds !== undefined ? messages.unlike : isLug ? messages.lug : messages.doubled, {
            ...shownAt(context, landed, allowed),
            terminal,
            kinds: kinds ?? "",
          }),
          data: { conductors: landed.length, allowed },
          ...basisOf(marksAt(context, landed), marksOn(device, "type", "entryKind")),
          ...(fix !== undefined && { fix }),
        });
      }
    }
    reportBond(context, allowed);
  },
});

function reportBond(context: BoxContext, allowed: number): void {
  const { enclosure, installation, edition, state, report } = context;
  const landed = landingsOf(enclosure).bonded;
  if (enclosure.kind !== "box" || landed.length <= allowed) return;
  const kinds = unlikeKinds(installation, enclosure, landed);
  const fix = kinds === undefined ? oneAtBondFix(installation, enclosure, state, landed) : undefined;
  report({
    subjects: [subject("enclosure", enclosure)],
    section: sectionIn(edition, "110.14(A), 250.148", "from-memory"),
    message: fillIn(kinds === undefined ? messages.bond : messages.bondUnlike, {
      ...shownAt(context, landed, allowed),
      kinds: kinds ?? "",
    }),
    data: { conductors: landed.length, allowed },
    ...basisOf(marksAt(context, landed)),
    ...(fix !== undefined && { fix }),
  });
}

const shownAt = ({ enclosure, installation }: BoxContext, landed: readonly EndKey[], allowed: number) => ({
  box: enclosure.name,
  count: landed.length,
  ends: listed(landed.map((end) => nameOfEnd(installation, enclosure, end))),
  allowed: wording.conductors(allowed),
});

const marksAt = ({ enclosure }: BoxContext, landed: readonly EndKey[]): readonly EvidenceMark[] =>
  landed.flatMap((end) => marksOn(enclosure.places[end] ?? {}, "at"));
