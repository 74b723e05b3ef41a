import fc from "fast-check";
import { cableItems } from "../../shared-model/catalog/cable-items.ts";
import { connectors } from "../../shared-model/catalog/connectors.ts";
import type { Box, EntryMeans } from "../../shared-model/model/enclosure.ts";
import { type EndKey, type EntryId, parseEnd } from "../../shared-model/model/ids.ts";
import type { Place } from "../../shared-model/model/place.ts";
import { terminalsOf } from "../../shared-model/queries/terminals-of.ts";
import { cubicInches } from "../../shared-model/units/volume.ts";
import type { Drawing } from "./drawing.ts";

export type Mistake = readonly [kind: number, which: number, what: number];

/** One mistake of those that the rules of a box look for, read off three numbers. */
export function spoil(drawing: Drawing, [kind, which, what]: Mistake): void {
  const boxes = Object.values(drawing.enclosures).filter((one): one is typeof one & Box => one.kind === "box");
  const box = boxes[which % boxes.length];
  if (box === undefined) return;
  const pick = <T>(list: readonly T[]): T | undefined => list[what % list.length];
  switch (kind) {
    case 0: {
      const end = pick(Object.keys(box.places) as EndKey[]);
      const at = placesIn(box)[(which * 7 + what) % placesIn(box).length];
      if (end !== undefined && at !== undefined) box.places[end] = { at };
      return;
    }
    case 1: {
      const jumper = pick(Object.keys(box.jumpers));
      if (jumper !== undefined) drawing.removeJumper(jumper);
      return;
    }
    case 2: {
      const splice = pick(Object.keys(box.splices));
      const connector = ["none", "taped", "unknown", ...connectors.map(({ id }) => id)][
        which % (connectors.length + 3)
      ];
      if (splice !== undefined && connector !== undefined) drawing.setSplice(splice, { connector });
      return;
    }
    case 3: {
      const device = pick(Object.keys(box.devices));
      const entryKind = (["side-screw", "push-in", "clamp-plate"] as const)[which % 3];
      if (device !== undefined && entryKind !== undefined) drawing.setDevice(device, { entryKind });
      return;
    }
    case 4: {
      const entry = pick(Object.values(box.entries));
      const means = (["none", "internal-clamp"] satisfies EntryMeans[])[which % 2];
      const { entries } = drawing.at(box.name);
      if (entry !== undefined && means !== undefined) entries[entry.id as EntryId] = { ...entry, means };
      return;
    }
    case 5: {
      const facts: readonly Partial<Box>[] = [
        { material: "nonmetallic", shape: "device" },
        { material: "unknown" },
        { volume: { kind: "marked", volumeIn3: cubicInches(10 + (what % 20)) } },
        { volume: { kind: "table", size: "4x1-1/2 square" } },
        { internalClamps: "unknown" },
        { beingSurveyed: true },
      ];
      drawing.setBox(box.name, pick(facts) ?? {});
      return;
    }
    case 6: {
      const item = pick(cableItems);
      const name = `N${Object.keys(drawing.cables).length}`;
      if (item === undefined) return;
      drawing.cable(name, item.id, box.name, "country");
      for (const end of Object.keys(drawing.at(box.name).places) as EndKey[]) {
        const places = placesIn(box);
        const parsed = parseEnd(end);
        const at = places[(which + end.length) % places.length];
        if (parsed?.of === "cable" && parsed.cable === name && at !== undefined)
          drawing.at(box.name).places[end] = { at };
      }
      return;
    }
    default: {
      const cable = pick(Object.keys(drawing.cables));
      if (cable !== undefined) drawing.setConductors(cable, which % 2 === 0 ? { awg: "14" } : { stranded: true });
    }
  }
}

const placesIn = (box: Box): readonly Place["at"][] => [
  { kind: "loose" },
  { kind: "capped" },
  { kind: "bond" },
  ...Object.values(box.splices).map(({ id }) => ({ kind: "splice", splice: id }) as const),
  ...Object.values(box.devices).flatMap((device) =>
    terminalsOf(device).flatMap(({ name, holes }) =>
      Array.from({ length: holes }, (_, hole) => ({
        kind: "terminal" as const,
        device: device.id,
        terminal: name,
        hole: hole + 1,
      })),
    ),
  ),
];

export const mistakes = fc.array(fc.tuple(fc.nat(7), fc.nat(), fc.nat()), { minLength: 1, maxLength: 5 });
