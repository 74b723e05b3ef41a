import index from "../../assets/templates/index.json";
import type { Sample } from "./samples.ts";

/** Texts of the common boxes, each loaded when it is asked for. */
const texts = import.meta.glob<string>("../../assets/templates/*.loadside", { query: "?raw", import: "default" });

const BY_FILE = new Map(Object.entries(texts).map(([path, load]) => [path.replace(/^.*\//, ""), load]));

/** Common boxes, made up and ready to be changed to what is there. */
export const templates: readonly Sample[] = index.flatMap(({ name, title, about }) => {
  const load = BY_FILE.get(`${name}.loadside`);
  return load === undefined ? [] : [{ name, title, about, load }];
});
