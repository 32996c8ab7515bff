// Which faults are planted: drawn, not yet planted, not judged equivalent, and accepted by the compiler.
import { planted } from "./candidates.mjs";
import { places } from "./draw.mjs";
import { judgedEquivalent } from "./equivalent.mjs";

/** How many choices of one place are offered to the compiler before another place is drawn. */
const mostTries = 12;

/**
 * @param {{sources: readonly {file: string, text: string}[], seed: number, sample: number,
 *   entries: readonly {file: string, line: string, what: string, reason: string}[],
 *   compiles: (file: string, text: string, line: number) => Promise<boolean>}} wish
 */
export async function plantedFaults({ sources, seed, sample, entries, compiles }) {
  const textOf = new Map(sources.map(({ file, text }) => [file, text]));
  const faults = [];
  const taken = new Set();
  const setAside = [];
  let refused = 0;
  for (const place of places(sources, seed)) {
    if (faults.length >= sample) break;
    for (const fault of place.faults.slice(0, mostTries)) {
      const source = textOf.get(fault.file);
      const key = `${fault.file} ${fault.start} ${fault.end} ${fault.text}`;
      if (taken.has(key)) continue;
      if (judgedEquivalent(entries, fault, source)) {
        taken.add(key);
        setAside.push(fault);
        continue;
      }
      const text = planted(source, fault);
      if (!(await compiles(fault.file, text, fault.line))) {
        refused += 1;
        continue;
      }
      taken.add(key);
      faults.push({ ...fault, text });
      break;
    }
  }
  return { faults, setAside, refused };
}
