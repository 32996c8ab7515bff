import { inverse, Matrix } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { seededRandom, unitFromU32 } from "#engine/math";
import { fitLinear, fitRobust, type Row, studentised } from "#lib/engine/calibration/regularised-fit";

const random = seededRandom(11);
const uniform = () => 2 * unitFromU32(random()) - 1;
const priorSd = [0.5, 0.2, 1];
const zero = [0, 0, 0];
const rows: readonly Row[] = Array.from({ length: 12 }, () => ({
  residual: uniform(),
  slopes: [uniform(), uniform(), uniform()],
  sd: 0.1 + 0.05 * Math.abs(uniform()),
  weight: 1,
}));

/** The normal equations by a general matrix library: (JᵀWJ + P)θ = JᵀWr. */
function byLibrary(some: readonly Row[]): { readonly values: number[]; readonly covariance: Matrix } {
  const j = new Matrix(some.map((row) => [...row.slopes]));
  const w = Matrix.diag(some.map((row) => row.weight / row.sd ** 2));
  const r = Matrix.columnVector(some.map((row) => row.residual));
  const weighed = j.transpose().mmul(w);
  const covariance = inverse(Matrix.add(weighed.mmul(j), Matrix.diag(priorSd.map((sd) => 1 / sd ** 2))));
  return { values: covariance.mmul(weighed).mmul(r).to1DArray(), covariance };
}

const at = (fit: ReturnType<typeof byLibrary>, row: Row) => {
  const slopes = Matrix.columnVector([...row.slopes]);
  const left = row.residual - row.slopes.reduce((sum, slope, i) => sum + slope * (fit.values[i] ?? 0), 0);
  return { left, spread: slopes.transpose().mmul(fit.covariance).mmul(slopes).get(0, 0) };
};

describe("fitLinear", () => {
  // Closed form of one unknown and one reading (normal prior and normal reading): y·σ0²/(σ0² + σ²), variance σ0²σ²/(σ0² + σ²).
  it("weighs one reading against what was believed beforehand", () => {
    const fit = fitLinear([{ residual: 0.05, slopes: [1], sd: 0.02, weight: 1 }], [0.04]);
    expect(fit.values[0]).toBeCloseTo((0.05 * 0.04 ** 2) / (0.04 ** 2 + 0.02 ** 2), 14);
    expect(fit.covariance[0]?.[0]).toBeCloseTo((0.04 ** 2 * 0.02 ** 2) / (0.04 ** 2 + 0.02 ** 2), 14);
  });

  it("says of nothing measured what was believed beforehand", () => {
    const fit = fitLinear([], priorSd);
    expect(fit.values).toEqual([0, 0, 0]);
    expect(fit.covariance.map((line, i) => Math.sqrt(line[i] ?? 0))).toEqual(priorSd);
  });

  it("solves the normal equations as a general matrix library does", () => {
    const own = fitLinear(rows, priorSd);
    const other = byLibrary(rows);
    for (const [i, value] of own.values.entries()) expect(value).toBeCloseTo(other.values[i] ?? Number.NaN, 10);
    for (const [i, line] of own.covariance.entries()) {
      for (const [j, value] of line.entries()) expect(value).toBeCloseTo(other.covariance.get(i, j), 10);
    }
  });

  it("gives the same wherever a linear problem is linearised", () => {
    const around = [0.3, -0.1, 0.7];
    const shifted = rows.map((row) => ({
      ...row,
      residual: row.residual - row.slopes.reduce((sum, slope, i) => sum + slope * (around[i] ?? 0), 0),
    }));
    const moved = fitLinear(shifted, priorSd, around);
    for (const [i, value] of fitLinear(rows, priorSd).values.entries()) expect(moved.values[i]).toBeCloseTo(value, 10);
  });
});

describe("studentised", () => {
  // Against leaving each reading out in truth and fitting the others anew with the library.
  it("is the distance from a fit of all the others, over its standard deviation", () => {
    const fit = fitLinear(rows, priorSd);
    for (const [i, row] of rows.entries()) {
      const { left, spread } = at(byLibrary(rows.filter((_, other) => other !== i)), row);
      expect(studentised(row, fit, zero)).toBeCloseTo(left / Math.sqrt(row.sd ** 2 + spread), 8);
    }
  });

  it("compares a reading that was left out with the fit as it is", () => {
    const without = rows.map((row, i) => (i === 3 ? { ...row, weight: 0 } : row));
    const [own, all] = [without[3], byLibrary(rows.filter((_, i) => i !== 3))];
    if (!own) throw new Error("no row 3");
    const { left, spread } = at(all, own);
    expect(studentised(own, fitLinear(without, priorSd), zero)).toBeCloseTo(left / Math.sqrt(own.sd ** 2 + spread), 8);
  });
});

describe("fitRobust", () => {
  // Huber (1964): the estimate is where Σψ(r/σ)·slope/σ = θ/σ0², ψ the identity within ±1.345 and flat beyond.
  it("stands where Huber's influence function balances what was believed beforehand", () => {
    const { fit } = fitRobust(rows, priorSd, zero);
    for (const [i, sd] of priorSd.entries()) {
      const pull = rows.reduce((sum, row) => {
        const left = row.residual - row.slopes.reduce((rest, slope, k) => rest + slope * (fit.values[k] ?? 0), 0);
        const bounded = Math.max(-1.345, Math.min(1.345, left / row.sd));
        return sum + (bounded * (row.slopes[i] ?? 0)) / row.sd;
      }, 0);
      expect(pull - (fit.values[i] ?? 0) / sd ** 2).toBeCloseTo(0, 2);
    }
  });
});
