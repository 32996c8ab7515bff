/**
 * What npm run bench does. `--json FILE` also writes the figures there; `--engine` leaves the running server out;
 * `--seasons` adds twenty simulated seasons, which take minutes.
 */
import { writeFileSync } from "node:fs";
import { documentMeasures } from "./documents";
import { engineMeasures } from "./engine";
import { mechanicsMeasures } from "./mechanics";
import { type PageFigures, pageFigures } from "./pages";
import { qualities, searchMeasures } from "./search";
import { type SeasonsReached, seasonsReached } from "./season";

/** Never judges a time. @returns the exit code */
export async function main(args: readonly string[]): Promise<number> {
  const times = [
    ...(await engineMeasures()),
    ...(await mechanicsMeasures()),
    ...(await searchMeasures()),
    ...(await documentMeasures()),
  ];
  const pages = args.includes("--engine") ? null : await pageFigures();
  if (pages !== null) times.push(...pages.times);
  for (const { name, ms, ratio, baseline } of times)
    console.info(`${name.padEnd(48)} ${ms.toFixed(3).padStart(10)} ms ${ratio.toFixed(1).padStart(9)} × ${baseline}`);
  if (pages !== null) printPages(pages);
  const reached = qualities();
  console.info("\nSchedules reached, median of five seeds");
  for (const { kind, instance, best, reached: value, gapPercent, ms } of reached)
    console.info(
      `${kind.padEnd(18)} ${instance.padEnd(12)} best known ${String(best).padStart(5)}  reached ${String(value).padStart(6)}  ${gapPercent.toFixed(2).padStart(6)} %  ${ms.toFixed(0).padStart(5)} ms`,
    );
  for (const kind of new Set(reached.map((quality) => quality.kind))) {
    const gaps = reached.filter((quality) => quality.kind === kind).map(({ gapPercent }) => gapPercent);
    console.info(`${kind.padEnd(18)} mean ${(gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length).toFixed(2)} %`);
  }
  const seasons = args.includes("--seasons") ? seasonsReached() : null;
  if (seasons !== null) printSeasons(seasons);
  const at = args.indexOf("--json");
  const file = at < 0 ? undefined : args[at + 1];
  if (at >= 0 && file === undefined) throw new Error("--json: name the file");
  if (file !== undefined)
    writeFileSync(file, `${JSON.stringify({ times, pages, qualities: reached, seasons }, null, 2)}\n`);
  return 0;
}

function printPages({ weights, throughputs }: PageFigures): void {
  const kilobytes = (bytes: number) => `${(bytes / 1000).toFixed(1).padStart(7)} kB`;
  console.info("\nPages as they go out: HTML, zipped, and their script files zipped");
  for (const { path, htmlBytes, zippedBytes, scriptBytes } of weights)
    console.info(`${path.padEnd(18)} ${[htmlBytes, zippedBytes, scriptBytes].map(kilobytes).join("  ")}`);
  console.info("\nAnswers a second to 20 visitors, beside the barest page of the same framework");
  for (const { path, perSecond, share } of throughputs)
    console.info(`${path.padEnd(18)} ${perSecond.toFixed(0).padStart(6)}  ${share.toFixed(2).padStart(6)} ×`);
}

function printSeasons(reached: SeasonsReached): void {
  const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
  console.info(`\n${reached.seasons} simulated seasons, ${reached.orders} promises`);
  console.info(
    `kept at P90 ${percent(reached.kept)} (by season ${percent(reached.leastKept)} to ${percent(reached.mostKept)}), ready by P50 ${percent(reached.byP50)}`,
  );
  console.info(
    `promised after ${reached.promisedLead.toFixed(1)} working days on average; one lead time for all would be ${reached.constantLead}`,
  );
}
