import { catalogue, type Part } from "../../lib/catalogue.ts";

/** What is done to a box itself, and to what is in it. */
export const BOX_WORDS = catalogue({
  becomes: (box: Part, part: Part, was: Part, will: Part) => `${box}: ${part}: ${was} becomes ${will}.`,
  bring: (cable: Part, box: Part) => `Bring ${cable} into ${box} and strip its sheath.`,
  confirm: (box: Part) => `${box}: confirm its volume, free length of conductors, and insulation.`,
  exchange: (box: Part, was: Part, will: Part) => `Exchange ${box}: ${was} out, ${will} in.`,
  exchangePart: (box: Part, part: Part, was: Part, will: Part) => `${box}: ${part}: ${was} out, ${will} in.`,
  fill: (total: Part, available: Part, parts: Part, left: Part) =>
    `Fill ${total} of ${available} in³: ${parts}, ${left}.`,
  fillUnknown: (total: Part, parts: Part) =>
    `Fill ${total} in³: ${parts}. The volume of the box is not recorded: read its marking.`,
  fit: (box: Part, part: Part, will: Part) => `${box}: fit ${part}, ${will}.`,
  left: (volume: Part) => `${volume} left`,
  makeGood: (end: Part, place: Part) => `Make ${end} good at ${place}: cut back, strip and make it again.`,
  mark: (end: Part, colour: Part) => `Mark ${end} ${colour} with tape or paint at this end.`,
  rename: (box: Part, was: Part, will: Part) => `${box}: write ${will} on it in place of ${was}.`,
  set: (box: Part, will: Part) => `Set ${box}: ${will}.`,
  takeOut: (box: Part, was: Part) => `Take ${box} out (${was}), or leave it in reach under a blank cover.`,
  takeOutPart: (box: Part, part: Part) => `${box}: take out the ${part}.`,
  tooMuch: (volume: Part) => `${volume} too much`,
});
