import { expect } from "@playwright/test";
import {
  checked,
  expectAccessible,
  openLaundrySample,
  openWindow,
  pane,
  runByField,
  showPane,
  test,
} from "./support/window-test.ts";

test("voltage drop in the details of an outlet: figures, the loads assumed, and the length that is missing", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "R3");
  const drop = pane(page).locator("section", { has: page.getByRole("heading", { name: /^Voltage drop/ }) });
  await expect(drop).toContainText(
    "4.8 V, 4.0 % with 16 A (80 % of the 20 A of Q14) and nothing else on; more than 3 %.",
  );
  await expect(drop).toContainText("Longest part: C1, 55 ft of 12 AWG");
  await expectAccessible(page, "details of an outlet with its voltage drop");

  await runByField(page, "L1");
  await expect(drop).toContainText("with everything drawn behind Q14 on: Freezer 180 W and L1 60 W.");

  // A length that is taken away is named; the way to it leads to where it is entered.
  await runByField(page, "C2");
  const length = pane(page).getByLabel("Length ft", { exact: true });
  await length.fill("");
  await length.press("Enter");
  await runByField(page, "R3");
  await expect(drop).toContainText("Length of C2 not recorded.");
  await expect(drop).not.toContainText("V,");
  await drop.getByRole("button", { name: "C2" }).click();
  await expect(pane(page).getByRole("heading", { name: "C2", exact: false }).first()).toBeVisible();
  await pane(page)
    .getByRole("button", { name: /^Enter more/ })
    .click();
  await length.fill("40");
  await length.press("Enter");
  await runByField(page, "R3");
  await expect(drop).toContainText("6.0 V, 5.0 %");
});

test("share and limit are figures of the drawing", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await page.keyboard.press("Escape");
  await showPane(page, "Details");
  await pane(page)
    .getByRole("button", { name: /^Enter more/ })
    .click();
  const enter = async (label: RegExp, figure: string): Promise<void> => {
    const field = pane(page).getByLabel(label);
    await field.fill(figure);
    await field.press("Enter");
  };
  await enter(/^Voltage drop: load/, "50");
  await enter(/^Voltage drop: advice past, from the panel/, "2.5");
  await checked(page);
  await runByField(page, "R3");
  await expect(pane(page)).toContainText("3.0 V, 2.5 % with 10 A (50 % of the 20 A of Q14) and nothing else on");
  await showPane(page, "Findings");
  await expect(pane(page)).toContainText(/R3 in B3 loses 3\.0 V, 2\.5 %.*more than the 2\.5 % set for this drawing/);
});
