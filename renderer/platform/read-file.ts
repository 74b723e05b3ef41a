import { failed, ok, problem, type Result } from "../../shared-model/lib/result.ts";
import { FILE_LIMIT_BYTES } from "./file-host.ts";

/** Text of a file, every byte kept: a byte order mark stays, and bytes that are not UTF-8 are refused, not replaced. */
export async function readText(file: File): Promise<Result<string>> {
  if (file.size > FILE_LIMIT_BYTES) {
    return failed(
      problem(
        "file-too-large",
        "",
        `${file.name} holds ${file.size} bytes; at most ${FILE_LIMIT_BYTES} are read. Choose a document of this program.`,
      ),
    );
  }
  try {
    const bytes = await file.arrayBuffer();
    return ok(new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes));
  } catch (error) {
    const why = error instanceof TypeError ? "is not UTF-8 text" : "cannot be read; it may have been moved";
    return failed(problem("file-unreadable", "", `${file.name} ${why}. Choose another file.`));
  }
}
