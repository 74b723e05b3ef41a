/** Work with fingers and with a pen; only touch and pen events act, apart from typing where a text is asked for. */
import { expect, type Locator, type Page } from "@playwright/test";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import { drawing } from "../builders/drawing.ts";
import { Fingers, middleOf, type Spot } from "./support/fingers.ts";
import { answerPickers, choose, storedText } from "./support/stored-files.ts";
import { checked, expectAccessible, openLaundrySample, openStart, openWindow, test } from "./support/window-test.ts";
import { wiringOf } from "./support/wiring.ts";

// What glides is where it goes at once; the window knows that it is worked with fingers.
test.use({ hasTouch: true, contextOptions: { reducedMotion: "reduce" } });

const FILE = "touched.loadside";

test("a laundry box is drawn by touch: box, five cables, receptacle, every end landed", async ({
  quietPage: page,
  address,
}) => {
  test.setTimeout(180_000);
  await answerPickers(page);
  await openWindow(page, address);
  const fingers = await Fingers.of(page);

  await take(fingers, "4 in. square × 2-1/8");
  await fingers.tap(await bare(page, 0.4, 0.4));
  await expect(box(page, "B1")).toBeVisible();
  for (let cable = 1; cable <= 5; cable += 1) {
    await take(fingers, "12/2 with ground");
    await fingers.tap(await wallOf(page, "B1"));
    await fingers.tap(await bare(page, 0.05, 0.94));
    await expect(undo(page)).toHaveAccessibleName(new RegExp(`^Undo ?: Run C${cable}`));
  }
  await take(fingers, "Grounding duplex, 15 A");
  await fingers.tap(await wallOf(page, "B1"));
  await expect(undo(page)).toHaveAccessibleName(/^Undo ?: Place R1/);

  await fingers.tap(await wallOf(page, "B1"));
  await fingers.tap(page.getByRole("button", { name: "Selection", exact: true }));
  for (const [colour, code, name] of [
    ["black", "BK", "H1"],
    ["white", "WH", "N1"],
    ["bare", "bare", "E1"],
  ] as const) {
    await land(fingers, end(page, `C1 ${colour}`), new RegExp(`^Splice with C2 ${code}`));
    for (const cable of ["C3", "C4", "C5"])
      await land(fingers, end(page, `${cable} ${colour}`), new RegExp(`^Splice ${name}`));
  }
  for (const [splice, onto] of [
    ["H1", /^R1 H/],
    ["N1", /^R1 N/],
    ["E1", /^R1 G/],
    ["E1", /^Box ground screw/],
  ] as const) {
    await fingers.hold(page.getByRole("button", { name: new RegExp(`^Splice ${splice},`) }));
    await fingers.tap(page.getByRole("menuitem", { name: "Pigtail or jumper from here" }));
    await fingers.tap(target(page, onto));
    await expect(page.locator(".sheet-targets")).toHaveCount(0);
  }
  await checked(page);
  await expectAccessible(page, "drawn by touch");
  await choose(page, FILE);
  await fingers.tap(page.getByRole("button", { name: "Drawing", exact: true }));
  await fingers.tap(page.getByRole("menuitem", { name: /^Save as/ }));
  await expect(page.getByRole("banner")).toContainText(FILE);
  const read = parseProject(await storedText(page, FILE));
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join(" "));
  expect(wiringOf(read.value.project).map(plain)).toEqual(wiringOf(laundryBox()).map(plain));
});

test("fingers pan, zoom, drag and ask; a second one and a cancelled one leave nothing half done", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  const fingers = await Fingers.of(page);
  const start = await middleOf(wall(page, "B2"));
  const width = async () => (await wall(page, "B2").boundingBox())?.width ?? 0;

  // One finger pans the bare sheet.
  const empty = await bare(page, 0.5, 0.1);
  await fingers.drag(empty, { x: empty.x + 40, y: empty.y + 30 });
  await expect.poll(async () => (await middleOf(wall(page, "B2"))).x).toBeCloseTo(start.x + 40, -1);
  await expect(undo(page)).toBeDisabled();

  // Two zoom, even over a box, and what the first had begun is undone.
  const before = await width();
  const at = await middleOf(wall(page, "B2"));
  await fingers.touch("touchStart", at);
  await fingers.go(at, { x: at.x + 40, y: at.y });
  await expect.poll(async () => (await middleOf(wall(page, "B2"))).x).toBeGreaterThan(at.x + 8);
  const second = { x: at.x + 120, y: at.y };
  await fingers.touch("touchStart", { x: at.x + 40, y: at.y }, second);
  await expect.poll(async () => (await middleOf(wall(page, "B2"))).x).toBeCloseTo(at.x, -1);
  for (let step = 1; step <= 6; step += 1)
    await fingers.touch("touchMove", { x: at.x + 40 - step * 5, y: at.y }, { x: second.x + step * 5, y: at.y });
  await fingers.touch("touchEnd");
  expect((await width()) / before).toBeCloseTo(140 / 80, 1);
  await expect(undo(page)).toBeDisabled();

  // A drag that the system takes away moves nothing; one that ends is one step.
  const here = await middleOf(wall(page, "B2"));
  await fingers.touch("touchStart", here);
  await fingers.go(here, { x: here.x + 60, y: here.y });
  await fingers.touch("touchCancel");
  await expect.poll(async () => (await middleOf(wall(page, "B2"))).x).toBeCloseTo(here.x, -1);
  await expect(undo(page)).toBeDisabled();
  await fingers.drag(here, { x: here.x + 60, y: here.y });
  await expect(undo(page)).toHaveAccessibleName(/^Undo ?: Move B2/);

  await fingers.tap(page.getByRole("button", { name: "Fit", exact: true }));
  // A finger that rests asks for the menu of what it is on; lifted, it presses nothing.
  await fingers.hold(wall(page, "B2"));
  await expect(page.getByRole("menuitem", { name: /^Open B2/ })).toBeVisible();
  await fingers.tap(page.getByRole("menuitem", { name: "Choose several boxes" }));
  // A switch for hands without keys: presses add, and a finger on the bare sheet draws a frame.
  await fingers.tap(wall(page, "B1"));
  await fingers.tap(wall(page, "B5"));
  await expect(bar(page)).toContainText("3 boxes");
  await fingers.tap(bar(page).getByRole("button", { name: "Done choosing" }));
});

test("a pen draws while the hand rests, and shows what it hovers over", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  const fingers = await Fingers.of(page);
  await fingers.tap(wall(page, "B4"));
  await fingers.tap(page.getByRole("button", { name: "Selection", exact: true }));
  const from = await middleOf(end(page, "C3 black"));
  const view = () => page.locator(".react-flow__viewport").getAttribute("style");

  await fingers.pen("mouseMoved", { x: from.x + 60, y: from.y }, false);
  await expect(page.locator(".sheet-line-glow")).toHaveCount(1);
  const before = await view();
  const beside = await bare(page, 0.04, 0.5);
  await fingers.pen("mousePressed", beside, true);
  await fingers.drag(await bare(page, 0.04, 0.9), await bare(page, 0.1, 0.7));
  await fingers.pen("mouseReleased", beside, false);
  expect(await view()).toBe(before);

  await fingers.pen("mouseMoved", from, false);
  await fingers.pen("mousePressed", from, true);
  // On the bare sheet, where a finger would pan.
  const palm = await bare(page, 0.04, 0.9);
  await fingers.touch("touchStart", palm);
  await fingers.pen("mouseMoved", { x: from.x + 12, y: from.y + 12 }, true);
  await fingers.go(palm, { x: palm.x + 60, y: palm.y - 60 });
  const cap = await middleOf(target(page, /^Cap it/));
  await fingers.pen("mouseMoved", cap, true);
  await expect(page.locator(".sheet-tip")).toContainText("Cap it");
  await fingers.pen("mouseReleased", cap, false);
  await fingers.touch("touchEnd");
  await expect(undo(page)).toHaveAccessibleName(/^Undo ?: Cap C3 BK/);
  expect(await view()).toBe(before);
  await expect(page.getByRole("menu")).toHaveCount(0);

  // Once the pen is away the same touch is a finger again.
  await expect
    .poll(async () => {
      await fingers.drag(palm, { x: palm.x + 60, y: palm.y - 60 });
      return view();
    })
    .not.toBe(before);
});

const box = (page: Page, name: string): Locator =>
  page.getByRole("group", { name: new RegExp(`^(Box|Panel) ${name}\\b`) });
const wall = (page: Page, name: string): Locator => box(page, name).locator(".sheet-wall-outer");
const bar = (page: Page): Locator => page.getByRole("group", { name: "Selected boxes" });
const undo = (page: Page): Locator => page.getByRole("banner").getByRole("button", { name: /^Undo/ });
const end = (page: Page, words: string): Locator =>
  page.getByRole("button", { name: new RegExp(`^1[24]/[23] ${words} end at `) }).locator(".sheet-hit");
const target = (page: Page, words: RegExp): Locator =>
  page.locator(".sheet-targets").getByRole("button", { name: words }).first().locator(".sheet-hit");

/** A place of the bare sheet, by shares of its size. */
async function bare(page: Page, across: number, down: number): Promise<Spot> {
  const area = await page.locator(".sheet-flow").boundingBox();
  if (area === null) throw new Error("There is no sheet.");
  return { x: area.x + area.width * across, y: area.y + area.height * down };
}

/** A place of a box where nothing but the box itself is. */
async function wallOf(page: Page, name: string): Promise<Spot> {
  const area = await wall(page, name).boundingBox();
  if (area === null) throw new Error(`${name} is not in view.`);
  return { x: area.x + 8, y: area.y + 3 };
}

async function take(fingers: Fingers, title: string): Promise<void> {
  const { page } = fingers;
  await fingers.tap(page.getByRole("searchbox", { name: "Find in stock" }));
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.insertText(title);
  await fingers.tap(page.getByRole("navigation", { name: "Stock" }).getByRole("button", { name: title }).first());
}

async function land(fingers: Fingers, what: Locator, onto: RegExp): Promise<void> {
  await fingers.tap(what);
  await fingers.tap(target(fingers.page, onto));
  await expect(fingers.page.locator(".sheet-targets")).toHaveCount(0);
}

/** The window chooses connectors by what is joined: which, is told elsewhere. */
const plain = (line: string): string => line.replace(/ [a-z-]+ \{/, " {");

/** The same by the commands of the drawing builder. */
function laundryBox() {
  const cables = ["C1", "C2", "C3", "C4", "C5"];
  const made = drawing().box("B1", "square-4-2-1-8").device("R1", "receptacle-15", "B1");
  for (const cable of cables) made.outside(cable, "B1");
  const ends = (key: string) => cables.map((cable) => `${cable}.${key}@B1`);
  return made
    .splice("H1", "B1", "twist-large", ...ends("bk"))
    .splice("N1", "B1", "twist-large", ...ends("wh"))
    .splice("E1", "B1", "twist-large", ...ends("cu"))
    .jumper("a", "B1", "splice H1", "R1.H1")
    .jumper("b", "B1", "splice N1", "R1.N1", { colour: "white" })
    .jumper("c", "B1", "splice E1", "R1.G", { colour: "bare" })
    .jumper("d", "B1", "splice E1", "bond", { colour: "bare" }).project;
}

test("on a tablet, from the start page: a box with two kinds of cable is described and every end of it landed", async ({
  quietPage: page,
  address,
}) => {
  test.setTimeout(180_000);
  await page.setViewportSize({ width: 1024, height: 768 });
  await answerPickers(page);
  await openStart(page, address);
  const fingers = await Fingers.of(page);
  const form = page.getByRole("main", { name: "New from what I see" });
  await fingers.tap(form.getByRole("button", { name: "another kind of cable" }));
  // The list of a choice is the system's own.
  await form.getByRole("combobox", { name: /cable/i }).nth(1).selectOption({ label: "14/3 with ground" });
  await fingers.tap(form.getByRole("button", { name: "Start as found" }));
  await expect(box(page, "B1")).toBeVisible();

  for (const [colour, code, name] of [
    ["black", "BK", "H1"],
    ["white", "WH", "N1"],
    ["bare", "bare", "E1"],
  ] as const) {
    await land(fingers, end(page, `C1 ${colour}`), new RegExp(`^Splice with C2 ${code}`));
    await land(fingers, end(page, `C3 ${colour}`), new RegExp(`^Splice ${name}`));
  }
  for (const [splice, onto] of [
    ["H1", /^R1 H/],
    ["N1", /^R1 N/],
    ["E1", /^R1 G/],
    ["E1", /^Box ground screw/],
  ] as const) {
    await fingers.hold(page.getByRole("button", { name: new RegExp(`^Splice ${splice},`) }));
    await fingers.tap(page.getByRole("menuitem", { name: "Pigtail or jumper from here" }));
    await fingers.tap(target(page, onto));
    await expect(page.locator(".sheet-targets")).toHaveCount(0);
  }
  await checked(page);
  await expect(page.locator(".sheet-next")).toHaveCount(0);
  // The spare red is capped; all else is joined as it was meant.
  await choose(page, FILE);
  await fingers.tap(page.getByRole("button", { name: "Drawing", exact: true }));
  await fingers.tap(page.getByRole("menuitem", { name: /^Save as/ }));
  await expect(page.getByRole("banner")).toContainText(FILE);
  const read = parseProject(await storedText(page, FILE));
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join(" "));
  const [made] = Object.values(read.value.project.asFound.enclosures);
  const kinds = Object.values(made?.places ?? {}).map(({ at }) => at.kind);
  const count = (kind: string) => kinds.filter((one) => one === kind).length;
  // 3 + 3 + 3 ends of cables and 4 of pigtails in splices; 3 pigtails on the receptacle, one on the box.
  expect([count("splice"), count("terminal"), count("bond"), count("capped"), kinds.length]).toEqual([13, 3, 1, 1, 18]);
});

test("on a tablet the line that says what comes next leaves the foot of the box that was just made in sight", async ({
  quietPage: page,
  address,
}) => {
  await page.setViewportSize({ width: 1024, height: 768 });
  await openStart(page, address);
  const fingers = await Fingers.of(page);
  await fingers.tap(page.getByRole("button", { name: "Start as found" }));
  const hint = page.locator(".sheet-next");
  await expect(hint).toBeVisible();
  for (const way of ["as it opens", "fitted"]) {
    if (way === "fitted") await fingers.tap(page.getByRole("button", { name: "Fit", exact: true }));
    await expect(async () => {
      const [line, walls] = [
        await hint.boundingBox(),
        await box(page, "B1").locator(".sheet-wall-outer").boundingBox(),
      ];
      if (line === null || walls === null) throw new Error("Line and box are not both in view.");
      expect(walls.y + walls.height, way).toBeLessThanOrEqual(line.y);
    }).toPass({ timeout: 3000 });
  }
});
