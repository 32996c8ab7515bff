/**
 * A ski under its skier on snow, flat or on edge.
 *
 * Gap on edge (own derivation). Let u be the height of the running surface in the ski's own upright plane and y its half width.
 * Tilted by θ, the edge at x lies at height h = u·cos θ − y·sin θ over a level that rigid motion may take anywhere. Measured
 * square to the base and from the widest place, h/cos θ = u + d·tan θ with d = y_max − y the depth of the sidecut there. So
 * the edge touches where the loaded ski has come down by the free height and by d·tan θ:
 *   g(x) = z(x) + d(x)·tan θ
 * with z the free profile (camber, rocker). At the waist that is the bend d·tan θ of which Howe writes (Skiing Mechanics, from
 * memory). The edge then draws Y = y·cos θ + u·sin θ on the snow; laid down whole its curvature is that of the sidecut over
 * cos θ, a turn of R·cos θ (Howe; U. D. Jentschura & F. Fahrbach, Can. J. Phys. 82 (2004) 249–261).
 *
 * Load. In a steady turn the resultant of weight and centrifugal force runs down the leg, square to the base, when the skier
 * leans as far as the ski is edged: F = m·g/cos θ. All of it stands on this ski, spread evenly over the boot's sole.
 *
 * Idealised: one ski carries everything; no twist of the ski and no lean of the body away from the leg; the boot does not
 * stiffen the ski; snow as in bed.ts, the same everywhere; the ski stands still, nothing skids, no bump, no change of speed.
 * The turn is the one that the pressed edge would draw if every place followed the one before it.
 */
import { halfWidthAt, profileHeightMm, type SkiShape } from "#engine/geometry";
import { solveOnSnow } from "./solve-on-snow";
import { pressedRadiusM } from "./turn-radius";
import type { SkiOnSnow, SkiOnSnowInput, SkiOnSnowStation } from "./types";

/**
 * @param pieces elements along the ski
 * @throws RangeError naming the field for a weight not above 0, a boot that hangs over an end, a bed or angle out of range
 */
export function skiOnSnow(input: SkiOnSnowInput, pieces?: number): SkiOnSnow {
  const { shape, mountMm, bootSoleMm, weightN, edgeAngle, bed } = input;
  if (!(weightN > 0 && Number.isFinite(weightN))) throw new RangeError(`weightN: ${weightN} N is not above 0`);
  const loadN = weightN / Math.cos(edgeAngle);
  const tan = Math.tan(edgeAngle);
  const widest = Math.max(shape.shoulderWidthMm, shape.heelWidthMm) / 2;
  const hollowMm = (xMm: number) => (widest - halfWidthAt(shape, xMm)) * tan;
  const freeMm = (xMm: number) => profileHeightMm(shape, xMm, "free");
  const found = solveOnSnow(
    {
      stations: input.stations,
      loads: [{ fromMm: mountMm - bootSoleMm / 2, toMm: mountMm + bootSoleMm / 2, forceN: loadN }],
      gapMm: (xMm) => freeMm(xMm) + hollowMm(xMm),
      widthMm: (xMm) => 2 * halfWidthAt(shape, xMm),
      bed,
      edgeAngle,
    },
    pieces,
  );
  const stations = found.stations.map((station): SkiOnSnowStation => {
    const heightMm = freeMm(station.xMm) - station.downMm;
    return { ...station, heightMm, snowMm: -hollowMm(station.xMm) };
  });
  return { loadN, ...found, stations, ...readOff(stations, shape, input) };
}

function readOff(stations: readonly SkiOnSnowStation[], shape: SkiShape, { mountMm, edgeAngle }: SkiOnSnowInput) {
  const touches = contactOf(stations);
  const peak = peakOf(stations);
  const tip = stations[0];
  return {
    contactMm: touches.lengthMm,
    contactFromMm: touches.fromMm,
    contactToMm: touches.toMm,
    sinkMm: Math.max(
      0,
      valueAt(stations, mountMm, (each) => each.depthMm),
    ),
    tipGapMm: tip ? Math.max(0, tip.heightMm) : 0,
    ...peak,
    turnRadiusM: pressedRadiusM(stations, shape, edgeAngle),
    endsShare: endsShareOf(stations, shape),
  };
}

/** Top of the parabola through the greatest pressure at a node and its neighbours, which are evenly spaced. */
function peakOf(stations: readonly SkiOnSnowStation[]) {
  const at = stations.reduce((most, { pressureNPerMm }, i) => {
    return pressureNPerMm > (stations[most]?.pressureNPerMm ?? 0) ? i : most;
  }, 0);
  const [left, top, right] = [stations[at - 1], stations[at], stations[at + 1]];
  const peak = { peakNPerMm: top?.pressureNPerMm ?? 0, peakAtMm: top?.xMm ?? 0 };
  if (!left || !top || !right) return peak;
  const slope = (right.pressureNPerMm - left.pressureNPerMm) / 2;
  const bend = left.pressureNPerMm - 2 * top.pressureNPerMm + right.pressureNPerMm;
  if (!(bend < 0)) return peak;
  const step = top.xMm - left.xMm;
  return { peakNPerMm: peak.peakNPerMm - slope ** 2 / (2 * bend), peakAtMm: top.xMm - (slope / bend) * step };
}

/** Length in the snow, with the ends of every touching stretch found on the straight line between two nodes. */
function contactOf(stations: readonly SkiOnSnowStation[]) {
  let [lengthMm, fromMm, toMm] = [0, Number.POSITIVE_INFINITY, 0];
  for (const [i, left] of stations.entries()) {
    const right = stations[i + 1];
    if (!right || (left.depthMm <= 0 && right.depthMm <= 0)) continue;
    const crossing = left.xMm + ((right.xMm - left.xMm) * left.depthMm) / (left.depthMm - right.depthMm);
    const [from, to] = [left.depthMm > 0 ? left.xMm : crossing, right.depthMm > 0 ? right.xMm : crossing];
    lengthMm += to - from;
    fromMm = Math.min(fromMm, from);
    toMm = Math.max(toMm, to);
  }
  return { lengthMm, fromMm, toMm };
}

function valueAt(
  stations: readonly SkiOnSnowStation[],
  xMm: number,
  of: (station: SkiOnSnowStation) => number,
): number {
  const i = stations.findIndex((each) => each.xMm >= xMm);
  const [left, right] = [stations[Math.max(0, i - 1)], stations[i]];
  if (!left || !right || right.xMm === left.xMm) return right ? of(right) : 0;
  return of(left) + ((of(right) - of(left)) * (xMm - left.xMm)) / (right.xMm - left.xMm);
}

/** What is carried ahead of the first quarter and behind the last of the sidecut's length, by the trapezium rule. */
function endsShareOf(stations: readonly SkiOnSnowStation[], shape: SkiShape): number {
  const fromMm = shape.tipLengthMm + shape.sidecutLengthMm / 4;
  const toMm = shape.tipLengthMm + (3 * shape.sidecutLengthMm) / 4;
  let [all, ends] = [0, 0];
  for (const [i, left] of stations.entries()) {
    const right = stations[i + 1];
    if (!right) break;
    const force = ((right.xMm - left.xMm) * (left.pressureNPerMm + right.pressureNPerMm)) / 2;
    const middle = (left.xMm + right.xMm) / 2;
    all += force;
    if (middle < fromMm || middle > toMm) ends += force;
  }
  return all > 0 ? ends / all : 0;
}
