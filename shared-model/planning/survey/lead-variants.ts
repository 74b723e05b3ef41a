import type { SurveyItem, SurveyLamp, SurveySwitch } from "../../model/survey.ts";
import type { Lead, LeadVariant } from "./lead.ts";
import { LEFT_PLUGGED, LEFT_PLUGGED_UNCHECKED } from "./survey-values.ts";

/** What is known of the surroundings while something is read. */
export interface Surroundings {
  readonly switches: readonly SurveySwitch[];
  readonly nothingPlugged: boolean;
}

/** Nobody looked: a third each. */
const UNKNOWN_LAMP: readonly SurveyLamp[] = ["none", "filament", "led"];

/** Lamps that the lights of a lead may hold, with the share of each. */
export function lampChoices(lead: Lead): readonly { readonly share: number; readonly lamps: readonly SurveyLamp[] }[] {
  let choices: { readonly share: number; readonly lamps: readonly SurveyLamp[] }[] = [{ share: 1, lamps: [] }];
  for (const { lamp } of lightsOf(lead)) {
    const may = lamp === undefined ? UNKNOWN_LAMP : [lamp];
    choices = choices.flatMap(({ share, lamps }) =>
      may.map((one) => ({ share: share / may.length, lamps: [...lamps, one] })),
    );
  }
  return choices;
}

/** Lights beyond a lead; one that nobody named where the kind of the lead says that there is one. */
export function lightsOf({ kind, items }: Lead): readonly Pick<SurveyItem, "lamp" | "switches">[] {
  const lights = items.filter((item) => item.kind === "light").slice(0, 3);
  return lights.length === 0 && (kind === "leg" || kind === "loop-fed") ? [{}] : lights;
}

/** Chance that every switch on the way to a light is on. */
export function chanceOn({ switches = [] }: Pick<SurveyItem, "switches">, at: readonly SurveySwitch[]): number {
  let chance = 1;
  for (const name of switches) {
    const known = at.find((one) => one.switch === name);
    chance *= known === undefined ? 0.5 : known.on ? 1 : 0;
  }
  return chance;
}

/** Every way in which a lead with these lamps may stand in these surroundings. */
export function variantsWith(
  lead: Lead,
  lamps: readonly SurveyLamp[],
  { switches, nothingPlugged }: Surroundings,
): readonly LeadVariant[] {
  const lights = lightsOf(lead);
  let variants: LeadVariant[] = [{ share: 1, lamps: [] }];
  lights.forEach((light, index) => {
    const on = chanceOn(light, switches);
    const lamp = lamps[index] as SurveyLamp;
    variants = variants.flatMap((one) => [
      ...(on > 0 ? [{ ...one, share: one.share * on, lamps: [...one.lamps, lamp] }] : []),
      ...(on < 1 ? [{ ...one, share: one.share * (1 - on) }] : []),
    ]);
  });
  const either = (chance: number, field: "load" | "closed" | "sameLeg"): void => {
    variants = variants.flatMap((one) => [
      { ...one, share: one.share * chance, [field]: true } as LeadVariant,
      { ...one, share: one.share * (1 - chance) },
    ]);
  };
  switch (lead.kind) {
    case "supply":
      // Something else of the circuit may be on upstream, and is seen past an open neutral or with the power off.
      either(0.5, "load");
      break;
    case "multiwire-supply":
      either(0.2, "sameLeg");
      break;
    case "feeds":
      if (lead.items.some(({ kind }) => kind === "outlet") || lead.items.length === 0)
        either(nothingPlugged ? LEFT_PLUGGED : LEFT_PLUGGED_UNCHECKED, "load");
      break;
    case "switched-supply":
    case "loop":
    case "travellers":
      either(0.5, "closed");
      break;
    default:
      break;
  }
  return variants;
}
