import { circuitOf } from "../../shared-model/geometry/circuit/sections.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { CableId, EnclosureId, EndKey } from "../../shared-model/model/ids.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { findEndFacts } from "../../shared-model/queries/end-facts.ts";
import { findDevice, findJumper, findSplice } from "../../shared-model/queries/find-item.ts";
import { inOrder } from "../../shared-model/queries/in-order.ts";
import { documentStore, shownInstallation } from "./document-store.ts";
import { homeOf } from "./home-of.ts";
import { laterWording } from "./later-words.ts";
import { nameOfSelected } from "./name-of-selected.ts";
import { keyOf, type Selected } from "./selection.ts";
import { select, sessionStore } from "./session-store.ts";

/** Everything of the drawing that is of the same kind as a thing: same box, device, cable, connector, colour in its box. */
export function alikeOf(installation: Installation, item: Selected): readonly Selected[] {
  const boxes = inOrder<Enclosure>(installation.enclosures);
  switch (item.kind) {
    case "enclosure": {
      const made = installation.enclosures[item.id]?.item;
      return boxes.flatMap((box) => (box.item === made ? [{ kind: "enclosure", id: box.id }] : []));
    }
    case "device": {
      const type = findDevice(installation, item.id)?.device.type;
      return boxes.flatMap(({ devices }) =>
        inOrder(devices).flatMap((one): readonly Selected[] =>
          one.type === type ? [{ kind: "device", id: one.id }] : [],
        ),
      );
    }
    case "splice": {
      const connector = findSplice(installation, item.id)?.splice.connector;
      return boxes.flatMap(({ splices }) =>
        inOrder(splices).flatMap((one): readonly Selected[] =>
          one.connector === connector ? [{ kind: "splice", id: one.id }] : [],
        ),
      );
    }
    case "jumper": {
      const made = findJumper(installation, item.id)?.jumper;
      return boxes.flatMap(({ jumpers }) =>
        inOrder(jumpers).flatMap((one): readonly Selected[] =>
          one.colour === made?.colour && one.awg === made.awg ? [{ kind: "jumper", id: one.id }] : [],
        ),
      );
    }
    case "cable": {
      const made = installation.cables[item.id]?.item;
      return inOrder(installation.cables).flatMap((one): readonly Selected[] =>
        one.item === made ? [{ kind: "cable", id: one.id }] : [],
      );
    }
    case "load": {
      const made = installation.loads[item.id]?.item;
      return inOrder(installation.loads).flatMap((one): readonly Selected[] =>
        one.item === made ? [{ kind: "load", id: one.id }] : [],
      );
    }
    case "end": {
      const box = installation.enclosures[item.enclosure];
      const colour = box && findEndFacts(installation, box, item.id)?.colour;
      if (box === undefined) return [];
      return (Object.keys(box.places) as EndKey[]).flatMap((id): readonly Selected[] =>
        findEndFacts(installation, box, id)?.colour === colour ? [{ kind: "end", enclosure: box.id, id }] : [],
      );
    }
    default:
      return [item];
  }
}

/** The boxes and cables that hang together with a thing without passing through a panel; of a panel, all that it feeds. */
export function circuitItems(installation: Installation, item: Selected): readonly Selected[] {
  const start = startOf(installation, item);
  if (start === undefined) return [];
  const { boxes, panels } = circuitOf(installation, start);
  const own = new Set<EnclosureId>(boxes);
  const within = new Set<EnclosureId>([...boxes, ...panels]);
  // A panel feeds other circuits too: it comes along only where it was meant.
  const chosen = own.has(start) ? boxes : [start, ...boxes];
  const cables = Object.values(installation.cables).flatMap(({ id, sides }): readonly Selected[] => {
    const ends = [sides.a, sides.b].flatMap((side) => ("enclosure" in side ? [side.enclosure] : []));
    return ends.every((end) => within.has(end)) && ends.some((end) => own.has(end)) ? [{ kind: "cable", id }] : [];
  });
  return [...chosen.map((id): Selected => ({ kind: "enclosure", id })), ...cables];
}

function startOf(installation: Installation, item: Selected): EnclosureId | undefined {
  if (item.kind !== "cable") return homeOf(installation, item);
  const { sides } = installation.cables[item.id as CableId] ?? {};
  const ends = [sides?.a, sides?.b].flatMap((side) => (side && "enclosure" in side ? [side.enclosure] : []));
  return ends.find((id) => installation.enclosures[id]?.kind === "box") ?? ends[0];
}

/** The devices, splices and jumpers of the box that a thing is, or is in. */
export function insideOf(installation: Installation, item: Selected): readonly Selected[] {
  const id = homeOf(installation, item);
  const box = id && installation.enclosures[id];
  if (box === undefined) return [];
  return [
    ...inOrder(box.devices).map((one): Selected => ({ kind: "device", id: one.id })),
    ...inOrder(box.splices).map((one): Selected => ({ kind: "splice", id: one.id })),
    ...inOrder(box.jumpers).map((one): Selected => ({ kind: "jumper", id: one.id })),
  ];
}

const KINDS: Readonly<Partial<Record<Selected["kind"], string>>> = {
  enclosure: laterWording.selectBoxesMadeLike,
  device: laterWording.selectDevicesMadeLike,
  splice: laterWording.selectSplicesWithTheConnectorOf,
  jumper: laterWording.selectJumpersMadeLike,
  cable: laterWording.selectCablesMadeLike,
  load: laterWording.selectLoadsMadeLike,
  end: laterWording.selectConductorsColouredLike,
};

/** One way to select more, from what is selected first. */
export interface SelectLine {
  readonly title: string;
  readonly run: () => void;
}

/** Ways to select more from a thing; none where it would select nothing more. */
export function selectMoreLines(item: Selected): readonly SelectLine[] {
  const installation = shownInstallation();
  const words = KINDS[item.kind];
  const name = nameOfSelected(documentStore.get(), item);
  const home = homeOf(installation, item);
  const box = home && installation.enclosures[home]?.name;
  const lines = [
    ...(words === undefined ? [] : [{ title: `${words} ${name}`, items: alikeOf(installation, item) }]),
    { title: laterWording.selectTheCircuitOf(name), items: circuitItems(installation, item) },
    ...(box === undefined ? [] : [{ title: laterWording.selectAllThatIsIn(box), items: insideOf(installation, item) }]),
  ];
  return lines
    .filter(({ items }) => items.length > 1 || (items[0] !== undefined && keyOf(items[0]) !== keyOf(item)))
    .map(({ title, items }) => ({ title, run: () => select(...items) }));
}

/** The same for what was selected first. */
export function selectMoreOfSelection(): readonly SelectLine[] {
  const [first] = sessionStore.get().selection;
  return first === undefined ? [] : selectMoreLines(first);
}
