import { standardBoxes } from "../../shared-model/catalog/standard-boxes.ts";
import { type Property, type PropertyKind, properties } from "../../shared-model/commands/catalog/properties.ts";
import { propertiesOf } from "../../shared-model/commands/catalog/properties-of.ts";
import type { CommandArgs, PropertyTarget, PropertyValue } from "../../shared-model/commands/command-args.ts";
import type { Installation, Project, StateName } from "../../shared-model/model/project.ts";
import type { Picker } from "./picker.ts";

type Change = Pick<CommandArgs["set-property"], "target" | "field" | "value" | "evidence">;

/** Any field of anything in the drawing, with a value that it mostly takes. */
export function randomProperty(project: Project, state: StateName, pick: Picker): Change {
  const installation = (state === "as-found" ? project.asFound : project.proposed) ?? project.asFound;
  const kinds = Object.keys(properties) as PropertyTarget["kind"][];
  const { target, fields } = pickTarget(project, installation, pick.from(kinds, "project"), pick);
  const property = pick.from(fields, undefined);
  if (property === undefined) return { target, field: "nonsense", value: 1 };
  const optional = property.optional || pick.chance(0.05);
  const value = optional && pick.chance(0.2) ? null : valueFor(project, property.takes, pick);
  const evidence = pick.from(["seen", "measured", "told", undefined, undefined] as const, undefined);
  return { target, field: property.field, value, ...(evidence !== undefined && { evidence }) };
}

interface Picked {
  readonly target: PropertyTarget;
  readonly fields: readonly Property[];
}

function pickTarget(
  project: Project,
  { enclosures, cables, loads, labels }: Installation,
  kind: PropertyTarget["kind"],
  pick: Picker,
): Picked {
  const all = Object.values(enclosures);
  const within = <T>(part: (one: (typeof all)[number]) => readonly T[]): readonly T[] => all.flatMap(part);
  const gone = (target: unknown): Picked => ({ target: target as PropertyTarget, fields: properties[kind] });
  const simple = (table: Readonly<Record<string, unknown>>) =>
    gone({ kind, id: pick.from(Object.keys(table), "gone") });
  const part = (pairs: readonly { readonly enclosure: string; readonly id: string }[]) =>
    gone({ kind, ...pick.from(pairs, { enclosure: "gone", id: "gone" }) });
  const partsIn = (table: (one: (typeof all)[number]) => Readonly<Record<string, unknown>>) =>
    part(within((one) => Object.keys(table(one)).map((id) => ({ enclosure: one.id, id }))));
  switch (kind) {
    case "project":
      return gone({ kind });
    case "enclosure": {
      const one = pick.from(all, undefined);
      return one === undefined ? simple({}) : { target: { kind, id: one.id }, fields: propertiesOf("enclosure", one) };
    }
    case "device": {
      const one = pick.from(
        within((box) => Object.values(box.devices)),
        undefined,
      );
      return one === undefined ? simple({}) : { target: { kind, id: one.id }, fields: propertiesOf("device", one) };
    }
    case "splice":
      return simple(Object.assign({}, ...all.map((one) => one.splices)));
    case "jumper":
      return simple(Object.assign({}, ...all.map((one) => one.jumpers)));
    case "cable":
      return simple(cables);
    case "load":
      return simple(loads);
    case "label":
      return simple(labels);
    case "room":
      return simple(project.rooms);
    case "end": {
      const ends = within((one) => Object.keys(one.places).map((id) => ({ enclosure: one.id as string, id })));
      return gone({ kind, ...pick.from(ends, { enclosure: "gone", id: "gone.a" }) });
    }
    case "entry":
      return partsIn((one) => one.entries);
    case "pass-through":
      return partsIn((one) => one.passThroughs);
    case "ring":
      return partsIn((one) => (one.kind === "box" ? one.rings : {}));
    case "conductor": {
      const cable = pick.from(Object.values(cables), undefined);
      return gone({ kind, cable: cable?.id ?? "gone", id: pick.from(Object.keys(cable?.conductors ?? {}), "gone") });
    }
  }
}

function valueFor(project: Project, takes: PropertyKind, pick: Picker): PropertyValue {
  switch (takes.kind) {
    case "text":
      return pick.from(["beside the sink", "café № 5", ""], "");
    case "number": {
      const value = takes.least + pick.next() * (takes.most - takes.least);
      return takes.whole === true ? Math.floor(value) : Math.round(value * 8) / 8;
    }
    case "flag":
      return pick.chance(0.5);
    case "choice":
      return pick.from(takes.choices, undefined)?.value ?? "";
    case "choices":
      return pick.some(takes.choices, 3).map((choice) => choice.value);
    case "volume":
      return pick.from(
        [
          { kind: "unknown" },
          { kind: "marked", volumeIn3: 10_000 + pick.below(400_000) },
          { kind: "table", size: pick.from(standardBoxes, undefined)?.size ?? "" },
        ],
        null,
      );
    case "room":
      return pick.from(Object.keys(project.rooms), "gone");
    case "breaker": {
      const devices = Object.values(project.asFound.enclosures).flatMap((one) => Object.keys(one.devices));
      return pick.from(devices, "gone");
    }
  }
}
