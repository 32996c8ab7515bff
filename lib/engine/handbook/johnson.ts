/**
 * Johnson's rule. Only checks use it: it holds the search of flow shops against S. M. Johnson, Optimal two- and three-stage
 * production schedules, Naval Research Logistics Quarterly 1 (1954) 61–68.
 */

/** Johnson's order of a two-machine flow shop: exact for the makespan. Ties keep their order. */
export function johnsonOrder(first: readonly number[], second: readonly number[]): readonly number[] {
  const jobs = first.map((_, job) => job);
  const a = (job: number) => first[job] ?? 0;
  const b = (job: number) => second[job] ?? 0;
  const early = jobs.filter((job) => a(job) < b(job)).sort((x, y) => a(x) - a(y));
  const late = jobs.filter((job) => a(job) >= b(job)).sort((x, y) => b(y) - b(x));
  return [...early, ...late];
}
