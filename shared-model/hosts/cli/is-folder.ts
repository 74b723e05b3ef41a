import { stat } from "node:fs/promises";

/** What is not there, or cannot be looked at, is none. */
export const isFolder = (path: string): Promise<boolean> =>
  stat(path).then(
    (found) => found.isDirectory(),
    () => false,
  );
