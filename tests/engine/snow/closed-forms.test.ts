/**
 * The bed against closed forms of beams on elastic foundations: M. Hetényi, Beams on Elastic Foundation (1946), from memory, with
 * λ = ⁴√(k/4EI). An infinite beam under a force: w(x) = (Pλ/2k)·e^(−λx)(cos λx + sin λx). A beam of length l with free ends under
 * a force at its middle: there (Pλ/2k)·(cosh λl + cos λl + 2)/(sinh λl + sin λl), at its ends
 * (2Pλ/k)·cosh(λl/2)·cos(λl/2)/(sinh λl + sin λl). So on a bed that only pushes a long beam without weight lies on exactly π/λ,
 * whatever the force: where its ends neither sink nor lift (Y. Weitsman, J. Appl. Mech. 37 (1970) 1019–1030, has the same by
 * another way; from memory).
 */
import { describe, expect, it } from "vitest";
import { type BeamOnSnow, bedLaw, solveOnSnow } from "#engine/snow";
import { radians } from "#engine/units";

const EI = 2e8;
const WIDTH = 90;
const flat = radians(0);

/** A straight even beam with a force spread over a tenth of a millimetre at its middle. */
function beam(lengthMm: number, forceN: number, hardnessNPerMm3: number, weightNPerMm = 0): BeamOnSnow {
  const middle = lengthMm / 2;
  return {
    stations: [0, lengthMm].map((xMm) => ({ xMm, bendingStiffnessNmm2: EI })),
    loads: [
      { fromMm: middle - 0.05, toMm: middle + 0.05, forceN },
      ...(weightNPerMm > 0 ? [{ fromMm: 0, toMm: lengthMm, forceN: weightNPerMm * lengthMm }] : []),
    ],
    gapMm: () => 0,
    widthMm: () => WIDTH,
    bed: { hardnessNPerMm3 },
    edgeAngle: flat,
  };
}

const lambdaOf = (hardness: number) => ((hardness * WIDTH) / (4 * EI)) ** 0.25;
const at = (stations: ReturnType<typeof solveOnSnow>["stations"], xMm: number) =>
  stations.find((each) => Math.abs(each.xMm - xMm) < 1e-6) ?? expect.fail(`no station at ${xMm}`);

describe("an even beam on a bed", () => {
  it("takes Hetényi's wave of an infinite beam, where its own weight holds it in the bed", () => {
    const [hardness, P, weight] = [0.05, 800, 1];
    const k = hardness * WIDTH;
    const lambda = lambdaOf(hardness);
    // 3 m are eight waves: the ends are far.
    const { stations } = solveOnSnow(beam(3000, P, hardness, weight), 300);
    for (const away of [0, 50, 100, 200, 300, 400]) {
      const x = lambda * away;
      const wave = ((P * lambda) / (2 * k)) * Math.exp(-x) * (Math.cos(x) + Math.sin(x));
      const sunk = at(stations, 1500 + away).depthMm - weight / k;
      expect(Math.abs(sunk - wave), `${away} mm away`).toBeLessThan(1e-3 * ((P * lambda) / (2 * k)));
    }
  });

  it("sinks at its middle and ends as a short beam with free ends does", () => {
    const [hardness, P, l] = [0.002, 500, 750];
    const k = hardness * WIDTH;
    const y = lambdaOf(hardness) * l;
    expect(y).toBeLessThan(Math.PI);
    const { stations } = solveOnSnow(beam(l, P, hardness));
    const sum = Math.sinh(y) + Math.sin(y);
    const unit = (P * lambdaOf(hardness)) / k;
    const middle = (unit / 2) * ((Math.cosh(y) + Math.cos(y) + 2) / sum);
    const end = 2 * unit * ((Math.cosh(y / 2) * Math.cos(y / 2)) / sum);
    expect(Math.abs(at(stations, l / 2).depthMm / middle - 1)).toBeLessThan(1e-4);
    expect(Math.abs(at(stations, 0).depthMm / end - 1)).toBeLessThan(1e-3);
    expect(Math.abs(at(stations, l).depthMm / end - 1)).toBeLessThan(1e-3);
  });

  it("lies on π/λ and lifts its ends, whatever the force, when snow only pushes", () => {
    const hardness = 0.05;
    const lambda = lambdaOf(hardness);
    for (const P of [10, 800, 5000]) {
      const { stations, carriedN } = solveOnSnow(beam(1600, P, hardness), 400);
      const inSnow = stations.filter((each) => each.depthMm > 0).map((each) => each.xMm);
      const contact = Math.max(...inSnow) - Math.min(...inSnow);
      expect(Math.abs(contact - Math.PI / lambda), `${P} N`).toBeLessThanOrEqual(8);
      const middle = ((P * lambda) / (2 * hardness * WIDTH)) * ((Math.cosh(Math.PI) + 1) / Math.sinh(Math.PI));
      expect(Math.abs(at(stations, 800).depthMm / middle - 1)).toBeLessThan(1e-3);
      expect(at(stations, 0).depthMm).toBeLessThan(0);
      expect(at(stations, 0).pressureNPerMm).toBe(0);
      expect(Math.abs(carriedN / P - 1)).toBeLessThan(1e-6);
    }
  });

  it("sinks evenly without bending where a stiff beam carries its force in the middle", () => {
    // A rigid block: depth = force over area and hardness.
    const stiff = beam(600, 300, 0.001);
    const { stations } = solveOnSnow({
      ...stiff,
      stations: stiff.stations.map((each) => ({ ...each, bendingStiffnessNmm2: 1e13 })),
    });
    for (const { depthMm } of stations) expect(depthMm).toBeCloseTo(300 / (600 * WIDTH * 0.001), 3);
  });
});

describe("the law of the bed", () => {
  it("is pressure by depth over the width when flat, and half a wedge on edge", () => {
    expect(bedLaw(0.05, flat)(2, 90).pressureNPerMm).toBeCloseTo(0.05 * 90 * 2, 12);
    // At 45° an edge 4 mm down wets 4 mm of the base, from 2.83 mm deep to nothing.
    expect(bedLaw(0.05, radians(45))(4, 90).pressureNPerMm).toBeCloseTo((0.05 * 4 * (4 * Math.SQRT1_2)) / 2, 12);
    // Upright force is hardness times the snow displaced under the base: e²/(2 tan θ), as Mössner et al. found.
    const [s, deg] = [5, 30];
    const e = s * Math.cos((deg * Math.PI) / 180);
    const upright = bedLaw(0.3, radians(deg))(s, 90).pressureNPerMm * Math.cos((deg * Math.PI) / 180);
    expect(upright).toBeCloseTo((0.3 * e ** 2) / (2 * Math.tan((deg * Math.PI) / 180)), 10);
  });

  it("gives nothing above the snow, and stiffness and energy that belong to its pressure", () => {
    for (const deg of [0, 10, 45, 60]) {
      const law = bedLaw(0.05, radians(deg));
      expect(law(-3, 90)).toEqual({ pressureNPerMm: 0, stiffnessNPerMm2: 0, energyN: 0 });
      for (const depth of [0.5, 3, 14, 15.9, 60, 200]) {
        const [less, more] = [law(depth - 1e-4, 90), law(depth + 1e-4, 90)];
        const { pressureNPerMm, stiffnessNPerMm2 } = law(depth, 90);
        expect((more.pressureNPerMm - less.pressureNPerMm) / 2e-4).toBeCloseTo(stiffnessNPerMm2, 4);
        expect((more.energyN - less.energyN) / 2e-4).toBeCloseTo(pressureNPerMm, 4);
      }
    }
  });

  it("refuses snow without hardness, an angle it does not know and loads that are not on the beam", () => {
    expect(() => bedLaw(0, flat)).toThrow(/hardnessNPerMm3: 0/);
    expect(() => bedLaw(1, radians(90))).toThrow(/edgeAngle/);
    const sound = beam(1000, 100, 0.05);
    expect(() => solveOnSnow({ ...sound, loads: [] })).toThrow(/nothing presses/);
    expect(() => solveOnSnow({ ...sound, loads: [{ fromMm: -1, toMm: 10, forceN: 5 }] })).toThrow(
      /loads\[0\]: -1 to 10/,
    );
    expect(() => solveOnSnow({ ...sound, loads: [{ fromMm: 1, toMm: 10, forceN: -5 }] })).toThrow(/-5 N is below 0/);
    expect(() => solveOnSnow({ ...sound, stations: [] })).toThrow(/stations: 0 given/);
  });
});
