/** What the measurements of the window share. */

const BOX = ".react-flow__node";

/** @param {import("@playwright/test").Browser} browser */
export async function newWindow(browser) {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, reducedMotion: "reduce" });
  const page = await context.newPage();
  page.on("pageerror", (error) => console.error(error.message));
  await page.addInitScript(() => {
    localStorage.setItem("loadside.preferences", JSON.stringify({ theme: "light", cautionsRead: true }));
  });
  return page;
}

/**
 * A point of a box in view by which the box as a whole is dragged.
 * @param {import("@playwright/test").Page} page
 */
export async function pointOnBox(page) {
  const found = await page.evaluate((box) => {
    const area = document.querySelector(".sheet-flow")?.getBoundingClientRect();
    if (area === undefined) return undefined;
    for (let y = area.top + 60; y < area.bottom - 80; y += 3) {
      for (let x = area.left + 60; x < area.right - 60; x += 60) {
        const on = document.elementFromPoint(x, y);
        if (on?.closest("[data-item],[data-mark]") === null && on.closest(box) !== null) return { x, y };
      }
    }
    return undefined;
  }, BOX);
  if (found === undefined) throw new Error("No box is in view.");
  return found;
}

/** There and back, so that what is dragged stays in view. @param {number} step */
export const way = (step) => (step % 60 < 30 ? step % 30 : 30 - (step % 30));

/** Runs in the page: notes the time from one frame to the next until `takeFrames`. */
export function watchFrames() {
  /** @type {number[]} */
  const times = [];
  Object.assign(globalThis, { frameTimes: times });
  let last = performance.now();
  const next = () => {
    if (/** @type {{ frameTimes?: number[] }} */ (globalThis).frameTimes !== times) return;
    const now = performance.now();
    times.push(now - last);
    last = now;
    requestAnimationFrame(next);
  };
  requestAnimationFrame(next);
}

/** @param {import("@playwright/test").Page} page @returns {Promise<number[]>} */
export const takeFrames = (page) =>
  page.evaluate(() => {
    const found = /** @type {{ frameTimes?: number[] }} */ (globalThis);
    const times = found.frameTimes ?? [];
    delete found.frameTimes;
    return times;
  });
