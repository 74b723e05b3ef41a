import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { expect } from "@playwright/test";
import {
  checked,
  expectAccessible,
  openLaundrySample,
  openWindow,
  pane,
  ROOT,
  runByField,
  shownMessages,
  showPane,
  test,
} from "./support/window-test.ts";

test("the cautions come first, are remembered, and can be read again", async ({ quietPage: page, address }) => {
  await page.goto(address);
  const dialog = page.getByRole("dialog", { name: "Before you draw" });
  await expect(dialog).toContainText("It cannot see the wires in your wall.");
  await expect(dialog).toContainText("No finding shown does not mean safe or compliant.");
  await expectAccessible(page, "cautions");
  await dialog.getByRole("button", { name: "I have read this" }).click();
  await page.reload();
  await expect(page.getByRole("heading", { name: "New from what I see" })).toBeVisible();
  await expect(dialog).toHaveCount(0);
  await page.getByRole("button", { name: "Help and view" }).click();
  await page.getByRole("menuitem", { name: "General cautions" }).click();
  await expect(dialog).toBeVisible();
});

test("an empty sheet says that nothing was found in no checks", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await showPane(page, "Findings");
  await expect(pane(page)).toContainText("No findings in 0 checks run, 0 could not be told.");
  await expect(page.locator("body")).not.toContainText(/\b(safe|compliant)\b/i);
});

test("the laundry sample shows what the command line says", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  const told = spawnSync(
    process.execPath,
    [
      join(ROOT, "shared-model/hosts/loadside.mjs"),
      "check",
      "--json",
      join(ROOT, "assets/samples/laundry-box.loadside"),
    ],
    { encoding: "utf8" },
  );
  expect(told.status).toBe(1);
  const answer = JSON.parse(told.stdout) as { findings: { message: string }[]; checksRun: number };
  expect(answer.findings.length).toBeGreaterThan(0);
  expect(await shownMessages(page)).toEqual(answer.findings.map(({ message }) => message).sort());
  await expect(page.getByRole("contentinfo")).toContainText(`${answer.checksRun} checks run`);
});

test("a finding leads to its thing and explains itself", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await showPane(page, "Findings");
  const finding = pane(page).getByRole("listitem").filter({ hasText: "B1 needs 32.0625 in³" });
  await finding.getByRole("button", { name: "Explain the finding about" }).click();
  const help = page.getByRole("dialog", { name: /^A box must/ });
  await expect(help.getByRole("heading", { name: "Sections" })).toBeVisible();
  await expect(help.getByRole("row", { name: /^2020 314[.]16\(B\)/ })).toBeVisible();
  await expectAccessible(page, "explanation");
  await page.keyboard.press("Escape");
  await finding.getByRole("button", { name: "B1", exact: true }).click();
  await showPane(page, "Details");
  await expect(pane(page).getByRole("textbox", { name: "Name" })).toHaveValue("B1");
});

test("the ledger of the laundry box adds up, by every edition", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "B1");
  // Published worked example of the job: 10 conductors, clamps, one yoke and five grounds, all 12 AWG.
  const row = (name: RegExp) => pane(page).getByRole("row", { name });
  await expect(row(/^Conductors 314[.]16\(B\)\(1\) 10 × 2[.]25/)).toContainText("22.50");
  await expect(row(/^Clamps/)).toContainText("2.25");
  await expect(row(/^Devices/)).toContainText("4.50");
  await expect(row(/^Needed/)).toContainText("32.0625");
  await expect(row(/^Available/)).toContainText("30.3");
  await expect(row(/^Over by/)).toContainText("1.7625");
  await page.getByLabel("Code edition").selectOption("2017");
  await expect(row(/^Needed/)).toContainText(/31[.]?5?/);
  await expect(row(/^Over by/)).toContainText("1.2");
  await page.getByRole("button", { name: /^Undo/ }).click();
  await expect(row(/^Needed/)).toContainText("32.0625");
});

test("a name is changed where it stands, undone and redone", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "R1");
  const name = pane(page).getByRole("textbox", { name: "Name" });
  await name.fill("R1b");
  await name.press("Enter");
  await expect(page.getByRole("banner")).toContainText("not saved");
  await checked(page);
  expect((await shownMessages(page)).some((message) => message.startsWith("R1b in B1"))).toBe(true);
  await page.getByRole("button", { name: /^Undo: / }).click();
  await checked(page);
  expect((await shownMessages(page)).some((message) => message.startsWith("R1 in B1"))).toBe(true);
  await expect(page.getByRole("banner")).toContainText("no file yet");
  await page.getByRole("button", { name: /^Redo: / }).click();
  await checked(page);
  expect((await shownMessages(page)).some((message) => message.startsWith("R1b in B1"))).toBe(true);
});

test("a fact that is entered changes the answer, and carries how it is known", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "B1");
  const facts = pane(page);
  await facts.getByLabel("Internal clamps", { exact: true }).selectOption("none");
  await expect(facts.getByRole("row", { name: /^Needed/ })).toContainText("29.8125");
  await expect(facts.getByRole("row", { name: /^Left/ })).toContainText("0.4875");
  const known = facts.getByLabel("How known: Internal clamps");
  await expect(known).toHaveValue("");
  await known.selectOption("measured");
  await expect(known).toHaveValue("measured");
  expect((await shownMessages(page)).some((message) => message.startsWith("B1 needs"))).toBe(false);
  await page.keyboard.press("Control+z");
  await page.keyboard.press("Control+z");
  await checked(page);
  expect((await shownMessages(page)).some((message) => message.startsWith("B1 needs 32.0625"))).toBe(true);
});

test("a value that a field does not take is refused in words and changes nothing", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "B1");
  const depth = pane(page).getByLabel("Depth in", { exact: true });
  await depth.fill("deep");
  await depth.press("Enter");
  await expect(pane(page)).toContainText("Give a number from 0.25 to 24 in.");
  await expect(depth).toHaveValue("2-1/8");
  await expect(page.getByRole("button", { name: "Undo" })).toBeDisabled();
});

test("an end is landed from Details, with a reason at every place", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "B1");
  await pane(page).getByRole("button", { name: "Move C1 BK" }).click();
  const places = pane(page).getByRole("region", { name: "Places for the held end" });
  await expect(places.getByRole("heading", { name: "Possible, with a finding" })).toBeVisible();
  await expect(places.getByRole("listitem").filter({ hasText: /R1 H.*takes 1 conductor/ })).toBeVisible();
  await expectAccessible(page, "held end");
  await places.getByRole("button", { name: /^Cap it/ }).click();
  await expect(pane(page)).toContainText("12 AWG copper, capped.");
  await checked(page);
  await page.getByRole("button", { name: /^Undo: Cap/ }).click();
  await expect(pane(page)).toContainText("12 AWG copper, splice X.");
});

test("Escape puts a held end back", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "B1");
  await pane(page).getByRole("button", { name: "Move C1 BK" }).click();
  await expect(pane(page).getByText("In the hand.")).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(pane(page).getByText("In the hand.")).toHaveCount(0);
  await expect(page.getByRole("button", { name: "Undo" })).toBeDisabled();
});

test("the connector of a splice decides whether it is over its capacity", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "B1");
  const before = (await shownMessages(page)).filter((message) => message.startsWith("X in B1 holds 6 × 12"));
  expect(before).toHaveLength(1);
  await showPane(page, "Details");
  await pane(page).getByLabel("Connector of X").selectOption("push-in-6");
  await checked(page);
  expect((await shownMessages(page)).filter((message) => message.startsWith("X in B1 holds"))).toEqual([]);
});

test("a cable is pulled into another box, a device and a jumper are added, all without the sheet", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "C5");
  await pane(page).getByLabel("Move this side of C5").first().selectOption({ label: "B2" });
  await expect(pane(page).getByRole("heading", { name: "Ends in B2" })).toBeVisible();
  await runByField(page, "B5");
  await pane(page).getByLabel("Device", { exact: true }).selectOption({ label: "Grounding duplex, 20 A" });
  await pane(page).getByRole("button", { name: "Add the device" }).click();
  await expect(pane(page).getByRole("textbox", { name: "Name" })).toHaveValue("R6");
  await pane(page).getByRole("button", { name: "B5", exact: true }).click();
  await pane(page).getByLabel("Pigtail or jumper from").selectOption({ label: "R6 G" });
  await pane(page).getByLabel("to", { exact: true }).last().selectOption({ label: "box ground screw" });
  await pane(page).getByLabel("Colour of the jumper").selectOption("bare");
  await pane(page).getByRole("button", { name: "Add the jumper" }).click();
  await expect(pane(page)).toContainText("12 AWG bare: R6 G to box ground screw");
  for (const step of ["Add", "Place", "Move"])
    await page.getByRole("button", { name: new RegExp(`^Undo: ${step}`) }).click();
  await expect(page.getByRole("button", { name: "Undo", exact: true })).toBeDisabled();
});

test("a label, a wish and a line of the directory are written and undone", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "R3");
  await pane(page).getByLabel("Words of a label").fill("GFCI Protected");
  await pane(page).getByRole("button", { name: "Add the label" }).click();
  await expect(pane(page).getByRole("button", { name: "GFCI Protected" })).toBeVisible();
  await pane(page).getByLabel("R3", { exact: true }).selectOption("protect");
  await runByField(page, "Q14");
  const line = pane(page).getByLabel("It says");
  await line.fill("laundry and stair");
  await line.press("Enter");
  await expect(page.getByRole("button", { name: /^Undo: Set directory line/ })).toBeEnabled();
  for (let step = 0; step < 3; step += 1) await page.keyboard.press("Control+z");
  await expect(page.getByRole("button", { name: "Undo", exact: true })).toBeDisabled();
});

test("the command field finds commands, parts, stock and findings by keys alone", async ({
  quietPage: page,
  address,
}) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  const field = page.getByRole("combobox", { name: "Command, part, tag or finding" });
  await page.keyboard.press("Control+k");
  await expect(field).toBeFocused();
  await page.keyboard.type("octagon");
  await expect(page.getByRole("option", { name: /^Place: Octagon 4 × 1-1\/2/ })).toBeVisible();
  await expectAccessible(page, "command field");
  await page.keyboard.press("Escape");
  await expect(page.getByRole("listbox")).toHaveCount(0);
  await runByField(page, "B4");
  await page.keyboard.press("Control+k");
  await page.keyboard.type("remove");
  await expect(page.getByRole("listbox").getByRole("option").first()).toContainText("Remove B4");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("button", { name: "Undo: Remove B4" })).toBeEnabled();
  await page.keyboard.press("Control+k");
  await page.keyboard.type("nothing is called like this");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("listbox")).toContainText("Nothing is called that.");
});

test("a room tells which protection its outlets need", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await showPane(page, "Rooms");
  await pane(page).getByLabel("Room of B4").selectOption({ label: "no room" });
  await expect(pane(page).getByRole("listitem").filter({ hasText: "B4" })).toContainText(
    "R4: what protection it needs",
  );
  await checked(page);
  // Those that lack it for one reason are told together.
  const together = async () =>
    (await shownMessages(page)).find((message) => /^R1 in B1 .* needs ground-fault/.test(message));
  expect(await together()).toContain("2 more need it");
  await expect(pane(page).getByRole("region", { name: "Cannot tell" })).toContainText("R4");
  await showPane(page, "Rooms");
  await pane(page).getByLabel("Kind of room").selectOption("garage");
  await pane(page).getByLabel("Name, if not the same").fill("Car port");
  await pane(page).getByRole("button", { name: "Add room" }).click();
  await pane(page).getByLabel("Room of B4").selectOption({ label: "Car port" });
  await checked(page);
  expect(await together()).toContain("R4");
  await showPane(page, "Rooms");
  await expectAccessible(page, "rooms");
});

test("the paper is light or dark as chosen, or as the system is", async ({ quietPage: page, address }) => {
  const theme = page.locator("html");
  await page.emulateMedia({ colorScheme: "dark" });
  await page.goto(address);
  await page.getByRole("button", { name: "I have read this" }).click();
  await expect(theme).toHaveAttribute("data-theme", "dark");
  await page.getByRole("button", { name: "Help and view" }).click();
  await expectAccessible(page, "dark, menu");
  await page.getByRole("menuitemradio", { name: "Light" }).click();
  await expect(theme).toHaveAttribute("data-theme", "light");
  await page.reload();
  await expect(theme).toHaveAttribute("data-theme", "light");
});

test("the dark window passes the accessibility checks", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await runByField(page, "Dark paper");
  await expectAccessible(page, "dark, nothing selected");
  await showPane(page, "Findings");
  await expectAccessible(page, "dark, findings");
  await runByField(page, "B1");
  await expectAccessible(page, "dark, a box");
});

// What these look at is looked at among the named states, too.
test("menus and dialogs pass the accessibility checks @long", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await expectAccessible(page, "empty");
  await page.getByRole("button", { name: "Drawing", exact: true }).click();
  await expectAccessible(page, "menu");
  await page.getByRole("menuitem", { name: "Samples" }).click();
  await expectAccessible(page, "samples");
  await page.keyboard.press("Escape");
  await runByField(page, "Keys");
  await expectAccessible(page, "keys");
});

for (const [part, when] of [
  ["B1", " @long"],
  ["P", ""],
  ["R1", " @long"],
  ["C1", " @long"],
  ["X", " @long"],
  ["Laundry", ""],
] as const) {
  test(`details of ${part} pass the accessibility checks${when}`, async ({ quietPage: page, address }) => {
    await openWindow(page, address);
    await openLaundrySample(page);
    await runByField(page, part);
    const more = pane(page).getByRole("button", { name: /^Enter more/ });
    if ((await more.count()) > 0) await more.first().click();
    await expectAccessible(page, part);
  });
}

test("the findings pass the accessibility checks", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  await openLaundrySample(page);
  await showPane(page, "Findings");
  await expectAccessible(page, "findings");
});

test("the stock is searched, and an item goes into the hand and back by keys", async ({ quietPage: page, address }) => {
  await openWindow(page, address);
  const stock = page.getByRole("navigation", { name: "Stock" });
  await stock.getByRole("searchbox", { name: "Find in stock" }).fill("octagon 15.5");
  const item = stock.getByRole("button", { name: /^Octagon 4 × 1-1\/2/ });
  await item.press("Enter");
  await expect(item).toHaveAttribute("aria-pressed", "true");
  await expect(stock).toContainText("Press the sheet where it goes.");
  await page.keyboard.press("Escape");
  await expect(item).toHaveAttribute("aria-pressed", "false");
});
