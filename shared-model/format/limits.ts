/**
 * What a file may be at most. Size and counts are judged on its text, before it is parsed, because a parser accepts
 * what would fill the memory; the rest on what was parsed. Far above any dwelling: a drawing of 1,000 boxes with 10,000
 * conductors has 8 million characters and 100,000 objects.
 */
export const LIMITS = {
  /** UTF-16 code units of the text. */
  characters: 64 * 1024 * 1024,
  /** Objects and lists together. */
  containers: 1_000_000,
  /** Values of every kind. */
  values: 5_000_000,
  /** Objects and lists inside one another. */
  depth: 64,
  /** Fields of one object, items of one list. */
  members: 100_000,
  /** Code units of one text; a picture is the one longer text. */
  textLength: 64 * 1024,
  pictureLength: 16 * 1024 * 1024,
  /** Problems that are told of one file; a person who mends these sees the next ones. */
  problems: 100,
  /** Largest magnitude of a number that we understand. */
  magnitude: 10_000_000,
} as const;
