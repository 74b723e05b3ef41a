import { describe, expect, it } from "vitest";
import { analyse } from "../../../shared-model/solver/network/network.ts";
import { spiceDeck } from "../../../shared-model/solver/network/spice-deck.ts";
import { NetworkBuilder, OMEGA } from "./random-network.ts";

const build = (draw: (builder: NetworkBuilder) => void) => {
  const builder = new NetworkBuilder();
  draw(builder);
  return builder.network();
};

describe("the SPICE deck", () => {
  it("has every part, one comment a node, and an end", () => {
    const network = build((builder) => {
      const [hot, far, tied] = [builder.node(), builder.node(), builder.node()];
      builder.source(hot, -1, 120, 0.5);
      builder.ohms(hot, far, 4);
      builder.branch(far, -1, 0.25, OMEGA * 2);
      builder.branch(tied, -1, 0, -1 / (OMEGA * 8));
      builder.branch(hot, -1, 0, 0);
      builder.node();
    });
    const factor = analyse({ ...network, ties: Int32Array.of(1, 2) });
    const deck = spiceDeck(factor, (node) => ["panel", "box A", "box B"][node], { title: "Laundry" });
    expect(deck.split("\n")).toEqual([
      "Laundry",
      "* phasors at 60 Hz; run: ngspice -b -r out.raw FILE",
      "* node 1 = panel",
      "* node 2 = box A",
      "* node 3 = box B (joined with node 2)",
      "* node 4 = ",
      "R1 1 2 4",
      "R2 2 0 4",
      "C2 2 0 2",
      "L3 2 0 8",
      "V1 e1 0 DC 0 AC 120 0",
      "RV1 e1 1 0.5",
      "RT4 4 0 1",
      ".options noopac",
      ".ac lin 1 60 60",
      ".end",
      "",
    ]);
  });

  it("keeps a name with line ends and control characters in its comment", () => {
    const factor = analyse(build((builder) => builder.ohms(builder.node(), -1, 1)));
    const deck = spiceDeck(factor, () => "kitchen\nR9 1 0 1\r\n.end\u0000\u2028x", { title: "two\nlines" });
    expect(deck).toContain("* node 1 = kitchen R9 1 0 1 .end x\n");
    expect(deck.startsWith("two lines\n")).toBe(true);
    expect(deck.match(/^R/gm)).toHaveLength(1);
  });

  it("writes a hundred thousand branches", () => {
    const network = build((builder) => {
      const node = builder.node();
      for (let i = 0; i < 150_000; i++) builder.ohms(node, -1, 1);
    });
    expect(spiceDeck(analyse(network), () => undefined).match(/^R/gm)).toHaveLength(150_000);
  });
});
