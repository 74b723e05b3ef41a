import { catalogue, type Part } from "../lib/catalogue.ts";

const wording = catalogue({
  refused: (code: Part) => `the system refused (${code})`,
  anotherNameOrDisk: "Save under another name or to another disk",
  notAllowed: "writing there is not allowed",
  changePermissions: "Change the permissions, or save under another name or in another folder",
  diskFull: "the disk is full",
  freeSpace: "Free some space and save again, or save to another disk",
  tooManyOpen: "too many files are open",
  closePrograms: "Close other programs and save again",
  diskFault: "the disk reported a fault",
  anotherDiskAndCheck: "Save to another disk, and have this one checked",
  readOnly: "the disk can only be read",
  anotherDisk: "Save to another disk",
  shareUsedUp: "your share of the disk is used up",
  deleteAndSave: "Delete what you no longer need and save again, or save to another disk",
  tooLarge: "the disk takes no file of this size",
  inUse: "another program is using the file",
  closeThatProgram: "Close that program and save again, or save under another name",
  nameTaken: "something has this name already, and it stays as it is",
  anotherNameChoose: "Choose another name",
  noFolder: "the folder is not there",
  putBack: "Put back the disk or the folder, or save in another folder",
  notAFolder: "a part of its path is not a folder",
  anotherFolder: "Save in another folder",
  isAFolder: "a folder has this name",
  anotherName: "Save under another name",
  notAFile: "what has this name is not a file",
  circle: "its links lead round in a circle",
  tooLong: "its name is too long",
  shorterName: "Save under a shorter name",
  noAnswer: "the disk does not answer",
  checkConnection: "Check the connection and save again, or save to another disk",
  readBackDiffers: "what the disk holds is not what was written",
});

/** Why a save failed, as a clause, and what to do about it, as a sentence without its full stop. */
export interface SaveFailure {
  readonly cause: string;
  readonly remedy: string;
}

/** @param code The operating system's, such as ENOSPC, or one of `atomic-file.ts`. */
export function saveFailure(code: string): SaveFailure {
  const known = SENTENCES[code];
  if (known !== undefined) return { cause: known[0], remedy: known[1] };
  return { cause: wording.refused(code), remedy: wording.anotherNameOrDisk };
}

const NOT_ALLOWED = [wording.notAllowed, wording.changePermissions] as const;
const DISK_FULL = [wording.diskFull, wording.freeSpace] as const;
const TOO_MANY_OPEN = [wording.tooManyOpen, wording.closePrograms] as const;
const DISK_FAULT = [wording.diskFault, wording.anotherDiskAndCheck] as const;

/** Cause and remedy by the code of the operating system, or by our own. */
const SENTENCES: Readonly<Record<string, readonly [cause: string, remedy: string]>> = {
  EACCES: NOT_ALLOWED,
  EPERM: NOT_ALLOWED,
  EROFS: [wording.readOnly, wording.anotherDisk],
  ENOSPC: DISK_FULL,
  EDQUOT: [wording.shareUsedUp, wording.deleteAndSave],
  EFBIG: [wording.tooLarge, wording.anotherDisk],
  EBUSY: [wording.inUse, wording.closeThatProgram],
  EMFILE: TOO_MANY_OPEN,
  ENFILE: TOO_MANY_OPEN,
  EEXIST: [wording.nameTaken, wording.anotherNameChoose],
  ENOENT: [wording.noFolder, wording.putBack],
  ENOTDIR: [wording.notAFolder, wording.anotherFolder],
  EISDIR: [wording.isAFolder, wording.anotherName],
  "not-a-file": [wording.notAFile, wording.anotherName],
  ELOOP: [wording.circle, wording.anotherName],
  ENAMETOOLONG: [wording.tooLong, wording.shorterName],
  ETIMEDOUT: [wording.noAnswer, wording.checkConnection],
  EIO: DISK_FAULT,
  "short-write": DISK_FULL,
  "read-back-differs": [wording.readBackDiffers, wording.anotherDiskAndCheck],
};
