import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import { type Half, outletKey, type TerminalName } from "../../model/ids.ts";
import { inOrder } from "../../queries/in-order.ts";
import { landedAt } from "../../queries/landings.ts";
import { nameOfTerminal } from "../../queries/terminals-of.ts";
import { enclosureGraph } from "../../solver/enclosure-graph.ts";
import { fixBy, fixIn } from "../fix-parts.ts";
import { OWN_CHECK } from "../own-check.ts";
import { defineRule, type Report } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";
import { joinedByWire } from "../wire-groups.ts";

const messages = templates({
  unfed:
    "The {tab} tab of {device} in {box} is broken off, and nothing is on the {tab} screw of {half}: that part is not joined to the rest. Land the conductor that is missing, or fit a device with its tab.",
  noNeutral:
    "The {tab} tab of {device} in {box} is broken off, and nothing is on the {tab} screw of {half}, while its hot has a conductor: it looks dead and is not, since its neutral is as live as its hot as soon as something is plugged in. Land the conductor that is missing, or fit a device with its tab.",
  joined:
    "The {tab} tab of {device} in {box} is broken off, and its two {tab} screws are joined by wire all the same: the halves are not apart. Fit a device with its tab, or part the conductors.",
});

const wording = catalogue({
  fit: (device: Part, tab: Part) => `Fit ${device} with its ${tab} tab`,
  hot: "hot",
  lower: "its lower half",
  neutral: "neutral",
  upper: "its upper half",
});

const TABS = [
  ["hot-tab", "hotTab", "hot"],
  ["neutral-tab", "neutralTab", "neutral"],
] as const;

/** Two circuits on a tab that is whole are joined hots, which is another matter. */
export const tabBrokenUnintended = defineRule({
  id: "tab-broken-unintended",
  status: "stable",
  scope: "box",
  severity: "caution",
  summary: "A break-off tab agrees with the conductors on its two screws.",
  why: "A tab is broken off to switch one half, or to feed the halves from two circuits. Put back on a plain circuit such a device leaves one half dead; with both screws fed from one joint the missing tab does nothing and misleads whoever opens the box next. A tab cannot be put back: the device is exchanged.",
  messages,
  sections: everyEdition(OWN_CHECK, "own-rule"),
  check({ enclosure, state, report }) {
    if (enclosure.kind === "box" && enclosure.beingSurveyed === true) return;
    for (const device of inOrder(enclosure.devices)) {
      for (const [tab, field, pole] of TABS) {
        if (device[field] !== "removed") continue;
        for (const path of getDeviceType(device.type).paths.filter(({ when }) => when === tab)) {
          const wrong = standingOf(enclosure, device, path.a as TerminalName, path.b as TerminalName);
          if (wrong === undefined) continue;
          // Of a half that is live it hides an open neutral, and must not make less of it.
          const isLive = wrong.kind === "unfed" && pole === "neutral" && isHotFed(enclosure, device, wrong.empty);
          report({
            subjects: [subject("device", device)],
            ...(isLive && { severity: "danger" as const }),
            message: fillIn(isLive ? messages.noNeutral : messages[wrong.kind], {
              tab: wording[pole],
              device: device.name,
              box: enclosure.name,
              half: wrong.kind === "unfed" ? partAt(device, wrong.empty) : "",
            }),
            data: { tab: pole },
            ...(wrong.kind === "unfed" && { hides: deadHalf(device, wrong.empty) }),
            ...basisOf(marksOn(device, field)),
            ...fixIn(state, () =>
              fixBy(wording.fit(device.name, wording[pole]), "set-property", {
                state,
                target: { kind: "device", id: device.id },
                field,
                value: "intact",
              }),
            ),
          });
        }
      }
    }
  },
});

type Standing = { readonly kind: "unfed"; readonly empty: TerminalName } | { readonly kind: "joined" };

/** One screw with nothing on it while the other has its conductor, or both on one joint. */
function standingOf(
  enclosure: Enclosure,
  device: Device,
  one: TerminalName,
  other: TerminalName,
): Standing | undefined {
  const [onOne, onOther] = [one, other].map((name) => landedAt(enclosure, device.id, name).length > 0);
  if (onOne !== onOther) return { kind: "unfed", empty: onOne === true ? other : one };
  if (onOne !== true) return undefined;
  const { pointOfNode } = enclosureGraph(enclosure);
  const [a, b] = [pointOfNode(device.id, one), pointOfNode(device.id, other)];
  if (a === undefined || b === undefined) return undefined;
  const groupOf = joinedByWire(enclosure);
  return groupOf(a) === groupOf(b) ? { kind: "joined" } : undefined;
}

/** The half that has lost its conductor is dead for that reason alone. */
function deadHalf(device: Device, terminal: TerminalName): NonNullable<Report["hides"]> {
  const half = halfAt(device, terminal);
  if (half === undefined) return [];
  const subjects = [outletKey(device.id, half)];
  return ["open-hot", "open-neutral"].map((rule) => ({ rule, subjects }));
}

/** A conductor is on the hot of the half to which a neutral screw belongs, or comes to it over the tab. */
function isHotFed(enclosure: Enclosure, device: Device, neutral: TerminalName): boolean {
  const { paths, outlets } = getDeviceType(device.type);
  const slots = paths.filter(({ a, when }) => a === neutral && when === "always").map(({ b }) => b);
  const hot = outlets.find((outlet) => slots.includes(outlet.neutral))?.hot;
  const own = paths.find(({ b, when }) => b === hot && when === "always")?.a;
  const across = paths.find(({ a, b, when }) => when === "hot-tab" && (a === own || b === own));
  const over = device.hotTab === "removed" || across === undefined ? [] : [across.a, across.b];
  return [own, ...over].some(
    (one) => one !== undefined && landedAt(enclosure, device.id, one as TerminalName).length > 0,
  );
}

/** The half of a duplex that a screw feeds; else the screw by its name. */
function partAt(device: Device, terminal: TerminalName): string {
  const half = halfAt(device, terminal);
  return half === undefined ? nameOfTerminal(device, terminal) : wording[half];
}

function halfAt(device: Device, terminal: TerminalName): Half | undefined {
  const { paths, outlets } = getDeviceType(device.type);
  const slots = paths.filter(({ a, when }) => a === terminal && when === "always").map(({ b }) => b);
  return outlets.find(({ hot, neutral }) => slots.includes(hot) || slots.includes(neutral))?.half;
}
