/** The outermost object of a JSON text, before anything is known of it. */
export type Json = Readonly<Record<string, unknown>>;
