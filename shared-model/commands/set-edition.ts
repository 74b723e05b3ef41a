import { catalogue, type Part } from "../lib/catalogue.ts";
import { EDITIONS } from "../model/project.ts";
import { oneOf, record } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand } from "./define-command.ts";

type Args = CommandArgs["set-edition"];

const wording = catalogue({
  set: (edition: Part) => `Set edition ${edition}`,
});

/** Judges the drawing by another edition. It changes nothing about the wiring. */
export const setEdition = defineCommand<Args>({
  id: "set-edition",
  args: record<Args>({ edition: oneOf(EDITIONS) }),
  label: (_project, { edition }) => wording.set(edition),
  refuse: () => undefined,
  apply(draft, { edition }) {
    draft.edition = edition;
  },
});
