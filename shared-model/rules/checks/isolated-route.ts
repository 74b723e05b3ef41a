import { catalogue, templates } from "../../lib/catalogue.ts";
import { parseEnd } from "../../model/ids.ts";
import type { OutletStanding, Section } from "../../solver/section.ts";
import { loopsOf } from "../loops.ts";
import { type Run, runsInRings } from "../routes.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";
import { hotOf, needsNeutral, neutralOf } from "../section-parts.ts";

const messages = templates({
  apart:
    "Out and back currents of {outlets} run apart: {cables} {carry} one without the other between {boxes}. Bring hot and neutral of a circuit through one cable and one opening; apart they heat the metal around each of them.",
  apartInPlastic:
    "Out and back currents of {outlets} run apart: {cables} {carry} one without the other between {boxes}. The boxes are nonmetallic, so that nothing there heats; bring hot and neutral through one cable where you can.",
});

const wording = catalogue({
  carry: (count: number) => (count === 1 ? "carries" : "carry"),
});

/**
 * Net current of each cable, one load at a time. Only cables on a ring of boxes can be out of balance; knobs and tubes run
 * their conductors apart by their nature, and what closes a ring of one polarity is another matter.
 */
export const isolatedRoute = defineRule({
  id: "isolated-route",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "Hot and neutral of a circuit run together.",
  why: "With both conductors in one cable their fields cancel. Apart, each magnetises the steel that it passes through: metal boxes and connectors heat, and the whole loop hums into every meter and alarm nearby. It comes from picking a neutral up in the nearest box instead of bringing it with its hot. Conductors of one raceway, with the same route, count as one cable; open wiring on knobs and tubes is not judged.",
  messages,
  sections: everyEdition("300.3(B), 300.20", "unconfirmed"),
  check({ section, report }) {
    const runs = runsInRings(section);
    if (runs.size === 0) return;
    const inLoops = new Set(loopsOf(section).flatMap((loop) => loop.map(({ cable }) => cable.id)));
    const found = new Map<string, { readonly runs: readonly Run[]; readonly outlets: OutletStanding[] }>();
    for (const standing of section.outlets()) {
      if (!standing.live || !needsNeutral(standing)) continue;
      const unbalanced = unbalancedBy(section, standing, runs);
      if (unbalanced.length === 0) continue;
      if (unbalanced.some(({ cables }) => cables.some(({ id }) => inLoops.has(id)))) continue;
      const key = unbalanced.map(({ id }) => id).join(" ");
      const known = found.get(key);
      if (known === undefined) found.set(key, { runs: unbalanced, outlets: [standing] });
      else known.outlets.push(standing);
    }
    for (const { runs: apart, outlets } of found.values()) {
      if (carriesOtherCircuit(section, apart, outlets)) continue;
      const cables = apart.flatMap((run) => run.cables);
      const boxes = [...new Set(apart.flatMap(({ ends }) => ends))].flatMap(
        (id) => section.installation.enclosures[id] ?? [],
      );
      const isPlastic = boxes.every((box) => box.kind === "box" && box.material === "nonmetallic");
      report({
        subjects: cables.map((cable) => subject("cable", cable)),
        message: fillIn(isPlastic ? messages.apartInPlastic : messages.apart, {
          outlets: listed(outlets.map(({ outlet }) => outlet.name).sort()),
          cables: listed(cables.map(({ name }) => name)),
          carry: wording.carry(cables.length),
          boxes: listed(boxes.map(({ name }) => name).sort()),
        }),
        ...(isPlastic && { severity: "caution" }),
        data: { outlets: outlets.length },
        ...basisOf(cables.flatMap((cable) => marksOn(cable, "route", "item"))),
      });
    }
  },
});

/** Runs in which the current of one outlet does not come back, sorted. */
function unbalancedBy(section: Section, standing: OutletStanding, runs: ReadonlyMap<string, Run>): readonly Run[] {
  const net = new Map<Run, number>();
  const add = (source: "ungrounded" | "grounded", spot: ReturnType<typeof hotOf>, sign: number): boolean => {
    const way = section.wayFrom(source, spot);
    for (const step of way ?? []) {
      if (step.kind !== "cable") continue;
      const run = runs.get(step.cable);
      if (run === undefined) continue;
      const direction = step.fromEnclosure === run.ends[0] ? sign : -sign;
      net.set(run, (net.get(run) ?? 0) + direction);
    }
    return way !== undefined;
  };
  if (!add("ungrounded", hotOf(standing), 1) || !add("grounded", neutralOf(standing), -1)) return [];
  const unbalanced = [...net].filter(([, sum]) => sum !== 0).map(([run]) => run);
  if (unbalanced.some(({ open }) => open)) return [];
  return unbalanced.sort((p, q) => (p.id < q.id ? -1 : 1));
}

/** A neutral that comes back with another circuit is a borrowed one, which is worse than this. */
function carriesOtherCircuit(section: Section, runs: readonly Run[], outlets: readonly OutletStanding[]): boolean {
  const cables = new Set<string>(runs.flatMap((run) => run.cables.map(({ id }) => id)));
  const feeding = section.breakers().filter(({ device }) => {
    const circuit = section.circuitOf(device.id);
    return outlets.some(({ outlet }) => circuit.outlets.includes(outlet.key));
  });
  const own = new Set(feeding.map(({ device }) => device.id));
  return section
    .breakers()
    .filter(({ device }) => !own.has(device.id))
    .some(({ device }) =>
      section.circuitOf(device.id).hotEnds.some((end) => {
        const parsed = parseEnd(end);
        return parsed?.of === "cable" && cables.has(parsed.cable);
      }),
    );
}
