/** Landing one end after the other leaves what a hand goes for next where it was: sheaths, devices, terminals, joints. */
import { describe, expect, test } from "vitest";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import { getEnclosure } from "../../shared-model/queries/find-item.ts";
import { boxId, cableId } from "../builders/drawing.ts";
import type { Drawing } from "../builders/drawing-by-commands.ts";
import { faultsOf } from "./drawing-faults.ts";
import { SEQUENCES } from "./landing-sequences.ts";
import { type Sequence, type Step, stepsOf } from "./made-up-by-hand.ts";

/** Once something is landed; the first landing takes the room for all the others. */
const later = (sequence: Sequence): readonly Step[] => stepsOf(sequence).slice(1);

const farthestOf = ({ shifts }: Step): number => Math.max(0, ...shifts.map(({ by }) => by));

const gfciSequence = SEQUENCES.find(({ name }) => name === "a GFCI receptacle with two cables on its load side");
if (gfciSequence === undefined) throw new Error("The sequence is not there.");

describe.each(SEQUENCES)("$name", (sequence: Sequence) => {
  test("seldom moves what is there after the first landing, and not far", () => {
    const farthest = later(sequence).map((step) => ({ landing: step.landing, by: farthestOf(step) }));
    const moving = farthest.filter(({ by }) => by > 0);
    expect(moving.length, moving.map(({ landing, by }) => `${landing} ${by}`).join("\n")).toBeLessThanOrEqual(
      sequence.moving,
    );
    expect(Math.max(...farthest.map(({ by }) => by))).toBeLessThanOrEqual(sequence.most);
  });

  test("is no wider before anything is landed than its sheaths and devices", () => {
    const [first] = stepsOf(sequence);
    const further = Math.max(0, (first?.before.devices.length ?? 0) - 1);
    // With one device and its sheaths outside it fits a sheet of 468 pixels, both panes open on a tablet, at 0.6 and more.
    expect(first?.before.width).toBeLessThan(480 + 250 * further);
  });

  test("draws what is there and nothing that is only to be expected, without faults", () => {
    let house = sequence.start();
    for (const landing of [undefined, ...sequence.landings]) {
      if (landing !== undefined) house = landing.run(house);
      const box = getEnclosure(house.project.asFound, boxId("B1"));
      const drawing = boxDrawing(house.project, house.project.asFound, box.id);
      expect(drawing.conductors.flatMap(({ ends }) => ends).sort()).toEqual(Object.keys(box.places).sort());
      expect(drawing.splices.map(({ splice }) => splice).sort()).toEqual(Object.keys(box.splices).sort());
      const taken = drawing.devices.flatMap(({ terminals }) => terminals).flatMap(({ holes }) => holes);
      const onTerminals = Object.values(box.places).filter(({ at }) => at.kind === "terminal");
      expect(taken.filter((hole) => hole.taken).length).toBe(onTerminals.length);
      expect(faultsOf(drawing, box)).toEqual([]);
    }
  });
});

test("over all of these, nine of ten landings after the first move nothing at all", () => {
  const steps = SEQUENCES.flatMap(later);
  const still = steps.filter((step) => farthestOf(step) === 0);
  expect(steps.length).toBeGreaterThan(120);
  // Of 131 it is 122; before room was kept for likely joints it was 26.
  expect(still.length / steps.length).toBeGreaterThan(0.9);
});

test("what is wished of its cables afterwards is drawn as if it had been wished before", () => {
  const landed = () => {
    const [grounds] = gfciSequence.landings;
    if (grounds === undefined) throw new Error("Nothing is landed.");
    return grounds.run(gfciSequence.start());
  };
  const drawn = ({ project }: Drawing) => boxDrawing(project, project.asFound, boxId("B1"));
  const wish = (house: Drawing) =>
    house.run("set-box-intent", { enclosure: boxId("B1"), intent: { protect: { [cableId("C2")]: false } } });
  const house = landed();
  const before = drawn(house);
  const after = drawn(wish(house));
  expect(after).toEqual(drawn(wish(landed())));
  expect(after).not.toEqual(before);
});
