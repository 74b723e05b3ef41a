import { catalogue, type Part } from "../../../shared-model/lib/catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  aPhotoBelongsToABox: "A photo belongs to a box. Drop it on one, or select one first.",
  aPhotoShowsLaterWhatWas: "A photo shows later what was behind the cover.",
  addPhotos: "Add photos…",
  atMostPhotosAreTakenIn: (most: Part) => `At most ${most} photos are taken in at a time. The others were left out.`,
  attachAPhotoTo: (box: Part) => `Attach a photo to ${box}`,
  attachPhotosTo: (count: Part, box: Part) => `Attach ${count} photos to ${box}`,
  by: "By",
  hasMoreThanMillionPixelsSave: (nameWord: Part, megapixels: Part) =>
    `${nameWord} has more than ${megapixels} million pixels. Save a smaller copy and add that.`,
  isDamagedItCannotBeDrawn: (nameWord: Part) =>
    `${nameWord} is damaged: it cannot be drawn. Take it again, or add another copy.`,
  isLargerThanMbSaveA: (nameWord: Part, megabytes: Part) =>
    `${nameWord} is larger than ${megabytes} MB. Save a smaller copy and add that.`,
  isNotAJpegOrPng: (nameWord: Part) => `${nameWord} is not a JPEG or PNG. Save it as one of these and add that.`,
  nextPhoto: "Next photo",
  notTakenIn: "Not taken in",
  orDropThemHereOrPaste: "or drop them here, or paste them",
  photo: "Photo",
  photoBefore: "Photo before",
  photos: "Photos",
  photosOfNoBox: "Photos of no box",
  remove: "Remove",
  takenOn: "Taken on",
  takingThePhotosIn: "Taking the photos in.",
  thisPictureCannotBeShownIt:
    "This picture cannot be shown: it is not a JPEG or PNG of at most 20 million pixels. It stays in the file.",
  viewLarge: "View large",
  whatItShows: "What it shows",
});
