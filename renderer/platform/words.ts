import { catalogue, type Part } from "../../shared-model/lib/catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  cannotBeReadCheckThatIt: (nameWord: Part) => `${nameWord} cannot be read. Check that it is still there.`,
  cannotBeReadItMayHave: "cannot be read; it may have been moved",
  chooseAnotherFile: (nameWord: Part, why: Part) => `${nameWord} ${why}. Choose another file.`,
  holdsBytesAtMostAreRead: (nameWord: Part, size: Part, FILE_LIMIT_BYTES: Part) =>
    `${nameWord} holds ${size} bytes; at most ${FILE_LIMIT_BYTES} are read. Choose a document of this program.`,
  isNotUtf8Text: "is not UTF-8 text",
  itIsNoLongerOnThe: "It is no longer on the list. Open it as a file.",
  loadsideDrawing: "Loadside drawing",
  pdfDocument: "PDF document",
  pngPicture: "PNG picture",
  svgDrawing: "SVG drawing",
  tableAsText: "Table as text (CSV)",
  theBrowserWasNotAllowedTo: (nameWord: Part) =>
    `The browser was not allowed to read ${nameWord}. Press it again and allow it.`,
  theDrawingIsStillHereUse: "The drawing is still here: use Save as, or start the program again and save.",
  theFileCouldNotBeRead: "The file could not be read.",
  theProgramThatOpenedThisWindow: "The program that opened this window does not answer. Start it again.",
  wasChangedByAnotherProgramSince: (nameWord: Part) =>
    `${nameWord} was changed by another program since it was opened here.`,
  wasHandedToTheBrowserAs: (nameWord: Part) => `${nameWord} was handed to the browser as a download.`,
  wasNotSaved: (nameWord: Part, why: Part) => `${nameWord} was not saved. ${why}`,
  wasNotSaved2: (nameWord: Part) => `${nameWord} was not saved.`,
  wasNotSavedTheBrowserWas: (nameWord: Part) =>
    `${nameWord} was not saved: the browser was not allowed to write it. Save again and allow it.`,
  wasNotSavedTheDrawingIs: (nameWord: Part) =>
    `${nameWord} was not saved. The drawing is still here: try Save as to another place.`,
  wasNotSavedTheProgramThat: (nameWord: Part, remedy: Part) =>
    `${nameWord} was not saved: the program that opened this window does not answer. ${remedy}`,
  wasNotSavedTryAnotherPlace: (nameWord: Part) => `${nameWord} was not saved. Try again, to another place.`,
  workbook: "Workbook (XLSX)",
  wasNotSavedThereIsNo: (nameWord: Part) =>
    `${nameWord} was not saved: there is no room on the disk. Free some and save again.`,
});
