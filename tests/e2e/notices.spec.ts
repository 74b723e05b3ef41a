/** What a notice must leave free on a tablet. */
import { expect, type Page } from "@playwright/test";
import { checked, fieldLeft, openStart, test } from "./support/window-test.ts";

test.use({ viewport: { width: 1024, height: 768 }, hasTouch: true, contextOptions: { reducedMotion: "reduce" } });

/** Lands an end by the command field, which asks for the end and for its place. */
async function land(page: Page, end: string, place: string): Promise<void> {
  await page.keyboard.press("Control+k");
  await expect(page.locator(".command-line").first()).toBeVisible();
  for (const words of ["land a conductor", end, place]) {
    await page.keyboard.type(words);
    await page.keyboard.press("Enter");
  }
  await fieldLeft(page);
  await checked(page);
}

test("a notice of a splice covers neither the head of its box nor an end, a splice or a screw in it", async ({
  quietPage: page,
  address,
}) => {
  await openStart(page, address);
  const form = page.getByRole("main", { name: "New from what I see" });
  for (let more = 0; more < 2; more += 1)
    await form
      .getByRole("button", { name: /^One more/ })
      .first()
      .click();
  await form.getByRole("button", { name: "Start as found" }).click();
  await checked(page);
  await land(page, "C1 BK", "C2 BK");
  await land(page, "C3 BK", "H1");
  await land(page, "C4 BK", "H1");
  const notice = page.locator(".notice");
  await expect(notice).toContainText("The connector grew with the splice");
  await expect(notice.getByRole("button", { name: "Close" })).toBeInViewport({ ratio: 1 });
  await expect.poll(() => under(page)).toEqual([]);
  await notice.getByRole("button", { name: "Close" }).click();
  await expect(notice).toHaveCount(0);
});

/** What of the drawing lies under the notice, as far as the title block does not hide it. */
const under = (page: Page): Promise<readonly (string | null)[]> =>
  page.evaluate(() => {
    const notice = document.querySelector(".notice")?.getBoundingClientRect();
    const block = document.querySelector(".sheet-title-block")?.getBoundingClientRect();
    if (!notice || !block) throw new Error("There is no notice, or no title block.");
    return [...document.querySelectorAll(".sheet-box-header text, .sheet-item, .sheet-terminal, .sheet-hint")]
      .filter((each) => {
        const { left, right, top, bottom } = each.getBoundingClientRect();
        const lowest = Math.min(bottom, block.top);
        return left < notice.right && right > notice.left && top < notice.bottom && lowest > notice.top;
      })
      .map((each) => each.getAttribute("aria-label") ?? each.textContent);
  });
