import type { Cable } from "../model/cable.ts";
import type { Installation } from "../model/project.ts";
import type { Section } from "../solver/section.ts";
import type { SharedQuestion } from "./rule.ts";
import { listed, subject } from "./rule-parts.ts";

/** What a cable that leads out of the drawing is called when it brings the supply. Common practice, from memory. */
const SUPPLY_WORDS = /\b(supply|panel|source|service|feed|feeder|line|breaker|home ?run)\b/i;

/**
 * What is missing where no panel is drawn for a section: it is asked once, whatever waits for it. Undefined where a cable
 * of the section ends in a panel, since something more particular is missing there.
 */
export function supplyNotDrawn(
  { enclosures, cables }: Section,
  installation: Installation,
  cannot: string,
): SharedQuestion | undefined {
  const [first] = enclosures;
  if (first === undefined || cables.some((cable) => endsInPanel(installation, cable))) return undefined;
  const outward = cables.filter(({ sides }) => "outside" in sides.a || "outside" in sides.b);
  const named = outward.filter((cable) => saysSupply(installation, cable));
  const at = subject("enclosure", first);
  const boxes = enclosures.length > 3 ? `the circuit at ${first.name}` : listed(enclosures.map(({ name }) => name));
  const common = { id: `supply ${first.id}`, cannot };
  const [cable] = named;
  if (cable !== undefined)
    return {
      ...common,
      subjects: [subject("cable", cable), at],
      lead: `The supply of ${boxes} is not drawn: ${cable.name} brings it from outside this drawing.`,
      missing: `the panel that feeds ${cable.name}`,
      toDo: `Draw the panel and run ${cable.name} to it, or judge these by hand.`,
    };
  const names = listed(outward.map(({ name }) => name));
  const leads = outward.length === 0 ? "" : `: ${names} ${outward.length === 1 ? "leads" : "lead"} out of it`;
  return {
    ...common,
    subjects: [at],
    lead: `The supply of ${boxes} is not in this drawing${leads}.`,
    missing: `the supply of ${boxes}`,
    toDo: `Draw the panel and run the cable that brings the supply to it, or judge these by hand.`,
  };
}

const endsInPanel = ({ enclosures }: Installation, { sides }: Cable): boolean =>
  [sides.a, sides.b].some((side) => "enclosure" in side && enclosures[side.enclosure]?.kind === "panel");

/** A person said so of the box that it enters, or wrote it where the cable leaves the drawing. */
function saysSupply({ intent }: Installation, { id, sides }: Cable): boolean {
  return [sides.a, sides.b].some((side) =>
    "outside" in side ? SUPPLY_WORDS.test(side.outside) : intent.boxes[side.enclosure]?.supply === id,
  );
}
