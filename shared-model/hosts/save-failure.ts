/** Why a save failed, as a clause, and what to do about it, as a sentence without its full stop. */
export interface SaveFailure {
  readonly cause: string;
  readonly remedy: string;
}

/** @param code The operating system's, such as ENOSPC, or one of `atomic-file.ts`. */
export function saveFailure(code: string): SaveFailure {
  const known = SENTENCES[code];
  if (known !== undefined) return { cause: known[0], remedy: known[1] };
  return { cause: `the system refused (${code})`, remedy: "Save under another name or to another disk" };
}

const NOT_ALLOWED = [
  "writing there is not allowed",
  "Change the permissions, or save under another name or in another folder",
] as const;
const DISK_FULL = ["the disk is full", "Free some space and save again, or save to another disk"] as const;
const TOO_MANY_OPEN = ["too many files are open", "Close other programs and save again"] as const;
const DISK_FAULT = ["the disk reported a fault", "Save to another disk, and have this one checked"] as const;

/** Cause and remedy by the code of the operating system, or by our own. */
const SENTENCES: Readonly<Record<string, readonly [cause: string, remedy: string]>> = {
  EACCES: NOT_ALLOWED,
  EPERM: NOT_ALLOWED,
  EROFS: ["the disk can only be read", "Save to another disk"],
  ENOSPC: DISK_FULL,
  EDQUOT: [
    "your share of the disk is used up",
    "Delete what you no longer need and save again, or save to another disk",
  ],
  EFBIG: ["the disk takes no file of this size", "Save to another disk"],
  EBUSY: ["another program is using the file", "Close that program and save again, or save under another name"],
  EMFILE: TOO_MANY_OPEN,
  ENFILE: TOO_MANY_OPEN,
  EEXIST: ["something has this name already, and it stays as it is", "Choose another name"],
  ENOENT: ["the folder is not there", "Put back the disk or the folder, or save in another folder"],
  ENOTDIR: ["a part of its path is not a folder", "Save in another folder"],
  EISDIR: ["a folder has this name", "Save under another name"],
  "not-a-file": ["what has this name is not a file", "Save under another name"],
  ELOOP: ["its links lead round in a circle", "Save under another name"],
  ENAMETOOLONG: ["its name is too long", "Save under a shorter name"],
  ETIMEDOUT: ["the disk does not answer", "Check the connection and save again, or save to another disk"],
  EIO: DISK_FAULT,
  "short-write": DISK_FULL,
  "read-back-differs": [
    "what the disk holds is not what was written",
    "Save to another disk, and have this one checked",
  ],
};
