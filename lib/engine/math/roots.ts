/**
 * Root of `f` in [low, high] by Brent's method (R. P. Brent, Algorithms for Minimization without Derivatives, 1973, ch. 4,
 * "zero"): bisection that speeds up by secant and inverse quadratic steps and never leaves the bracket.
 *
 * @param tolerance half width of the interval in which the root may end up
 * @throws RangeError when f(low) and f(high) have the same sign, or a value is not finite
 */
export function findRoot(f: (x: number) => number, low: number, high: number, tolerance = 1e-10): number {
  let a = low;
  let b = high;
  let fa = f(a);
  let fb = f(b);
  if (!Number.isFinite(fa) || !Number.isFinite(fb) || fa * fb > 0) {
    throw new RangeError(`findRoot: f(${low}) = ${fa} and f(${high}) = ${fb} must be finite and of opposite sign`);
  }
  let c = a;
  let fc = fa;
  let step = b - a;
  let previous = step;
  for (let i = 0; i < 200; i++) {
    if (Math.abs(fc) < Math.abs(fb)) {
      [a, b, c] = [b, c, b];
      [fa, fb, fc] = [fb, fc, fb];
    }
    const limit = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2;
    const toMiddle = (c - b) / 2;
    if (Math.abs(toMiddle) <= limit || fb === 0) return b;
    const proposal = Math.abs(previous) >= limit && Math.abs(fa) > Math.abs(fb) ? secant(a, b, c, fa, fb, fc) : null;
    if (proposal !== null && Math.abs(proposal) < Math.min(1.5 * Math.abs(toMiddle), Math.abs(previous / 2))) {
      previous = step;
      step = proposal;
    } else {
      step = toMiddle;
      previous = toMiddle;
    }
    a = b;
    fa = fb;
    b += Math.abs(step) > limit ? step : Math.sign(toMiddle) * limit;
    fb = f(b);
    if (fb > 0 === fc > 0) {
      c = a;
      fc = fa;
      step = b - a;
      previous = step;
    }
  }
  return b;
}

/** Step from b towards the zero: inverse quadratic through three points, or the secant when only two differ. */
function secant(a: number, b: number, c: number, fa: number, fb: number, fc: number): number | null {
  const s = fb / fa;
  let p = (c - b) * s;
  let q = 1 - s;
  if (a !== c) {
    const r = fb / fc;
    const t = fa / fc;
    p = s * ((c - b) * t * (t - r) - (b - a) * (r - 1));
    q = (t - 1) * (r - 1) * (s - 1);
  }
  const step = -p / q;
  const inward = Number.isFinite(step) && step * (c - b) > 0;
  return inward ? step : null;
}
