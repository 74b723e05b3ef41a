import { STORED_WORDS } from "../catalog/stored-words.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Cable } from "../model/cable.ts";
import type { Installation } from "../model/project.ts";
import type { Section } from "../solver/section.ts";
import type { SharedQuestion } from "./rule.ts";
import { listed, subject } from "./rule-parts.ts";

const wording = catalogue({
  circuitAt: (box: Part) => `the circuit at ${box}`,
  notDrawn: (boxes: Part, cable: Part) =>
    `The supply of ${boxes} is not drawn: ${cable} brings it from outside this drawing.`,
  panelThatFeeds: (cable: Part) => `the panel that feeds ${cable}`,
  drawPanelFor: (cable: Part) => `Draw the panel and run ${cable} to it, or judge these by hand.`,
  supplyOf: (boxes: Part) => `the supply of ${boxes}`,
  drawPanel: "Draw the panel and run the cable that brings the supply to it, or judge these by hand.",
  alsoSupply: "",
  notInDrawing: (boxes: Part) => `The supply of ${boxes} is not in this drawing.`,
  notInDrawingMany: (boxes: Part, cables: Part) =>
    `The supply of ${boxes} is not in this drawing: ${cables} lead out of it.`,
  notInDrawingOne: (boxes: Part, cable: Part) =>
    `The supply of ${boxes} is not in this drawing: ${cable} leads out of it.`,
});

/** What a cable that leads out of the drawing is called when it brings the supply. Common practice, from memory. */
const SUPPLY_WORDS = /\b(supply|panel|source|service|feed|feeder|line|breaker|home ?run)\b/i;

/** The same words of another language, with spaces between; English is read in every language. */
const ALSO_SUPPLY: readonly string[] = wording.alsoSupply.match(/\p{L}+/gu) ?? [];

const isSupply = (text: string): boolean =>
  text === STORED_WORDS.theSupply ||
  SUPPLY_WORDS.test(text) ||
  (text.toLowerCase().match(/\p{L}+/gu) ?? []).some((word) => ALSO_SUPPLY.includes(word));

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
  if (first === undefined || isSupplyDrawn({ cables }, installation)) return undefined;
  const outward = cables.filter(({ sides }) => "outside" in sides.a || "outside" in sides.b);
  const named = outward.filter((cable) => saysSupply(installation, cable));
  const at = subject("enclosure", first);
  const boxes = enclosures.length > 3 ? wording.circuitAt(first.name) : listed(enclosures.map(({ name }) => name));
  const common = { id: ["supply", first.id].join(" "), cannot };
  const [cable] = named;
  if (cable !== undefined)
    return {
      ...common,
      subjects: [subject("cable", cable), at],
      lead: wording.notDrawn(boxes, cable.name),
      missing: wording.panelThatFeeds(cable.name),
      toDo: wording.drawPanelFor(cable.name),
    };
  const names = listed(outward.map(({ name }) => name));
  return {
    ...common,
    subjects: [at],
    lead:
      outward.length === 0
        ? wording.notInDrawing(boxes)
        : (outward.length === 1 ? wording.notInDrawingOne : wording.notInDrawingMany)(boxes, names),
    missing: wording.supplyOf(boxes),
    toDo: wording.drawPanel,
  };
}

/** Whether a cable of the section ends in a panel. */
export const isSupplyDrawn = ({ cables }: Pick<Section, "cables">, installation: Installation): boolean =>
  cables.some((cable) => endsInPanel(installation, cable));

const endsInPanel = ({ enclosures }: Installation, { sides }: Cable): boolean =>
  [sides.a, sides.b].some((side) => "enclosure" in side && enclosures[side.enclosure]?.kind === "panel");

/** A person said so of the box that it enters, or wrote it where the cable leaves the drawing. */
function saysSupply({ intent }: Installation, { id, sides }: Cable): boolean {
  return [sides.a, sides.b].some((side) =>
    "outside" in side ? isSupply(side.outside) : intent.boxes[side.enclosure]?.supply === id,
  );
}
