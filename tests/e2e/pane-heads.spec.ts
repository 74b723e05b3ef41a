import { expect, type Page } from "@playwright/test";
import { openLaundrySample, openWindow, showPane, test } from "./support/window-test.ts";

const WINDOWS = [
  [1024, 768],
  [1180, 800],
  [1280, 720],
  [1440, 900],
  // 1440 by 900 at 200 %.
  [720, 450],
] as const;

for (const [hands, hasTouch] of [
  ["a mouse", false],
  ["fingers", true],
] as const) {
  test.describe(`for ${hands}`, () => {
    test.use({ hasTouch });

    test("the head of the right pane is one line with the state in it, whichever state is shown", async ({
      quietPage: page,
      address,
    }) => {
      await openWindow(page, address);
      await openLaundrySample(page);
      // The tab that is shown is the widest in bold.
      await showPane(page, "Findings");
      for (const state of ["As found", "Proposed"]) {
        if (state === "Proposed") await startProposed(page);
        for (const [width, height] of WINDOWS) {
          await page.setViewportSize({ width, height });
          const head = await headOf(page);
          expect({ width, ...head }).toEqual({ width, state, isOneLine: true, isSeen: true, isCovered: false });
        }
      }
    });

    test("a state that has no room beside the tabs is not put under them", async ({ quietPage: page, address }) => {
      await openWindow(page, address);
      await openLaundrySample(page);
      // As words of another language, or counts of a large house, are.
      await page.locator(".pane .tab-count").evaluate((count) => count.append(" · 1240 ?"));
      await page.setViewportSize({ width: 1024, height: 768 });
      const { isOneLine, isCovered, isSeen } = await headOf(page);
      expect({ isOneLine, isCovered, isSeen }).toEqual({ isOneLine: true, isCovered: false, isSeen: false });
      await expect(page.getByRole("contentinfo").getByText("As found", { exact: true })).toBeVisible();
    });
  });
}

async function startProposed(page: Page): Promise<void> {
  await page.getByRole("button", { name: /^Proposed/ }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Start proposed" }).click();
  await expect(page.locator(".pane .state-tag")).toHaveText("Proposed");
}

/** What the state says, whether the head is as high as one tab, and whether the whole of the state can be seen in it. */
const headOf = (page: Page) =>
  page.evaluate(() => {
    const head = document.querySelector(".pane .region-head");
    const tag = head?.querySelector(".state-tag");
    const tabs = [...(head?.querySelectorAll("[role=tab]") ?? [])].map((each) => each.getBoundingClientRect());
    if (!head || !tag) throw new Error("No head, or no state in it.");
    tag.scrollIntoView({ block: "nearest" });
    const own = tag.getBoundingClientRect();
    const seenAt = (x: number): boolean => tag.contains(document.elementFromPoint(x, (own.top + own.bottom) / 2));
    const tabHeight = Math.max(...tabs.map(({ height }) => height));
    return {
      state: tag.textContent,
      isOneLine: head.getBoundingClientRect().height < 1.2 * tabHeight,
      isSeen: seenAt(own.left + 3) && seenAt(own.right - 3),
      isCovered: tabs.some(({ right }) => seenAt(own.left + 3) && right > own.left),
    };
  });
