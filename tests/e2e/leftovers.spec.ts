/** Joints that are made anew, the hand's short list, names of ends, and a window that stays where it is. */
import { expect, type Page } from "@playwright/test";
import {
  checked,
  expectAccessible,
  openLaundrySample,
  openStart,
  openWindow,
  pane,
  runByField,
  showPane,
  test,
} from "./support/window-test.ts";

const option = (page: Page, name: string | RegExp) => page.getByRole("dialog").getByRole("option", { name });

async function startProposed(page: Page): Promise<void> {
  const shown = page.getByRole("group", { name: "Wiring shown and edited" });
  await shown.getByRole("button", { name: /^Proposed/ }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Start proposed" }).click();
  await checked(page);
}

test("an end that lies in a splice gets a new one with another, by presses", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "B1");
  await pane(page).getByRole("button", { name: "Move C1 bare" }).click();
  await pane(page).getByRole("button", { name: "New splice with another end…" }).click();
  await expectAccessible(page, "choosing the ends");
  await option(page, /^C2 bare/).click();
  await option(page, "Make the splice of 2 ends").click();
  await expect(page.getByRole("dialog")).toHaveCount(0);
  await expect(pane(page).getByRole("textbox", { name: "Name" }).first()).toHaveValue("E1");
  await expect(pane(page)).toContainText("C2 bare");
  await page.getByRole("button", { name: /^Undo: Splice 2 ends/ }).click();
  await runByField(page, "B1");
  await pane(page).getByRole("button", { name: "Choose its ends…" }).click();
  await option(page, /^C1 BK/).click();
  await expect(option(page, /^C1 BK/)).toContainText("chosen");
});

test("a splice is split in two by keys alone", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "splice Z");
  await expect(pane(page).getByRole("button", { name: "Split Z in two" })).toBeVisible();
  await runByField(page, "split z in two");
  await expect(pane(page).getByRole("textbox", { name: "Name" }).first()).toHaveValue("E1");
  await expectAccessible(page, "the new splice");
  await page.getByRole("button", { name: "Undo: Split Z in two" }).click();
  await runByField(page, "r bare");
  await expect(pane(page).getByRole("heading", { name: /^r bare/ })).toBeVisible();
});

test("the hand tells each place in two lines, by kind, with the reason on a press", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "B1");
  await pane(page).getByRole("button", { name: "Move C1 BK" }).click();
  const places = pane(page).getByRole("region", { name: "Places for the held end" });
  await expect(places.getByRole("heading", { name: "Possible, with a finding" })).toBeVisible();
  for (const kind of ["Terminals", "Splices"])
    await expect(places.getByRole("heading", { name: kind }).first()).toBeVisible();
  const row = places.getByRole("listitem").filter({ has: page.getByRole("button", { name: "Splice Y" }) });
  const short = await row.evaluate((element) => element.getBoundingClientRect().height);
  expect(short).toBeLessThan(64);
  await row.getByText(/Short circuit/).click();
  expect(await row.evaluate((element) => element.getBoundingClientRect().height)).toBeGreaterThan(short);
  await expectAccessible(page, "a reason in full");
});

test("what replaces a device is outlined on the sheet, and can be shown large", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await startProposed(page);
  await runByField(page, "R1");
  const chosen = page.locator(".sheet-device.sheet-chosen .sheet-device-body").first();
  await expect(chosen).toBeVisible();
  const stroke = () => chosen.evaluate((element) => getComputedStyle(element).stroke);
  const before = await stroke();
  await pane(page).getByLabel("By", { exact: true }).selectOption({ label: "GFCI receptacle, 20 A face" });
  await pane(page).getByRole("button", { name: "Replace R1 by R1b" }).click();
  await expect(pane(page)).toContainText("Replaces R1 (as found)");
  expect(await stroke()).toBe(before);
  await expect(page.getByRole("button", { name: "Selection", exact: true })).toBeEnabled();
});

test("what a fix did is told where it was done, not in the details of another thing", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await startProposed(page);
  await showPane(page, "Findings");
  const row = pane(page).getByRole("listitem").filter({ hasText: "X in B1 holds 6 × 12" });
  await row.locator(".fix > button").first().click();
  await expect(row).toHaveCount(0);
  await runByField(page, "R4");
  await expect(pane(page)).not.toContainText("Done:");
  await runByField(page, "B1");
  await expect(pane(page)).toContainText("Done:");
});

for (const [width, height] of [
  [1440, 900],
  [1024, 700],
] as const)
  test(`the window is as long as it is high in every tab, at ${width} × ${height}`, async ({
    quietPage: page,
    address,
  }) => {
    await page.setViewportSize({ width, height });
    const expectStill = async (shown: string): Promise<void> => {
      const at = await page.evaluate(() => {
        // A script, or a browser that looks for something, scrolls to what it wants to show.
        for (const unseen of document.querySelectorAll(".unseen")) unseen.scrollIntoView();
        const html = document.scrollingElement;
        return { length: html?.scrollHeight, body: document.body.scrollHeight, top: html?.scrollTop };
      });
      expect(at, shown).toEqual({ length: height, body: height, top: 0 });
      const banner = await page.getByRole("banner").boundingBox();
      expect(banner?.y, shown).toBe(0);
    };
    await openStart(page, address);
    await expect(page.getByRole("button", { name: "Empty drawing" })).toBeVisible();
    await expectStill("start");
    await page.getByRole("button", { name: "Empty drawing" }).click();
    await openLaundrySample(page);
    await startProposed(page);
    await runByField(page, "B1");
    for (const tab of ["Outline", "Stock", "Details", "Findings", "Rooms"]) {
      await page.getByRole("tab", { name: new RegExp(`^${tab}`) }).click();
      await expectStill(tab);
    }
  });
