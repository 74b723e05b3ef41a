/**
 * Name for what takes the place of a device: "R4b" for "R4", and for "R4b" the letter after it; letters that are taken
 * are left out. A name that ends in a letter of its own, "Hall", gets one more: "Hallb".
 */
export function nameOfReplacement(name: string, taken: ReadonlySet<string>): string {
  const [, stem = name, letter = "a"] = /^(.*\d)([a-z])$/.exec(name) ?? [];
  const after = LETTERS.slice(LETTERS.indexOf(letter) + 1);
  for (const next of [...after, ...LETTERS.map((one) => `${letter}${one}`)]) {
    const found = `${stem}${next}`;
    if (!taken.has(found)) return found;
  }
  return `${name}b`;
}

const LETTERS = [..."abcdefghijklmnopqrstuvwxyz"];
