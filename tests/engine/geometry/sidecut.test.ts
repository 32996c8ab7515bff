import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { federationRadiusM, type SidecutWidths, taperedArc } from "#engine/geometry";
import { arcWidthMm, carvedRadiusM, edgeContactBendMm } from "#engine/handbook";
import { radians } from "#engine/units";
import { cases } from "./truth";

/** S 120, W 85, H 110, Ls 1450: the ski of GEO-FIS, GEO-TAPER, GEO-EDGE and GEO-WIDTH. */
const tapered: SidecutWidths = { shoulderWidthMm: 120, waistWidthMm: 85, heelWidthMm: 110, sidecutLengthMm: 1450 };

function relative(actual: number, expected: number): number {
  return Math.abs(actual - expected) / Math.abs(expected);
}

describe("federationRadiusM", () => {
  it("gives 17.5208 m for 120-85-110 over 1450 mm (FIS radius calculator notes; GEO-FIS)", () => {
    expect(relative(federationRadiusM(tapered), cases["GEO-FIS"].expected.R_m)).toBeLessThan(1e-5);
  });

  it("reads 17.9755 m on a true 18 m arc measured at the federation's positions (GEO-FIS-POS)", () => {
    const { inputs, expected } = cases["GEO-FIS-POS"];
    const front = 0.8 * (inputs.L_TOT_mm - inputs.L_W_mm);
    const rear = 0.9 * inputs.L_W_mm;
    const shoulderWidthMm = arcWidthMm(inputs.W_mm, inputs.R_true_m * 1000, front);
    const heelWidthMm = arcWidthMm(inputs.W_mm, inputs.R_true_m * 1000, rear);
    expect(shoulderWidthMm).toBeCloseTo(expected.S_mm, 3);
    expect(heelWidthMm).toBeCloseTo(expected.H_mm, 3);
    const read = federationRadiusM({
      shoulderWidthMm,
      waistWidthMm: inputs.W_mm,
      heelWidthMm,
      sidecutLengthMm: front + rear,
    });
    expect(relative(read, expected.R_FIS_m)).toBeLessThan(1e-4);
  });
});

describe("taperedArc", () => {
  it("solves the tapered arc of GEO-TAPER: 17.65183 m, waist 785.817 mm behind the shoulder", () => {
    const arc = taperedArc(tapered);
    expect(relative(arc.radiusMm / 1000, cases["GEO-TAPER"].expected.R_m)).toBeLessThan(1e-6);
    expect(relative(arc.waistFromShoulderMm, cases["GEO-TAPER"].expected.waist_from_tip_widest_mm)).toBeLessThan(1e-6);
  });

  it("gives the closed form L²/8d + d/2 without taper (GEO-SYM)", () => {
    const arc = taperedArc({ shoulderWidthMm: 115, waistWidthMm: 85, heelWidthMm: 115, sidecutLengthMm: 1450 });
    expect(relative(arc.radiusMm / 1000, cases["GEO-SYM"].expected.R_m)).toBeLessThan(1e-6);
    expect(arc.waistFromShoulderMm).toBeCloseTo(725, 6);
  });

  it("measures the edge along the arc: 1450.417 mm (GEO-EDGE)", () => {
    expect(relative(taperedArc(tapered).effectiveEdgeMm, cases["GEO-EDGE"].expected.arc_mm)).toBeLessThan(1e-6);
  });

  it("is 94.0654 mm wide 400 mm ahead of the waist (GEO-WIDTH)", () => {
    const width = arcWidthMm(85, taperedArc(tapered).radiusMm, cases["GEO-WIDTH"].inputs.x_mm);
    expect(relative(width, cases["GEO-WIDTH"].expected.width_mm)).toBeLessThan(1e-6);
  });

  it("passes through both corner points for any ski", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 40, max: 140, noNaN: true }),
        fc.double({ min: 2, max: 80, noNaN: true }),
        fc.double({ min: 2, max: 80, noNaN: true }),
        fc.double({ min: 400, max: 2200, noNaN: true }),
        (waistWidthMm, moreAtShoulder, moreAtHeel, sidecutLengthMm) => {
          const widths = {
            waistWidthMm,
            shoulderWidthMm: waistWidthMm + moreAtShoulder,
            heelWidthMm: waistWidthMm + moreAtHeel,
            sidecutLengthMm,
          };
          const { radiusMm, waistFromShoulderMm } = taperedArc(widths);
          expect(arcWidthMm(waistWidthMm, radiusMm, waistFromShoulderMm)).toBeCloseTo(widths.shoulderWidthMm, 6);
          expect(arcWidthMm(waistWidthMm, radiusMm, sidecutLengthMm - waistFromShoulderMm)).toBeCloseTo(
            widths.heelWidthMm,
            6,
          );
        },
      ),
    );
  });

  it("cannot take a heel that is no wider than the waist", () => {
    expect(() => taperedArc({ ...tapered, heelWidthMm: 85 })).toThrow(/heelWidthMm: 85 must be above .* 85/);
  });

  it("cannot take a length of zero", () => {
    expect(() => taperedArc({ ...tapered, sidecutLengthMm: 0 })).toThrow(RangeError);
  });
});

describe("carvedRadiusM and edgeContactBendMm", () => {
  it.each([cases["GEO-CARVE-30"], cases["GEO-CARVE-45"], cases["GEO-CARVE-60"], cases["GEO-CARVE-70"]])(
    "follow R cos θ and d tan θ at $inputs.theta_deg° (Howe; $id)",
    ({ inputs, expected }) => {
      const angle = radians(inputs.theta_deg);
      expect(relative(carvedRadiusM(inputs.R_sc_m, angle), expected.R_m)).toBeLessThan(1e-5);
      expect(relative(edgeContactBendMm(inputs.depth_mm, angle), expected.bend_at_waist_mm)).toBeLessThan(1e-5);
    },
  );

  it("need 47.2 N to bring the waist down at 45° on a uniform 200 N·m² ski (GEO-CONTACT)", () => {
    const { inputs, expected } = cases["GEO-CONTACT"];
    // Simply supported uniform beam, centre load: k = 48EI/L³, here in N/mm from N·m² and m.
    const springNPerMm = (48 * inputs.EI_Nm2) / inputs.L_m ** 3 / 1000;
    const bendMm = edgeContactBendMm(inputs.depth_mm, radians(inputs.theta_deg));
    expect(relative(springNPerMm * bendMm, expected.F_N)).toBeLessThan(1e-4);
  });
});
