import type { Role } from "../../shared-model/answers/circuit.ts";
import { wording } from "./words.ts";

/** Letter of a role in its tag, as on the terminals: H, N, G; and the word for it. */
export const ROLE_TAGS: Readonly<Record<Role, { readonly letter: string; readonly word: string }>> = {
  ungrounded: { letter: "H", word: "hot" },
  switched: { letter: "S", word: wording.switchedHot },
  traveller: { letter: "T", word: "traveller" },
  grounded: { letter: "N", word: "neutral" },
  ground: { letter: "G", word: "ground" },
  signal: { letter: "I", word: "signal" },
  floating: { letter: "F", word: "floating" },
  conflict: { letter: "X", word: wording.joinedToMoreThanOneSource },
};
