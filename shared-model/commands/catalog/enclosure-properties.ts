import { deviceTypes } from "../../catalog/device-types.ts";
import {
  choice,
  count,
  flag,
  gauges,
  may,
  must,
  number,
  type Property,
  several,
  text,
  type Where,
} from "./property.ts";

const BREAKERS = deviceTypes.filter((type) => type.family === "breaker" || type.family === "fuse");
const BOX: Where = { only: "box" };
const PANEL: Where = { only: "panel" };

/** Fields of boxes and panels. */
export const enclosureProperties: readonly Property[] = [
  may("note", text(200)),
  may("roomId", { kind: "room" }),
  may("accessible", flag),
  must("volume", { kind: "volume" }, BOX),
  must("internalClamps", choice(["none", "present", "included-in-marked-volume", "unknown"]), BOX),
  must("supports", several(["stud", "hickey"]), BOX),
  may("terminalBlocks", { kind: "choices", choices: gauges, repeats: true }, BOX),
  must("material", choice(["metal", "nonmetallic", "unknown"]), BOX),
  must("shape", choice(["device", "square", "octagon", "round", "masonry", "cast"]), BOX),
  must("gangs", count(1, 10), BOX),
  may("depthIn", number("in", 0.25, 24), BOX),
  may("openingMinIn", number("in", 0.5, 48), BOX),
  may("listedFor", several(["device", "luminaire", "fan"]), BOX),
  may("fanWeightLb", number("lb", 0, 500), BOX),
  may("luminaireWeightLb", number("lb", 0, 500), BOX),
  may("mountedOn", choice(["wall", "ceiling", "floor"]), BOX),
  may("framingBehind", flag, BOX),
  may("exposure", choice(["dry", "damp", "wet"]), BOX),
  may(
    "cover",
    choice(["none", "blank", "device-plate", "weatherproof-closed", "weatherproof-in-use", "luminaire"]),
    BOX,
  ),
  may("openKnockouts", count(0, 50), BOX),
  may("setbackIn", number("in", 0, 12), BOX),
  may("wallCombustible", flag, BOX),
  may("beingSurveyed", flag, BOX),
  must("spaces", count(1, 84), PANEL),
  must("supply", choice(["service", "feeder"]), PANEL),
  must("mainBond", choice(["here", "elsewhere", "unknown"]), PANEL),
  may("busRatingA", number("A", 1, 1_200), PANEL),
  may(
    "listedBreakers",
    { kind: "choices", choices: BREAKERS.map((type) => ({ value: type.id, label: type.title })) },
    PANEL,
  ),
];
