import { failed, ok, problem, type Result } from "../../shared-model/lib/result.ts";
import { FILE_LIMIT_BYTES } from "./file-host.ts";
import { wording } from "./words.ts";

/** Text of a file, every byte kept: a byte order mark stays, and bytes that are not UTF-8 are refused, not replaced. */
export async function readText(file: File): Promise<Result<string>> {
  if (file.size > FILE_LIMIT_BYTES) {
    return failed(
      problem("file-too-large", "", wording.holdsBytesAtMostAreRead(file.name, file.size, FILE_LIMIT_BYTES)),
    );
  }
  try {
    const bytes = await file.arrayBuffer();
    return ok(new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes));
  } catch (error) {
    const why = error instanceof TypeError ? wording.isNotUtf8Text : wording.cannotBeReadItMayHave;
    return failed(problem("file-unreadable", "", wording.chooseAnotherFile(file.name, why)));
  }
}
