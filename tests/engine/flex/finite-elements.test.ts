/**
 * The engine's beam against finite elements (tests/support/finite-elements.ts) on the demo's skis. The elements themselves
 * are checked first against closed forms (S. P. Timoshenko, Vibration Problems in Engineering; roots βL = 4.73004 of the free
 * beam and 1.87510 of the cantilever).
 */
import { describe, expect, it } from "vitest";
import { type FlexStation, freeFreeFrequencies, solveBeam, springConstants, springTestOf } from "#engine/flex";
import {
  type FemStation,
  femFreeBendingHz,
  femFreeTorsionHz,
  femUnitDeflectionMm,
} from "../../support/finite-elements";
import { catalog, solved, specOf } from "../demo-catalog";

const evenly = (count: number, lengthMm: number, row: Omit<FemStation, "xMm">): FemStation[] =>
  Array.from({ length: count + 1 }, (_, i) => ({ xMm: (lengthMm * i) / count, ...row }));

/** 1 g per metre is 1e-9 tonnes per mm. */
const TONNES_PER_MM = 1e-9;
const inBending = (stations: readonly FlexStation[]): FemStation[] =>
  stations.map(({ xMm, bendingStiffnessNmm2, massGPerM }) => ({
    xMm,
    stiffnessNmm2: bendingStiffnessNmm2,
    inertia: massGPerM * TONNES_PER_MM,
  }));
/** A slice as a thin rod across the ski: m·w²/12. */
const inTwist = (stations: readonly FlexStation[]): FemStation[] =>
  stations.map(({ xMm, torsionalStiffnessNmm2, massGPerM, widthMm }) => ({
    xMm,
    stiffnessNmm2: torsionalStiffnessNmm2,
    inertia: (massGPerM * TONNES_PER_MM * widthMm ** 2) / 12,
  }));

const skis = catalog.build.models.map((model) => {
  const { flex, build, flexWithPlate } = solved(specOf({ model: model.id }));
  return { id: model.id, flex, build, flexWithPlate };
});

describe("the finite elements", () => {
  const [EI, lengthMm, force] = [200e6, 1600, 1];
  const uniform = evenly(40, lengthMm, { stiffnessNmm2: EI, inertia: 1000 * TONNES_PER_MM });

  it("bend as F·L³/48EI and F·L³/3EI say", () => {
    const three = femUnitDeflectionMm(uniform, { kind: "simple", xMm: [0, lengthMm] }, lengthMm / 2);
    expect(three / ((force * lengthMm ** 3) / (48 * EI))).toBeCloseTo(1, 7);
    const cantilever = femUnitDeflectionMm(uniform, { kind: "clamped", xMm: 0 }, lengthMm);
    expect(cantilever / ((force * lengthMm ** 3) / (3 * EI))).toBeCloseTo(1, 7);
  });

  it("swing as (4.73004)²/2π·√(EI/mL⁴) when free", () => {
    // 200 N·m², 1 kg/m, 1.6 m.
    const closed = (4.7300407 ** 2 / (2 * Math.PI)) * Math.sqrt(200 / 1.6 ** 4);
    expect(femFreeBendingHz(uniform) / closed).toBeCloseTo(1, 4);
  });

  it("twist as √(GJ/I)/2L when free", () => {
    // 100 N·m² and 1e-3 kg·m²/m, which is 1e-3 kg·m = 1e-3 t·mm.
    const uniformTwist = evenly(60, lengthMm, { stiffnessNmm2: 100e6, inertia: 1e-3 });
    const closed = Math.sqrt(100 / 1e-3) / (2 * 1.6);
    expect(Math.abs(femFreeTorsionHz(uniformTwist) / closed - 1)).toBeLessThan(3e-4);
  });
});

describe("the beam on the demo's skis", () => {
  for (const { id, flex, flexWithPlate, build } of skis) {
    it(`agrees with finite elements within 0.1 % on ${id}`, () => {
      const test = springTestOf(build);
      const { frontSupportMm: a, rearSupportMm: b, loadMm: p } = test;
      for (const { stations } of [flex, flexWithPlate]) {
        const fem = inBending(stations);
        const cases = [
          [{ kind: "simple", xMm: [a, b] }, p],
          [{ kind: "clamped", xMm: p }, a],
          [{ kind: "clamped", xMm: p }, b],
        ] as const;
        const elements = cases.map(([support, load]) => femUnitDeflectionMm(fem, support, load));
        cases.forEach(([support, xMm], i) => {
          // At the very tip the section has no width, and the beam is asked for stiffness above 0.
          const beam = stations.filter((station) => station.bendingStiffnessNmm2 > 0);
          const { deflectionMm } = solveBeam({ stations: beam, support, load: { xMm, forceN: 1 } });
          expect(Math.abs(deflectionMm / (elements[i] ?? 0) - 1)).toBeLessThan(1e-3);
        });
        const springs = springConstants(
          stations.map((station) => station.xMm),
          stations.map((station) => station.bendingStiffnessNmm2),
          test,
        );
        const { springCentreNPerMm, springForebodyNPerMm, springAfterbodyNPerMm } = springs;
        [springCentreNPerMm, springForebodyNPerMm, springAfterbodyNPerMm].forEach((spring, i) => {
          expect(Math.abs(spring * (elements[i] ?? 0) - 1)).toBeLessThan(1e-3);
        });
      }
    });
  }
});

describe("the free ski's first frequencies", () => {
  for (const { id, flex, flexWithPlate } of skis) {
    it(`agree with finite elements within 0.5 % on ${id}`, () => {
      for (const { stations } of [flex, flexWithPlate]) {
        const { bendingHz, torsionHz } = freeFreeFrequencies(stations);
        expect(Math.abs(bendingHz / femFreeBendingHz(inBending(stations)) - 1)).toBeLessThan(5e-3);
        expect(Math.abs(torsionHz / femFreeTorsionHz(inTwist(stations)) - 1)).toBeLessThan(5e-3);
      }
    });
  }
});
