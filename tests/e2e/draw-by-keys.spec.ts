import { expect, type Page } from "@playwright/test";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import { drawing, laundryAsFound } from "../builders/drawing.ts";
import { drawLaundry, drawReceptacleBox } from "./support/draw-laundry.ts";
import { type Hands, Keys, Presses } from "./support/hands.ts";
import { answerPickers, choose, storedText } from "./support/stored-files.ts";
import { checked, expectAccessible, test } from "./support/window-test.ts";
import { wiringOf } from "./support/wiring.ts";

const FILE = "drawn.loadside";
/** The window calls the first breaker CB1. */
const CALLED = { CB1: "Q14" };

async function openEmpty(page: Page, address: string, hands: Hands): Promise<void> {
  await answerPickers(page);
  await page.addInitScript(() => {
    localStorage.setItem("loadside.preferences", JSON.stringify({ theme: "light", cautionsRead: true }));
  });
  await page.goto(address);
  await hands.begin();
  await checked(page);
}

/** The drawing as it is saved by the keys for saving. */
async function savedDrawing(page: Page) {
  await choose(page, FILE);
  await page.keyboard.press("Control+s");
  await expect(page.getByRole("banner")).toContainText(FILE);
  const read = parseProject(await storedText(page, FILE));
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join(" "));
  return read.value.project;
}

/** The two-cable receptacle box, by the commands of the drawing builder. */
const receptacleBox = () =>
  drawing()
    .box("B1", "device-3-2-3-1-2")
    .device("R1", "receptacle-15", "B1")
    .outside("C1", "B1")
    .outside("C2", "B1")
    .land("C1.bk@B1", "R1.H1")
    .land("C1.wh@B1", "R1.N1")
    .land("C2.bk@B1", "R1.H2")
    .land("C2.wh@B1", "R1.N2")
    .splice("E", "B1", "twist-large", "C1.cu@B1", "C2.cu@B1")
    .jumper("g", "B1", "splice E", "R1.G", { colour: "bare" })
    .jumper("b", "B1", "splice E", "bond", { colour: "bare" }).project;

for (const [way, handsOf] of [
  ["by keys alone", (page: Page) => new Keys(page)],
  ["by presses alone", (page: Page) => new Presses(page)],
] as const) {
  // The laundry box takes the same ways, and more of them.
  test(`a two-cable receptacle box is drawn from empty ${way} @long`, async ({ quietPage: page, address }) => {
    const hands = handsOf(page);
    await openEmpty(page, address, hands);
    await drawReceptacleBox(hands);
    await checked(page);
    await expectAccessible(page, "receptacle box");
    expect(wiringOf(await savedDrawing(page))).toEqual(wiringOf(receptacleBox()));
  });

  test(`the laundry box is drawn from empty ${way}`, async ({ quietPage: page, address }) => {
    // Some five hundred keys or presses; a busy machine takes its time over them.
    test.setTimeout(240_000);
    await page.setViewportSize({ width: 1440, height: 1400 });
    const hands = handsOf(page);
    await openEmpty(page, address, hands);
    const began = performance.now();
    await drawLaundry(hands);
    const took = performance.now() - began;
    await checked(page);
    // Two minutes are what the way by keys may ask for; the hands of this test wait for every answer of the window.
    if (way === "by keys alone") expect(took).toBeLessThan(120_000);
    await expectAccessible(page, "laundry box");
    expect(wiringOf(await savedDrawing(page), CALLED)).toEqual(wiringOf(laundryAsFound()));
  });
}
