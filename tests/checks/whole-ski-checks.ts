/** What a whole strip does, by closed form: springs, first frequencies, camber under load. */
import { loadCatalog } from "#catalog";
import { skiBuildFor } from "#engine/configuration";
import { type FlexStation, freeFreeFrequencies, pressedCamber, skiBehaviour, springConstants } from "#engine/flex";
import { cantileverFrequencyHz } from "#engine/handbook";
import { evenlySpaced } from "#engine/math";
import { caseCheck, input } from "./cases";
import type { Check } from "./types";

/** A uniform ski-like strip: 1.8 m, 200 N·m², 100 N·m², 1 kg/m, 90 mm wide. */
const strip = evenlySpaced(0, 1800, 90).map(
  (xMm): FlexStation => ({
    xMm,
    widthMm: 90,
    coreMm: 8,
    thicknessMm: 12,
    bendingStiffnessNmm2: 200e6,
    torsionalStiffnessNmm2: 100e6,
    neutralAxisMm: 6,
    massGPerM: 1000,
  }),
);

export const wholeSkiChecks: readonly Check[] = [
  caseCheck("VIB-CANT", "frequencies", () => {
    const at = (name: string) => input("VIB-CANT", name);
    return { f1_Hz: cantileverFrequencyHz(at("EI_Nm2") * 1e6, at("m_per_m_kg"), at("L_m") * 1e3) };
  }),
  {
    id: "VIB-FREE",
    topic: "frequencies",
    about: "uniform strip hanging free: 1.8 m, EI 200 N·m², GJ 100 N·m², 1 kg/m, 90 mm wide",
    source:
      "(4.73004²/2π)·√(EI/mL⁴) (R. D. Blevins, Formulas for Natural Frequency and Mode Shape, 1979, Table 8-1, free–free) and √(GJ/(m·w²/12))/2L of a free shaft, own derivation",
    mark: "derived",
    values: () => {
      const { bendingHz, torsionHz } = freeFreeFrequencies(strip);
      const tolerance = { kind: "rel", value: 1e-4 } as const;
      const bending = (4.7300407449 ** 2 / (2 * Math.PI)) * Math.sqrt(200 / 1.8 ** 4);
      const torsion = Math.sqrt(100 / (0.09 ** 2 / 12)) / (2 * 1.8);
      return [
        { name: "bending, Hz", expected: bending, computed: bendingHz, tolerance },
        { name: "torsion, Hz", expected: torsion, computed: torsionHz, tolerance },
      ];
    },
  },
  {
    id: "CAMBER",
    topic: "camber",
    about: "camber shaped like the bend of a centre load closes evenly, h = c − F·L³/48EI",
    source:
      "own derivation from the centre-loaded beam (Roark's Formulas for Stress and Strain, 7th ed., Table 8.1, case 1e): EI 200 N·m², L 1.4 m, camber 8 mm in its form 3ξ − 4ξ³",
    mark: "derived",
    values: () => {
      const [L, c] = [1400, 8];
      const closing = (48 * 200e6 * c) / L ** 3;
      const xi = (x: number) => Math.min(x, L - x) / L;
      const beam = {
        stations: strip,
        fromMm: 0,
        toMm: L,
        loadMm: L / 2,
        restHeightMm: (x: number) => c * (3 * xi(x) - 4 * xi(x) ** 3),
      };
      return [0.25, 0.5, 0.75].map((share) => ({
        name: `height under ${100 * share} % of the closing load, mm`,
        expected: c * (1 - share),
        computed: pressedCamber(beam, share * closing).heightMm,
        // The engine's own statement: within 2 % of the camber.
        tolerance: { kind: "abs", value: 0.02 * c } as const,
      }));
    },
  },
  {
    id: "SPRINGS",
    topic: "beam",
    about: "the three springs of a uniform strip, supports 1.4 m apart, load 0.6 m behind the first",
    source:
      "3EI·L/(a²b²), 3EI/a³ and 3EI/b³ (Roark's Formulas for Stress and Strain, 7th ed., Table 8.1, cases 1e and 1a), EI 200 N·m²",
    mark: "derived",
    values: () => {
      const [a, b, EI] = [600, 800, 200e6];
      const found = springConstants(
        strip.map((station) => station.xMm),
        strip.map((station) => station.bendingStiffnessNmm2),
        { frontSupportMm: 200, rearSupportMm: 200 + a + b, loadMm: 200 + a },
      );
      const tolerance = { kind: "rel", value: 1e-6 } as const;
      return [
        ["centre, N/mm", (3 * EI * (a + b)) / (a * b) ** 2, found.springCentreNPerMm] as const,
        ["forebody, N/mm", (3 * EI) / a ** 3, found.springForebodyNPerMm] as const,
        ["afterbody, N/mm", (3 * EI) / b ** 3, found.springAfterbodyNPerMm] as const,
      ].map(([name, expected, computed]) => ({ name, expected, computed, tolerance }));
    },
  },
  {
    id: "POLAR",
    topic: "polar",
    about: "uniform strip of 1.8 kg, 1.8 m by 90 mm, about its middle and about a mount line 0.1 m behind",
    source:
      "m(L² + b²)/12 of a thin plate and the parallel-axis theorem (J. L. Meriam & L. G. Kraige, Engineering Mechanics: Dynamics, appendix B)",
    mark: "derived",
    values: () => {
      const { polarMomentKgM2, polarMomentAtMountKgM2 } = behaviourOfStrip();
      const tolerance = { kind: "rel", value: 1e-6 } as const;
      const expected = (1.8 * (1.8 ** 2 + 0.09 ** 2)) / 12;
      return [
        { name: "about the middle, kg·m²", expected, computed: polarMomentKgM2, tolerance },
        {
          name: "about the mount line, kg·m²",
          expected: expected + 1.8 * 0.1 ** 2,
          computed: polarMomentAtMountKgM2,
          tolerance,
        },
      ];
    },
  },
  {
    id: "TW-ENDS",
    topic: "twist",
    about: "the same strip held 1 m behind the tip, turned 0.8 m ahead and 0.6 m behind: GJ/L per degree",
    source: "θ = T·L/GJ (Roark's Formulas for Stress and Strain, 7th ed., ch. 10), GJ 100 N·m²",
    mark: "derived",
    values: () => {
      const { twistForebodyNmPerDeg, twistAfterbodyNmPerDeg } = behaviourOfStrip();
      const tolerance = { kind: "rel", value: 1e-6 } as const;
      const perDegree = (lengthM: number) => (100 / lengthM) * (Math.PI / 180);
      return [
        { name: "forebody, N·m/°", expected: perDegree(0.8), computed: twistForebodyNmPerDeg, tolerance },
        { name: "afterbody, N·m/°", expected: perDegree(0.6), computed: twistAfterbodyNmPerDeg, tolerance },
      ];
    },
  },
];

/** The strip in the place of a demo ski's stations, with a bench of its own; nothing else of that ski counts. */
function behaviourOfStrip() {
  const spec = { model: "midlow-95", lengthCm: 178, core: "aspen-ash", reinforcements: [], flexRatio: 1 };
  const ski = skiBuildFor(spec, loadCatalog().build);
  if (!ski.ok) throw new Error(JSON.stringify(ski.refusal));
  const springTest = { frontSupportMm: 200, rearSupportMm: 1600, loadMm: 1000 };
  const springs = { springCentreNPerMm: 1, springForebodyNPerMm: 1, springAfterbodyNPerMm: 1, balance: 1 };
  const flex = { ...springs, coreShearPercent: 0, stations: strip, massKg: 1.8, balancePointMm: 900 };
  return skiBehaviour({ ...ski.value, mountFromTipMm: 1000, springTest }, flex);
}
