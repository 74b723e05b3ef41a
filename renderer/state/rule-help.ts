import { laterWording } from "./later-words.ts";

/** Explanations of the rules, each loaded when it is asked for. */
const pages = import.meta.glob<string>("../../assets/rules/*.md", { query: "?raw", import: "default" });

const BY_RULE = new Map(Object.entries(pages).map(([path, load]) => [path.replace(/^.*\/|[.]md$/g, ""), load]));

const loaded = new Map<string, Promise<string>>();

/** False for an internal finding, which has no rule to explain. */
export const hasRuleHelp = (rule: string): boolean => BY_RULE.has(rule);

/** The help page of a rule, as Markdown; the same promise every time, so that a component can wait for it. */
export function loadRuleHelp(rule: string): Promise<string> {
  const page = loaded.get(rule) ?? BY_RULE.get(rule)?.() ?? Promise.resolve(laterWording.thereIsNoExplanationOfThis);
  loaded.set(rule, page);
  return page;
}
