import type { Command } from "commander";
import { parseJson } from "../../format/parse-json.ts";
import type { Result } from "../../lib/result.ts";
import { type FillAnswer, type FillCase, fillCase } from "../../rules/fill/fill-case.ts";
import { readFillCases } from "../../rules/fill/read-fill-case.ts";
import { complainAbout, print, printJson } from "./console.ts";
import { inputName, readInput } from "./read-input.ts";
import { STATUS, type Status } from "./status.ts";

export function addFill(program: Command, end: (status: Status) => void): void {
  program
    .command("fill")
    .description("Count the fill of boxes without a drawing.")
    .argument("<case>", "JSON file with a case or an array of cases; - reads standard input")
    .option("--json", "print JSON even on a terminal; anywhere else it is always JSON")
    .addHelpText("after", HELP)
    .action(async (file: string, options: { readonly json?: true }) => {
      end(await fill(file, options.json === true || process.stdout.isTTY !== true));
    });
}

const HELP = `
A case: {"id": "kitchen", "edition": 2020, "box": {"volumeIn3": 30.3},
 "conductors": [{"awg": "12", "count": 10, "as": "ends"}], "grounds": [{"awg": "12", "count": 5}],
 "internalClamps": 1, "supports": ["stud"], "devices": [{"awg": "12", "gangs": 1}],
 "terminalBlocks": [{"awg": "12"}], "ringsIn3": [3.0]}

Exit status: 0 no case is overfull, 1 a case is overfull, 2 bad input, 3 a fault of the program.`;

async function fill(file: string, asJson: boolean): Promise<Status> {
  const cases = await readCases(file);
  if (!cases.ok) {
    complainAbout(inputName(file), cases.problems);
    return STATUS.badInput;
  }
  const { value } = cases;
  const answers = isArray(value) ? value.map((one) => fillCase(one)) : fillCase(value);
  const list = isArray(answers) ? answers : [answers];
  await (asJson ? printJson(answers) : print(list.map(asText).join("\n")));
  return list.some(({ verdict }) => verdict === "overfull") ? STATUS.findings : STATUS.good;
}

/** `Array.isArray` does not tell a readonly array from a single item. */
const isArray = <T>(value: T | readonly T[]): value is readonly T[] => Array.isArray(value);

async function readCases(file: string): Promise<Result<FillCase | readonly FillCase[]>> {
  const text = await readInput(file);
  if (!text.ok) return text;
  const json = parseJson(text.value);
  return json.ok ? readFillCases(json.value) : json;
}

const VERDICTS = {
  fits: "fits",
  overfull: "overfull",
  "volume-unknown": "the volume of the box is not known",
  "not-applicable": "the count does not apply",
} as const;

/** The ledger as a person reads it, figures under one another. */
function asText({
  id,
  edition,
  editionVerified,
  lines,
  totalIn3,
  volumeIn3,
  spareIn3,
  verdict,
  why,
}: FillAnswer): string {
  const rows: [string, string][] = lines.map(({ item, awg, count, eachIn3, in3, section }) => [
    `${item}, ${count} × ${eachIn3} (${awg} AWG), ${section}`,
    in3.toFixed(4),
  ]);
  if (totalIn3 !== null) rows.push(["needed", totalIn3.toFixed(4)]);
  if (volumeIn3 !== null) rows.push(["volume", volumeIn3.toFixed(4)]);
  if (spareIn3 !== null) rows.push(spareIn3 < 0 ? ["over by", (-spareIn3).toFixed(4)] : ["left", spareIn3.toFixed(4)]);
  const width = Math.max(0, ...rows.map(([name]) => name.length));
  return [
    `${id === null ? "Case" : id}: edition ${edition}${editionVerified ? "" : ", not verified"}, in³`,
    ...rows.map(([name, figure]) => `  ${name.padEnd(width)}  ${figure.padStart(12)}`),
    `  ${VERDICTS[verdict]}${why === undefined ? "" : `: ${why}`}`,
    "",
  ].join("\n");
}
