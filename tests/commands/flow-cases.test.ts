import { describe, expect, test } from "vitest";
import type { CommandArgs, CommandId } from "../../shared-model/commands/command-args.ts";
import { applyPatches, runCommand } from "../../shared-model/commands/run-command.ts";
import { canonicalText } from "../../shared-model/lib/canonical-text.ts";
import type { DeviceId, EntryId, RingId } from "../../shared-model/model/ids.ts";
import type { Installation, Project } from "../../shared-model/model/project.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { boxId, cableId, deviceId, drawing, jumperId, loadId, outlet, roomId, spliceId } from "../builders/drawing.ts";
import { Drawing } from "../builders/drawing-by-commands.ts";
import { leftOvers } from "./sound-references.ts";

/** Panel P feeds B1 by C1, B1 feeds B2 by C2. R1 is in B1 on a pigtail, R2 in B2 with a lamp. */
const house = () =>
  drawing()
    .room("Hall", "hallway")
    .panel("P")
    .breaker("Q1", "P")
    .breaker("Q2", "P")
    .box("B1", "square-4-2-1-8", { room: "Hall" })
    .box("B2", "plastic-new-2")
    .device("R1", "receptacle-15", "B1")
    .device("R2", "receptacle-15", "B2")
    .cable("C1", "P", "B1")
    .cable("C2", "B1", "B2")
    .land("C1.bk@P", "Q1.OUT")
    .splice("X", "B1", "twist-large", "C1.bk@B1", "C2.bk@B1")
    .jumper("p", "B1", "splice X", "R1.H1")
    .land("C2.bk@B2", "R2.H1")
    .load("Lamp", "lamp-60", "R2")
    .propose();

/** The same document, drawn on as found. */
const found = (of: Drawing) => new Drawing(of.project, "as-found");
const planned = (of: Drawing) => new Drawing(of.project, "proposed");

function proposedOf({ project }: Drawing): Installation {
  expect(invariantProblems(project)).toEqual([]);
  expect(leftOvers(project)).toEqual([]);
  if (project.proposed === undefined) throw new Error("Nothing is proposed.");
  return project.proposed;
}

/** Why the last edit was not carried over; undefined when it was. */
const because = ({ project }: Drawing): string | undefined => project.heldBack?.at(-1)?.because;

const box = (of: Drawing, name: string) => {
  const enclosure = proposedOf(of).enclosures[boxId(name)];
  if (enclosure?.kind !== "box") throw new Error(`Proposed has no box ${name}.`);
  return enclosure;
};

describe("field by field", () => {
  test("a fact that proposed left alone follows; one that it changed stays what proposed last said", () => {
    const cable = { kind: "cable", id: cableId("C2") } as const;
    const plan = planned(found(house()).set(cable, "route", "attic")).set(cable, "notes", "new");
    const after = found(plan).set(cable, "notes", "old").set(cable, "route", "crawl space");
    expect(proposedOf(after).cables[cableId("C2")]).toMatchObject({ notes: "new", route: "crawl space" });
    expect(after.project.asFound.cables[cableId("C2")]).toMatchObject({ notes: "old", route: "crawl space" });
  });

  test("what diverged and came to agree again follows again", () => {
    const cable = { kind: "cable", id: cableId("C2") } as const;
    const apart = found(planned(house()).set(cable, "notes", "one")).set(cable, "notes", "one");
    expect(proposedOf(found(apart).set(cable, "notes", "two")).cables[cableId("C2")]?.notes).toBe("two");
  });

  test("a volume is one field, compared by value", () => {
    const target = { kind: "enclosure", id: boxId("B1") } as const;
    const same = planned(house()).set(target, "volume", { kind: "marked", volumeIn3: 300_000 });
    const agreed = found(same).set(target, "volume", { volumeIn3: 300_000, kind: "marked" });
    const after = found(agreed).set(target, "volume", { kind: "marked", volumeIn3: 310_000 });
    expect(box(after, "B1").volume).toEqual({ kind: "marked", volumeIn3: 310_000 });
  });

  test("an end that proposed moved stays; what is known of the end itself follows", () => {
    const plan = planned(house()).land("C2.wh@B2", "R2.N1");
    const after = found(plan).land("C2.wh@B2", "R2.N2").setEnd("C2.wh@B2", "freeLengthIn", 5);
    const { key } = after.end("C2.wh@B2");
    expect(box(after, "B2").places[key]).toMatchObject({ at: { terminal: "N1" }, freeLengthIn: 5 });
  });

  test("an end that is spare in proposed does not lose that: a joint is one field with what holds of it", () => {
    const { enclosure, key } = house().end("C2.rd@B2".replace("rd", "wh"));
    const plan = planned(house()).run("mark-spare", { enclosure, end: key, spare: true });
    const after = found(plan).land("C2.wh@B2", "R2.N1");
    expect(box(after, "B2").places[key]).toEqual({ at: { kind: "capped" }, spare: true });
  });

  test("a mark follows its value, and stays away from a value that it is not about", () => {
    const target = { kind: "enclosure", id: boxId("B2") } as const;
    const plan = planned(house()).set(target, "setbackIn", 0.5);
    const after = found(plan).set(target, "setbackIn", 0.25, "measured").set(target, "openKnockouts", 1, "seen");
    expect(box(after, "B2")).toMatchObject({ setbackIn: 0.5, openKnockouts: 1 });
    expect(box(after, "B2").evidence?.openKnockouts).toBe("seen");
    expect(box(after, "B2").evidence).not.toHaveProperty("setbackIn");
  });

  test("a mark alone follows where both states hold the value, and not where proposed has its own mark", () => {
    const target = { kind: "enclosure", id: boxId("B2") } as const;
    const mark = (evidence: "seen" | "told" | "measured") => ({ target, field: "gangs", evidence });
    const followed = found(house()).run("mark-evidence", mark("seen"));
    expect(box(followed, "B2").evidence?.gangs).toBe("seen");
    const own = planned(followed).run("mark-evidence", mark("told"));
    expect(box(found(own).run("mark-evidence", mark("measured")), "B2").evidence?.gangs).toBe("told");
  });

  test("the states share nothing that can be changed", () => {
    const { project } = found(house()).box("B9");
    const { asFound, proposed } = project;
    expect(proposed?.enclosures[boxId("B1")]).not.toBe(asFound.enclosures[boxId("B1")]);
    expect(proposed?.enclosures[boxId("B9")]).not.toBe(asFound.enclosures[boxId("B9")]);
    expect(proposed?.enclosures[boxId("B9")]).toEqual(asFound.enclosures[boxId("B9")]);
    expect(Object.isFrozen(proposed?.enclosures[boxId("B9")]?.evidence)).toBe(true);
  });
});

describe("what comes and goes", () => {
  test("a new cable by new entries, a new device and where it is landed follow", () => {
    const after = found(house()).cable("C3", "P", "B2").device("R3", "receptacle-15", "B2").land("C3.bk@B2", "R3.H1");
    expect(proposedOf(after)).toEqual(after.project.asFound);
  });

  test("what proposed took out stays out, whatever happens to it as found", () => {
    const plan = planned(house()).remove({ kind: "cable", id: cableId("C2") });
    const after = found(plan)
      .set({ kind: "cable", id: cableId("C2") }, "notes", "seen from below")
      .land("C2.wh@B2", "R2.N1")
      .run("move-cable-side", {
        cable: cableId("C2"),
        side: "b",
        to: { enclosure: boxId("P"), newEntry: "e-new" as EntryId, means: "none" },
      });
    expect(proposedOf(after).cables[cableId("C2")]).toBeUndefined();
    expect(because(after)).toBeUndefined();
  });

  test("a cable removed as found goes from proposed with where it was drawn", () => {
    const after = found(house()).remove({ kind: "cable", id: cableId("C2") });
    expect(proposedOf(after)).toEqual(after.project.asFound);
    expect(Object.keys(box(after, "B1").entries)).toEqual(["e-C1"]);
  });

  test("a cable removed as found is held back where proposed moved one of its ends", () => {
    const plan = planned(house()).land("C2.bk@B2", "capped");
    const after = found(plan).remove({ kind: "cable", id: cableId("C2") });
    expect(after.project.asFound.cables[cableId("C2")]).toBeUndefined();
    expect(proposedOf(after)).toEqual(plan.project.proposed);
    expect(after.project.heldBack).toEqual([
      {
        id: "1",
        title: "Remove C2",
        because: "Proposed says something of its own about C2 BK in B2, which would no longer end there.",
        items: [
          { kind: "cable", id: "cable-C2", name: "C2" },
          { kind: "enclosure", id: "box-B1", name: "B1" },
          { kind: "enclosure", id: "box-B2", name: "B2" },
        ],
      },
    ]);
  });

  test("a cable that proposed says something else of stays there, with its ends", () => {
    const plan = planned(house()).set({ kind: "cable", id: cableId("C2") }, "notes", "keep");
    const after = found(plan).remove({ kind: "cable", id: cableId("C2") });
    expect(proposedOf(after).cables[cableId("C2")]?.notes).toBe("keep");
    expect(box(after, "B2").places).toEqual(planned(plan).project.proposed?.enclosures[boxId("B2")]?.places);
  });

  test("a box removed as found goes with its position; with a new device in proposed it is held back", () => {
    const gone = found(house()).remove({ kind: "enclosure", id: boxId("B2") });
    expect(proposedOf(gone).enclosures[boxId("B2")]).toBeUndefined();
    expect(gone.project.layout.enclosures[boxId("B2")]).toBeUndefined();
    const plan = planned(house()).device("N", "receptacle-15", "B2");
    const kept = found(plan).remove({ kind: "enclosure", id: boxId("B2") });
    expect(proposedOf(kept)).toEqual(plan.project.proposed);
    expect(kept.project.layout.enclosures[boxId("B2")]).toBeDefined();
    expect(because(kept)).toMatch(/^Proposed says something of its own about C2 \w+ in B2/);
  });

  test("a box without wiring stays with the new device that proposed put in", () => {
    const plan = planned(found(house()).box("B3").device("R9", "receptacle-15", "B3")).device(
      "N",
      "receptacle-15",
      "B3",
    );
    const after = found(plan).remove({ kind: "enclosure", id: boxId("B3") });
    expect(Object.keys(box(after, "B3").devices)).toEqual(["device-R9", "device-N"]);
    expect(because(after)).toBeUndefined();
  });

  test("a device removed as found is held back where proposed landed something of its own on it", () => {
    const plan = planned(house()).cable("C9", "P", "B2").land("C9.bk@B2", "R2.H2");
    const after = found(plan).remove({ kind: "device", id: deviceId("R2") });
    expect(because(after)).toBe("In proposed, C9 BK in B2 would be on R2, which is not there.");
    expect(proposedOf(after)).toEqual(plan.project.proposed);
  });

  test("a splice emptied as found stays for what proposed still has in it, and goes with its last member", () => {
    const plan = planned(house())
      .cable("C9", "P", "B1")
      .run("join-splice", {
        enclosure: boxId("B1"),
        end: planned(planned(house()).cable("C9", "P", "B1")).end("C9.bk@B1").key,
        splice: spliceId("X"),
      });
    const after = found(plan).land("C1.bk@B1", "capped").land("C2.bk@B1", "capped").land("p.a", "capped");
    expect(after.project.asFound.enclosures[boxId("B1")]?.splices).toEqual({});
    expect(Object.keys(box(after, "B1").splices)).toEqual(["splice-X"]);
    const alone = found(planned(house()).land("C1.bk@B1", "loose").land("C2.bk@B1", "loose")).land("p.a", "capped");
    expect(box(alone, "B1").splices).toEqual({});
    expect(Object.keys(alone.project.asFound.enclosures[boxId("B1")]?.splices ?? {})).toEqual(["splice-X"]);
  });

  test("an entry stays while a cable of proposed uses it", () => {
    const entry = "e-C2" as EntryId;
    const plan = planned(house()).run("route-cable", {
      id: cableId("C9"),
      item: "nm-12-2-g",
      name: "C9",
      a: { enclosure: boxId("B1"), entry },
      b: { outside: "not drawn" },
    });
    const after = found(plan).remove({ kind: "cable", id: cableId("C2") });
    expect(Object.keys(box(after, "B1").entries)).toContain("e-C2");
    expect(after.project.asFound.enclosures[boxId("B1")]?.entries[entry]).toBeUndefined();
    expect(because(after)).toBeUndefined();
  });

  test("what exists in proposed alone is never touched", () => {
    const plan = planned(house()).box("B7").device("R7", "receptacle-15", "B7").cable("C7", "B2", "B7");
    const after = found(plan).remove({ kind: "enclosure", id: boxId("B1") });
    expect(box(after, "B7")).toEqual(box(plan, "B7"));
    expect(proposedOf(after).cables[cableId("C7")]).toEqual(proposedOf(plan).cables[cableId("C7")]);
  });

  test("a box removed as found is held back where a cable of proposed ends in it", () => {
    const plan = planned(house()).box("B7").cable("C7", "B2", "B7");
    const after = found(plan).remove({ kind: "enclosure", id: boxId("B2") });
    expect(because(after)).toBeDefined();
    expect(proposedOf(after)).toEqual(plan.project.proposed);
  });
});

describe("replaced devices", () => {
  const replaced = () =>
    planned(house()).run("replace-device", {
      device: deviceId("R2"),
      id: deviceId("N"),
      type: "receptacle-tr-15",
      name: "N",
    });

  test("edits of the original do not reach its replacement", () => {
    const after = found(replaced()).set({ kind: "device", id: deviceId("R2") }, "ratingA", 15);
    expect(box(after, "B2").devices).toEqual(box(replaced(), "B2").devices);
    expect(because(after)).toBeUndefined();
  });

  test("when the original goes as found, the replacement stays and replaces nothing", () => {
    expect(box(replaced(), "B2").devices[deviceId("N")]?.replaces).toBe(deviceId("R2"));
    const after = found(replaced()).remove({ kind: "device", id: deviceId("R2") });
    expect(Object.keys(box(after, "B2").devices)).toEqual(["device-N"]);
    expect(box(after, "B2").devices[deviceId("N")]?.replaces).toBeUndefined();
  });

  test("what is newly landed on the original, or plugged into it, is held back", () => {
    const landed = found(replaced()).cable("C9", "P", "B2").land("C9.bk@B2", "R2.H2");
    expect(proposedOf(landed).cables[cableId("C9")]).toBeDefined();
    expect(because(landed)).toBe("In proposed, C9 BK in B2 would be on R2, which is not there.");
    const plugged = found(replaced()).load("Fan", "lamp-60", "R2");
    expect(because(plugged)).toBe("In proposed, Fan would be plugged into R2, which is not there.");
    expect(plugged.project.heldBack?.[0]?.items).toEqual([{ kind: "device", id: "device-R2", name: "R2" }]);
  });
});

describe("a device is the same one wherever it is", () => {
  const spare = () => found(house()).device("S", "receptacle-15", "B1");
  const to = (name: string) => ({ id: deviceId("S"), enclosure: boxId(name) });
  const homes = (of: Drawing) =>
    Object.values(proposedOf(of).enclosures).flatMap((one) => (deviceId("S") in one.devices ? one.name : []));

  test("it follows to another box, stays where proposed put it, and stays out when proposed took it out", () => {
    expect(homes(found(spare()).run("move-device", to("B2")))).toEqual(["B2"]);
    const moved = planned(spare().box("B3")).run("move-device", to("B3"));
    const both = found(moved)
      .run("move-device", to("B2"))
      .set({ kind: "device", id: deviceId("S") }, "ratingA", 15);
    expect(homes(both)).toEqual(["B3"]);
    expect(box(both, "B3").devices[deviceId("S")]?.ratingA).toBe(15);
    const out = planned(spare()).remove({ kind: "device", id: deviceId("S") });
    expect(homes(found(out).run("move-device", to("B2")))).toEqual([]);
  });
});

describe("around the installation", () => {
  test("wishes, intents, directory lines, loads and labels follow key by key", () => {
    const plan = planned(house()).run("set-directory-line", { device: deviceId("Q1"), text: "new hall" });
    const after = found(plan)
      .wish("R1")
      .run("set-box-intent", { enclosure: boxId("B1"), intent: { supply: cableId("C1") } })
      .run("set-directory-line", { device: deviceId("Q1"), text: "hall" })
      .run("set-directory-line", { device: deviceId("Q2"), text: "attic" })
      .remove({ kind: "load", id: loadId("Lamp") });
    const { intent, directory, loads } = proposedOf(after);
    expect(intent.outlets[outlet("R1")]).toEqual({ wish: "protect" });
    expect(intent.boxes[boxId("B1")]).toEqual({ supply: cableId("C1") });
    expect(directory).toEqual({ "device-Q1": "new hall", "device-Q2": "attic" });
    expect(loads).toEqual({});
  });

  test("of what a box is meant to do, supply and each protected cable are apart", () => {
    const enclosure = boxId("B1");
    const plan = planned(
      found(house()).run("set-box-intent", {
        enclosure,
        intent: { supply: cableId("C1"), protect: { [cableId("C2")]: false } },
      }),
    ).run("set-box-intent", { enclosure, intent: { supply: cableId("C1"), protect: { [cableId("C2")]: true } } });
    const after = found(plan).run("set-box-intent", { enclosure, intent: null });
    expect(proposedOf(after).intent.boxes[enclosure]).toEqual({ protect: { [cableId("C2")]: true } });
  });

  test("a tab broken off as found is held back where proposed has something more in that outlet", () => {
    const plan = planned(house()).load("Fan", "lamp-60", "R2");
    const after = found(plan).set({ kind: "device", id: deviceId("R2") }, "hotTab", "removed");
    expect(because(after)).toBe("In proposed, Fan would be plugged into an outlet that is not there.");
  });

  test("a room removed leaves both states, and a box that goes with it goes from both", () => {
    const after = found(house()).remove({ kind: "room", id: roomId("Hall") }, { kind: "enclosure", id: boxId("B1") });
    expect(proposedOf(after)).toEqual(after.project.asFound);
  });

  test("a box becomes nonmetallic as found, and proposed has a conductor on its bond: held back", () => {
    const plan = planned(house()).land("C1.cu@B1", "bond");
    const after = found(plan).set({ kind: "enclosure", id: boxId("B1") }, "material", "nonmetallic");
    expect(because(after)).toBe("Proposed uses the bond point of B1, which a nonmetallic box has not.");
  });

  test("a cable side: each state moved another to the same box", () => {
    const three = found(house()).box("B3");
    const by = (entry: string) => ({ enclosure: boxId("B3"), newEntry: entry as EntryId, means: "none" as const });
    const plan = planned(three).run("move-cable-side", { cable: cableId("C2"), side: "a", to: by("x") });
    const after = found(plan).run("move-cable-side", { cable: cableId("C2"), side: "b", to: by("y") });
    expect(because(after)).toBe("In proposed, both sides of C2 would be in B3.");
  });

  test("a jumper: each state moved one end to the same splice", () => {
    const start = found(house()).jumper("q", "B1", "capped", "capped");
    const after = found(planned(start).land("q.a", "splice X")).land("q.b", "splice X");
    expect(because(after)).toBe("In proposed, jumper q would have both ends at one place.");
    expect(box(after, "B1").jumpers[jumperId("q")]).toBeDefined();
  });
});

describe("ids", () => {
  test("a new entry or ring as found may not have the id of one that proposed alone has", () => {
    const ring = {
      enclosure: boxId("B1"),
      id: "ring-9" as RingId,
      kind: "extension",
      volume: { kind: "unknown" },
    } as const;
    const plan = planned(house()).run("add-ring", ring).outside("C9", "B1");
    const side = { enclosure: boxId("B1"), newEntry: "e-C9" as EntryId, means: "none" } as const;
    const call = { id: cableId("C8"), item: "nm-12-2-g", name: "C8", a: side, b: { outside: "" } };
    for (const [command, args] of [
      ["add-ring", { ...ring, state: "as-found" }],
      ["route-cable", { ...call, state: "as-found" }],
      [
        "place-device",
        { state: "as-found", enclosure: boxId("B1"), id: cableId("C9"), type: "receptacle-15", name: "N" },
      ],
    ] as const) {
      const done = runCommand(plan.project, { command, args });
      expect(done.ok ? "ran" : done.refusal.code).toBe("id-in-use");
    }
  });
});

describe("held back", () => {
  const held = () => found(planned(house()).land("C2.bk@B2", "capped")).remove({ kind: "cable", id: cableId("C2") });

  test("one undo step takes the edit and the word back", () => {
    const before = planned(house()).land("C2.bk@B2", "capped").project;
    const done = runCommand(before, removal("C2"));
    if (!done.ok) throw new Error(done.refusal.message);
    expect(done.project.heldBack).toHaveLength(1);
    expect(canonicalText(applyPatches(done.project, done.inverse))).toBe(canonicalText(before));
    expect(canonicalText(applyPatches(before, structuredClone(done.patches)))).toBe(canonicalText(done.project));
  });

  test("ids count up, and what is settled goes", () => {
    const two = found(planned(held()).land("C1.wh@B1", "loose")).remove({ kind: "cable", id: cableId("C1") });
    expect(two.project.heldBack?.map(({ id }) => id)).toEqual(["1", "2"]);
    const settled = two.run("settle-held-back", { id: "1" });
    expect(settled.project.heldBack?.map(({ id }) => id)).toEqual(["2"]);
    expect(settled.run("settle-held-back", { id: "2" }).project).not.toHaveProperty("heldBack");
  });

  test("reset and discard clear it", () => {
    expect(held().run("reset-proposed", {}).project).not.toHaveProperty("heldBack");
    expect(held().run("discard-proposed", {}).project).not.toHaveProperty("heldBack");
  });
});

const removal = (name: string) => ({
  command: "remove-items" as const,
  args: { state: "as-found" as const, items: [{ kind: "cable" as const, id: cableId(name) }] },
});

describe("several commands together", () => {
  type Call = { readonly [I in CommandId]: { readonly command: I; readonly args: CommandArgs[I] } }[CommandId];
  const place = (id: string, state: "as-found" | "proposed" = "as-found"): Call => ({
    command: "place-device",
    args: { state, enclosure: boxId("B2"), id: deviceId(id), type: "receptacle-15", name: id },
  });
  const run = (project: Project, calls: readonly Call[]) =>
    runCommand(project, { command: "run-together", args: { title: "Do it all", calls } });

  test("each sees what the one before was carried on to, in both states", () => {
    const { project } = house();
    const done = run(project, [
      place("N"),
      { command: "rename-item", args: { state: "proposed", item: { kind: "device", id: deviceId("N") }, name: "N2" } },
    ]);
    if (!done.ok) throw new Error(done.refusal.message);
    expect(done.title).toBe("Do it all");
    expect(done.project.asFound.enclosures[boxId("B2")]?.devices[deviceId("N")]?.name).toBe("N");
    expect(done.project.proposed?.enclosures[boxId("B2")]?.devices[deviceId("N")]?.name).toBe("N2");
    expect(canonicalText(applyPatches(done.project, done.inverse))).toBe(canonicalText(project));
  });

  test("when one is not carried over, none is, and one word is kept", () => {
    const { project } = planned(house()).land("C2.bk@B2", "capped");
    const done = run(project, [place("N"), removal("C2")]);
    if (!done.ok) throw new Error(done.refusal.message);
    expect(done.project.proposed).toEqual(project.proposed);
    expect(done.project.heldBack).toHaveLength(1);
    expect(done.project.heldBack?.[0]).toMatchObject({ title: "Do it all" });
    expect(done.project.heldBack?.[0]?.items.map(({ name }) => name)).toEqual(["C2", "N", "B1", "B2"]);
    expect(done.project.asFound.enclosures[boxId("B2")]?.devices[deviceId("N" as DeviceId)]).toBeDefined();
  });
});

test("a record corrected as found does not bring the found device back beside the one that replaces it", () => {
  const replaced = planned(house()).run("replace-device", {
    device: deviceId("R1"),
    id: deviceId("R1b"),
    type: "gfci-receptacle-20",
    name: "R1b",
  });
  const corrected = found(replaced).run("replace-device", {
    device: deviceId("R1"),
    id: deviceId("R1c"),
    type: "receptacle-20",
    name: "R1",
  });
  const { devices } = box(corrected, "B1");
  expect(Object.values(devices).map(({ id, replaces }) => [id, replaces])).toEqual([
    [deviceId("R1b"), deviceId("R1c")],
  ]);
});
