/** A beam on an elastic bed, with and without pull: closed forms of Hetényi's, and the turn of Howe's. */
import { type BeamOnSnow, skiOnSnow, solveOnSnow } from "#engine/snow";
import { radians } from "#engine/units";
import { straightSkiShape } from "./straight-ski";
import type { Check } from "./types";

const [EI, WIDTH, H, P] = [2e8, 90, 0.05, 800];
const k = H * WIDTH;
const lambda = (k / (4 * EI)) ** 0.25;

/** An even beam of 200 N·m², 90 mm wide on snow of 0.05 N/mm³, 800 N at its middle; `lineNPerMm` all along besides. */
function beam(lengthMm: number, lineNPerMm = 0): BeamOnSnow {
  const middle = lengthMm / 2;
  const along = { fromMm: 0, toMm: lengthMm, forceN: lineNPerMm * lengthMm };
  return {
    stations: [0, lengthMm].map((xMm) => ({ xMm, bendingStiffnessNmm2: EI })),
    loads: [{ fromMm: middle - 0.05, toMm: middle + 0.05, forceN: P }, ...(lineNPerMm > 0 ? [along] : [])],
    gapMm: () => 0,
    widthMm: () => WIDTH,
    bed: { hardnessNPerMm3: H },
    edgeAngle: radians(0),
  };
}

const depthAt = ({ stations }: ReturnType<typeof solveOnSnow>, xMm: number) =>
  stations.find((station) => Math.abs(station.xMm - xMm) < 1e-6)?.depthMm ?? Number.NaN;

const about = "even beam, 200 N·m², 90 mm wide, snow of 0.05 N/mm³, 800 N at its middle";

export const snowChecks: readonly Check[] = [
  {
    id: "BED-INFINITE",
    topic: "snow",
    about: `${about}, 3 m long and held in the bed by 1 N/mm`,
    source:
      "infinite beam under a force, (Pλ/2k)·e^(−λx)(cos λx + sin λx), λ = ⁴√(k/4EI) (M. Hetényi, Beams on Elastic Foundation, 1946, from memory)",
    mark: "memory",
    values: () => {
      const found = solveOnSnow(beam(3000, 1), 300);
      const unit = (P * lambda) / (2 * k);
      return [0, 100, 200, 400].map((away) => {
        const x = lambda * away;
        return {
          name: `${away} mm from the force, mm`,
          expected: unit * Math.exp(-x) * (Math.cos(x) + Math.sin(x)),
          computed: depthAt(found, 1500 + away) - 1 / k,
          tolerance: { kind: "abs", value: 1e-3 * unit },
        };
      });
    },
  },
  {
    id: "BED-ENDS",
    topic: "snow",
    about: `${about}, 0.3 m long with free ends`,
    source:
      "(Pλ/2k)·(cosh λl + cos λl + 2)/(sinh λl + sin λl) at the middle, (2Pλ/k)·cosh(λl/2)·cos(λl/2)/(sinh λl + sin λl) at the ends (Hetényi, from memory)",
    mark: "memory",
    values: () => {
      const l = 300;
      const found = solveOnSnow(beam(l));
      const [y, unit] = [lambda * l, (P * lambda) / k];
      const sum = Math.sinh(y) + Math.sin(y);
      const tolerance = { kind: "rel", value: 1e-3 } as const;
      return [
        {
          name: "sunk at the middle, mm",
          expected: (unit / 2) * ((Math.cosh(y) + Math.cos(y) + 2) / sum),
          computed: depthAt(found, l / 2),
          tolerance,
        },
        {
          name: "sunk at an end, mm",
          expected: 2 * unit * ((Math.cosh(y / 2) * Math.cos(y / 2)) / sum),
          computed: depthAt(found, 0),
          tolerance,
        },
      ];
    },
  },
  {
    id: "BED-LIFTS",
    topic: "snow",
    about: `${about}, 1.6 m long and weightless: its ends lift, for snow does not pull`,
    source:
      "it lies on π/λ, where a beam with free ends neither sinks nor lifts at them, and sinks (Pλ/2k)·(cosh π + 1)/sinh π (own derivation from Hetényi's finite beam, from memory)",
    mark: "memory",
    values: () => {
      const found = solveOnSnow(beam(1600), 400);
      const touching = found.stations.filter(({ depthMm }) => depthMm > 0).map(({ xMm }) => xMm);
      return [
        {
          name: "length that touches, mm",
          expected: Math.PI / lambda,
          computed: Math.max(...touching) - Math.min(...touching),
          // Two of the elements it is cut into.
          tolerance: { kind: "abs", value: 8 },
        },
        {
          name: "sunk at the middle, mm",
          expected: ((P * lambda) / (2 * k)) * ((Math.cosh(Math.PI) + 1) / Math.sinh(Math.PI)),
          computed: depthAt(found, 800),
          tolerance: { kind: "rel", value: 1e-3 },
        },
      ];
    },
  },
  {
    id: "EDGE-TURN",
    topic: "snow",
    about: "a ski without camber, 120-90-120 mm, on edge on ice (10 N/mm³): the turn that its edge draws",
    source: "R·cos θ (Howe, Skiing Mechanics, from memory; Jentschura & Fahrbach, Can. J. Phys. 82 (2004) 249–261)",
    mark: "memory",
    values: () => {
      const shape = straightSkiShape;
      const stations = [0, shape.lengthMm / 2, shape.lengthMm].map((xMm, i) => ({
        xMm,
        bendingStiffnessNmm2: i === 1 ? 3e8 : 3e7,
      }));
      const standing = { mountMm: shape.mountFromTipMm, bootSoleMm: 310, weightN: P, bed: { hardnessNPerMm3: 10 } };
      return [0, 20, 40, 60].map((deg) => ({
        name: `radius at ${deg}°, m`,
        expected: (shape.sidecutRadiusMm / 1000) * Math.cos((deg * Math.PI) / 180),
        computed: skiOnSnow({ shape, stations, ...standing, edgeAngle: radians(deg) }).turnRadiusM,
        // The snow gives a little under the boot, so the ski bends a little further.
        tolerance: { kind: "rel", value: 0.05 } as const,
      }));
    },
  },
];
