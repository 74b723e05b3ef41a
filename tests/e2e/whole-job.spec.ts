/** A job by keys alone: from the start page with a sample as found to the folder on paper. */
import { expect, type Locator, type Page } from "@playwright/test";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { openSample } from "../builders/samples/open-sample.ts";
import { HAS_POPPLER, textOfPdf } from "../sheets/read-pdf.ts";
import { KeyControls } from "./support/controls.ts";
import { answerPickers, choose, storedText } from "./support/stored-files.ts";
import { checked, openStart, pane, test } from "./support/window-test.ts";
import { wiringOf } from "./support/wiring.ts";

test.use({ contextOptions: { reducedMotion: "reduce" } });

const FILE = "job.loadside";
const PDF = "job.pdf";

/** Counts what a hand would do: keys that were pressed, and anything that points. */
async function countHands(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const counts = { keys: 0, pointed: 0 };
    Object.assign(globalThis, { counts });
    addEventListener("keydown", () => (counts.keys += 1), { capture: true });
    for (const kind of ["pointerdown", "mousedown", "mousemove", "touchstart", "wheel", "dblclick", "contextmenu"])
      addEventListener(kind, () => (counts.pointed += 1), { capture: true });
  });
}

const counted = (page: Page): Promise<{ readonly keys: number; readonly pointed: number }> =>
  page.evaluate(() => Reflect.get(globalThis, "counts"));

/** Something has the focus, so that the next key goes somewhere. */
const expectFocused = (page: Page): Promise<void> => expect(page.locator(":focus")).toHaveCount(1);

const isFocused = (target: Locator): Promise<boolean> =>
  target.evaluate((element) => element === document.activeElement);

async function storedBytes(page: Page, name: string): Promise<Buffer> {
  const base64 = await page.evaluate(async (file) => {
    const handle = await (await navigator.storage.getDirectory()).getFileHandle(file);
    const reader = new FileReader();
    const url = new Promise<string>((done) => {
      reader.onload = () => done(String(reader.result));
    });
    reader.readAsDataURL(await handle.getFile());
    return (await url).split(",")[1] ?? "";
  }, name);
  return Buffer.from(base64, "base64");
}

/** Proposed in words, without the type of the device at the laundry: the sample has the one that the code does not take there. */
const proposedWiring = ({ proposed, ...others }: Project): readonly string[] =>
  wiringOf({ ...others, asFound: proposed ?? others.asFound }).filter((line) => !line.startsWith("B1: R1b "));

async function savedProposed(page: Page): Promise<readonly string[]> {
  await choose(page, FILE);
  await page.keyboard.press("Control+s");
  await expect(page.getByRole("banner").getByText("saved", { exact: true })).toBeVisible();
  const read = parseProject(await storedText(page, FILE));
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join(" "));
  return proposedWiring(read.value.project);
}

test("a ground-fault device is fitted, looked over and printed without a pointer", async ({
  quietPage: page,
  address,
}) => {
  await countHands(page);
  await answerPickers(page);
  await openStart(page, address);
  const keys = new KeyControls(page);
  const heading = (name: string) => pane(page).getByRole("heading", { name, level: 2 });

  await keys.take({ do: "press", name: /laundry circuit(?!, proposed)/ });
  await expect(page.getByRole("banner")).toContainText("1962 bungalow, laundry circuit");
  await checked(page);
  await expectFocused(page);

  // At R1; what the drawing knows is answered already, and who decided about the freezer is asked.
  await keys.take({ do: "select", box: "R1" });
  await keys.take({ do: "press", name: "Fit a ground-fault device here…" });
  await expect(heading("Ground-fault device at R1")).toBeFocused();
  await expect(pane(page)).toContainText(/\b10\b\D+\b16\b\D+\b3 new joints/);
  await expect(pane(page)).toContainText("29.8125 of 30.3 in³ fits");
  await keys.take({ do: "write", name: "Decided by: C3", text: "Owner" });
  await keys.take({ do: "write", name: "Because: C3", text: "R4 gets its own" });
  await expect(pane(page).getByRole("button", { name: "Accept", exact: true })).toBeEnabled();
  await keys.take({ do: "press", name: "Accept" });
  await expect(page.getByRole("button", { name: "Proposed", exact: true })).toHaveAttribute("aria-pressed", "true");
  await checked(page);
  await expectFocused(page);

  // The freezer gets its own, by the command field.
  await page.keyboard.press("Control+k");
  await page.keyboard.insertText("Fit a ground-fault device");
  await page.keyboard.press("Enter");
  // Findings at R4 are among the lines too: it is waited for the question.
  await expect(page.getByRole("combobox", { name: /which receptacle/i })).toHaveValue("");
  await page.keyboard.insertText("R4");
  await page.keyboard.press("Enter");
  await expect(heading("Ground-fault device at R4")).toBeFocused();
  await expect(pane(page)).toContainText(/\b3\b\D+\b3\b\D+\b0 new joints/);
  await keys.take({ do: "press", name: "Accept" });
  await expect(heading("Ground-fault device at R4")).toHaveCount(0);
  await checked(page);
  await expectFocused(page);
  expect(await savedProposed(page)).toEqual(proposedWiring(openSample("laundry-proposed")));

  await page.keyboard.press("Shift+F8");
  await expect(pane(page)).toContainText(/\b10\D+16/);
  await expectFocused(page);

  const dialog = page.getByRole("dialog", { name: "Print and export" });
  await page.keyboard.press("Control+p");
  await expect(dialog.getByRole("img", { name: /^Page 1 of \d+: Drawing/ })).toBeVisible();
  await choose(page, PDF);
  await expect(dialog.getByRole("button", { name: "Save PDF" })).toHaveAttribute("aria-disabled", "false");
  // The foot is nearer backwards than over all the sheets.
  const save = dialog.getByRole("button", { name: "Save PDF" });
  for (let steps = 0; steps < 8 && !(await isFocused(save)); steps += 1) await page.keyboard.press("Shift+Tab");
  await expect(save).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(dialog.getByText(new RegExp(`Saved ${PDF}, `)).first()).toBeVisible();
  const pdf = await storedBytes(page, PDF);
  const pages = pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length ?? 0;
  expect(pages).toBeGreaterThanOrEqual(10);
  if (HAS_POPPLER) {
    const words = textOfPdf(pdf).replace(/\s+/g, " ");
    for (const one of ["29.8125", `folder ${pages} of ${pages}`, "R1b", "R4b"]) expect(words).toContain(one);
  }
  await page.keyboard.press("Escape");
  await expect(dialog).toHaveCount(0);
  await expectFocused(page);
  const { keys: pressed, pointed } = await counted(page);
  expect(pointed).toBe(0);
  // With every stop of the Tab key on the way; what is written is put in as a whole.
  expect(pressed).toBeLessThanOrEqual(90);
});
