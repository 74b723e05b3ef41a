import type { Command } from "commander";
import { parseJson } from "../../format/parse-json.ts";
import type { Result } from "../../lib/result.ts";
import { getEdition } from "../../rules/editions/editions.ts";
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
By edition "CSA-C22.1" also: "connectors": [{"awg": "12", "count": 3}], "depthCm" of a device, and, where the box is
marked in millilitres, "box": {"volumeMl": 295} with "ringsMl"; it is then judged in them.

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
function asText({ id, edition, editionVerified, verdict, why, ...counted }: FillAnswer): string {
  const rows = counted.totalMl === undefined ? rowsInIn3(counted) : rowsInMl(counted);
  const width = Math.max(0, ...rows.map(([name]) => name.length));
  const { countingOnly } = getEdition(edition);
  const notes = `${editionVerified ? "" : ", not verified"}${countingOnly ? ", for counting only" : ""}`;
  return [
    `${id === null ? "Case" : id}: edition ${edition}${notes}, ${counted.totalMl === undefined ? "in³" : "in³ and mL"}`,
    ...rows.map(([name, ...figures]) =>
      `  ${name.padEnd(width)}  ${figures.map((figure) => figure.padStart(12)).join("")}`.trimEnd(),
    ),
    `  ${VERDICTS[verdict]}${why === undefined ? "" : `: ${why}`}`,
    "",
  ].join("\n");
}

type Counted = Omit<FillAnswer, "id" | "edition" | "editionVerified" | "verdict" | "why">;
type Row = readonly [name: string, ...figures: readonly string[]];

function rowsInIn3({ lines, totalIn3, volumeIn3, spareIn3 }: Counted): readonly Row[] {
  const figure = (volume: number): string => volume.toFixed(4);
  return [
    ...lines.map(
      ({ item, awg, count, eachIn3, in3, section }): Row => [
        `${item}, ${count} × ${eachIn3} (${awg} AWG), ${section}`,
        figure(in3),
      ],
    ),
    ...sums([totalIn3], [volumeIn3], [spareIn3], [figure]),
  ];
}

/** Cubic inches beside the millilitres of the table: the volume of the box stands in the unit in which it is told. */
function rowsInMl({ lines, totalMl, volumeMl, spareMl, totalIn3, volumeIn3, spareIn3 }: Counted): readonly Row[] {
  const figures = [(volume: number) => volume.toFixed(4), (volume: number) => volume.toFixed(1)];
  return [
    ...lines.map(
      ({ item, awg, count, eachMl = 0, ml = 0, in3, section }): Row => [
        `${item}, ${count} × ${eachMl} mL (${awg} AWG), ${section}`,
        in3.toFixed(4),
        ml.toFixed(1),
      ],
    ),
    ...sums([totalIn3, totalMl], [volumeIn3, volumeMl], [spareIn3, spareMl], figures),
  ];
}

type Figures = readonly (number | null | undefined)[];

function sums(total: Figures, volume: Figures, spare: Figures, print: readonly ((volume: number) => string)[]) {
  const shown = (figures: Figures): string[] =>
    figures.map((figure, column) => (typeof figure === "number" ? (print[column]?.(figure) ?? "") : "-"));
  const known = (figures: Figures): boolean => figures.some((figure) => typeof figure === "number");
  const over = spare.some((figure) => typeof figure === "number" && figure < 0);
  const left = spare.map((figure) => (typeof figure === "number" ? Math.abs(figure) : figure));
  const rows: Row[] = [];
  if (known(total)) rows.push(["needed", ...shown(total)]);
  if (known(volume)) rows.push(["volume", ...shown(volume)]);
  if (known(spare)) rows.push([over ? "over by" : "left", ...shown(left)]);
  return rows;
}
