import { ROOM_KINDS } from "../../model/room.ts";
import {
  asWritten,
  choice,
  choicesBy,
  count,
  flag,
  may,
  number,
  type Property,
  priority,
  prose,
  several,
  type Where,
} from "./property.ts";
import { wording } from "./property-words.ts";

const BREAKER: Where = { traits: ["breaker"] };
const USER: Where = { traits: ["user"] };

/** Fields of devices, each where it means something. */
export const deviceProperties: readonly Property[] = [
  may("zones", several(ROOM_KINDS), { traits: ["in-box"] }),
  may("hotTab", choice(["intact", "removed"]), { traits: ["hot-tab"] }),
  may("neutralTab", choice(["intact", "removed"]), { traits: ["neutral-tab"] }),
  may("entryKind", choice(["side-screw", "clamp-plate", "push-in"]), {
    traits: ["entry-choice"],
  }),
  may("ratingA", number("A", 1, 100), { traits: ["yoke"] }),
  may("tamperResistant", flag, { traits: ["receptacle"] }),
  may("weatherResistant", flag, { traits: ["receptacle"] }),
  may("markedForAluminium", flag, { traits: ["in-box"] }),
  may("acceptsStranded", flag),
  may("selfGrounding", flag, { traits: ["yoke"] }),
  may("bodyDepthIn", number("in", 0.1, 12), { traits: ["yoke"] }),
  may("reachHeightIn", number("in", 0, 240), { traits: ["in-box"] }),
  may("behindAppliance", flag, { traits: ["in-box"] }),
  may("metalPlate", flag, { traits: ["yoke"] }),
  may("fastenedTo", choice(["box", "ring", "cover", "nothing"]), { traits: ["yoke"] }),
  may("wasSplit", flag, { traits: ["receptacle"] }),
  may("ratingW", number("W", 0, 10_000), { traits: ["dimmer"] }),
  may("ledRatingW", number("W", 0, 10_000), { traits: ["dimmer"] }),
  may("sideSectionsRemoved", count(0, 10), { traits: ["dimmer"] }),
  may("reversal", choice(["deny", "deny-first", "trips", "legacy"]), { traits: ["line-load"] }),
  may("faceContact", choice(["separate", "tied-to-load"]), { traits: ["line-load"] }),
  may("slot", count(1, 84), BREAKER),
  may("breakerRatingA", number("A", 1, 1_200), BREAKER),
  may("legs", { kind: "choices", choices: choicesBy(["A", "B", "C"], asWritten) }, BREAKER),
  may(
    "function",
    choice(["none", "gfci", "afci", "dual", "equipment-ground-fault"], { none: wording.overcurrentOnly }),
    BREAKER,
  ),
  may("tiedTo", { kind: "breaker" }, BREAKER),
  may("listedForPanel", flag, BREAKER),
  may("groupedInPanel", flag, BREAKER),
  may("loadW", number("W", 0, 50_000), USER),
  may("loadOhm", number("Ω", 0.1, 10_000_000), USER),
  may("leakMa", number("mA", 0, 1_000), USER),
  may("continuous", flag, USER),
  may("priority", priority, USER),
  may("weightLb", number("lb", 0, 500), USER),
  may("heldByBuilding", flag, USER),
  may("supplyC", number("°C", 40, 250), USER),
  may("notes", prose),
];
