import { wording } from "./words.ts";
/** What is said about photos. */
export const PHOTO_WORDS = {
  section: wording.photos,
  unattached: wording.photosOfNoBox,
  add: wording.addPhotos,
  hint: wording.orDropThemHereOrPaste,
  reading: wording.takingThePhotosIn,
  none: wording.aPhotoShowsLaterWhatWas,
  caption: wording.whatItShows,
  takenAt: wording.takenOn,
  by: wording.by,
  large: wording.viewLarge,
  remove: wording.remove,
  before: wording.photoBefore,
  next: wording.nextPhoto,
  notShown: wording.thisPictureCannotBeShownIt,
  noBox: wording.aPhotoBelongsToABox,
  notTaken: wording.notTakenIn,
  unnamed: wording.photo,
} as const;

export const photoOf = (box: string | undefined, words: string): string =>
  box === undefined ? words : `${box}: ${words}`;
export const attachTitle = (count: number, box: string): string =>
  count === 1 ? wording.attachAPhotoTo(box) : wording.attachPhotosTo(count, box);
export const tooMany = (most: number): string => wording.atMostPhotosAreTakenIn(most);
export const tooHeavy = (name: string, megabytes: number): string => wording.isLargerThanMbSaveA(name, megabytes);
export const notAPhoto = (name: string): string => wording.isNotAJpegOrPng(name);
export const tooWide = (name: string, megapixels: number): string =>
  wording.hasMoreThanMillionPixelsSave(name, megapixels);
export const broken = (name: string): string => wording.isDamagedItCannotBeDrawn(name);
