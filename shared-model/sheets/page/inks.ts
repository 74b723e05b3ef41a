import type { Ink } from "../display-list.ts";

/** The inks of paper. What they tell is told by form and word too, so that a grey printer loses nothing. */
export const INK: Ink = "#000000";
export const SECOND_INK: Ink = "#1c1c1c";
export const THIRD_INK: Ink = "#3a3a3a";
export const PAPER: Ink = "#ffffff";
/** Hairlines between cells. */
export const HAIR: Ink = "#9a9a9a";
/** What stands for the marking pen: the ground of a line that warns. Light enough for black words in any grey. */
export const AMBER: Ink = "#ffd98a";
/** Ground of heads of tables and of what is set apart. */
export const TINT: Ink = "#ececec";
