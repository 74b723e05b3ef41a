import { expect, test } from "vitest";
import { checkDocument } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";

/** Two receptacles in a bathroom, fed over a cable that leaves the drawing. */
const unfed = (): Drawing => {
  const drawing = new Drawing()
    .box("A", 30)
    .box("B", 30)
    .cable("C1", "nm-12-2-g", "country", "A")
    .cable("C2", "nm-12-2-g", "A", "B")
    .device("R1", "receptacle-tr-15", "A", { zones: ["bathroom"] })
    .device("R2", "receptacle-tr-15", "B", { zones: ["bathroom"] })
    .put({ "C1.bk@A": "R1.H1", "C1.wh@A": "R1.N1", "C2.bk@A": "R1.H2", "C2.wh@A": "R1.N2" })
    .put({ "C2.bk@B": "R2.H1", "C2.wh@B": "R2.N1" });
  return drawing;
};

const waiting = ["the ground-fault protection of R1", "the ground-fault protection of R2", "the polarity of R1 and R2"];
/** The rules that miss it ask together, under the name of the first of them. */
const WAITING = ["outlet-not-protected", "polarity-swapped", "grounding-type-unprotected"];
const supplyQuestions = (drawing: Drawing) =>
  checkDocument(drawing.project()).couldNotTell.filter(({ rule }) => WAITING.includes(rule));

test("a supply that is not drawn is asked for once, with all that waits for it", () => {
  const questions = supplyQuestions(unfed());
  expect(questions).toHaveLength(1);
  const [question] = questions;
  for (const words of waiting) expect(question?.message).toContain(words);
  expect(question?.message).toContain("C1 leads out of it");
  expect(question?.missing).toBe("the supply of A and B");
  expect(question?.toDo).toContain("Draw the panel");
});

test("a cable that a person calls the supply is not asked about: the panel is", () => {
  const drawing = unfed();
  const project = drawing.project();
  const cable = Object.values(project.asFound.cables).find(({ name }) => name === "C1");
  if (cable === undefined) throw new Error("No C1.");
  const box = Object.values(project.asFound.enclosures).find(({ name }) => name === "A");
  if (box === undefined) throw new Error("No box A.");
  const said = {
    ...project,
    asFound: { ...project.asFound, intent: { ...project.asFound.intent, boxes: { [box.id]: { supply: cable.id } } } },
  };
  const called = {
    ...project,
    asFound: {
      ...project.asFound,
      cables: {
        ...project.asFound.cables,
        [cable.id]: { ...cable, sides: { ...cable.sides, a: { outside: "panel" } } },
      },
    },
  };
  for (const one of [said, called]) {
    const questions = checkDocument(one).couldNotTell.filter(({ rule }) => WAITING.includes(rule));
    expect(questions.map(({ missing }) => missing)).toEqual(["the panel that feeds C1"]);
    expect(questions[0]?.subjects[0]?.name).toBe("C1");
    expect(questions[0]?.message).not.toContain("nothing here says");
  }
});

test("with a panel drawn, each rule asks for what it misses itself", () => {
  const drawing = unfed().panel().cable("C3", "nm-12-2-g", "P", "A");
  expect(supplyQuestions(drawing).length).toBeGreaterThan(1);
  for (const { message } of supplyQuestions(drawing)) expect(message).toMatch(/^Cannot tell/);
});

test("the room of an outlet is entered at its box", () => {
  const { couldNotTell } = checkDocument(new Drawing().box("A", 30).device("R1", "receptacle-15", "A").project());
  const question = couldNotTell.find(({ missing }) => missing === "the room of A");
  expect(question?.message).toContain("whether R1 in A needs ground-fault protection: the box is in no room");
  expect(question?.enterAt ?? question?.subjects[0]).toMatchObject({ kind: "enclosure", name: "A" });
});
