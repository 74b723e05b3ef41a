import { catalogue, type Part } from "../../../shared-model/lib/catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  cancelled: "Cancelled.",
  drawing: "drawing",
  jobFolder: "job folder",
  layingOut: "Laying out the sheets",
  layingOutWasStopped: "Laying out was cancelled.",
  lists: "lists",
  nothingWasSaved: "Nothing was saved.",
  pageOf: (page: Part, pages: Part, title: Part) => `Page ${page} of ${pages}: ${title}`,
  pages: (count: Part) => (count === 1 ? "1 page" : `${count} pages`),
  preparingToPrint: "Getting the pages ready to print",
  printingTakesAtMost: (most: Part, pages: Part) =>
    `Print takes at most ${most} pages at once, and these are ${pages}. Save the PDF and print it from there, or take some ticks away.`,
  proposedIsNotStarted: "Proposed is not started",
  saved: (name: Part, size: Part) => `Saved ${name}, ${size}.`,
  theBrowserDidNotPrint: "The browser did not open its print dialog. Save the PDF and print it from there.",
  textsLoseLetters: (count: Part) =>
    count === 1 ? "1 text has letters that paper cannot show" : `${count} texts have letters that paper cannot show`,
  thePictureCouldNotBeDrawn: (why: Part) => `The picture could not be drawn (${why}). Save it as SVG, or smaller.`,
  writing: (name: Part) => `Writing ${name}`,
});
