import { freePlace } from "../../shared-model/geometry/free-place.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Installation, Layout, Point } from "../../shared-model/model/project.ts";
import { type DocumentState, installationOf } from "./document-store.ts";

type Places = Readonly<Record<EnclosureId, Point>>;

const kept = new WeakMap<Installation, { readonly layout: Layout; readonly places: Places }>();

/**
 * Where the boxes of the shown state stand on the sheet. Both states share one layout; a box that it does not name gets
 * the first free place, one after the other in the order of the boxes. Cached by wiring and layout.
 */
export function placesOf(document: DocumentState): Places {
  const installation = installationOf(document);
  const { layout } = document.project;
  const known = kept.get(installation);
  if (known?.layout.enclosures === layout.enclosures) return known.places;
  const places = withFreePlaces(document, installation);
  kept.set(installation, { layout, places });
  return places;
}

function withFreePlaces({ project }: DocumentState, installation: Installation): Places {
  const missing = Object.values(installation.enclosures)
    .filter(({ id }) => project.layout.enclosures[id] === undefined)
    .sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1));
  let enclosures = project.layout.enclosures;
  for (const { id, item } of missing) {
    const at = freePlace({ ...project, layout: { ...project.layout, enclosures } }, installation, item);
    enclosures = { ...enclosures, [id]: at };
  }
  return enclosures;
}
