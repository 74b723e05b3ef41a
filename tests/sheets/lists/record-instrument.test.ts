import { expect, it } from "vitest";
import { runCommand } from "../../../shared-model/commands/run-command.ts";
import { sampleProject } from "../sheet-inputs.ts";
import { pagesOf, rowsOf, tablesOf, textMarks } from "./list-case.ts";

it("an instrument stands with its number as it was written, on the page and in the list", () => {
  const project = sampleProject("laundry-proposed.loadside");
  const device = Object.values(project.asFound.enclosures)
    .flatMap(({ devices }) => Object.values(devices))
    .find(({ name }) => name === "R2");
  const done = runCommand(project, {
    command: "add-reading",
    args: {
      id: "m1",
      reading: {
        instrument: "low-impedance-meter",
        instrumentId: "M-17",
        points: [device?.id ?? ""],
        value: "119.8",
        unit: "V",
        record: { test: "hot-neutral", stage: "before", item: "R2" },
      },
    },
  });
  if (!done.ok) throw new Error(done.refusal.message);
  const words = textMarks(pagesOf(done.project, "test-record")).map(({ text }) => text);
  expect(words.join(" ")).toContain("low-impedance meter M-17");
  const rows = rowsOf(tablesOf(done.project, "test-record"), "Test record");
  expect(rows.flatMap(({ Found, Instrument }) => (Found === "119.8 V" ? [Instrument] : []))).toEqual([
    "low-impedance meter M-17",
  ]);
});
