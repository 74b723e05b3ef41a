import type { FillLedger } from "../../answers/fill.ts";
import type { RoomWay } from "../../answers/make-up.ts";
import { onOneLine } from "../../format/json-path.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { Installation } from "../../model/project.ts";
import type { FitProposal } from "../../planning/fit-device.ts";
import type { Judged } from "../../planning/introduced.ts";
import type { JointGroup, MakeUpFinding } from "../../planning/joint-group.ts";
import type { JointPlan } from "../../planning/joint-plan.ts";
import { nameOfPort } from "../../planning/landing.ts";
import { nameOfEnd } from "../../queries/end-facts.ts";
import { landingsOf } from "../../queries/landings.ts";
import { toDecimal } from "../../units/volume.ts";

/** What a make-up came to: the box as it is then, and how it gets there. */
interface MadeUp {
  readonly installation: Installation;
  readonly before: Enclosure;
  readonly after: Enclosure;
  readonly plan: JointPlan;
  readonly judged: Judged;
  /** What is done to the box itself, in words. */
  readonly room?: string | undefined;
  readonly rooms: readonly RoomWay[];
}

/** As scripts read it: nets, splices, new jumpers, moves by hand, and what the rules would say that they did not. */
export function madeUpAsJson({ installation, before, after, plan, judged, room, rooms }: MadeUp): object {
  const named = (end: keyof Enclosure["places"]): string => nameOfEnd(installation, after, end);
  const { bySplice } = landingsOf(after);
  return {
    groups: plan.landings.map(({ group, landing, splices }) => ({
      name: group.name,
      role: group.role,
      landing: landing.kind,
      ends: group.ends.map((end) => ({ id: end, name: named(end) })),
      ports: portsOf(after, group),
      splices: splices.map((number) => plan.splices[number]?.word),
    })),
    splices: Object.values(after.splices).map(({ id, name, connector }) => ({
      id,
      name,
      connector,
      isNew: !(id in before.splices),
      members: (bySplice.get(id) ?? []).map((end) => ({ id: end, name: named(end) })),
    })),
    jumpers: Object.values(after.jumpers).map(({ id, name, awg, colour }) => ({
      id,
      name,
      awg,
      colour,
      isNew: !(id in before.jumpers),
      from: placeWords(after, `${id}.a` as keyof Enclosure["places"]),
      to: placeWords(after, `${id}.b` as keyof Enclosure["places"]),
    })),
    moves: { ...plan.moves, ends: movedEnds(installation, before, after) },
    findings: {
      introduced: [...judged.introduces, ...judged.notes].map(findingAsJson),
      repaired: judged.repairs.map(findingAsJson),
    },
    unprotects: judged.unprotects,
    room: room ?? null,
    rooms: rooms.map(({ title, taken, fill }) => ({ title, taken, fill: fillAsJson(fill) })),
  };
}

export const findingAsJson = ({ rule, severity, message, subjects }: MakeUpFinding): object => ({
  rule,
  severity,
  message,
  subjects,
});

const portsOf = (enclosure: Enclosure, { ports }: JointGroup): readonly string[] =>
  ports.map((port) => nameOfPort(enclosure, port));

function placeWords({ places, splices, devices, name }: Enclosure, end: keyof Enclosure["places"]): string {
  const at = places[end]?.at;
  switch (at?.kind) {
    case "splice":
      return splices[at.splice]?.name ?? at.splice;
    case "terminal":
      return `${devices[at.device]?.name ?? at.device} ${at.terminal}`;
    case "bond":
      return `bond of ${name}`;
    default:
      return "cap";
  }
}

/** Every end of a cable or of a jumper that stays, with where it was and where it goes. */
function movedEnds(installation: Installation, before: Enclosure, after: Enclosure): readonly object[] {
  return (Object.keys(after.places) as (keyof Enclosure["places"])[]).sort().flatMap((end) => {
    if (before.places[end] === undefined) return [];
    const [from, to] = [placeWords(before, end), placeWords(after, end)];
    return from === to ? [] : [{ id: end, name: nameOfEnd(installation, after, end), from, to }];
  });
}

/** As a person reads it: the card of the box. */
export function madeUpAsText(title: string, made: MadeUp): string {
  const { installation, before, after, plan, judged, room } = made;
  const { bySplice } = landingsOf(after);
  const joints = Object.values(after.splices).map(({ id, name, connector }) => {
    const members = (bySplice.get(id) ?? []).map((end) => nameOfEnd(installation, after, end));
    return `  ${name}${id in before.splices ? "" : ", new"}: ${members.join(", ")} (${members.length}, ${connector})`;
  });
  const straight = (Object.keys(after.places) as (keyof Enclosure["places"])[]).sort().flatMap((end) => {
    const kind = after.places[end]?.at.kind;
    if (kind !== "terminal" && kind !== "bond") return [];
    return [`  ${nameOfEnd(installation, after, end)} on ${placeWords(after, end)}`];
  });
  const { detach, attach, newSplices } = plan.moves;
  const notes = [...judged.notes, ...judged.introduces].map(
    ({ severity, rule, message }) => `  ${severity} ${rule}: ${message}`,
  );
  const lines = [
    title,
    "Joints",
    ...joints,
    "On terminals",
    ...straight,
    `Moves: ${detach} off, ${attach} on, ${newSplices} new ${newSplices === 1 ? "joint" : "joints"}`,
    ...(room === undefined ? [] : [`Box: ${room}`]),
    ...(judged.repairs.length === 0
      ? []
      : [`Repairs: ${[...new Set(judged.repairs.map(({ rule }) => rule))].join(", ")}`]),
    ...(judged.unprotects.length === 0 ? [] : [`No longer protected: ${judged.unprotects.join(", ")}`]),
    ...(notes.length === 0 ? [] : ["New", ...notes]),
  ];
  return `${lines.map(onOneLine).join("\n")}\n`;
}

const fillAsJson = ({ total, available, spare, verdict }: FillLedger): object => ({
  totalIn3: toDecimal(total),
  volumeIn3: available === undefined ? null : toDecimal(available),
  spareIn3: spare === undefined ? null : toDecimal(spare),
  verdict,
});

/** As scripts read it: the make-up, and before and after of fill and protection. */
export function fittedAsJson(file: string, fit: FitProposal, made: MadeUp): object {
  return {
    file,
    replaced: { id: fit.old.id, name: fit.old.name, type: fit.old.type },
    device: { id: fit.device.id, name: fit.device.name, type: fit.device.type },
    box: { id: fit.box.id, name: fit.box.name },
    sides: fit.sides.map(({ cables, terminals, outlets, side, why, left }) => ({
      cables: cables.map((id) => ({ id, name: made.installation.cables[id]?.name ?? id })),
      terminals,
      outlets: outlets.map(({ outlet }) => outlet.name),
      side,
      why,
      leftUnprotected: left.map(({ standing, by }) => ({ outlet: standing.outlet.name, requiredBy: by })),
    })),
    fill: { before: fillAsJson(fit.fill.before), after: fillAsJson(fit.fill.after) },
    protection: { before: fit.protection.before, after: fit.protection.after },
    notOffered: fit.notOffered,
    ...madeUpAsJson(made),
  };
}

export function fittedAsText(fit: FitProposal, made: MadeUp): string {
  const named = (ids: FitProposal["sides"][number]["cables"]): string =>
    ids.map((id) => made.installation.cables[id]?.name ?? id).join(", ");
  const sides = fit.sides.map(({ cables, terminals, side, why, left }) => {
    const what = [named(cables), ...terminals].filter((one) => one !== "").join(", ");
    const open = left.map(({ standing, by }) => `${standing.outlet.name} (${by})`).join(", ");
    return `  ${what} on ${side}: ${why}${open === "" ? "" : `; left unprotected: ${open}`}`;
  });
  const figure = ({ total, available }: FillLedger): string =>
    `${toDecimal(total)} in³${available === undefined ? "" : ` of ${toDecimal(available)}`}`;
  const lines = [
    ...sides,
    `Fill: ${figure(fit.fill.before)} before, ${figure(fit.fill.after)} after`,
    `Protected: ${words(fit.protection.before)} before, ${words(fit.protection.after)} after`,
    ...fit.notOffered.map(({ type, why }) => `Not offered: ${type}. ${why}`),
  ];
  const title = `${fit.device.name} (${fit.device.type}) in place of ${fit.old.name} in ${fit.box.name}`;
  return `${madeUpAsText(title, made)}${lines.map(onOneLine).join("\n")}\n`;
}

const words = (outlets: FitProposal["protection"]["before"]): string => {
  const names = outlets.filter(({ by }) => by.length > 0).map(({ name, by }) => `${name} by ${by.join(", ")}`);
  return names.length === 0 ? "none" : names.join("; ");
};
