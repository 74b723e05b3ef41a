import { catalogue } from "../../../shared-model/lib/catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  commandShort: "Command…",
  commandPartTagOrFinding: "Command, part, tag or finding",
  notNow: "Not now:",
  nothingIsCalledThatTryA: "Nothing is called that. Try a part, for example B1, or a verb, for example place.",
  nothingOfThatIsCalledSo: "Nothing of that is called so.",
  whatWasFound: "What was found",
});
