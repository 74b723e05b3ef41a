import { getDeviceType } from "../../catalog/device-types.ts";
import { templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import { inOrder } from "../../queries/in-order.ts";
import { terminalsOf } from "../../queries/terminals-of.ts";
import { type Pole, polesOf } from "../../solver/poles.ts";
import type { Section } from "../../solver/section.ts";
import { modelOf } from "../../solver/sections.ts";
import { groupsByHandle, marksOfPoles, tieIn } from "../multiwire-parts.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, sectionIn, subject } from "../rule-parts.ts";

const messages = templates({
  apart:
    "{device} in {box} is fed by {breakers}, which can be opened one at a time: with one of them off, part of it is still live. Fit a two-pole breaker, or tie the handles.",
  lineToLine:
    "{device} in {box} works between {breakers}, which can be opened one at a time: with one of them off it stops, and it is still live. Fit a two-pole breaker, or tie the handles.",
});

/**
 * Any device on one yoke: a duplex with its tab out, two switches, a switch with a receptacle. And what works between two
 * hots: breakers open both of them, or handles are tied (NFPA 70 240.15(B)(2), 240.20(B)(2) in its time, as quoted in two
 * trade forums). Fuses have no handles to tie.
 */
export const splitYokeTwoCircuits = defineRule({
  id: "split-yoke-two-circuits",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "Circuits that end on one yoke, or feed one load between them, must open together.",
  why: "A tester in the upper half says dead, the lower half is fed by another breaker, and the two screws are an inch apart. It is common at a kitchen counter and under a sink, with dishwasher and disposal on one duplex. A heater or a dryer between two breakers stops with either of them off, and is taken for dead while the other leg is on its terminals.",
  messages,
  sections: everyEdition("210.7", "from-memory"),
  check({ section, state, edition, report }) {
    const poles = polesOf(section);
    if (poles.all.length < 2) return;
    for (const enclosure of section.enclosures) {
      for (const device of inOrder(enclosure.devices)) {
        const between = worksBetweenHots(device);
        if (getDeviceType(device.type).yokes === 0 && !between) continue;
        const found = polesOn(section, device);
        const groups = groupsByHandle(found);
        // Joined hots are a fault of their own, and then no breaker feeds a half by itself.
        if (between && found.some(({ breaker }) => getDeviceType(breaker.type).family === "fuse")) continue;
        if (groups.length < 2 || found.some((one) => found.some((other) => poles.areJoined(one, other)))) continue;
        report({
          subjects: [subject("device", device)],
          ...(between && { section: sectionIn(edition, "240.15(B)", "from-memory") }),
          message: fillIn(between ? messages.lineToLine : messages.apart, {
            device: device.name,
            box: enclosure.name,
            breakers: listed(groups.flat().map(({ name }) => name)),
          }),
          ...tieIn(found, state),
          ...basisOf(marksOn(device, "type", "hotTab"), marksOfPoles(found)),
        });
      }
    }
  },
});

/** A load that needs no neutral: it lies between two hot terminals. */
function worksBetweenHots(device: Device): boolean {
  const hots = new Set<string>(terminalsOf(device).flatMap(({ name, purpose }) => (purpose === "hot" ? [name] : [])));
  return getDeviceType(device.type).paths.some(({ a, b, when }) => when === "load" && hots.has(a) && hots.has(b));
}

function polesOn(section: Section, device: Device): readonly Pole[] {
  const poles = polesOf(section);
  const { graph } = modelOf(section);
  const found = new Set<Pole>();
  for (const { name, purpose } of terminalsOf(device)) {
    if (purpose === "neutral" || purpose === "ground") continue;
    const node = graph.nodeOfDevice(device.id, name);
    for (const pole of node === undefined ? [] : poles.at(node)) found.add(pole);
  }
  return poles.all.filter((pole) => found.has(pole));
}
