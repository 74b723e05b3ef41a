/**
 * Measures the built window with a drawing of 1,000 boxes: how much later it is usable than a window without a drawing,
 * and what one step of dragging a box costs the main thread. Both opened in turn in the same browser.
 */
import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { startBrowserHost } from "../../electron/browser-host.mjs";
import { newWindow, pointOnBox, takeFrames, watchFrames, way } from "./window-steps.mjs";

const OPENINGS = 7;
const WARM_OPENINGS = 2;
const STEPS = 120;
const WARM_STEPS = 20;
/** Pixels of a step. */
const STEP = 4;
/** A box from which the drag begins. */
const MIDDLE = "B550";

/**
 * @typedef {object} WindowTimes Milliseconds of every run, in order.
 * @property {number[]} bare From the start of the page until it is usable, without a drawing.
 * @property {number[]} opened The same with the drawing in view.
 * @property {number[]} step Main-thread task time, in thread time, of one step of a drag at full size.
 * @property {number[]} frame From one frame to the next while dragging.
 */

/**
 * @param {import("@playwright/test").Browser} browser
 * @param {string} text The drawing.
 * @param {string} [folder] The built window; built first where none is named.
 * @returns {Promise<WindowTimes>}
 */
export async function measureWindow(browser, text, folder) {
  const build = fileURLToPath(new URL("../../shared-model/hosts/build.mjs", import.meta.url));
  if (folder === undefined) execFileSync(process.execPath, [build, "window"], { stdio: "ignore" });
  const built = folder ?? fileURLToPath(new URL("../../dist/window", import.meta.url));
  return measureOpening(browser, text, built, (url) => drag(browser, url));
}

/**
 * How much later a window is usable with a drawing than without one.
 * @template {object} [T=object]
 * @param {import("@playwright/test").Browser} browser
 * @param {string} text The drawing.
 * @param {string} built The built window.
 * @param {(url: string) => Promise<T>} [then] What else is measured at the address of the window with the drawing.
 * @returns {Promise<{ bare: number[], opened: number[] } & T>}
 */
export async function measureOpening(browser, text, built, then) {
  const openedFile = {
    name: "house.loadside",
    token: "house",
    limit: text.length,
    read: async () => /** @type {const} */ ({ ok: true, text }),
    save: async () => /** @type {const} */ ({ ok: true }),
  };
  const [bareHost, host] = await Promise.all([
    startBrowserHost({ folder: built }),
    startBrowserHost({ folder: built, openedFile }),
  ]);
  try {
    /** @type {number[]} */
    const bare = [];
    /** @type {number[]} */
    const opened = [];
    for (let round = 0; round < OPENINGS + WARM_OPENINGS; round++) {
      const times = [
        await timeToUsable(browser, bareHost.url, "#root > *"),
        await timeToUsable(browser, host.url, SEEN),
      ];
      if (round < WARM_OPENINGS) continue;
      bare.push(times[0] ?? Number.NaN);
      opened.push(times[1] ?? Number.NaN);
    }
    return { bare, opened, .../** @type {T} */ (await then?.(host.url)) };
  } finally {
    await Promise.all([bareHost.close(), host.close()]);
  }
}

const BOX = ".react-flow__node";
/** The drawing is seen: its boxes are elements of the page, or painted from afar. */
const SEEN = `${BOX}, .sheet-painted[data-boxes]`;

/** A frame later than this and something would not be answered yet. */
const PROMPT_MS = 50;

/**
 * From the start of navigation until what is waited for is seen in the page and two frames in a row come promptly.
 * What is built out of sight is not seen.
 * @param {import("@playwright/test").Browser} browser
 * @param {string} url
 * @param {string} selector
 */
async function timeToUsable(browser, url, selector) {
  const page = await newWindow(browser);
  try {
    await page.addInitScript(
      ({ wanted, prompt }) => {
        let last = performance.now();
        let first = 0;
        const look = () => {
          const now = performance.now();
          const isPrompt = now - last < prompt;
          last = now;
          const shown = document.querySelector(wanted)?.checkVisibility({ visibilityProperty: true }) === true;
          if (!shown || !isPrompt) first = 0;
          else if (first > 0) {
            Object.assign(globalThis, { usableAt: first });
            return;
          } else first = now;
          requestAnimationFrame(look);
        };
        requestAnimationFrame(look);
      },
      { wanted: selector, prompt: PROMPT_MS },
    );
    await page.goto(url);
    for (;;) {
      const at = /** @type {number | undefined} */ (await page.evaluate("globalThis.usableAt"));
      if (at !== undefined) return at;
      await new Promise((done) => setTimeout(done, 100));
    }
  } finally {
    await page.context().close();
  }
}

const SAMPLE_OPENINGS = 5;

/**
 * From pressing a finished sample on the start page until its drawing is seen and two frames in a row come promptly, each
 * time in a new window.
 * @param {import("@playwright/test").Browser} browser
 * @param {string} built The built window.
 * @returns {Promise<number[]>} Milliseconds of every opening.
 */
export async function measureSample(browser, built) {
  const host = await startBrowserHost({ folder: built });
  try {
    /** @type {number[]} */
    const times = [];
    for (let round = 0; round < SAMPLE_OPENINGS + 1; round++) {
      const page = await newWindow(browser);
      await page.goto(host.url);
      const sample = page.getByRole("button", { name: /laundry circuit(?!, proposed)/ });
      await sample.waitFor();
      await page.waitForTimeout(1000);
      const took = await sample.evaluate(
        (button, { wanted, prompt }) =>
          /** @type {Promise<number>} */ (
            new Promise((done) => {
              const start = performance.now();
              let last = start;
              let first = 0;
              const look = () => {
                const now = performance.now();
                const isPrompt = now - last < prompt;
                last = now;
                const shown = document.querySelector(wanted)?.checkVisibility({ visibilityProperty: true }) === true;
                if (!shown || !isPrompt) first = 0;
                else if (first > 0) return done(first - start);
                else first = now;
                requestAnimationFrame(look);
              };
              requestAnimationFrame(look);
              /** @type {HTMLElement} */ (button).click();
            })
          ),
        { wanted: SEEN, prompt: PROMPT_MS },
      );
      if (round > 0) times.push(took);
      await page.context().close();
    }
    return times;
  } finally {
    await host.close();
  }
}

/**
 * @param {import("@playwright/test").Browser} browser
 * @param {string} url
 */
async function drag(browser, url) {
  const page = await newWindow(browser);
  try {
    await page.goto(url);
    await page.locator(SEEN).first().waitFor();
    await page.getByText(/^\d+ checks run$/).waitFor({ timeout: 60_000 });
    // Once the last box is drawn the whole is fitted into view; before that the view would change under the hand.
    await page.locator(".sheet:not([data-waiting])").waitFor({ timeout: 60_000 });
    // Somewhere in the middle of the building.
    await page.keyboard.press("Control+k");
    await page.keyboard.type(MIDDLE);
    await page.keyboard.press("Enter");
    const name = page.getByRole("textbox", { name: "Name" }).first();
    while ((await name.inputValue()) !== MIDDLE) await page.waitForTimeout(50);
    await page.waitForTimeout(1000);
    await page.getByRole("button", { name: /go to full size/ }).click();
    await page.waitForTimeout(500);
    const { x, y } = await pointOnBox(page);
    const session = await page.context().newCDPSession(page);
    // Thread time: what other programs take from the processor does not count.
    await session.send("Performance.enable", { timeDomain: "threadTicks" });
    const busy = async () => {
      const { metrics } = await session.send("Performance.getMetrics");
      return (metrics.find(({ name }) => name === "TaskDuration")?.value ?? Number.NaN) * 1000;
    };
    const frames = () =>
      page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(0)))));
    /** @type {number[]} */
    const step = [];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 8, y);
    await page.evaluate(watchFrames);
    for (let i = 0; i < STEPS + WARM_STEPS; i++) {
      const before = await busy();
      await page.mouse.move(x + 8 + way(i) * STEP, y + (way(i) * STEP) / 2);
      await frames();
      if (i >= WARM_STEPS) step.push((await busy()) - before);
    }
    const frame = await takeFrames(page);
    const moved = await page.locator(`${BOX}.dragging`).count();
    await page.mouse.up();
    if (moved === 0) throw new Error("No box was dragged.");
    return { step, frame };
  } finally {
    await page.context().close();
  }
}
