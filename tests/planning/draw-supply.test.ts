import { describe, expect, test } from "vitest";
import { scopeAnswer } from "../../shared-model/analysis/scope-answer.ts";
import { openSession } from "../../shared-model/analysis/session.ts";
import type { CommandCall } from "../../shared-model/answers/command-call.ts";
import type { SupplyAnswer, SupplyAsk } from "../../shared-model/answers/supply.ts";
import { cableItems } from "../../shared-model/catalog/cable-items.ts";
import { getDeviceType } from "../../shared-model/catalog/device-types.ts";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import { freePlace } from "../../shared-model/geometry/free-place.ts";
import {
  asId,
  type CableId,
  type ConductorKey,
  cableEnd,
  type DeviceId,
  type EnclosureId,
  type EntryId,
} from "../../shared-model/model/ids.ts";
import { type Edition, emptyProject, type Project } from "../../shared-model/model/project.ts";
import { drawSupply as drawAt } from "../../shared-model/planning/supply/draw-supply.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { makeUpCards } from "../../shared-model/sheets/cards/make-up-card.ts";
import type { Page } from "../../shared-model/sheets/display-list.ts";
import { directoryPages } from "../../shared-model/sheets/lists/directory.ts";
import { textsOf } from "../../shared-model/sheets/text-boxes.ts";
import { checkDocument } from "../rules/check-drawing.ts";
import { inputOf } from "../sheets/sheet-inputs.ts";

const state = "as-found";
const B1 = asId<EnclosureId>("b1");
const C1 = asId<CableId>("c1");
const D1 = asId<DeviceId>("d1");

const FRESH: SupplyAsk["fresh"] = {
  panel: { id: asId("p1"), name: "P" },
  bars: { neutral: asId("nb"), ground: asId("gb") },
  entry: asId<EntryId>("pe"),
  breakers: [
    { id: asId("cb1"), name: "CB1" },
    { id: asId("cb2"), name: "CB2" },
  ],
};

const ask = (more: Partial<SupplyAsk> = {}): SupplyAsk => ({ state, cable: C1, fresh: FRESH, ...more });

function run(project: Project, ...calls: readonly CommandCall[]): Project {
  return calls.reduce((before, call) => {
    const done = runCommand(before, call);
    if (!done.ok) throw new Error(`${call.command}: ${done.refusal.message}`);
    return done.project;
  }, project);
}

/** B1 with a device, and C1 of a kind that comes to it from out of the drawing. */
const boxWith = (item: string, device = "receptacle-15", edition: Edition = 2020): Project =>
  run(
    emptyProject("Seen", edition),
    { command: "place-enclosure", args: { state, id: B1, item: "square-4-2-1-8", name: "B1", at: { x: 0, y: 0 } } },
    { command: "place-device", args: { state, enclosure: B1, id: D1, type: device, name: "R1" } },
    {
      command: "route-cable",
      args: {
        state,
        id: C1,
        item,
        name: "C1",
        a: { enclosure: B1, newEntry: "e1", means: "internal-clamp" },
        b: { outside: "the supply" },
      },
    },
  );

const land = (project: Project, ends: Readonly<Record<string, string>>): Project =>
  run(
    project,
    ...Object.entries(ends).map(([key, terminal]) => ({
      command: "land-end",
      args: {
        state,
        enclosure: B1,
        end: cableEnd(C1, key as ConductorKey, "a"),
        at: { kind: "terminal", device: D1, terminal, hole: 1 },
      },
    })),
  );

const drawSupply = (project: Project, wanted: SupplyAsk): SupplyAnswer => drawAt(project, wanted, freePlace);

const together = (answer: SupplyAnswer): CommandCall => {
  if (!answer.ok) throw new Error(answer.why);
  return { command: "run-together", args: { title: answer.title, calls: answer.calls } };
};

const drawn = (project: Project, more: Partial<SupplyAsk> = {}): Project =>
  run(project, together(drawSupply(project, ask(more))));

/** What lies where in the panel: "bk on CB1 OUT (20 A), wh on neutral". */
function inShort(project: Project, panel = FRESH.panel.id): string {
  const found = project.asFound.enclosures[panel];
  if (found === undefined) throw new Error("No panel.");
  const { places, devices } = found;
  const words = Object.entries(places).flatMap(([end, { at }]) => {
    const device = at.kind === "terminal" ? devices[at.device] : undefined;
    if (at.kind !== "terminal" || device === undefined || !end.startsWith(C1)) return [`${end} ${at.kind}`];
    const what = device.type.endsWith("-bar")
      ? device.type
      : `${device.type} ${device.breakerRatingA} A ${at.terminal}`;
    return [`${end.split(".")[1]}: ${what}`];
  });
  return words.sort().join(", ");
}

/** NFPA 70 240.4(D): copper 14, 12 and 10 AWG 15, 20 and 30 A; aluminium 12 and 10 AWG 15 and 25 A. */
const ONE = (amps: number, ground = ""): string => `bk: breaker-1 ${amps} A OUT${ground}, wh: neutral-bar`;
const TWO = (amps: number): string =>
  `bk: breaker-2 ${amps} A OUT1, cu: ground-bar, rd: breaker-2 ${amps} A OUT2, wh: neutral-bar`;
const BARE = ", cu: ground-bar";

const KINDS: Readonly<Record<string, string | RegExp>> = {
  "nm-12-2-g": ONE(20, BARE),
  "nm-14-2-g": ONE(15, BARE),
  "nm-12-3-g": TWO(20),
  "nm-14-3-g": TWO(15),
  "nm-12-2-2-g": "bk: breaker-1 20 A OUT, cu: ground-bar, rd: breaker-1 20 A OUT, wh2: neutral-bar, wh: neutral-bar",
  "nm-10-2-g": ONE(30, BARE),
  "nm-10-3-g": TWO(30),
  "nm-14-2": ONE(15),
  "nm-12-2": ONE(20),
  "nm-14-2-reduced-g": ONE(15, BARE),
  "armoured-12-2-g": ONE(20, ", gn: ground-bar"),
  "armoured-12-2-old": ONE(20),
  "al-12-2-g": ONE(15, BARE),
  "al-10-2-g": ONE(25, BARE),
  "knob-tube-14": /one conductor by itself/,
  "knob-tube-12": /one conductor by itself/,
  "single-12-black": /one conductor by itself/,
  "single-12-white": /one conductor by itself/,
};

describe("every kind of cable of the stock", () => {
  test("is thought of", () => {
    expect(Object.keys(KINDS).sort()).toEqual(cableItems.map(({ id }) => id).sort());
  });

  test.each(Object.entries(KINDS))("%s", (item, expected) => {
    const project = boxWith(item);
    const answer = drawSupply(project, ask());
    if (typeof expected !== "string") return expect(answer.ok ? "" : answer.why).toMatch(expected);
    const done = drawn(project);
    expect(invariantProblems(done)).toEqual([]);
    expect(inShort(done)).toBe(expected);
  });
});

describe("what is drawn", () => {
  const done = drawn(boxWith("nm-12-3-g"));

  test("of all that was invented nothing reads as seen", () => {
    const { enclosures, cables } = done.asFound;
    const panel = enclosures[FRESH.panel.id];
    expect(panel?.note).toBe("drawn, not seen");
    expect(panel?.evidence).toEqual({ spaces: "assumed", supply: "assumed", mainBond: "assumed" });
    const breaker = panel?.devices[FRESH.breakers[0].id];
    expect(breaker?.evidence).toEqual({
      breakerRatingA: "assumed",
      type: "assumed",
      legs: "assumed",
      function: "assumed",
    });
    expect(breaker?.slot).toBeUndefined();
    expect(breaker?.notes).toContain("were not read");
    expect(Object.values(panel?.places ?? {}).map(({ evidence }) => evidence)).toEqual(
      Array.from({ length: 4 }, () => ({ at: "assumed" })),
    );
    expect(cables[C1]?.evidence?.sides).toBe("assumed");
    // What was seen in the box stays as it was.
    expect(enclosures[B1]?.places).toEqual(boxWith("nm-12-3-g").asFound.enclosures[B1]?.places);
  });

  test("two hots on one white open together, as the multiwire rules want it", () => {
    const rules = checkDocument(done).findings.map(({ rule }) => rule);
    expect(rules.filter((rule) => rule.startsWith("mwbc"))).toEqual([]);
  });

  test("no cable is too thin for its breaker, and one size up would be told", () => {
    for (const [item, expected] of Object.entries(KINDS)) {
      if (typeof expected !== "string") continue;
      const project = land(boxWith(item), { bk: "H1", wh: "N1" });
      const answer = drawSupply(project, ask());
      const larger = answer.ok ? answer.ratingA + 5 : 0;
      const rules = (one: Project) => checkDocument(one).findings.map(({ rule }) => rule);
      expect([item, rules(drawn(project)).includes("conductor-too-small")]).toEqual([item, false]);
      expect([item, rules(drawn(project, { ratingA: larger })).includes("conductor-too-small")]).toEqual([item, true]);
    }
  });

  test("the ratings below that of the cable can be asked for", () => {
    const answer = drawSupply(boxWith("nm-10-2-g"), ask());
    expect(answer.ok && answer.smaller).toEqual([20, 15]);
    expect(inShort(drawn(boxWith("nm-10-2-g"), { ratingA: 20 }))).toBe(ONE(20, BARE));
  });

  test("into a panel that is there, on the next free holes", () => {
    const second = { ...FRESH, entry: asId<EntryId>("pe2"), breakers: [FRESH.breakers[1], FRESH.breakers[0]] as const };
    const c2 = asId<CableId>("c2");
    const two = run(drawn(boxWith("nm-12-2-g")), {
      command: "route-cable",
      args: {
        state,
        id: c2,
        item: "nm-14-2-g",
        name: "C2",
        a: { enclosure: B1, newEntry: "e2", means: "internal-clamp" },
        b: { outside: "the supply" },
      },
    });
    const more = drawn(two, { cable: c2, panel: FRESH.panel.id, fresh: second });
    expect(invariantProblems(more)).toEqual([]);
    const panel = more.asFound.enclosures[FRESH.panel.id];
    expect(Object.keys(more.asFound.enclosures)).toHaveLength(2);
    expect(panel?.places[cableEnd(c2, "wh" as ConductorKey, "b")]?.at).toMatchObject({ device: "nb", hole: 2 });
    expect(panel?.devices[FRESH.breakers[1].id]?.breakerRatingA).toBe(15);
  });

  test("a box that is not made yet is made first, on a copy, and is not in what comes back", () => {
    const empty = emptyProject("Seen", 2020);
    const box = boxWith("nm-12-2-g");
    const calls: CommandCall[] = [
      { command: "place-enclosure", args: { state, id: B1, item: "square-4-2-1-8", name: "B1", at: { x: 0, y: 0 } } },
      {
        command: "route-cable",
        args: {
          state,
          id: C1,
          item: "nm-12-2-g",
          name: "C1",
          a: { enclosure: B1, newEntry: "e1", means: "internal-clamp" },
          b: { outside: "the supply" },
        },
      },
    ];
    const first: CommandCall = { command: "run-together", args: { title: "Make B1", calls } };
    const answer = drawSupply(empty, ask({ after: first }));
    expect(answer).toEqual(drawSupply(box, ask()));
  });
});

describe("a cable that cannot be the supply is refused in words", () => {
  const why = (project: Project, more: Partial<SupplyAsk> = {}): string => {
    const answer = drawSupply(project, ask(more));
    return answer.ok ? "" : answer.why;
  };

  test("both sides are drawn, or neither is", () => {
    expect(why(drawn(boxWith("nm-12-2-g")))).toContain("Both sides of C1 are drawn");
    // No command leads a cable so; a file could.
    const box = boxWith("nm-12-2-g");
    const cable = box.asFound.cables[C1];
    if (cable === undefined) throw new Error("No C1.");
    const sides = { ...cable.sides, a: { outside: "somewhere" } };
    const lost = { ...box, asFound: { ...box.asFound, cables: { [C1]: { ...cable, sides } } } };
    expect(why(lost)).toContain("Neither side of C1 is drawn");
  });

  test("it begins at a panel that is drawn", () => {
    const away = run(drawn(boxWith("nm-12-2-g")), {
      command: "move-cable-side",
      args: { state, cable: C1, side: "a", to: { outside: "somewhere" } },
    });
    expect(why(away)).toContain("C1 begins at P");
  });

  test("travellers", () => {
    const threeWay = land(boxWith("nm-12-3-g", "switch-3way"), { bk: "T1", rd: "T2" });
    expect(why(threeWay)).toContain("C1 carries travellers from B1");
    expect(why(land(boxWith("nm-12-3-g", "switch-3way"), { bk: "C" }))).toBe("");
  });

  test("a white that is marked as a hot lies on the breaker, marked there too", () => {
    const marked = run(boxWith("nm-10-2-g"), {
      command: "set-property",
      args: {
        state,
        target: { kind: "end", enclosure: B1, id: cableEnd(C1, "wh" as ConductorKey, "a") },
        field: "markedAs",
        value: "black",
      },
    });
    expect(inShort(drawn(marked))).toBe("bk: breaker-2 30 A OUT1, cu: ground-bar, wh: breaker-2 30 A OUT2");
    const place = drawn(marked).asFound.enclosures[FRESH.panel.id]?.places[cableEnd(C1, "wh" as ConductorKey, "b")];
    expect(place).toMatchObject({ markedAs: "black", evidence: { at: "assumed", markedAs: "assumed" } });
  });

  test("a thickness that is in no table", () => {
    const thick = run(
      boxWith("nm-10-2-g"),
      ...["bk", "wh"].map((id) => ({
        command: "set-property",
        args: { state, target: { kind: "conductor", cable: C1, id }, field: "awg", value: "6" },
      })),
    );
    expect(why(thick)).toContain("does not tell the rating");
    expect(inShort(drawn(thick, { ratingA: 50 }))).toBe(ONE(50, BARE));
  });

  test("a panel without a bar, or without a free hole", () => {
    const into = (panel: Project): string => {
      const fresh = {
        ...FRESH,
        breakers: [FRESH.breakers[1], FRESH.breakers[1]] as const,
        entry: asId<EntryId>("pe3"),
      };
      const apart = run(panel, {
        command: "move-cable-side",
        args: { state, cable: C1, side: "b", to: { outside: "the supply" } },
      });
      return why(apart, { panel: FRESH.panel.id, fresh });
    };
    const one = drawn(boxWith("nm-12-2-g"));
    expect(into(one)).toBe("");
    expect(
      into(run(one, { command: "remove-items", args: { state, items: [{ kind: "device", id: "gb" }] } })),
    ).toContain("no bar for the neutral or the ground");
    const holes = getDeviceType("ground-bar").terminals[0]?.holes ?? 0;
    const full = Array.from({ length: holes }, (_, index) => index + 1).reduce(
      (project, hole) => {
        const at = { kind: "terminal", device: "gb", terminal: "BAR", hole };
        const args = {
          state,
          enclosure: FRESH.panel.id,
          jumper: `j${hole}`,
          name: `j${hole}`,
          awg: "12",
          colour: "bare",
        };
        return run(project, { command: "add-jumper", args: { ...args, from: at, to: { kind: "bond" } } });
      },
      drawn(boxWith("nm-12-2")),
    );
    expect(into(full)).toBe("");
    const grounded = run(full, {
      command: "route-cable",
      args: {
        state,
        id: "c2",
        item: "nm-12-2-g",
        name: "C2",
        a: { enclosure: B1, newEntry: "e2", means: "internal-clamp" },
        b: { outside: "the supply" },
      },
    });
    const fresh = { ...FRESH, breakers: [FRESH.breakers[1], FRESH.breakers[1]] as const, entry: asId<EntryId>("pe3") };
    expect(why(grounded, { cable: asId<CableId>("c2"), panel: FRESH.panel.id, fresh })).toContain("no free hole");
  });
});

describe("with the supply drawn, ends that are landed wrong are dangers", () => {
  test.each([
    ["polarity reversed", "receptacle-15", { bk: "N1", wh: "H1", cu: "G" }, "polarity-swapped"],
    ["LINE and LOAD exchanged", "gfci-receptacle-15", { bk: "LOAD_H", wh: "LOAD_N", cu: "G" }, "line-load-swapped"],
    ["black on the green screw", "receptacle-15", { bk: "G", wh: "N1" }, "hot-ground-joined"],
  ])("%s", (_, device, ends, rule) => {
    const before = land(boxWith("nm-12-2-g", device), ends);
    const dangers = (project: Project) =>
      checkDocument(project).findings.flatMap((one) => (one.severity === "danger" ? [one.rule] : []));
    expect(dangers(before)).toEqual([]);
    expect(dangers(drawn(before))).toEqual([rule]);
  });

  test("landed right, nothing is a danger or a violation but what the box itself is", () => {
    const right = drawn(land(boxWith("nm-12-2-g"), { bk: "H1", wh: "N1", cu: "G" }));
    const grave = checkDocument(right).findings.filter(
      ({ severity }) => severity !== "advice" && severity !== "caution",
    );
    // Its metal is on no ground, as drawn.
    expect(grave.map(({ rule }) => rule)).toEqual(["metal-box-unbonded"]);
  });
});

describe("on paper nobody is sent to a breaker that was not read", () => {
  const read = (project: Project): Project =>
    run(
      project,
      ...["type", "breakerRatingA"].map((field) => ({
        command: "mark-evidence",
        args: { state, target: { kind: "device", id: "cb1" }, field, evidence: "seen" },
      })),
    );
  const supplied = drawn(land(boxWith("nm-12-2-g"), { bk: "H1", wh: "N1", cu: "G" }));

  /** R1 replaced in proposed, so that there is work at B1. */
  const proposed = (project: Project): Project =>
    run(run(project, { command: "start-proposed", args: {} }), {
      command: "replace-device",
      args: { state: "proposed", device: D1, id: "d2", type: "receptacle-tr-15", name: "R1b" },
    });
  const wordsOfSteps = (project: Project): readonly string[] =>
    (scopeAnswer(openSession(proposed(project)))?.steps ?? []).flatMap(({ id, text, details }) =>
      /^(isolate|HP1|energise|tell)/.test(id) ? [[text, ...details].join(" ")] : [],
    );

  test("work steps", () => {
    const steps = wordsOfSteps(supplied);
    expect(steps.length).toBeGreaterThanOrEqual(4);
    for (const words of steps) {
      expect(words).toContain("CB1 (not identified)");
      expect(words).not.toContain("20 A");
    }
    for (const words of steps.filter((one) => /Open |verify dead/.test(one)))
      expect(words).toContain("Find the one that feeds this circuit");
    for (const words of wordsOfSteps(read(supplied))) expect(words).not.toMatch(/not identified/);
    expect(wordsOfSteps(read(supplied)).join(" ")).toContain("breaker CB1, 20 A, in P");
  });

  const sheetWords = (project: Project) => {
    const textOf = (pages: readonly Page[]): string =>
      pages.flatMap(({ marks }) => textsOf(marks).map(({ text }) => text)).join(" ");
    const input = inputOf(project, { box: "B1" });
    return { card: textOf(makeUpCards(input)), directory: textOf(directoryPages(inputOf(project))) };
  };

  test("make-up card and panel directory", () => {
    for (const [project, isRead] of [
      [supplied, false],
      [read(supplied), true],
    ] as const) {
      const words = sheetWords(project);
      expect(words.card.includes("not identified: find it")).toBe(!isRead);
      expect(words.card.includes("CB1, 20 A")).toBe(isRead);
      expect(words.directory.includes("not identified")).toBe(!isRead);
      expect(words.directory.split(/\s+/).includes("20")).toBe(isRead);
    }
  });
});
