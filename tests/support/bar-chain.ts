/**
 * A beam on snow by another road than the engine's: rigid bars joined by springs (H. Hencky, Der Eisenbau 11 (1920) 437–452,
 * from memory), moment EI·(w₋ − 2w + w₊)/h² at every joint, the snow as many strips across the base at every joint, each of which
 * pushes by its own depth or not at all. Newton's method on the whole matrix with ml-matrix. Nothing of lib/engine is used. mm, N.
 */
import { Matrix, solve } from "ml-matrix";

export interface ChainProblem {
  readonly fromMm: number;
  readonly toMm: number;
  readonly bendingStiffnessNmm2: (xMm: number) => number;
  /** Per mm. */
  readonly loadNPerMm: (xMm: number) => number;
  readonly gapMm: (xMm: number) => number;
  readonly widthMm: (xMm: number) => number;
  readonly hardnessNPerMm3: number;
  readonly edgeAngleRad: number;
}

export interface ChainJoint {
  readonly xMm: number;
  readonly downMm: number;
  readonly depthMm: number;
  readonly pressureNPerMm: number;
}

const STRIPS = 400;

/** @throws Error when it does not come to rest */
export function chainOnSnow(problem: ChainProblem, bars: number): readonly ChainJoint[] {
  const { fromMm, toMm, gapMm, widthMm, loadNPerMm } = problem;
  const h = (toMm - fromMm) / bars;
  const xs = Array.from({ length: bars + 1 }, (_, i) => fromMm + h * i);
  const share = xs.map((_, i) => (i === 0 || i === bars ? h / 2 : h));
  const bending = Matrix.zeros(bars + 1, bars + 1);
  for (let i = 1; i < bars; i++) {
    const spring = problem.bendingStiffnessNmm2(xs[i] ?? 0) / h ** 3;
    [1, -2, 1].forEach((a, k) => {
      [1, -2, 1].forEach((b, m) => {
        bending.set(i - 1 + k, i - 1 + m, bending.get(i - 1 + k, i - 1 + m) + spring * a * b);
      });
    });
  }
  const load = Matrix.columnVector(xs.map((x, i) => loadNPerMm(x) * (share[i] ?? h)));
  let down = Matrix.columnVector(xs.map(() => Math.max(...xs.map((x) => gapMm(x) + widthMm(x)))));
  const replies = () => xs.map((x, i) => snowAt(problem, down.get(i, 0) - gapMm(x), widthMm(x)));
  for (let step = 0; step < 200; step++) {
    const snow = replies();
    const residual = Matrix.sub(bending.mmul(down), load);
    const tangent = bending.clone();
    snow.forEach(({ pressure, stiffness }, i) => {
      residual.set(i, 0, residual.get(i, 0) + pressure * (share[i] ?? h));
      tangent.set(i, i, tangent.get(i, i) + stiffness * (share[i] ?? h));
    });
    if (residual.to1DArray().every((value) => Math.abs(value) < 1e-7 * load.sum())) {
      return xs.map((xMm, i) => ({
        xMm,
        downMm: down.get(i, 0),
        depthMm: down.get(i, 0) - gapMm(xMm),
        pressureNPerMm: snow[i]?.pressure ?? 0,
      }));
    }
    down = Matrix.sub(down, solve(tangent, residual));
  }
  throw new Error("the chain does not come to rest");
}

/** Strip by strip across the base, from the edge inwards. */
function snowAt({ hardnessNPerMm3, edgeAngleRad }: ChainProblem, depthMm: number, widthMm: number) {
  let [pressure, stiffness] = [0, 0];
  // Strips only over what can be wet, so that a thin wedge is not one strip.
  const wet = edgeAngleRad === 0 ? widthMm : Math.min(widthMm, Math.max(0, depthMm) / Math.tan(edgeAngleRad));
  for (let i = 0; i < STRIPS; i++) {
    const inMm = ((i + 0.5) / STRIPS) * wet;
    const below = depthMm * Math.cos(edgeAngleRad) - inMm * Math.sin(edgeAngleRad);
    if (below <= 0) continue;
    pressure += (hardnessNPerMm3 * below * wet) / STRIPS;
    stiffness += (hardnessNPerMm3 * Math.cos(edgeAngleRad) * wet) / STRIPS;
  }
  return { pressure, stiffness };
}
