/** Measures of the near drawing, in drawing units: 1 du = 1 px at 100 %. */

/** Conductor rows, lanes, holes: everything lands on this pitch. */
export const PITCH = 16;
export const WALL = 9;
/** Half the width of a conductor with its casing. */
export const CONDUCTOR_HALF = 3.5;

/** Where the conductors of a sheath part and reach their rows, from the inner face of the wall. */
export const FAN = { start: 17, part: 25, end: 41 } as const;
/** Centre of the code plate near the sheath, first lane, and where a capped end stops. */
export const SHEATH_PLATE = 60;
export const FIRST_LANE = 84;
export const CAP_AT = 86;
export const CAP_LENGTH = 11;
/** Length of the sheath stub outside the wall. */
export const SHEATH_REACH = 124;

export const SPLICE_HALF = 11;
/** Label of a splice: its name stands this far above the first row, its caption 13.5 below that. */
export const SPLICE_LABEL_RISE = 31;
/** Rows above the first and below the last row of a splice that nothing may pass: its label and its free row. */
export const SPLICE_ROWS_ABOVE = 3;
export const SPLICE_ROWS_BELOW = 1;

export const DEVICE = { width: 136, blockOut: 20, blockWidth: 38, aboveFirstRow: 44, belowLastRow: 44 } as const;
/** Rows over and under a device that its words and its green screw take. */
export const DEVICE_ROWS_ABOVE = 5;
export const DEVICE_ROWS_BELOW = 4;

export const PLATE = { size: 11, weight: 640, pad: 3, height: 14, gap: 6 } as const;
