import type { ScopeMaterial } from "../../answers/scope.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";

export const MATERIALS = catalogue({
  title: "Materials",
  none: "The work needs no material.",
  note: "Generic items: verify that each is listed for its use. Lengths are those of the drawing; add what is usual for waste.",
  takenOut: "Taken out",
  takenOutNote: "keep or discard with the customer",
  have: "have",
  quantity: "quantity",
  what: "what",
  for: "for",
  out: "out",
  from: "from",
  noteOf: (quantity: Part, note: Part) => `${quantity}: ${note}`,
});

export const MATERIAL_GROUPS: Readonly<Record<ScopeMaterial["group"], string>> = catalogue({
  device: "Devices",
  box: "Boxes",
  cable: "Cable",
  connector: "Connectors",
  conductor: "Conductors",
  fitting: "Fittings",
  label: "Labels",
});

const QUANTITIES: Readonly<Record<ScopeMaterial["unit"], (figure: Part) => string>> = catalogue({
  piece: (figure: Part) => `${figure}`,
  ft: (figure: Part) => `${figure} ft`,
  in: (figure: Part) => `${figure} in.`,
});

export const quantityWords = (figure: number, unit: ScopeMaterial["unit"]): string => QUANTITIES[unit](figure);

export const UNIT_NAMES: Readonly<Record<ScopeMaterial["unit"], string>> = catalogue({
  piece: "piece",
  ft: "ft",
  in: "in",
});

/** Of the lists for writers of tables. */
export const MATERIAL_TABLES = catalogue({
  materials: "Materials",
  takenOut: "Taken out",
  group: "Group",
  item: "Item",
  quantity: "Quantity",
  unit: "Unit",
  for: "For",
  note: "Note",
  from: "From",
});
