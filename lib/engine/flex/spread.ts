/**
 * How sure the computed stiffness and mass of a ski are, by the law of propagation of uncertainty to first order
 * (GUM, JCGM 100:2008, eq. 10): u²(y) = Σ cᵢ²·u²(xᵢ) over independent inputs, with cᵢ·u(xᵢ) taken as half the difference of
 * y at xᵢ + u and xᵢ − u (its 5.1.3, note 2). Two skis of a pair share the part sᵢ of each variance and have the rest each
 * for itself, so their difference has Σ 2·(1 − sᵢ)·cᵢ²·u²(xᵢ). What the model leaves out is the same in both skis.
 *
 * Valid while inputs vary by some per cent. Against a seeded simulation of 2,000 pairs, all inputs off at once, every
 * deviation agrees within 6 %, 5 % of it the simulation's own error (tests/engine/flex/spread.test.ts). Against whole skis
 * worked out anew for every input, the few sections of spread-samples.ts give springs within 1 % and mass within 2 %.
 * Left out: moisture, the outline, edges, foils and wear, and what differs along one core.
 */
import { interpolate } from "#engine/math";
import { evaluateFlex } from "./evaluate";
import { localSection, sectionBendingStiffness, sectionMassGPerM } from "./local-section";
import { type ScatterInput, scatterInputs } from "./spread-inputs";
import { type Sample, samplesOf } from "./spread-samples";
import type { FlexSpread, ScatterSettings, ScatterSource, SpreadValues } from "./spread-types";
import type { SkiBuild, SkiFlex, ThicknessProfile } from "./types";

const SOURCES: readonly ScatterSource[] = [
  "strips",
  "core-thickness",
  "fibre-volume",
  "fabric-modulus",
  "sheet-thickness",
  "model",
];

interface Effect {
  readonly source: ScatterSource;
  readonly sharedByTwins: number;
  readonly sharedMass: number;
  readonly values: SpreadValues;
}

/**
 * Standard deviations of one ski and of the difference between two, for this build with this core.
 *
 * @param flex of the same build and core, where it is known already
 * @throws RangeError as evaluateFlex does
 */
export function flexSpread(
  build: SkiBuild,
  profile: ThicknessProfile,
  settings: ScatterSettings,
  flex: SkiFlex = evaluateFlex(build, profile),
): FlexSpread {
  const massG = flex.massKg * 1000;
  const samples = samplesOf(build, flex.stations);
  const beamMassG = massG - build.extraMassG;
  const sections = sampler(build, profile, samples);
  const effects = scatterInputs(build, settings).map((input) => effectOf(input, sections, beamMassG));
  const { modelSpring, modelMass } = settings;
  const values = { springCentre: modelSpring, midBending: modelSpring, massG: modelMass * massG };
  effects.push({ source: "model", sharedByTwins: 1, sharedMass: 1, values });
  return {
    ...rootOfSquares(effects, () => 1),
    twins: rootOfSquares(effects, (shared) => 2 * (1 - shared)),
    bySource: SOURCES.map((source) => {
      const own = effects.filter((effect) => effect.source === source);
      return { source, ...rootOfSquares(own, () => 1) };
    }),
  };
}

interface Section {
  readonly bendingNmm2: number;
  readonly massGPerM: number;
}

/** Sections of a moved build at the samples, and at the mount line; and what they are of the build as planned. */
interface Sections {
  readonly samples: readonly Sample[];
  readonly mean: readonly Section[];
  readonly meanAtMount: Section;
  readonly of: (moved: SkiBuild, xMm: number, at: number) => Section;
}

function sampler(build: SkiBuild, profile: ThicknessProfile, samples: readonly Sample[]): Sections {
  const xs = profile.stations.map((station) => station.xMm);
  const thickness = profile.stations.map((station) => station.thicknessMm);
  const planned = [...samples.map(({ xMm }) => xMm), build.mountFromTipMm].map((x) => interpolate(xs, thickness, x));
  const of = (moved: SkiBuild, xMm: number, at: number): Section => {
    const section = localSection(moved, xMm);
    const coreMm = (planned[at] ?? 0) + (moved.coreOffsetMm ?? 0);
    return {
      bendingNmm2: sectionBendingStiffness(section, coreMm),
      massGPerM: sectionMassGPerM(section, coreMm),
    };
  };
  const mean = samples.map(({ xMm }, at) => of(build, xMm, at));
  return { samples, mean, meanAtMount: of(build, build.mountFromTipMm, samples.length), of };
}

/** What one standard deviation of one input does: springs and EI as shares of the mean, mass in g. */
function effectOf(input: ScatterInput, { samples, mean, meanAtMount, of }: Sections, beamMassG: number): Effect {
  const [up, down] = [input.moved(1), input.moved(-1)];
  const relative = (key: keyof Section, above: Section, below: Section, whole: Section) =>
    (above[key] - below[key]) / 2 / whole[key];
  let springCentre = 0;
  let mass = 0;
  samples.forEach(({ xMm, springShare, massShare }, at) => {
    const whole = mean[at];
    if (!whole) return;
    const [above, below] = [of(up, xMm, at), of(down, xMm, at)];
    springCentre += springShare * relative("bendingNmm2", above, below, whole);
    mass += massShare * relative("massGPerM", above, below, whole);
  });
  const { mountFromTipMm } = up;
  const [above, below] = [of(up, mountFromTipMm, samples.length), of(down, mountFromTipMm, samples.length)];
  const midBending = relative("bendingNmm2", above, below, meanAtMount);
  const { source, sharedByTwins, sharedMass = sharedByTwins } = input;
  return { source, sharedByTwins, sharedMass, values: { springCentre, midBending, massG: mass * beamMassG } };
}

function rootOfSquares(effects: readonly Effect[], weight: (shared: number) => number): SpreadValues {
  const of = (value: keyof SpreadValues) =>
    Math.sqrt(
      effects.reduce((sum, effect) => {
        const shared = value === "massG" ? effect.sharedMass : effect.sharedByTwins;
        return sum + weight(shared) * effect.values[value] ** 2;
      }, 0),
    );
  return { springCentre: of("springCentre"), midBending: of("midBending"), massG: of("massG") };
}
