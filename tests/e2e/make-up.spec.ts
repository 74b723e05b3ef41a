import { expect, type Page } from "@playwright/test";
import { answerPickers, choose, storedText } from "./support/stored-files.ts";
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

test.use({ contextOptions: { reducedMotion: "reduce" } });

const FILE = "laundry.loadside";
const radio = (page: Page, cable: string, name: RegExp) =>
  pane(page)
    .getByRole("radiogroup", { name: `Side of ${cable}` })
    .getByRole("radio", { name });
const button = (page: Page, name: string) => pane(page).getByRole("button", { name, exact: true });
const heading = (page: Page, name: string) => pane(page).getByRole("heading", { name, level: 2 });

/** Joints of a box of proposed with the numbers of conductors in them, as the saved file has them. */
async function savedJoints(page: Page, box: string): Promise<Readonly<Record<string, number>>> {
  const { proposed } = JSON.parse(await save(page));
  const { splices, places } = proposed.enclosures[box];
  const at = Object.values<{ at: { kind: string; splice?: string } }>(places).map((place) => place.at);
  return Object.fromEntries(
    Object.values<{ id: string; name: string }>(splices).map(({ id, name }) => [
      name,
      at.filter(({ kind, splice }) => kind === "splice" && splice === id).length,
    ]),
  );
}

async function save(page: Page): Promise<string> {
  await page.keyboard.press("Control+s");
  await expect(page.getByRole("banner").getByText("saved", { exact: true })).toBeVisible();
  return storedText(page, FILE);
}

/** Joints of the worked laundry box: counted by hand from the method of the trade card. */
const JOINTS = { HL: 4, NL: 4, HD: 3, ND: 3, E1: 5, E2: 4 };

async function openLaundry(page: Page, address: string): Promise<string> {
  await answerPickers(page);
  await openWindow(page, address);
  await openLaundrySample(page);
  await choose(page, FILE);
  return save(page);
}

test("a ground-fault device at the laundry by presses: answered, looked at on the sheet, accepted, taken back", async ({
  quietPage: page,
  address,
}) => {
  const before = await openLaundry(page, address);
  await runByField(page, "R1");
  await showPane(page, "Details");
  await button(page, "Fit a ground-fault device here…").click();
  await expect(heading(page, "Ground-fault device at R1")).toBeFocused();
  await expect(radio(page, "C3", /LINE/)).toBeChecked();
  await expect(pane(page)).toContainText("the freezer at R4 would go off with the rest on a trip");
  for (const [cable, side] of [
    ["C2", /LOAD/],
    ["C3", /LINE/],
    ["C4", /LINE/],
    ["C5", /LOAD/],
  ] as const)
    await radio(page, cable, side).click();
  await pane(page).getByRole("textbox", { name: "Decided by: C3" }).fill("Owner");
  await pane(page).getByRole("textbox", { name: "Because: C3" }).fill("R4 gets its own");
  await expect(pane(page)).toContainText("detach 10, attach 16, 3 new joints");
  await expect(pane(page)).toContainText("29.8125 of 30.3 in³ fits");
  await expectAccessible(page, "the questions of a ground-fault device");

  await button(page, "Show on the sheet").click();
  await expect(page.getByRole("img", { name: /^B1 as it would be/ })).toContainText("PREVIEW");
  await expectAccessible(page, "the preview of a make-up");
  await button(page, "Accept").click();
  await checked(page);
  await expect(page.getByRole("img", { name: /^B1 as it would be/ })).toHaveCount(0);
  await expect(page.getByRole("button", { name: "Proposed", exact: true })).toHaveAttribute("aria-pressed", "true");
  await expect(page.getByRole("status").filter({ hasText: "Fit R1b in place of R1" })).toHaveCount(1);
  expect(await savedJoints(page, "box-B1")).toEqual(JOINTS);

  // What resets an outlet further on is told there, and the box has its card on paper.
  await runByField(page, "what resets R3");
  await expect(pane(page)).toContainText("Protected by R1b in B1: after a trip it is reset there.");
  await expectAccessible(page, "what protects a receptacle");
  await runByField(page, "R1b");
  await expect(pane(page)).toContainText("Protects R2, R3, R5 too");
  await runByField(page, "B1");
  await button(page, "Print make-up card…").click();
  const print = page.getByRole("dialog", { name: "Print and export" });
  await expect(print.getByRole("checkbox", { checked: true })).toHaveCount(1);
  await expect(print.getByRole("checkbox", { name: "Make-up card" })).toBeChecked();
  await expect(print).toContainText("Make-up card B1");
  await page.keyboard.press("Escape");

  await page.keyboard.press("Control+z");
  expect(await save(page)).toBe(before);
});

test("the same by keys, and what will not do says what would", async ({ quietPage: page, address }) => {
  const before = await openLaundry(page, address);
  // The field asks which receptacle.
  await page.keyboard.press("Control+k");
  await page.keyboard.type("Fit a ground-fault device");
  await expect(page.getByRole("option", { name: /^Fit a ground-fault device…/ })).toBeVisible();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("option", { name: /^R4/ })).toBeVisible();
  await page.keyboard.type("R1");
  await page.keyboard.press("Enter");
  await expect(heading(page, "Ground-fault device at R1")).toBeFocused();
  await page.keyboard.press("Escape");
  await expect(pane(page).getByRole("tab", { name: "Make-up" })).toHaveCount(0);

  await runByField(page, "R1");
  await runByField(page, "Fit a ground-fault device at R1");
  await expect(heading(page, "Ground-fault device at R1")).toBeFocused();
  // The plain type is refused with the reason; the one that does is offered and taken.
  await pane(page).getByRole("combobox", { name: "Device" }).focus();
  await page.keyboard.press("G");
  await expect(pane(page)).toContainText("the new receptacle must have arc-fault protection");
  await expect(button(page, "Accept")).toBeDisabled();
  await button(page, "Fit a Dual-function receptacle, 15 A here").press("Enter");
  await radio(page, "C5", /LOAD/).focus();
  await page.keyboard.press("ArrowRight");
  await expect(pane(page)).toContainText("R5 (a wish) asks for protection and would have none");
  await page.keyboard.press("ArrowLeft");
  await expect(pane(page)).toContainText("detach 10, attach 16, 3 new joints");
  await expect(button(page, "Accept")).toBeEnabled();
  await button(page, "Accept").press("Enter");
  await checked(page);
  expect(await savedJoints(page, "box-B1")).toEqual(JOINTS);
  await page.keyboard.press("Control+z");
  expect(await save(page)).toBe(before);
});

test("a box is made up from what the drawing knows, and otherwise where somebody says so", async ({
  quietPage: page,
  address,
}) => {
  await openLaundry(page, address);
  await runByField(page, "B1");
  await showPane(page, "Details");
  await button(page, "Make up this box…").press("Enter");
  await expect(heading(page, "Make up B1")).toBeFocused();
  await expect(pane(page).getByRole("combobox", { name: "Fed by" })).toHaveValue("cable-C1");
  await expect(pane(page)).toContainText("C2 to B2, feeds R2, R3");
  await pane(page).getByRole("combobox", { name: "What becomes of R1" }).selectOption({ value: "gfci-receptacle-15" });
  // Its clamps out is the least work for the room that it has not; a plain device leaves another need open.
  await expect(pane(page).getByRole("radio", { name: /^Take the internal clamps.*29\.8125 of 30\.3/ })).toBeChecked();
  await button(page, "Take a Dual-function receptacle, 15 A for R1").press("Enter");
  await expect(radio(page, "C2", /LOAD/)).toBeChecked();
  await radio(page, "C3", /LOAD/).check();
  await radio(page, "C4", /LOAD/).check();
  // Everything behind the device: only the supply pair leaves the joints that are there.
  await expect(pane(page)).toContainText("detach 8, attach 10, 1 new joint");
  await expectAccessible(page, "the make-up of a box");
  await button(page, "Cancel").press("Enter");
  await expect(button(page, "Make up this box…")).toBeFocused();
});
