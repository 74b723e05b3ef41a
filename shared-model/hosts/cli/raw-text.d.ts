interface ImportMeta {
  /** Texts of the files that a pattern finds, by their paths, taken into the program when it is built. */
  glob(
    pattern: string,
    how: { readonly query: "?raw"; readonly import: "default"; readonly eager: true },
  ): Readonly<Record<string, string>>;
}
