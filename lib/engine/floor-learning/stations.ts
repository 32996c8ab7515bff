/** Minutes of each station: the logarithm of what was taken against what is assumed, shrunk towards the assumption. */
import type { Station, StationId, ThreePointMinutes } from "#engine/floor";
import { lognormalFromMoments, normalQuantile, portableExp, portableLog } from "#engine/math";
import { intervalShares } from "./rates";
import type { FloorLearningSettings, StationLearning } from "./types";
import { type CountedVisit, medianOf, type SortedVisits } from "./visits";

/** Beyond so many robust standard deviations a visit does not count for the mean. */
const outlierAt = 3;
/** 1/Φ⁻¹(3/4): median absolute deviation to standard deviation of a normal sample. */
const madToSd = 1.482602218505602;
/** Even a clockwork's minutes scatter by so much, as a logarithm. */
const leastLogSd = 0.02;
const minuteStep = 0.5;

/** Residuals of one station: what a visit took against the station's own usual time, as a logarithm. */
export interface StationResidual {
  readonly counted: CountedVisit;
  readonly logRatio: number;
}

export interface StationFit {
  readonly learning: StationLearning;
  readonly residuals: readonly StationResidual[];
}

/**
 * Normal location with known prior weight (A. Gelman et al., Bayesian Data Analysis, 3rd ed., section 2.5) on the logarithm;
 * its scale is pooled in the same way. Durations are lognormal with the PERT moments of low, typical and high.
 */
export function learnStation(station: Station, sorted: SortedVisits, settings: FloorLearningSettings): StationFit {
  const { mean, sd } = pertMoments(station.minutes);
  const assumed = lognormalFromMoments(mean, sd);
  const counted = sorted.counted.filter(({ visit }) => visit.station === station.id);
  const logs = counted.map(({ touchMinutes }) => portableLog(touchMinutes) - assumed.mu);
  const kept = withoutOutliers(logs);
  const weight = settings.prior.visits;
  const n = kept.length;
  const taken = n === 0 ? 0 : kept.reduce((sum, value) => sum + value, 0) / n;
  const shift = (n * taken) / (n + weight);
  const squares = kept.reduce((sum, value) => sum + (value - taken) ** 2, 0);
  const variance = (weight * assumed.sigma ** 2 + squares) / (n + weight);
  const learntMean = portableExp(assumed.mu + shift + variance / 2);
  const learnt = threePoints(station.minutes, learntMean, learntMean * Math.sqrt(portableExp(variance) - 1));
  const [low, high] = intervalShares.map((share) =>
    portableExp(assumed.mu + shift + variance / 2 + normalQuantile(share) * Math.sqrt(variance / (n + weight))),
  ) as [number, number];
  const leftOut = (why: "too-short" | "forgotten") =>
    sorted.leftOut.filter((each) => each.why === why && each.visit.station === station.id).length;
  return {
    learning: {
      station: station.id,
      visits: counted.length,
      tooShort: leftOut("too-short"),
      forgotten: leftOut("forgotten"),
      assumed: station.minutes,
      assumedMeanMinutes: mean,
      takenMeanMinutes:
        n === 0 ? null : counted.reduce((sum, { touchMinutes }) => sum + touchMinutes, 0) / counted.length,
      learnt,
      learntMeanMinutes: pertMoments(learnt).mean,
      interval: { low, high },
    },
    residuals: counted.flatMap((each, index): readonly StationResidual[] => {
      const logRatio = (logs[index] as number) - taken;
      return kept.includes(logs[index] as number) ? [{ counted: each, logRatio }] : [];
    }),
  };
}

function withoutOutliers(logs: readonly number[]): readonly number[] {
  if (logs.length === 0) return logs;
  const centre = medianOf(logs);
  const scale = Math.max(leastLogSd, madToSd * medianOf(logs.map((value) => Math.abs(value - centre))));
  return logs.filter((value) => Math.abs(value - centre) <= outlierAt * scale);
}

export function pertMoments({ low, typ, high }: ThreePointMinutes): { readonly mean: number; readonly sd: number } {
  return { mean: (low + 4 * typ + high) / 6, sd: (high - low) / 6 };
}

/** The three points with these PERT moments that lie about their typical value as the old ones do. */
export function threePoints(old: ThreePointMinutes, mean: number, sd: number): ThreePointMinutes {
  const below = old.typ - old.low;
  const above = old.high - old.typ;
  const width = below + above;
  const stretch = width === 0 ? 0 : (6 * sd) / width;
  const typ = mean - ((above - below) * stretch) / 6;
  const round = (value: number) => Math.max(minuteStep, Math.round(value / minuteStep) * minuteStep);
  const usual = round(typ);
  return {
    low: Math.min(usual, round(typ - below * stretch)),
    typ: usual,
    high: Math.max(usual, round(typ + above * stretch)),
  };
}

/** Residuals of all stations, for what they share. */
export function residualsOf(fits: ReadonlyMap<StationId, StationFit>): readonly StationResidual[] {
  return [...fits.values()].flatMap(({ residuals }) => residuals);
}
