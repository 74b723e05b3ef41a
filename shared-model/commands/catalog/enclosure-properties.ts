import { deviceTypes } from "../../catalog/device-types.ts";
import { WIRE_SIZES } from "../../units/wire-size.ts";
import {
  choice,
  choices,
  count,
  flag,
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
  may("note", "Place", text(200)),
  may("roomId", "Room", { kind: "room" }),
  may("accessible", "Accessible", flag),
  must("volume", "Volume", { kind: "volume" }, BOX),
  must("internalClamps", "Internal clamps", choice(["none", "present", "included-in-marked-volume", "unknown"]), BOX),
  must("supports", "Studs and hickeys", several(["stud", "hickey"]), BOX),
  may(
    "terminalBlocks",
    "Terminal blocks",
    {
      kind: "choices",
      choices: choices(WIRE_SIZES, Object.fromEntries(WIRE_SIZES.map((size) => [size, `${size} AWG`]))),
      repeats: true,
    },
    BOX,
  ),
  must("material", "Material", choice(["metal", "nonmetallic", "unknown"]), BOX),
  must("shape", "Shape", choice(["device", "square", "octagon", "round", "masonry", "cast"]), BOX),
  must("gangs", "Gangs", count(1, 10), BOX),
  may("depthIn", "Depth", number("in", 0.25, 24), BOX),
  may("openingMinIn", "Least dimension of the opening", number("in", 0.5, 48), BOX),
  may("listedFor", "Listed for", several(["device", "luminaire", "fan"]), BOX),
  may("fanWeightLb", "Fan weight it is listed for", number("lb", 0, 500), BOX),
  may("luminaireWeightLb", "Luminaire weight it is marked for", number("lb", 0, 500), BOX),
  may("mountedOn", "Mounted on", choice(["wall", "ceiling", "floor"]), BOX),
  may("framingBehind", "Framing behind it can carry a fan", flag, BOX),
  may(
    "exposure",
    "Weather",
    choice(["dry", "damp", "wet"], {
      dry: "Dry",
      damp: "Damp: under a roof, or moist indoors",
      wet: "Wet: rain or spray reaches it",
    }),
    BOX,
  ),
  may(
    "cover",
    "Cover",
    choice(["none", "blank", "device-plate", "weatherproof-closed", "weatherproof-in-use", "luminaire"]),
    BOX,
  ),
  may("openKnockouts", "Open knockouts", count(0, 50), BOX),
  may("setbackIn", "Set back from the finished wall", number("in", 0, 12), BOX),
  may("wallCombustible", "Combustible wall", flag, BOX),
  may("beingSurveyed", "Being surveyed", flag, BOX),
  must("spaces", "Spaces", count(1, 84), PANEL),
  must("supply", "Supplied by", choice(["service", "feeder"]), PANEL),
  must("mainBond", "Main bond", choice(["here", "elsewhere", "unknown"]), PANEL),
  may("busRatingA", "Bus rating", number("A", 1, 1_200), PANEL),
  may(
    "listedBreakers",
    "Breakers its marking lists",
    { kind: "choices", choices: BREAKERS.map((type) => ({ value: type.id, label: type.title })) },
    PANEL,
  ),
];
