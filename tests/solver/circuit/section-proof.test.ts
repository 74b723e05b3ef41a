import { describe, expect, test } from "vitest";
import { openSession } from "../../../shared-model/analysis/session.ts";
import type { CommandCall } from "../../../shared-model/answers/command-call.ts";
import { runCommand } from "../../../shared-model/commands/run-command.ts";
import { asId, type DeviceId, type LoadId, outletKey } from "../../../shared-model/model/ids.ts";
import type { Installation, Project } from "../../../shared-model/model/project.ts";
import { sectionProof } from "../../../shared-model/solver/circuit/section-proof.ts";
import type { OutletStanding, Section } from "../../../shared-model/solver/section.ts";
import { allSections, sectionOf } from "../../../shared-model/solver/sections.ts";
import { guardedHouse } from "../../bench/guarded-house.ts";
import { laundryProposed } from "../../rules/laundry.ts";
import { boxId, deviceId } from "../look-at.ts";

const sectionAt = (installation: Installation, box: string): Section => {
  const section = sectionOf(installation, boxId(box));
  if (section === undefined) throw new Error(`No section at ${box}.`);
  return section;
};
const proofAt = (installation: Installation, box: string) => sectionProof(sectionAt(installation, box));

const run = (project: Project, command: string, args: object): ReturnType<typeof edited> =>
  edited(project, { command, args } as CommandCall);
function edited(project: Project, call: CommandCall) {
  const done = runCommand(project, call);
  if (!done.ok) throw new Error(done.refusal.message);
  return done;
}

describe("the proof of a section is made once", () => {
  const house = guardedHouse(60);
  const capped = run(house, "land-end", {
    state: "as-found",
    enclosure: "b3",
    end: "c3.wh.b",
    at: { kind: "capped" },
  }).project;

  test("and kept while nothing that it rests on changes", () => {
    const before = proofAt(house.asFound, "b45");
    expect(proofAt(capped.asFound, "b45")).toBe(before);
    expect(proofAt(capped.asFound, "b3")).not.toBe(proofAt(house.asFound, "b3"));
    expect(allSections(house.asFound).flatMap((section) => sectionProof(section).outlets).length).toBeGreaterThan(60);
  });

  test("is told in the order of the outlets, and by key", () => {
    const section = sectionAt(house.asFound, "b0");
    const { outlets, of } = sectionProof(section);
    const keys = (all: readonly OutletStanding[]) => all.map(({ outlet }) => outlet.key);
    expect(keys(outlets.map(({ standing }) => standing))).toEqual(keys(section.outlets()));
    for (const one of outlets) expect(of(one.standing.outlet.key)).toBe(one);
    expect(of(outletKey(asId<DeviceId>("nowhere")))).toBeUndefined();
  });

  test("what is plugged in there makes it anew, elsewhere not", () => {
    const plug = (outlet: string): Installation => ({
      ...house.asFound,
      loads: {
        [asId<LoadId>("lamp")]: {
          id: asId<LoadId>("lamp"),
          name: "Lamp",
          item: "lamp-60",
          plug: outletKey(deviceId(outlet)),
          order: 0,
        },
      },
    });
    const before = proofAt(house.asFound, "b45");
    expect(proofAt(plug("b3-r0"), "b45")).toBe(before);
    const used = proofAt(plug("b45-r0"), "b45");
    expect(used).not.toBe(before);
    expect(proofAt(plug("b45-r0"), "b45")).toBe(used);
  });
});

test("an edit of what is plugged in is told to the window as an edit of the wiring is", () => {
  const drawn = laundryProposed()
    .device("RX", "receptacle-15", "B1", { hotTab: "removed" })
    .jumper("x", "B1", "HD", "RX.H1")
    .jumper("y", "B1", "HL", "RX.H2")
    .jumper("z", "B1", "ND", "RX.N1")
    .project();
  const session = openSession(drawn);
  const call = run(drawn, "place-load", {
    state: "as-found",
    id: "lamp",
    name: "Lamp",
    item: "lamp-60",
    plug: "RX/lower",
  });
  const { changed } = session.applyPatches(call.patches, 1);
  const told = changed.flatMap(({ outlets }) => Object.values(outlets).flatMap((all) => all ?? []));
  expect(told.find(({ outlet }) => outlet === "R2")?.protectedBy).toEqual([]);
  const fresh = openSession(structuredClone(call.project)).answers(0).changed[0];
  for (const [box, all] of Object.entries(changed[0]?.outlets ?? {})) expect(all).toEqual(fresh?.outlets[boxId(box)]);
  expect(session.report("as-found")).toEqual(openSession(structuredClone(call.project)).report("as-found"));
});
