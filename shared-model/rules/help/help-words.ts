/** What a help page says that its rule does not: beside a drawing that breaks it and one that keeps it, and on site. */
export interface HelpWords {
  /** What to look at in the wrong drawing; a fact that no line shows is told here. */
  readonly wrong: string;
  readonly right: string;
  /**
   * What inspectors commonly ask or look at: common practice as the writer knows it, from no code text, and said to be so
   * on the page. Absent where nothing useful is known.
   */
  readonly asked?: string;
}

/** By rule id. */
export type AllHelpWords = Readonly<Record<string, HelpWords>>;
