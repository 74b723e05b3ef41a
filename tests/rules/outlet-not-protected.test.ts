import { describe, expect, test } from "vitest";
import type { LoadPriority } from "../../shared-model/model/device.ts";
import { asId, outletKey } from "../../shared-model/model/ids.ts";
import type { Load } from "../../shared-model/model/load.ts";
import type { Edition, Project } from "../../shared-model/model/project.ts";
import { ROOM_KINDS, type RoomKind } from "../../shared-model/model/room.ts";
import { outletNotProtected } from "../../shared-model/rules/checks/outlet-not-protected.ts";
import { amps } from "../../shared-model/units/quantity.ts";
import { cubicInches } from "../../shared-model/units/volume.ts";
import table from "../reference/required-protection.json" with { type: "json" };
import { checkDocument, inShort, ofWiring, rawAnswers } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { findingOn, proposing } from "./fix-tester.ts";
import { alone, laundryAsFound, laundryProposed, multiwire } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

/** A device fed straight from a breaker, in a room of these kinds. */
const inRoom = (
  kinds: readonly RoomKind[],
  edition: Edition = 2020,
  {
    type = "receptacle-15",
    breaker = "breaker-1",
    grade,
  }: { type?: string; breaker?: string; grade?: "above" | "at" } = {},
): Drawing => {
  const drawing = new Drawing(edition)
    .room("Room", kinds, grade === undefined ? {} : { grade })
    .panel("P")
    .breaker("Q1", 20, {}, breaker)
    .box("A", 30, { roomId: "Room" as never })
    .cable("C1", "nm-12-2-g", "P", "A")
    .device("R1", type, "A");
  const neutral = breaker === "breaker-1" ? "P-NB.BAR" : "Q1.LOAD_N";
  drawing.put({ "C1.bk@P": "Q1.OUT", "C1.wh@P": neutral });
  return type.startsWith("receptacle")
    ? drawing.put({ "C1.bk@A": "R1.H1", "C1.wh@A": "R1.N1" })
    : drawing.put({ "C1.bk@A": "R1.H", "C1.wh@A": "R1.N" });
};

/** A protected receptacle behind more switches in a row than are tried in every position. */
const behindSwitches = (count: number): Drawing => {
  const drawing = inRoom(["bathroom"], 2020, { breaker: "breaker-gfci-1" }).setBox("A", {
    volume: { kind: "marked", volumeIn3: cubicInches(400) },
  });
  for (let index = 0; index < count; index++) drawing.device(`S${index}`, "switch-single-pole", "A");
  for (let index = 1; index < count; index++) drawing.jumper(`j${index}`, "A", `S${index - 1}.L`, `S${index}.C`);
  return drawing.put({ "C1.bk@A": "S0.C" }).jumper("last", "A", `S${count - 1}.L`, "R1.H1");
};

ruleTester(outletNotProtected, {
  passes: [
    { name: "the proposed laundry circuit", drawing: () => laundryProposed() },
    { name: "behind a few switches", drawing: () => behindSwitches(3) },
    { name: "a hall receptacle", drawing: () => inRoom(["hallway"]) },
    {
      name: "a bathroom receptacle behind a sensing breaker",
      drawing: () => inRoom(["bathroom"], 2020, { breaker: "breaker-gfci-1" }),
    },
    { name: "a bathroom light", drawing: () => inRoom(["bathroom"], 2020, { type: "luminaire-60" }) },
    {
      name: "an accessory building above grade",
      drawing: () => inRoom(["accessory-building"], 2020, { grade: "above" }),
    },
    {
      name: "a face above 20 A in a bathroom, 2017",
      drawing: () => inRoom(["bathroom"], 2017).setDevice("R1", { ratingA: amps(30) }),
    },
    { name: "an outdoor appliance, 2017", drawing: () => inRoom(["outdoor"], 2017, { type: "appliance-120" }) },
    {
      name: "a protected receptacle in no room",
      drawing: () =>
        laundryProposed()
          .setBox("B2", { roomId: undefined as never })
          .setDevice("R2", { zones: [] }),
    },
  ],
  finds: [
    {
      name: "hot and neutral exchanged: folded under that",
      drawing: () => inRoom(["bathroom"]).swap("C1.bk@A", "C1.wh@A"),
      findings: [{ on: "R1", says: ["its hot and neutral are exchanged"] }],
    },
    {
      name: "the laundry circuit as found",
      drawing: () => laundryAsFound(),
      findings: [
        {
          on: "R1",
          severity: "violation",
          says: [
            "R1 in B1 (Laundry: unfinished basement) needs",
            "no ground-fault device stands before it",
            "Fit a ground-fault receptacle at R1",
          ],
        },
        { on: "R2" },
        { on: "R3", says: ["(Porch: outdoors)"] },
        { on: "R4" },
      ],
    },
    {
      name: "both conductors of a cable on LINE",
      drawing: () => laundryProposed().put({ "C2.bk@B1": "HL", "C2.wh@B1": "NL" }),
      findings: [
        {
          on: "R2",
          says: [
            "neither its hot nor its neutral is behind R1b: C2 BK leaves splice HL in B1",
            "from the LOAD side of R1b",
          ],
        },
        { on: "R3" },
      ],
    },
    {
      name: "an arc-fault breaker does not protect people",
      drawing: () => inRoom(["bathroom"], 2020, { breaker: "breaker-afci-1" }),
      findings: [{ on: "R1", says: ["not of the class that protects people"] }],
    },
    {
      name: "the neutral of a sensing breaker on the bar",
      drawing: () => inRoom(["bathroom"], 2020, { breaker: "breaker-gfci-1" }).put({ "C1.wh@P": "P-NB.BAR" }),
      findings: [
        {
          on: "R1",
          says: ["100 % of what it uses goes round Q1: C1 WH leaves P-NB N in P", "Land its neutral on Q1."],
        },
      ],
    },
    {
      name: "only the neutrals of a device exchanged: it trips with every load and protects nothing",
      drawing: () => laundryProposed().exchange("R1b", "LINE_N", "LOAD_N"),
      findings: [
        { on: "R1b", says: ["it has its neutral fed on LOAD"] },
        { on: "R2", says: ["R1b has its neutral fed on LOAD"] },
        { on: "R3" },
      ],
    },
    {
      name: "a device without neutral on LINE",
      drawing: () => laundryProposed().put({ "b.2": "cap" }),
      findings: [{ on: "R1b" }, { on: "R2" }, { on: "R3" }],
    },
    {
      name: "a light in a crawl space",
      drawing: () => inRoom(["crawl-space"], 2020, { type: "luminaire-60" }),
      findings: [{ on: "R1" }],
    },
    {
      name: "an outdoor appliance, 2020",
      drawing: () => inRoom(["outdoor"], 2020, { type: "appliance-120" }),
      findings: [{ on: "R1" }],
    },
    {
      name: "a 20 A face in a bathroom, 2017: the largest that the table covers",
      drawing: () => inRoom(["bathroom"], 2017, { type: "receptacle-20" }),
      findings: [{ on: "R1" }],
    },
    {
      name: "a 30 A face in a bathroom, 2020",
      drawing: () => inRoom(["bathroom"], 2020).setDevice("R1", { ratingA: amps(30) }),
      findings: [{ on: "R1" }],
    },
    {
      name: "one listed place among others is enough",
      drawing: () => inRoom(["hallway", "sink-zone"]),
      findings: [{ on: "R1", data: { places: "sink-zone" } }],
    },
    {
      name: "it rests on the room of the box",
      drawing: () => inRoom(["bathroom"]).setBox("A", { evidence: { roomId: "assumed" } }),
      findings: [{ on: "R1", basis: "assumed" }],
    },
  ],
  cannotTell: [
    {
      name: "the box is in no room",
      drawing: () => inRoom(["bathroom"]).setBox("A", { roomId: undefined as never }),
      on: ["A"],
      missing: "the room of A",
    },
    {
      name: "four boxes of a section are in no room: one question",
      drawing: () =>
        ["B1", "B2", "B3", "B4"].reduce(
          (drawing, box) => drawing.setBox(box, { roomId: undefined as never }),
          ["R1", "R2", "R3", "R4"].reduce((drawing, name) => drawing.setDevice(name, { zones: [] }), laundryAsFound()),
        ),
      on: ["B1"],
      missing: "the rooms of B1, B2, B3 and B4",
    },
    {
      name: "no source reaches it",
      drawing: () => inRoom(["bathroom"]).put({ "C1.bk@P": "cap", "C1.wh@P": "cap" }),
      on: ["R1"],
      missing: "the supply of R1",
    },
    {
      name: "more switches bear on it than are tried",
      drawing: () => behindSwitches(20),
      on: ["R1", "A"],
      missing: "switch",
    },
  ],
});

/** The published lists, place by place: a plain receptacle is found in every listed place and in no other. */
describe("required protection by place and edition", () => {
  const years = [2017, 2020, 2023] as const;
  const isFound = (place: RoomKind, year: Edition): boolean =>
    rawAnswers(inRoom([place], year).project())
      .flat()
      .some(({ reports }) => reports.some(({ rule }) => rule === outletNotProtected));
  test("the table names every place", () => {
    expect(Object.keys(table.places).sort()).toEqual([...ROOM_KINDS].sort());
  });
  test.each(Object.entries(table.places))("%s", (place, required) => {
    expect(years.map((year) => isFound(place as RoomKind, year))).toEqual(required);
    expect(isFound(place as RoomKind, 2026)).toBe(required[2]);
  });
});

test("of two wrongs at one outlet only the exchange is told", () => {
  const { findings } = checkDocument(inRoom(["bathroom"]).swap("C1.bk@A", "C1.wh@A").project());
  expect(inShort(ofWiring(findings))).toEqual(["polarity-swapped R1"]);
});

test("one cable left on LINE of a device with nothing on LOAD is told at what it feeds, two cables at the device as well", () => {
  const allOnLine = (): Drawing =>
    laundryProposed()
      .put({ "C2.bk@B1": "HL", "C2.wh@B1": "NL", "C5.bk@B1": "HL", "C5.wh@B1": "NL" })
      .removeJumper("c")
      .removeJumper("d");
  const told = (drawing: Drawing) =>
    ofWiring(checkDocument(drawing.project()).findings).filter(({ rule }) =>
      ["outlet-not-protected", "gfci-load-empty-tape"].includes(rule),
    );
  const one = told(allOnLine().meant("B1", { C5: false }));
  expect(inShort(one)).toEqual(["outlet-not-protected R2"]);
  expect(one[0]?.foldedSubjects.map(({ name }) => name)).toEqual(["R1b", "R3"]);
  expect(inShort(told(allOnLine()))).toContain("gfci-load-empty-tape R1b");
});

describe("what it offers", () => {
  const offersAt = (drawing: Drawing, on: string) =>
    (findingOn(proposing(drawing), "outlet-not-protected", on).offers ?? []).map(({ title }) => title);
  const onLine = () => laundryProposed().put({ "C2.bk@B1": "HL", "C2.wh@B1": "NL" });

  test("its own face, with what it feeds on or without, or the LOAD side of a device that its cable passes", () => {
    expect(offersAt(onLine(), "R2")).toEqual([
      "Dual-function receptacle at R2, LOAD left empty: protects R2 only",
      "Dual-function receptacle at R2, downstream on LOAD: protects R2, R3",
      "Bring C2 from the LOAD side of R1b",
    ]);
    expect(trySectionFix(onLine(), "outlet-not-protected", "R2", "LOAD left empty").gained).toEqual(["R2b"]);
    expect(trySectionFix(onLine(), "outlet-not-protected", "R2", "downstream on LOAD").gained).toEqual(["R2b", "R3"]);
    expect(trySectionFix(onLine(), "outlet-not-protected", "R2", "Bring C2").gained).toEqual(["R2", "R3"]);
  });

  test("outdoors the new face is weather-resistant, and 20 A stays 20 A", () => {
    const porch = onLine()
      .setBox("B2", { roomId: "Hall" as never })
      .setDevice("R2", { zones: [] });
    expect(offersAt(porch, "R3")).toContain(
      "Weather-resistant GFCI receptacle at R3, LOAD left empty: protects R3 only",
    );
    const twenty = alone(laundryAsFound(), "R4").setDevice("R4", { type: "receptacle-20", ratingA: amps(20) });
    expect(offersAt(twenty, "R4")).toEqual(["GFCI receptacle, 20 A, at R4, LOAD left empty: protects R4 only"]);
  });

  /** The two states of a fix: the device in the place of another, by its name. */
  const placed = (project: Project, box: string): readonly string[] =>
    Object.values(project.proposed?.enclosures[box as never]?.devices ?? {}).map(({ name }) => name);

  test("the new device has the next free letter after the name of the old one", () => {
    const justR4 = () => alone(laundryAsFound(), "R4");
    const inB4 = (drawing: Drawing, on: string) =>
      placed(trySectionFix(drawing, "outlet-not-protected", on, "LOAD left empty").project, "B4");
    expect(inB4(justR4(), "R4")).toEqual(["R4b"]);
    expect(inB4(justR4().setDevice("R1", { name: "R4b" }), "R4")).toEqual(["R4c"]);
    expect(inB4(justR4().setDevice("R4", { name: "R4b" }), "R4b")).toEqual(["R4c"]);
  });

  const plugIn = (drawing: Drawing, priority: LoadPriority | undefined, on: string, item = "appliance-600") => {
    const load: Load = {
      id: asId("k"),
      name: "K1",
      item,
      plug: outletKey(asId(on)),
      order: 0,
      ...(priority !== undefined && { priority }),
    };
    const project = proposing(drawing);
    const withLoad = { ...project.asFound, loads: { [load.id]: load } };
    const found = findingOn({ ...project, asFound: withLoad, proposed: withLoad }, "outlet-not-protected", "R2");
    return (found.offers ?? []).map(({ title }) => title);
  };

  test("what must not go off unnoticed is named where it would share a trip", () => {
    const [alone, onLoad, brought] = plugIn(onLine(), undefined, "R3", "freezer-180");
    expect(alone).toBe("Dual-function receptacle at R2, LOAD left empty: protects R2 only");
    expect(onLoad).toBe(
      "Dual-function receptacle at R2, downstream on LOAD: protects R2, R3; the freezer at R3 then goes off with the rest on a trip",
    );
    expect(brought).toBe("Bring C2 from the LOAD side of R1b; the freezer at R3 then goes off with the rest on a trip");
    for (const [priority, words] of [
      ["medical", "the medical equipment at R3"],
      ["alarm", "the alarm at R3"],
      ["sump-pump", "the sump pump at R3"],
    ] as const)
      expect(plugIn(onLine(), priority, "R3")[1]).toContain(words);
    expect(plugIn(onLine(), "none", "R3", "freezer-180")[1]).toBe(
      "Dual-function receptacle at R2, downstream on LOAD: protects R2, R3",
    );
    // It is behind R1b already: nothing is new for it.
    expect(plugIn(onLine(), "freezer", "R5").some((title) => title.includes("freezer"))).toBe(false);
  });

  test("a device on another branch is not named, and its place among the offers is not lost", () => {
    const drawing = laundryProposed()
      .setBox("B1", { roomId: "Hall" as never })
      .setDevice("R1b", { type: "receptacle-15" })
      .put({ "a.2": "R1b.H1", "b.2": "R1b.N1", "c.2": "R1b.H2", "d.2": "R1b.N2" });
    const { message, offers = [] } = findingOn(proposing(drawing), "outlet-not-protected", "R2");
    expect(message).toContain("no ground-fault device stands before it");
    expect(message).not.toContain("R4b");
    expect(offers.map(({ title }) => title)).toEqual([
      "Dual-function receptacle at R2, LOAD left empty: protects R2 only",
      "Dual-function receptacle at R2, downstream on LOAD: protects R2, R3",
    ]);
  });

  test("every offer on the circuit as found does protect", () => {
    for (const on of ["R1", "R2", "R3", "R4"])
      for (const title of offersAt(alone(laundryAsFound(), on), on))
        expect(trySectionFix(alone(laundryAsFound(), on), "outlet-not-protected", on, title).gained).toContain(
          `${on}b`,
        );
  });

  test("a split receptacle has no ground-fault receptacle of its kind", () => {
    expect(offersAt(alone(laundryAsFound(), "R4").setDevice("R4", { hotTab: "removed" }), "R4/upper")).toEqual([]);
  });

  test("a device that is fed the wrong way round protects nothing, so nothing is brought behind it", () => {
    const drawing = onLine()
      .exchange("R1b", "LINE_N", "LOAD_N")
      .setBox("B1", { roomId: "Hall" as never });
    expect(offersAt(drawing, "R2").filter((title) => title.startsWith("Bring"))).toEqual([]);
  });

  test("a new ground screw without its pigtail is not offered", () => {
    expect(
      offersAt(
        alone(laundryAsFound(), "R4").setDevice("R4", { type: "receptacle-two-slot" }).removeJumper("B4g"),
        "R4",
      ),
    ).toEqual([]);
  });
});

describe("what lacks protection by one cause is one finding", () => {
  const told = (drawing: Drawing) =>
    checkDocument(drawing.project())
      .findings.filter(({ rule }) => rule === "outlet-not-protected")
      .map(({ subjects, foldedSubjects, message }) => ({
        on: [subjects[0], ...foldedSubjects].map((one) => one?.name),
        message,
      }));
  const kitchen = (drawing: Drawing): Drawing => {
    drawing.room("Kitchen", ["kitchen-counter"]);
    for (const box of ["BA", "BB"]) drawing.setBox(box, { roomId: "Kitchen" as never });
    return drawing;
  };

  test("a circuit without a device: told at the receptacle nearest to the panel, with the others and what would cure all", () => {
    expect(told(laundryAsFound())).toEqual([
      {
        on: ["R1", "R2", "R3", "R4"],
        message:
          "R1 in B1 (Laundry: unfinished basement) needs ground-fault protection, but no ground-fault device stands before it. 3 more need it and lack it for the same reason: R2, R3 and R4. Fit a ground-fault receptacle at R1 with its supply on LINE and the way on to the others on LOAD, or put a device before them.",
      },
    ]);
  });

  test("where they do not all hang behind the first, one device before them all", () => {
    const branches = laundryAsFound().setBox("B1", { roomId: "Hall" as never });
    const [one, ...more] = told(branches);
    expect([one?.on, more]).toEqual([["R2", "R3", "R4"], []]);
    expect(one?.message).toContain(
      "2 more need it and lack it for the same reason: R3 and R4. A device before all of them",
    );
  });

  test("past one device on one cable: both on it together, another cable by itself", () => {
    const past = laundryProposed()
      .put({ "C2.bk@B1": "HL", "C2.wh@B1": "NL", "C5.bk@B1": "HL", "C5.wh@B1": "NL" })
      .setDevice("R5", { zones: ["sink-zone"] });
    expect(told(past).map(({ on }) => on)).toEqual([["R2", "R3"], ["R5"]]);
  });

  test("halves of one receptacle, and no receptacle is named that cannot be split", () => {
    const split = alone(laundryAsFound(), "R4")
      .setDevice("R4", { hotTab: "removed" })
      .jumper("h", "B4", "R4.H1", "R4.H2");
    const [one, ...more] = told(split);
    expect([one?.on, more]).toEqual([["R4/upper", "R4/lower"], []]);
    expect(one?.message).toContain("A ground-fault receptacle cannot be split: put a ground-fault device before R4.");
  });

  test("both legs of a multiwire circuit, and of one receptacle on it: a two-pole breaker", () => {
    const both = told(kitchen(multiwire()));
    expect(both.map(({ on }) => on)).toEqual([["RA", "RB"]]);
    expect(both[0]?.message).toContain(
      "Fit a two-pole ground-fault breaker in place of QA and QB, with the shared neutral on it, or",
    );
  });

  test("what is wired in is told by itself, and what is new is never told under what was there", () => {
    const crawl = inRoom(["crawl-space"], 2020)
      .device("L2", "luminaire-60", "A")
      .jumper("h", "A", "R1.H2", "L2.H")
      .jumper("n", "A", "R1.N2", "L2.N");
    expect(told(crawl).map(({ on }) => on)).toEqual([["L2"], ["R1"]]);
    const plan = laundryAsFound()
      .device("R9", "receptacle-15", "B4")
      .jumper("h", "B4", "R4.H2", "R9.H1")
      .jumper("n", "B4", "R4.N2", "R9.N1");
    const project: Project = { ...laundryAsFound().project(), proposed: plan.project().asFound };
    const found = checkDocument(project, "proposed").findings.filter(({ rule }) => rule === "outlet-not-protected");
    expect(found.map(({ subjects }) => subjects[0]?.name)).toEqual(["R1", "R9"]);
  });
});
