import type { Command } from "commander";
import { jsonSchemaText } from "../../format/json-schema.ts";
import { print } from "./console.ts";
import { STATUS, type Status } from "./status.ts";

export function addSchema(program: Command, end: (status: Status) => void): void {
  program
    .command("schema")
    .description("Print the JSON Schema of .loadside files.")
    .option("--json", "it is JSON in any case")
    .action(async () => {
      await print(jsonSchemaText());
      end(STATUS.good);
    });
}
