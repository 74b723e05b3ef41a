/**
 * SVG has neither buttons nor a way to keep its words from being read twice. These are the attributes that stand in: a
 * named button, whose presses and keys the box answers and to which the arrow keys of the sheet lead, and a part of a drawing that only eyes need.
 */
export const asButton = (name: string) => ({ role: "button", tabIndex: -1, "aria-label": name }) as const;

export const FOR_EYES_ONLY = { "aria-hidden": true } as const;
