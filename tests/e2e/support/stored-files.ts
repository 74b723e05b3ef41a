/** File pickers answered with real files of the browser's private storage: native pickers cannot be driven. */
import type { Page } from "@playwright/test";

/** Names the file that the next picker of either kind answers with; call before the window opens. */
export async function answerPickers(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const pick = async (name: string, create: boolean) =>
      (await navigator.storage.getDirectory()).getFileHandle(name, { create });
    Object.assign(globalThis, {
      showOpenFilePicker: async () => [await pick(sessionStorage.getItem("picked") ?? "", false)],
      showSaveFilePicker: ({ suggestedName }: { readonly suggestedName: string }) =>
        pick(sessionStorage.getItem("picked") ?? suggestedName, true),
    });
  });
}

/** What a person would choose in the next picker. */
export const choose = (page: Page, name: string): Promise<void> =>
  page.evaluate((picked) => sessionStorage.setItem("picked", picked), name);

/** Puts a file there, as another program would. */
export const storeFile = (page: Page, name: string, text: string): Promise<void> =>
  page.evaluate(
    async ([file, content]) => {
      const handle = await (await navigator.storage.getDirectory()).getFileHandle(file, { create: true });
      const stream = await handle.createWritable();
      await stream.write(content);
      await stream.close();
    },
    [name, text] as const,
  );

/** Text of a file that was saved there. */
export const storedText = (page: Page, name: string): Promise<string> =>
  page.evaluate(async (file) => {
    const handle = await (await navigator.storage.getDirectory()).getFileHandle(file);
    return (await handle.getFile()).text();
  }, name);
