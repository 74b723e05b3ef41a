import type { ScopeDifference, ScopeLabel } from "../../answers/scope.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import { type DeviceId, type EnclosureId, type LabelId, outletKey } from "../../model/ids.ts";
import type { Installation, Label } from "../../model/project.ts";
import { replacementFor } from "../../queries/replaced.ts";
import { ungroundedReceptacles } from "../../rules/no-ground.ts";
import { isNoGroundLabel, missingLabels, NO_GROUND_LABELS_ASKED_BY } from "../../rules/no-ground-labels.ts";
import { listed } from "../../rules/rule-parts.ts";
import { sectionProof } from "../../solver/circuit/section-proof.ts";
import type { Section } from "../../solver/section.ts";
import { sectionKey, sectionOf } from "../../solver/sections.ts";
import { deviceIn, homeOf } from "./device-places.ts";
import { inBoxWords } from "./scope-words.ts";

const LABEL_WORDS = catalogue({
  drawn: "It is drawn in proposed.",
  drawnBecause: (why: Part) => `It is drawn in proposed: ${why}.`,
  noGround: (device: Part, guards: Part) => `${device} has no equipment ground and is protected by ${guards}.`,
  ownWording: "own wording",
  place: (device: Part, box: Part, note: Part) => `${device} in ${box}, ${note}`,
  protectedBy: (outlet: Part, guards: Part) => `${outlet} is protected by ${guards}.`,
  slip: (guards: Part) => `If it is dead, press RESET on ${guards}`,
  slipByHandle: (breakers: Part) => `If it is dead, switch ${breakers} off, then on`,
  slipEither: (guards: Part, breakers: Part) =>
    `If it is dead, press RESET on ${guards}, or switch ${breakers} off, then on`,
});

/** Words that a person takes for a slip about RESET. */
const ABOUT_RESET = /\breset/i;

/**
 * Labels and slips that the work calls for, from the proof of protection: required words at receptacles without a ground,
 * and a slip for each outlet that a device in another place sets dark. What was drawn is told as drawn; what was not drawn
 * is told all the same.
 */
export function scopeLabels(
  asFound: Installation,
  proposed: Installation,
  { boxes, elsewhere }: ScopeDifference,
): readonly ScopeLabel[] {
  const fresh = elsewhere.flatMap(({ item, kind }) => {
    const label = item.kind === "label" && kind !== "removed" ? proposed.labels[item.id as LabelId] : undefined;
    return label === undefined ? [] : [label];
  });
  const taken = new Set<LabelId>();
  const sections = new Map<string, Section>();
  for (const { enclosure, work } of boxes) {
    const section = work === "not-opened" ? undefined : sectionOf(proposed, enclosure);
    if (section !== undefined) sections.set(sectionKey(section), section);
  }
  const former = replacementFor(proposed, asFound);
  const found = [...sections.values()].flatMap((section) => [
    ...noGroundLabels(proposed, section, fresh, taken),
    ...resetSlips(asFound, proposed, section, former, fresh, taken),
  ]);
  const drawn = fresh.filter(({ id }) => !taken.has(id)).map((label) => drawnLabel(proposed, label));
  return [...found, ...drawn];
}

/** Words that stand on a new label already, and those that stand on none. */
function noGroundLabels(
  proposed: Installation,
  section: Section,
  fresh: readonly Label[],
  taken: Set<LabelId>,
): readonly ScopeLabel[] {
  const proof = sectionProof(section);
  return ungroundedReceptacles(section).flatMap(({ device, box, neverHad }): readonly ScopeLabel[] => {
    const protectors = new Set(
      proof.outlets.flatMap(({ standing, protectedBy }) =>
        standing.outlet.device.id === device.id ? protectedBy : [],
      ),
    );
    if (!neverHad || protectors.size === 0) return [];
    const where = {
      on: { kind: "device" as const, id: device.id, name: device.name },
      box: { id: box.id, name: box.name },
    };
    const because = LABEL_WORDS.noGround(device.name, listed([...protectors].map((id) => nameOf(proposed, id))));
    const words = fresh.filter(
      (label) =>
        isNoGroundLabel(label) &&
        (("device" in label.on && label.on.device === device.id) ||
          ("enclosure" in label.on && label.on.enclosure === box.id)),
    );
    for (const { id } of words) taken.add(id);
    const missing = missingLabels(proposed, device.id, box.id, protectors.has(device.id));
    const asked = { kind: "required" as const, ...where, because, requiredBy: NO_GROUND_LABELS_ASKED_BY };
    return [
      ...words.map(({ id, wording }) => ({ key: `label ${id}`, ...asked, wording, label: id })),
      ...missing.map((wording) => ({ key: `needs ${device.id} ${wording}`, ...asked, wording })),
    ];
  });
}

/** Where to reset, at every outlet that a device elsewhere protects since this work. */
function resetSlips(
  asFound: Installation,
  proposed: Installation,
  section: Section,
  former: ReadonlyMap<DeviceId, DeviceId>,
  fresh: readonly Label[],
  taken: Set<LabelId>,
): readonly ScopeLabel[] {
  const before = protectorsIn(asFound);
  return sectionProof(section).outlets.flatMap(({ standing, protectedBy }): readonly ScopeLabel[] => {
    const { outlet, enclosure } = standing;
    const others = protectedBy.filter((id) => section.enclosureOf(id) !== enclosure.id);
    if (others.length === 0 || protectedBy.includes(outlet.device.id)) return [];
    const was = before(enclosure.id, former.get(outlet.device.id) ?? outlet.device.id);
    if (others.every((id) => was.has(former.get(id) ?? id))) return [];
    const slip = fresh.find(
      ({ on, wording }) => "device" in on && on.device === outlet.device.id && ABOUT_RESET.test(wording),
    );
    if (slip !== undefined) taken.add(slip.id);
    const places = listed(others.map((id) => placeOf(proposed, id)));
    return [
      {
        key: `reset ${outlet.key}`,
        kind: "reset-slip",
        wording: slip?.wording ?? slipWords(proposed, others),
        on: { kind: "outlet", id: outlet.key, name: outlet.name },
        box: { id: enclosure.id, name: enclosure.name },
        because: LABEL_WORDS.protectedBy(outlet.name, places),
        requiredBy: slip?.requiredBy ?? LABEL_WORDS.ownWording,
        ...(slip !== undefined && { label: slip.id }),
      },
    ];
  });
}

/** A receptacle has RESET, a breaker its handle. */
function slipWords(proposed: Installation, guards: readonly DeviceId[]): string {
  const isBreaker = (id: DeviceId): boolean => homeOf(proposed, id)?.kind === "panel";
  const placesOf = (ids: readonly DeviceId[]): string => listed(ids.map((id) => placeOf(proposed, id)));
  const [byButton, byHandle] = [guards.filter((id) => !isBreaker(id)), guards.filter(isBreaker)];
  if (byHandle.length === 0) return LABEL_WORDS.slip(placesOf(byButton));
  if (byButton.length === 0) return LABEL_WORDS.slipByHandle(placesOf(byHandle));
  return LABEL_WORDS.slipEither(placesOf(byButton), placesOf(byHandle));
}

/** Devices that protected some outlet of a device in an account, by the box that it is in. */
function protectorsIn(installation: Installation): (box: EnclosureId, device: DeviceId) => ReadonlySet<DeviceId> {
  return (box, device) => {
    const section = sectionOf(installation, box);
    if (section === undefined) return new Set();
    const whole = sectionProof(section).of(outletKey(device));
    const halves = (["upper", "lower"] as const).flatMap(
      (half) => sectionProof(section).of(outletKey(device, half)) ?? [],
    );
    return new Set([...(whole === undefined ? [] : [whole]), ...halves].flatMap(({ protectedBy }) => protectedBy));
  };
}

const nameOf = (installation: Installation, id: DeviceId): string => deviceIn(installation, id)?.name ?? id;

/** "R1b in B1, laundry". */
function placeOf(installation: Installation, id: DeviceId): string {
  const home = homeOf(installation, id);
  if (home === undefined) return id;
  const name = home.devices[id]?.name ?? id;
  return home.note === undefined ? inBoxWords(name, home) : LABEL_WORDS.place(name, home.name, home.note);
}

function drawnLabel(installation: Installation, { id, wording, on, requiredBy }: Label): ScopeLabel {
  const at = bearerOf(installation, on);
  return {
    key: `label ${id}`,
    kind: "drawn",
    wording,
    ...at,
    because: requiredBy === undefined ? LABEL_WORDS.drawn : LABEL_WORDS.drawnBecause(requiredBy),
    ...(requiredBy !== undefined && { requiredBy }),
    label: id,
  };
}

function bearerOf(installation: Installation, on: Label["on"]): Pick<ScopeLabel, "on" | "box"> {
  if ("cable" in on)
    return { on: { kind: "cable", id: on.cable, name: installation.cables[on.cable]?.name ?? on.cable } };
  const home = "device" in on ? homeOf(installation, on.device) : installation.enclosures[on.enclosure];
  const box = home === undefined ? {} : { box: { id: home.id, name: home.name } };
  if ("enclosure" in on)
    return { on: { kind: "enclosure", id: on.enclosure, name: home?.name ?? on.enclosure }, ...box };
  return { on: { kind: "device", id: on.device, name: home?.devices[on.device]?.name ?? on.device }, ...box };
}
