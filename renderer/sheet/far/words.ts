import { catalogue, type Part } from "../../../shared-model/lib/catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  colorMixInSrgb26: (faint: Part, paper: Part) => `color-mix(in srgb, ${faint} 26%, ${paper})`,
  colorMixInSrgb6: (faint: Part, paper: Part) => `color-mix(in srgb, ${faint} 6%, ${paper})`,
  n800Px: (part: Part, face: Part) => `800 ${part}px ${face}`,
});
