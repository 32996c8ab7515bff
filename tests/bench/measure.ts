/** Times against a plain baseline of the same run: milliseconds depend on the machine, their ratio hardly does. */
export interface Measured {
  readonly name: string;
  readonly ms: number;
  readonly ratio: number;
  readonly baseline: string;
}

type Work = () => unknown;

export const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

/** Results go here, so that no loop is found to be useless and left out. */
const kept: { value: unknown } = { value: null };

/** A server's code has long been compiled when somebody asks. */
const warmUpMs = 300;

/** Milliseconds of one call, from as many calls as fill some time. */
async function once(work: Work, fillMs = 20): Promise<number> {
  const began = performance.now();
  let calls = 0;
  do {
    const result = work();
    kept.value = result instanceof Promise ? await result : result;
    calls += 1;
  } while (performance.now() - began < fillMs);
  return (performance.now() - began) / calls;
}

/** Work and baseline in turns after both are warm; the medians of `rounds` rounds. */
export async function measured(name: string, work: Work, baseline: string, plain: Work, rounds = 7): Promise<Measured> {
  await once(work, warmUpMs);
  await once(plain, warmUpMs);
  const times: number[] = [];
  const plainTimes: number[] = [];
  for (let round = 0; round < rounds; round++) {
    times.push(await once(work));
    plainTimes.push(await once(plain));
  }
  const ms = median(times);
  return { name, ms, ratio: ms / median(plainTimes), baseline };
}

/** A loop of so many multiplications and additions on plain numbers. */
export function arithmetic(steps: number): Work {
  return () => {
    let sum = 0;
    for (let i = 1; i <= steps; i++) sum += (i % 7) * 1.000_1;
    return sum;
  };
}
