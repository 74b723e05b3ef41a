import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** Node voltages by node name, as ngspice finds them for a deck. */
export function runNgspice(program: string, deck: string): ReadonlyMap<string, readonly [re: number, im: number]> {
  const folder = mkdtempSync(join(tmpdir(), "loadside-ngspice-"));
  try {
    writeFileSync(join(folder, "deck.cir"), deck);
    const run = spawnSync(program, ["-b", "-r", "out.raw", "deck.cir"], {
      cwd: folder,
      encoding: "utf8",
      timeout: 60_000,
    });
    const said = `${run.stdout}${run.stderr}`;
    if (run.status !== 0 || /singular|aborted|error/i.test(said))
      throw new Error(`ngspice could not run the deck:\n${said}`);
    return readRaw(readFileSync(join(folder, "out.raw")));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const BINARY = "Binary:\n";

/** Reads the first point of a binary raw file: every variable as two little-endian doubles, voltages named v(node). */
function readRaw(file: Buffer): ReadonlyMap<string, readonly [number, number]> {
  const headEnd = file.indexOf(BINARY);
  if (headEnd < 0) throw new Error("ngspice wrote no binary raw file.");
  const head = file.toString("latin1", 0, headEnd);
  if (!/^Flags: complex/m.test(head)) throw new Error("ngspice wrote no complex numbers.");
  const voltages = new Map<string, readonly [number, number]>();
  for (const [, index, name, type] of head.matchAll(/^\t(\d+)\t(\S+)\t(\S+)/gm)) {
    if (type !== "voltage") continue;
    const at = headEnd + BINARY.length + Number(index) * 16;
    const node = /^v\((.+)\)$/.exec(name ?? "")?.[1] ?? name ?? "";
    voltages.set(node, [file.readDoubleLE(at), file.readDoubleLE(at + 8)]);
  }
  return voltages;
}
