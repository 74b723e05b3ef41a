import { describe, expect, test } from "vitest";
import { diameterMm, ohmsPerFoot, type Wire } from "../../../shared-model/solver/circuit/wire-resistance.ts";
import { WIRE_SIZES, type WireSize } from "../../../shared-model/units/wire-size.ts";

/** Ohms of 1000 ft. */
const kft = (awg: WireSize, material: Wire["material"], stranded: boolean, degreesC?: number): number =>
  1000 * ohmsPerFoot({ awg, material, stranded }, degreesC);

/**
 * Ohms of 1000 ft for direct current at 75 degrees C: uncoated copper, and aluminium. NFPA 70 Chapter 9 Table 8, from
 * memory, but for 16 AWG stranded, which http://electrician2.com/weltrain05/lpage135.html prints as 4.99.
 */
const TABLE_8: readonly (readonly [WireSize, "solid" | "stranded", number, number])[] = [
  ["18", "solid", 7.77, 12.8],
  ["18", "stranded", 7.95, 13.1],
  ["16", "solid", 4.89, 8.05],
  ["16", "stranded", 4.99, 8.21],
  ["14", "solid", 3.07, 5.06],
  ["14", "stranded", 3.14, 5.17],
  ["12", "solid", 1.93, 3.18],
  ["12", "stranded", 1.98, 3.25],
  ["10", "solid", 1.21, 2],
  ["10", "stranded", 1.24, 2.04],
  ["8", "solid", 0.764, 1.26],
  ["8", "stranded", 0.778, 1.28],
  ["6", "stranded", 0.491, 0.808],
  ["4", "stranded", 0.308, 0.508],
  ["3", "stranded", 0.245, 0.403],
  ["2", "stranded", 0.194, 0.319],
  ["1", "stranded", 0.154, 0.253],
  ["1/0", "stranded", 0.122, 0.201],
  ["2/0", "stranded", 0.0967, 0.159],
  ["3/0", "stranded", 0.0766, 0.126],
  ["4/0", "stranded", 0.0608, 0.1],
];

describe("resistance of wire", () => {
  // The tables round to three figures, and strand wire in more ways than one.
  test.each(TABLE_8)(
    "%s AWG %s at 75 degrees C is that of the table within 1 %, 4/0 within 1.3 %",
    (awg, made, copper, aluminium) => {
      // Skin effect, which the table leaves out, stays below a thousandth up to 1/0.
      const most = awg === "4/0" ? 0.013 : 0.01;
      expect(Math.abs(kft(awg, "copper", made === "stranded", 75) / copper - 1)).toBeLessThan(most);
      expect(Math.abs(kft(awg, "aluminium", made === "stranded", 75) / aluminium - 1)).toBeLessThan(most);
    },
  );

  test("diameters: 0.005 in. for 36 AWG up to 0.46 in. for 4/0, which ASTM B258 defines the gauge by (from memory)", () => {
    expect(diameterMm("36" as WireSize)).toBeCloseTo(0.127, 12);
    expect(diameterMm("4/0")).toBeCloseTo(0.46 * 25.4, 10);
    expect(diameterMm("1/0")).toBeCloseTo(0.3249 * 25.4, 2);
    expect(diameterMm("14")).toBeCloseTo(0.0641 * 25.4, 2);
  });

  test("14 AWG copper at 20 degrees C: 2.525 ohm in 1000 ft, a handbook figure (from memory), 2.53 rounded", () => {
    expect(kft("14", "copper", false)).toBeCloseTo(2.525, 3);
    expect(kft("14", "copper", false, 20)).toBe(kft("14", "copper", false));
  });

  test("copper-clad aluminium lies between aluminium and copper, near aluminium", () => {
    for (const awg of WIRE_SIZES) {
      const [copper, clad, aluminium] = (["copper", "copper-clad-aluminium", "aluminium"] as const).map((metal) =>
        kft(awg, metal, false),
      ) as [number, number, number];
      expect(clad).toBeGreaterThan(1.5 * copper);
      expect(clad).toBeLessThan(aluminium);
    }
  });

  /**
   * The exact ratio for a round wire, from Bessel functions of the first kind: z/2 J0(z)/J1(z), z = (1 - j) radius/depth,
   * summed here as power series.
   */
  test.each(WIRE_SIZES.map((size) => [size]))(
    "skin effect of %s AWG copper at 60 Hz is the exact one within 0.1 %",
    (awg) => {
      const areaMm2 = (Math.PI / 4) * diameterMm(awg) ** 2;
      const direct = (0.017241 / areaMm2) * 304.8;
      const depthMm = Math.sqrt((0.017241 * 1e-6) / (Math.PI * 60 * 4e-7 * Math.PI)) * 1000;
      const exact = resistanceRatio(diameterMm(awg) / 2 / depthMm);
      expect(Math.abs(kft(awg, "copper", false) / direct / exact - 1)).toBeLessThan(0.001);
      if (awg === "14") expect(exact - 1).toBeLessThan(3e-6);
      if (awg === "6") expect(exact - 1).toBeLessThan(1e-4);
    },
  );
});

function resistanceRatio(radius: number): number {
  // With u = (z/2)² = -j radius²/2: J0 = Σ (-u)^k/k!², J1 = z/2 Σ (-u)^k/(k!(k+1)!).
  let [termRe, termIm] = [1, 0];
  const [over, under] = [
    { re: 0, im: 0 },
    { re: 0, im: 0 },
  ];
  for (let k = 0; k < 30; k++) {
    over.re += termRe;
    over.im += termIm;
    under.re += termRe / (k + 1);
    under.im += termIm / (k + 1);
    const scale = radius ** 2 / 2 / (k + 1) ** 2;
    [termRe, termIm] = [-termIm * scale, termRe * scale];
  }
  return (over.re * under.re + over.im * under.im) / (under.re ** 2 + under.im ** 2);
}
