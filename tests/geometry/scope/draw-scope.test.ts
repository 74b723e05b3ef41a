/** What the difference of the states shows over the drawing of a box: the worked example, and laws for every box. */
import { describe, expect, test } from "vitest";
import type { BoxDrawing, Rect } from "../../../shared-model/geometry/box-drawing.ts";
import { boxDrawing } from "../../../shared-model/geometry/draw-box.ts";
import { scopeDrawing, scopeSigns, scopeSteps } from "../../../shared-model/geometry/scope/draw-scope.ts";
import type { ScopeDrawing, ScopeSign } from "../../../shared-model/geometry/scope/scope-drawing.ts";
import { scopeTally } from "../../../shared-model/geometry/scope/scope-tally.ts";
import { textWidth } from "../../../shared-model/geometry/text-width.ts";
import type { Point } from "../../../shared-model/model/project.ts";
import { nameOfEnd } from "../../../shared-model/queries/end-facts.ts";
import { boxId, deviceId } from "../../builders/ids.ts";
import { openSample } from "../../builders/samples/open-sample.ts";
import { emptied, opened, type Scoped, scoped, scopedBox, withProposed } from "./scope-states.ts";

const laundry = openSample("laundry-proposed");

/** Names of the conductors of a box by what the drawing says of them. */
function linesOf({ drawing, scope }: Scoped): Readonly<Record<string, readonly string[]>> {
  const proposed = laundry.proposed;
  const box = proposed?.enclosures[drawing.enclosure];
  if (proposed === undefined || box === undefined) throw new Error("No box.");
  const by: Record<string, string[]> = {};
  drawing.conductors.forEach(({ ends, jumper }, i) => {
    const [end] = ends;
    const name = jumper === undefined ? end && nameOfEnd(proposed, box, end) : box.jumpers[jumper]?.name;
    const sign = scope.lines[i] ?? "none";
    by[sign] = [...(by[sign] ?? []), name ?? ""].sort();
  });
  return by;
}

describe("the laundry box", () => {
  const b1 = scopedBox(laundry, "B1");

  // The make-up of the worked example: 10 ends come off, 16 go on; what each is by its table of moves.
  test("says of every conductor whether it is kept, moved or new", () => {
    const name = (cable: string, code: string): RegExp => new RegExp(`^${cable}\\b.*\\b${code}$`);
    const lines = linesOf(b1);
    expect(Object.keys(lines).sort()).toEqual(["kept", "moved", "new"]);
    expect(lines.new).toEqual(["c", "d", "g"]);
    expect(lines.moved?.filter((each) => each.length === 1)).toEqual(["a", "b", "e", "f"]);
    const moved = (lines.moved ?? []).filter((each) => each.length > 1);
    expect(moved).toHaveLength(5);
    for (const [cable, code] of [
      ["C2", "BK"],
      ["C5", "BK"],
      ["C2", "WH"],
      ["C5", "WH"],
      ["C5", "bare"],
    ] as const)
      expect(moved.filter((each) => name(cable, code).test(each))).toHaveLength(1);
    // C1, C3 and C4 whole, and the ground of C2.
    expect(lines.kept).toHaveLength(10);
  });

  test("names the joints by what they were, and flags the new ones", () => {
    const proposed = laundry.proposed?.enclosures[b1.drawing.enclosure];
    const marks = Object.fromEntries(
      [...b1.scope.splices].map(([id, { sign, was }]) => [proposed?.splices[id]?.name, [sign, was]]),
    );
    expect(marks).toEqual({
      HL: ["kept", "X"],
      NL: ["kept", "Y"],
      E1: ["kept", "Z"],
      HD: ["new", undefined],
      ND: ["new", undefined],
      E2: ["new", undefined],
    });
  });

  test("lays the old receptacle and the clamps aside inside the box, with crosses", () => {
    const { drawing, scope } = b1;
    expect(scope.aside.map(({ kind, name }) => [kind, name])).toEqual([
      ["device", "R1"],
      ["part", "internal clamps"],
    ]);
    for (const { area, crosses } of scope.aside) {
      expect(isInside(area, drawing)).toBe(true);
      expect(crosses.length).toBeGreaterThan(5);
    }
    expect([...scope.devices.values()]).toEqual(["new"]);
  });

  test("leads each moved cable end to an open place of the joint that it leaves", () => {
    const { drawing, scope } = b1;
    const homes: Record<string, string> = { BK: "HL", WH: "NL", bare: "E1" };
    const proposed = laundry.proposed;
    const box = proposed?.enclosures[drawing.enclosure];
    if (proposed === undefined || box === undefined) throw new Error("No box.");
    const seen: string[] = [];
    for (const { end, points } of scope.ways) {
      const name = nameOfEnd(proposed, box, end);
      const code = /(BK|WH|bare)/.exec(name)?.[1] ?? "";
      const home = drawing.splices.find((splice) => splice.name === homes[code]);
      const port = points.at(-1);
      expect(port?.x, name).toBe(home?.x);
      expect(
        scope.ports.some(({ x, y }) => x === port?.x && y === port.y),
        name,
      ).toBe(true);
      seen.push(name.split(" ")[0] ?? "");
    }
    // Under HL there is room for one open place: both that leave it lead there. Under E1 a pigtail has one, too.
    const open = (x: number | undefined, from: number, to: number) =>
      scope.ports.filter((port) => port.x === x && port.y > from && port.y < to).length;
    const [hl, nl, e1] = ["HL", "NL", "E1"].map((splice) => drawing.splices.find(({ name }) => name === splice));
    const foot = (splice: typeof hl): number => splice?.rows[0]?.y ?? 0;
    expect(open(hl?.x, foot(hl), foot(nl))).toBe(1);
    expect(open(nl?.x, foot(nl), foot(e1))).toBe(2);
    expect(open(e1?.x, foot(e1), drawing.height)).toBe(2);
    expect(seen.filter((each) => each === "C5")).toHaveLength(3);
    expect(seen.filter((each) => each === "C2")).toHaveLength(2);
  });

  test("counts from a distance what the list shows", () => {
    expect(scopeTally(b1.box)).toEqual({ moved: 9, removed: 2, new: 7 });
  });

  test("gives the same drawing again, and how lines are drawn before anything is laid out", () => {
    const { drawing, box, scope } = b1;
    expect(scopeDrawing(drawing, box, laundry.asFound)).toBe(scope);
    const { lines, splices, devices } = scopeSigns(drawing, box);
    expect({ lines, splices, devices }).toEqual({
      lines: scope.lines,
      splices: scope.splices,
      devices: scope.devices,
    });
    const anew = scopedBox(structuredClone(laundry), "B1");
    expect(anew.scope).toEqual(scope);
  });

  test("can be laid out in steps", () => {
    const again = scopedBox(structuredClone(laundry), "B1");
    const box = { ...again.box };
    let steps = 0;
    const making = scopeSteps(again.drawing, box, laundry.asFound);
    let step = making.next();
    for (; step.done !== true; step = making.next()) steps += 1;
    expect(steps).toBeGreaterThan(again.scope.ways.length);
    expect(step.value).toEqual(again.scope);
  });

  test("has no old way so near to the name of what is laid aside that they read as one", () => {
    const names = b1.scope.aside.map(({ area: { x, y, width, height } }) => ({
      x: x - 6,
      y: y - 6,
      width: width + 12,
      height: height + 12,
    }));
    expect(names).toHaveLength(2);
    for (const { points } of b1.scope.ways)
      for (const leg of legs(points)) expect(names.filter((area) => meets(spanOf(leg), area))).toEqual([]);
  });
});

describe.each(["laundry-proposed", "laundry-box", "house-twelve-circuits", "kitchen-multiwire", "three-way-stair"])(
  "every box of %s, with one end taken out of every joint",
  (name) => {
    const drawn = openSample(name);
    const all = scoped(drawn.proposed === undefined ? opened(drawn) : drawn);

    test("has old ways that pass through nothing and along nothing", () => {
      expect(all.length).toBeGreaterThan(0);
      for (const { box, drawing, scope } of all) expect([box.name, ...wayFaults(drawing, scope)]).toEqual([box.name]);
    });

    test("has open places that no conductor is at", () => {
      for (const { box, drawing, scope } of all) {
        const rows = drawing.splices.flatMap(({ x, rows }) => rows.map(({ y }) => `${x} ${y}`));
        const both = scope.ports.filter(({ x, y }) => rows.includes(`${x} ${y}`));
        expect([box.name, both]).toEqual([box.name, []]);
      }
    });

    test("has flags on lines of their kind, and over nothing that is read", () => {
      for (const { box, drawing, scope } of all) expect([box.name, ...flagFaults(drawing, scope)]).toEqual([box.name]);
    });
  },
);

test("what comes out of a box is laid over nothing that is drawn, and over nothing else that is laid aside", () => {
  const all = scoped(emptied(openSample("house-twelve-circuits")));
  const laid = all.flatMap(({ scope }) => scope.aside);
  expect(laid.filter(({ kind }) => kind === "device").length).toBeGreaterThan(20);
  expect(laid.filter(({ kind }) => kind === "jumper").length).toBeGreaterThan(20);
  for (const { box, drawing, scope } of all) {
    const things = [
      ...obstacles(drawing),
      ...drawing.conductors.flatMap(({ points }) => legs(points).map((leg) => spanOf(leg))),
    ];
    scope.aside.forEach(({ area, name }, i) => {
      const under = [...things, ...scope.aside.slice(i + 1).map((other) => other.area)].filter((rect) =>
        meets(rect, area),
      );
      expect([box.name, name, under]).toEqual([box.name, name, []]);
    });
  }
});

test("an old way is found for nearly every end that leaves a joint", () => {
  const all = scoped(opened(openSample("house-twelve-circuits")));
  const wanted = all.flatMap(({ box, drawing }) =>
    box.changes.filter(
      ({ kind, was, item, owner }) =>
        kind === "moved" &&
        owner?.kind === "cable" &&
        was?.at?.kind === "splice" &&
        drawing.conductors.some(({ ends }) => ends.some((end) => end === item.id)) &&
        box.homes.some(({ home }) => was.at?.kind === "splice" && home?.splice === was.at.splice),
    ),
  );
  const found = all.reduce((sum, { scope }) => sum + scope.ways.length, 0);
  expect(wanted.length).toBeGreaterThan(20);
  expect(found / wanted.length).toBeGreaterThan(0.95);
});

test("a new box is new in all its parts", () => {
  const house = openSample("laundry-box");
  const [first] = Object.values(house.asFound.enclosures).filter(({ kind }) => kind === "box");
  if (first === undefined) throw new Error("No box.");
  const project = withProposed(house, [
    {
      command: "place-enclosure",
      args: {
        state: "proposed",
        id: boxId("N1"),
        item: first.item,
        name: "N1",
        at: { x: 9000, y: 0 },
      },
    },
    {
      command: "place-device",
      args: {
        state: "proposed",
        enclosure: boxId("N1"),
        id: deviceId("RN"),
        type: "gfci-receptacle-15",
        name: "RN",
      },
    },
  ]);
  const { scope, box } = scopedBox(project, "N1");
  expect([...scope.devices.values()]).toEqual(["new"]);
  expect(scopeTally(box).new).toBe(2);
});

test("what finds no room in its box is laid aside under it", () => {
  const { drawing, box } = scopedBox(laundry, "B4");
  const low: BoxDrawing = { ...drawing, height: 60 };
  const { aside, bounds } = scopeDrawing(low, { ...box }, laundry.asFound);
  expect(aside).toHaveLength(1);
  for (const { area } of aside) {
    expect(area.y).toBeGreaterThan(low.height);
    expect(bounds.y + bounds.height).toBeGreaterThan(area.y + area.height);
  }
});

test("drawings of proposed stay as they are", () => {
  const { drawing } = scopedBox(laundry, "B1");
  if (laundry.proposed === undefined) throw new Error("Nothing is proposed.");
  expect(boxDrawing(laundry, laundry.proposed, drawing.enclosure)).toBe(drawing);
});

const isInside = ({ x, y, width, height }: Rect, drawing: BoxDrawing): boolean =>
  x >= 0 && y >= 0 && x + width <= drawing.width && y + height <= drawing.height;

const meets = (a: Rect, b: Rect): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** Bodies, capsules, plates and names, measured here anew. */
function obstacles({ devices, splices, conductors }: BoxDrawing): readonly Rect[] {
  return [
    ...devices.map(({ body }) => body),
    ...devices.flatMap(({ terminals }) => terminals.flatMap(({ block }) => block ?? [])),
    ...splices.flatMap(({ x, rows }) => {
      const ys = rows.map(({ y }) => y);
      if (ys.length === 0) return [];
      return [{ x: x - 10, y: Math.min(...ys) - 10, width: 20, height: Math.max(...ys) - Math.min(...ys) + 20 }];
    }),
    ...[...devices, ...splices].map(({ labelAt: { x, y }, name }) => {
      const wide = textWidth(name, 15, 700);
      return { x: x - wide / 2, y: y - 11, width: wide, height: 12 };
    }),
    ...conductors.flatMap(({ plates }) =>
      plates.map(({ at: { x, y }, text, vertical }) => {
        const long = textWidth(text, 11, 640);
        return vertical
          ? { x: x - 6, y: y - long / 2, width: 12, height: long }
          : { x: x - long / 2, y: y - 6, width: long, height: 12 };
      }),
    ),
  ];
}

const legs = (points: readonly Point[]): readonly (readonly [Point, Point])[] =>
  points.slice(1).map((to, i) => [points[i] as Point, to]);

const spanOf = ([a, b]: readonly [Point, Point]): Rect => ({
  x: Math.min(a.x, b.x) - 0.5,
  y: Math.min(a.y, b.y) - 0.5,
  width: Math.abs(a.x - b.x) + 1,
  height: Math.abs(a.y - b.y) + 1,
});

function wayFaults(drawing: BoxDrawing, { ways }: ScopeDrawing): readonly string[] {
  const things = obstacles(drawing);
  return ways.flatMap(({ end, points }) => {
    const port = points.at(-1) as Point;
    const faults: string[] = [];
    const start = points[0] as Point;
    const own = drawing.conductors.find(({ ends }) => ends.includes(end));
    const onOwn = own !== undefined && legs(own.points).some((leg) => meets(spanOf(leg), around(start, 1)));
    if (!onOwn) faults.push(`${end} does not begin on its conductor`);
    legs(points).forEach(([from, to], i) => {
      if (from.x !== to.x && from.y !== to.y) faults.push(`${end} slants`);
      // The last step goes into the port.
      const isLast = i === points.length - 2;
      const hit = things.filter(
        (rect) => meets(rect, spanOf([from, to])) && !(isLast && meets(rect, around(port, 34))),
      );
      if (hit.length > 0) faults.push(`${end} passes through ${JSON.stringify(hit)}`);
    });
    return faults;
  });
}

const around = ({ x, y }: Point, size: number): Rect => ({
  x: x - size / 2,
  y: y - size / 2,
  width: size,
  height: size,
});

function flagFaults(drawing: BoxDrawing, { flags, lines, ways }: ScopeDrawing): readonly string[] {
  const things = obstacles(drawing);
  const onLine = (at: Point, sign: ScopeSign): boolean =>
    drawing.conductors.some(
      ({ points }, i) => lines[i] === sign && legs(points).some((leg) => meets(spanOf(leg), around(at, 2))),
    ) ||
    (sign === "moved" && ways.some(({ points }) => legs(points).some((leg) => meets(spanOf(leg), around(at, 2)))));
  return flags.flatMap(({ sign, at }, i) => {
    const faults: string[] = [];
    if (!onLine(at, sign)) faults.push(`a flag of ${sign} at ${at.x} ${at.y} lies on no such line`);
    const area = { x: at.x - 8, y: at.y - 8, width: 17, height: 16 };
    if (things.some((rect) => meets(rect, area))) faults.push(`a flag at ${at.x} ${at.y} covers something`);
    if (flags.slice(i + 1).some((other) => meets(area, { ...area, x: other.at.x - 8, y: other.at.y - 8 })))
      faults.push(`two flags at ${at.x} ${at.y}`);
    return faults;
  });
}
