/** Saving what is made of a drawing in a browser that asks for a place: the bytes, the name, and every way it can go wrong. */
import { afterEach, expect, test, vi } from "vitest";
import { saveCopy } from "../../renderer/platform/browser-copies.ts";

const BYTES = new Uint8Array([37, 80, 68, 70, 0, 255]);
afterEach(() => vi.unstubAllGlobals());

interface Written {
  readonly parts: unknown[];
  closed: boolean;
  suggested: string;
  accept: unknown;
}

function picker(fails: { readonly pick?: string; readonly write?: string } = {}): Written {
  const written: Written = { parts: [], closed: false, suggested: "", accept: undefined };
  const fault = (name: string) => new DOMException("planted", name);
  vi.stubGlobal(
    "showSaveFilePicker",
    async ({ suggestedName, types }: { suggestedName: string; types: readonly { accept: unknown }[] }) => {
      if (fails.pick !== undefined) throw fault(fails.pick);
      written.suggested = suggestedName;
      written.accept = types[0]?.accept;
      return {
        name: "as the person said.pdf",
        createWritable: async () => ({
          async write(part: unknown) {
            if (fails.write !== undefined) throw fault(fails.write);
            written.parts.push(part);
          },
          async close() {
            written.closed = true;
          },
        }),
      };
    },
  );
  return written;
}

test("the bytes go where the person says, and the name of the file comes back", async () => {
  const written = picker();
  expect(await saveCopy("1962: bungalow/plan", "pdf", BYTES)).toEqual({
    kind: "saved",
    name: "as the person said.pdf",
  });
  expect(written).toEqual({
    parts: [BYTES],
    closed: true,
    suggested: "1962 bungalowplan.pdf",
    accept: { "application/pdf": [".pdf"] },
  });
});

test.each([
  ["a person who thinks better of it", { pick: "AbortError" }, undefined],
  ["a browser that wants another press", { pick: "SecurityError" }, { kind: "press-again" }],
  ["leave that is not given", { write: "NotAllowedError" }, { message: "was not allowed to write it" }],
  ["a full disk", { write: "QuotaExceededError" }, { message: "there is no room on the disk" }],
  ["anything else", { write: "InvalidStateError" }, { message: "a.csv was not saved. Try again, to another place." }],
] as const)("%s", async (_, fails, outcome) => {
  const written = picker(fails);
  const told = await saveCopy("a", "csv", BYTES);
  if (outcome !== undefined && "message" in outcome)
    expect(told).toEqual({ kind: "failed", message: expect.stringContaining(outcome.message) });
  else expect(told).toEqual(outcome);
  expect(written.closed).toBe(false);
});
