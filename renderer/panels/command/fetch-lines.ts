/** What the command field finds knows every part of the program; the start page does not wait for it. */
export const fetchCommandLines = () => import("./offer.ts");
