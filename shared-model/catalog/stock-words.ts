import { catalogue, type Part } from "../lib/catalogue.ts";

/** Cables of the stock. */
export const CABLE_TITLES = catalogue({
  "nm-12-2-g": "12/2 with ground",
  "nm-14-2-g": "14/2 with ground",
  "nm-12-3-g": "12/3 with ground",
  "nm-14-3-g": "14/3 with ground",
  "nm-12-2-2-g": "12/2/2 with ground",
  "nm-10-2-g": "10/2 with ground",
  "nm-10-3-g": "10/3 with ground",
  "nm-14-2": "14/2, no ground, old",
  "nm-12-2": "12/2, no ground, old",
  "nm-14-2-reduced-g": "14/2 with 16 AWG ground, old",
  "armoured-12-2-g": "Armoured 12/2 with ground",
  "armoured-12-2-old": "Armoured 12/2, old, no bonding strip",
  "al-12-2-g": "Aluminium 12/2 with ground, old",
  "al-10-2-g": "Aluminium 10/2 with ground",
  "knob-tube-14": "Knob-and-tube single, 14",
  "knob-tube-12": "Knob-and-tube single, 12",
  "single-12-black": "Single conductor, 12 black",
  "single-12-white": "Single conductor, 12 white",
});

/** Connectors of the stock. */
export const CONNECTOR_TITLES = catalogue({
  "twist-small": "Twist-on, small",
  "twist-medium": "Twist-on, medium",
  "twist-large": "Twist-on, large",
  "twist-grounding": "Twist-on, grounding, through hole",
  "lever-2": "Lever, 2 ports",
  "lever-3": "Lever, 3 ports",
  "lever-5": "Lever, 5 ports",
  "push-in-2": "Push-in splicing, 2 ports",
  "push-in-3": "Push-in splicing, 3 ports",
  "push-in-4": "Push-in splicing, 4 ports",
  "push-in-6": "Push-in splicing, 6 ports",
  "push-in-8": "Push-in splicing, 8 ports",
  "al-cu-listed": "Listed aluminium-copper connector",
  "crimp-ground": "Crimp sleeve for grounds",
});

/** One word for the sheet. */
export const CONNECTOR_WORDS = catalogue({
  "twist-small": "small",
  "twist-medium": "medium",
  "twist-large": "large",
  "twist-grounding": "grounding",
  "lever-2": "lever 2",
  "lever-3": "lever 3",
  "lever-5": "lever 5",
  "push-in-2": "push-in 2",
  "push-in-3": "push-in 3",
  "push-in-4": "push-in 4",
  "push-in-6": "push-in 6",
  "push-in-8": "push-in 8",
  "al-cu-listed": "Al-Cu",
  "crimp-ground": "crimp",
});

/** Boxes and panels of the stock. */
export const ENCLOSURE_TITLES = catalogue({
  "plastic-new-1": "Nonmetallic new-work, 1 gang",
  "plastic-new-2": "Nonmetallic new-work, 2 gang",
  "plastic-old-1": "Nonmetallic old-work, 1 gang",
  "plastic-old-2": "Nonmetallic old-work, 2 gang",
  "square-4-2-1-8": "4 in. square × 2-1/8",
  "square-4-1-1-2": "4 in. square × 1-1/2",
  "square-4-1-1-4": "4 in. square × 1-1/4",
  "square-4-11-16-2-1-8": "4-11/16 sq. × 2-1/8",
  "square-4-11-16-1-1-2": "4-11/16 sq. × 1-1/2",
  "square-4-11-16-1-1-4": "4-11/16 sq. × 1-1/4",
  "device-3-2-3-1-2": "Device 3 × 2 × 3-1/2",
  "device-3-2-2-3-4": "Device 3 × 2 × 2-3/4",
  "device-3-2-2-1-2": "Device 3 × 2 × 2-1/2",
  "device-3-2-2-1-4": "Device 3 × 2 × 2-1/4",
  "device-3-2-2": "Device 3 × 2 × 2",
  "device-3-2-1-1-2": "Device 3 × 2 × 1-1/2",
  "device-4-2-1-8-2-1-8": "Device 4 × 2-1/8 × 2-1/8",
  "device-4-2-1-8-1-7-8": "Device 4 × 2-1/8 × 1-7/8",
  "device-4-2-1-8-1-1-2": "Device 4 × 2-1/8 × 1-1/2",
  "octagon-4-2-1-8": "Octagon 4 × 2-1/8",
  "octagon-4-1-1-2": "Octagon 4 × 1-1/2",
  "octagon-4-1-1-4": "Octagon 4 × 1-1/4",
  "masonry-3-1-2": "Masonry × 3-1/2, one gang",
  "masonry-2-1-2": "Masonry × 2-1/2, one gang",
  "weatherproof-fd": "Weatherproof FD, one gang",
  "weatherproof-fs": "Weatherproof FS, one gang",
  "plastic-ceiling": "Nonmetallic ceiling, round",
  "fan-rated": "Fan-rated ceiling box",
  pancake: "Pancake, 1/2 in.",
  "panel-16": "Panel, 16 spaces",
  "panel-30": "Panel, 30 spaces",
});

/** Things to plug in. */
export const LOAD_TITLES = catalogue({
  "lamp-60": "Table lamp",
  "heater-1200": "Portable heater",
  "freezer-180": "Freezer",
  "washer-500": "Washer",
  "sump-pump-800": "Sump pump",
  "appliance-600": "Small appliance",
});

/** Right-hand figures of the stock list, and what is set into a sheath. */
export const FIGURES = catalogue({
  aluminium: (size: Part) => `${size} AL`,
  spaces: (count: Part) => `${count} sp.`,
});

export const SIZE_WORDS = catalogue({
  metric: (size: Part, millimetres: Part) => `${size}, ${millimetres} mm`,
});

/** Sizes of standard metal boxes, by what is stored. */
export const STANDARD_SIZES = catalogue({
  "4x1-1/4 round/octagonal": "4 × 1-1/4 round/octagonal",
  "4x1-1/2 round/octagonal": "4 × 1-1/2 round/octagonal",
  "4x2-1/8 round/octagonal": "4 × 2-1/8 round/octagonal",
  "4x1-1/4 square": "4 × 1-1/4 square",
  "4x1-1/2 square": "4 × 1-1/2 square",
  "4x2-1/8 square": "4 × 2-1/8 square",
  "4-11/16x1-1/4 square": "4-11/16 × 1-1/4 square",
  "4-11/16x1-1/2 square": "4-11/16 × 1-1/2 square",
  "4-11/16x2-1/8 square": "4-11/16 × 2-1/8 square",
  "3x2x1-1/2 device": "3 × 2 × 1-1/2 device",
  "3x2x2 device": "3 × 2 × 2 device",
  "3x2x2-1/4 device": "3 × 2 × 2-1/4 device",
  "3x2x2-1/2 device": "3 × 2 × 2-1/2 device",
  "3x2x2-3/4 device": "3 × 2 × 2-3/4 device",
  "3x2x3-1/2 device": "3 × 2 × 3-1/2 device",
  "4x2-1/8x1-1/2 device": "4 × 2-1/8 × 1-1/2 device",
  "4x2-1/8x1-7/8 device": "4 × 2-1/8 × 1-7/8 device",
  "4x2-1/8x2-1/8 device": "4 × 2-1/8 × 2-1/8 device",
  "3-3/4x2x2-1/2 masonry, per gang": "3-3/4 × 2 × 2-1/2 masonry, per gang",
  "3-3/4x2x3-1/2 masonry, per gang": "3-3/4 × 2 × 3-1/2 masonry, per gang",
  "FS single cover, 1-3/4 min depth, per gang": "FS single cover, 1-3/4 min depth, per gang",
  "FD single cover, 2-3/8 min depth, per gang": "FD single cover, 2-3/8 min depth, per gang",
  "FS multiple cover, 1-3/4 min depth, per gang": "FS multiple cover, 1-3/4 min depth, per gang",
  "FD multiple cover, 2-3/8 min depth, per gang": "FD multiple cover, 2-3/8 min depth, per gang",
});
