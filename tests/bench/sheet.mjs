/**
 * Measures the sheet with a large building: what one step of panning, zooming and dragging costs the main thread, with
 * everything in view and at full size, and what the window keeps in its heap.
 */
import { startBrowserHost } from "../../electron/browser-host.mjs";
import { newWindow, pointOnBox, takeFrames, watchFrames, way } from "./window-steps.mjs";

const STEPS = 90;
const WARM_STEPS = 15;
/** How long the first check is waited for. */
const CHECKED_MS = 150_000;
/** Of half a second, what a window takes that has nothing to do. */
const QUIET_MS = 15;
/** Pixels of a step. */
const STEP = 12;
/** So far that boxes come into view and leave it. */
const WIDE_STEP = 40;
/** A box in the middle of the building, by which it is shown at full size. */
const middleBox = (/** @type {number} */ boxes) => `B${Math.floor(boxes / 40) * 20 + 10}`;

/**
 * @typedef {object} Steps Milliseconds of every step, in order.
 * @property {number[]} busy Main-thread task time.
 * @property {number[]} frame From one frame to the next.
 */

/**
 * @typedef {object} SheetTimes
 * @property {boolean} checked Whether the first check was through; else the signs of its findings are not in the picture.
 * @property {Steps} panWhole Everything in view.
 * @property {Steps} zoomWhole Everything in view.
 * @property {Steps} through Zooming from everything in view to full size and back.
 * @property {Steps} pan At full size.
 * @property {Steps} drag At full size.
 * @property {number[]} typing Milliseconds from a key in a name field until it is painted.
 * @property {number} heapMiB Used JavaScript heap after collection.
 */

/**
 * @param {import("@playwright/test").Browser} browser
 * @param {{ text: string; boxes: number; folder: string; patience?: number }} what The drawing, and the built window.
 * @returns {Promise<SheetTimes>}
 */
export async function measureSheet(browser, { text, boxes, folder, patience = 120_000 }) {
  const openedFile = {
    name: "house.loadside",
    token: "house",
    limit: text.length,
    read: async () => /** @type {const} */ ({ ok: true, text }),
    save: async () => /** @type {const} */ ({ ok: true }),
  };
  const host = await startBrowserHost({ folder, openedFile });
  const page = await newWindow(browser);
  page.setDefaultTimeout(patience);
  try {
    await page.goto(host.url);
    // Once the last box is drawn the whole is fitted into view.
    await page.locator(".sheet:not([data-waiting])").waitFor();
    const checked = await firstCheckOf(page);
    const session = await page.context().newCDPSession(page);
    // Thread time: what other programs take from the processor does not count.
    await session.send("Performance.enable", { timeDomain: "threadTicks" });
    await quiet(session);
    const at = await middleOfSheet(page);
    const measure = stepMeter(page, session);

    await page.mouse.move(at.x, at.y);
    const zoomWhole = await measure((i) => page.mouse.wheel(0, way(i) < way(i - 1) ? -ZOOM : ZOOM));
    await page.getByRole("button", { name: "Fit", exact: true }).click();
    const empty = await emptySpot(page);
    await page.mouse.move(empty.x, empty.y);
    await page.mouse.down();
    // Inward: the pointer stays on the sheet.
    const panWhole = await measure((i) =>
      page.mouse.move(empty.x - (way(i) * STEP) / 3, empty.y - (way(i) * STEP) / 5),
    );
    await page.mouse.up();

    await page.getByRole("button", { name: "Fit", exact: true }).click();
    await page.mouse.move(at.x, at.y);
    const half = Math.ceil((STEPS + WARM_STEPS) / 2);
    const through = await measure((i) => page.mouse.wheel(0, i < half ? -THROUGH : THROUGH));

    await goTo(page, middleBox(boxes));
    // The middle button pans wherever it is pressed: at this size a box fills the view.
    await page.mouse.move(at.x, at.y);
    await page.mouse.down({ button: "middle" });
    const pan = await measure((i) => page.mouse.move(at.x - way(i) * WIDE_STEP, at.y - (way(i) * WIDE_STEP) / 2));
    await page.mouse.up({ button: "middle" });
    await goTo(page, middleBox(boxes));
    const box = await pointOnBox(page);
    await page.mouse.move(box.x, box.y);
    await page.mouse.down();
    await page.mouse.move(box.x + 8, box.y);
    const drag = await measure((i) => page.mouse.move(box.x + 8 + way(i) * 4, box.y + way(i) * 2));
    const moved = await page.locator(".react-flow__node.dragging").count();
    await page.mouse.up();
    if (moved === 0) throw new Error("No box was dragged.");
    const typing = await typeName(page, middleBox(boxes));
    await session.send("HeapProfiler.enable");
    // What only a weak table still knows goes with the next collection.
    for (let turn = 0; turn < 3; turn++) await session.send("HeapProfiler.collectGarbage");
    const { usedSize } = await session.send("Runtime.getHeapUsage");
    return { checked, panWhole, zoomWhole, through, pan, drag, typing, heapMiB: usedSize / 2 ** 20 };
  } finally {
    await page.context().close();
    await host.close();
  }
}

const KEYS = 60;

/**
 * Types into the name of a box: from each key until the frame after it is painted.
 * @param {import("@playwright/test").Page} page
 * @param {string} box
 * @returns {Promise<number[]>}
 */
async function typeName(page, box) {
  await goTo(page, box);
  await page.getByRole("textbox", { name: "Name" }).first().focus();
  await page.evaluate(() => {
    /** @type {number[]} */
    const times = [];
    Object.assign(globalThis, { keyTimes: times });
    addEventListener(
      "keydown",
      ({ timeStamp }) => requestAnimationFrame(() => setTimeout(() => times.push(performance.now() - timeStamp))),
      { capture: true },
    );
  });
  for (let i = 0; i < KEYS; i++) {
    await page.keyboard.press(i % 20 < 10 ? "x" : "Backspace");
    await page.waitForTimeout(40);
  }
  await page.keyboard.press("Escape");
  return /** @type {number[]} */ (await page.evaluate("globalThis.keyTimes"));
}

/** Waits until the window has fetched and built what it does ahead. @param {import("@playwright/test").CDPSession} session */
async function quiet(session) {
  for (let last = Number.NaN, tries = 0; tries < 60; tries++) {
    const { metrics } = await session.send("Performance.getMetrics");
    const now = (metrics.find(({ name }) => name === "TaskDuration")?.value ?? Number.NaN) * 1000;
    if (now - last < QUIET_MS) return;
    last = now;
    await new Promise((done) => setTimeout(done, 500));
  }
}

/** Waits until the first check is through, or has stopped. @param {import("@playwright/test").Page} page */
async function firstCheckOf(page) {
  const through = page.getByText(/^\d+ checks run$/);
  const stopped = page.getByText(/Checking has stopped/);
  await through.or(stopped).first().waitFor({ timeout: CHECKED_MS });
  return (await stopped.count()) === 0;
}

/** Of a wheel: the flow makes a size 2^(-delta / 500) times as large. */
const ZOOM = 20;
const THROUGH = 55;

/**
 * @param {import("@playwright/test").Page} page
 * @param {import("@playwright/test").CDPSession} session
 * @returns {(step: (i: number) => Promise<void>) => Promise<Steps>}
 */
function stepMeter(page, session) {
  const taskTime = async () => {
    const { metrics } = await session.send("Performance.getMetrics");
    return (metrics.find(({ name }) => name === "TaskDuration")?.value ?? Number.NaN) * 1000;
  };
  const frames = () =>
    page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(0)))));
  return async (step) => {
    /** @type {number[]} */
    const busy = [];
    await frames();
    for (let i = 0; i < STEPS + WARM_STEPS; i++) {
      if (i === WARM_STEPS) await page.evaluate(watchFrames);
      const before = await taskTime();
      await step(i);
      await frames();
      if (i >= WARM_STEPS) busy.push((await taskTime()) - before);
    }
    return { busy, frame: await takeFrames(page) };
  };
}

/** @param {import("@playwright/test").Page} page */
async function middleOfSheet(page) {
  const area = await page.locator(".sheet-flow").boundingBox();
  if (area === null) throw new Error("There is no sheet.");
  return { x: area.x + area.width / 2, y: area.y + area.height / 2 };
}

/** Where the sheet itself takes the press. @param {import("@playwright/test").Page} page */
async function emptySpot(page) {
  const found = await page.evaluate(() => {
    const area = document.querySelector(".sheet-flow")?.getBoundingClientRect();
    if (area === undefined) return undefined;
    // From the lower right: boxes have room for the next cables there.
    for (let y = area.bottom - 60; y > area.top + 60; y -= 5) {
      for (let x = area.right - 40; x > area.left + 40; x -= 7) {
        if (document.elementFromPoint(x, y)?.classList.contains("react-flow__pane")) return { x, y };
      }
    }
    return undefined;
  });
  if (found === undefined) throw new Error("No empty spot is in view.");
  return found;
}

/** Shows a box at full size. @param {import("@playwright/test").Page} page @param {string} box */
async function goTo(page, box) {
  await page.keyboard.press("Control+k");
  await page.keyboard.type(box);
  await page.keyboard.press("Enter");
  const name = page.getByRole("textbox", { name: "Name" }).first();
  while ((await name.inputValue()) !== box) await page.waitForTimeout(50);
  await page.waitForTimeout(600);
  await page.getByRole("button", { name: /go to full size/ }).click();
  await page.waitForTimeout(600);
}
