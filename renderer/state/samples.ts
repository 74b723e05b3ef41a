import index from "../../assets/samples/index.json";

/** Texts of the sample drawings, each loaded when it is asked for. */
const texts = import.meta.glob<string>("../../assets/samples/*.loadside", { query: "?raw", import: "default" });

const BY_FILE = new Map(Object.entries(texts).map(([path, load]) => [path.replace(/^.*\//, ""), load]));

export interface Sample {
  readonly name: string;
  readonly title: string;
  readonly about: string;
  load(): Promise<string>;
}

/** The drawings that come with the program. */
export const samples: readonly Sample[] = index.flatMap(({ name, title, about, file }) => {
  const load = BY_FILE.get(file);
  return load === undefined ? [] : [{ name, title, about, load }];
});
