/** The tables of the floor's record: stations, what goes wrong, what was left out, books. */
import { dayText } from "#app/_ui/date-range.tsx";
import { Table } from "#app/_ui/table.tsx";
import { fill, wordOf } from "#app/_ui/words.ts";
import { Clock } from "#app/shop/cells.tsx";
import words from "#content/copy/learning.json";
import { dateOfShopMinute, minutesPerDay } from "#engine/routing";
import { textForPeople } from "#engine/units";
import type { FloorLearningView } from "#services";

const w = words.floor;
type View = { readonly view: FloorLearningView };

interface Points {
  readonly low: number;
  readonly typ: number;
  readonly high: number;
}

const minutes = (value: number) => textForPeople(value, 1).replace(/\.0$/, "");
const points = ({ low, typ, high }: Points) => [low, typ, high].map(minutes).join(", ");
const percent = (share: number) => `${textForPeople(100 * share, 1)} %`;
const percentRange = (learnt: number, { low, high }: { readonly low: number; readonly high: number }) =>
  fill(w.range, { mean: percent(learnt), low: textForPeople(100 * low, 1), high: percent(high) });
/** A part of a window counts as so much of one. */
const count = (value: number) => textForPeople(value, 1).replace(/\.0$/, "");

/** "3 Core lay-up and glue" */
export function stationText({ stationNames }: FloorLearningView, station: string): string {
  const named = stationNames[station];
  return named === undefined ? station : `${named.number ?? ""} ${named.name}`.trim();
}

export function StationsTable({ view }: View) {
  const { learning, now } = view;
  const usedNow = new Map(now.stations.map(({ station, minutes: used }) => [station, used] as const));
  return (
    <Table
      caption={w.stations}
      hideCaption
      dense
      stacks
      columns={[
        { key: "station", head: w.heads.station, cell: ({ station }) => stationText(view, station) },
        { key: "visits", head: w.heads.visits, numeric: true, cell: ({ visits }) => visits },
        {
          key: "left-out",
          head: w.heads.leftOut,
          cell: ({ tooShort, forgotten }) =>
            [
              ...(tooShort > 0 ? [fill(w.tooShort, { count: tooShort })] : []),
              ...(forgotten > 0 ? [fill(w.forgotten, { count: forgotten })] : []),
            ].join(", ") || w.nothingLeftOut,
        },
        { key: "assumed", head: w.heads.assumed, cell: ({ assumed }) => points(assumed) },
        { key: "mean", head: w.heads.mean, numeric: true, cell: (row) => minutes(row.assumedMeanMinutes) },
        {
          key: "taken",
          head: w.heads.taken,
          numeric: true,
          cell: ({ takenMeanMinutes }) => (takenMeanMinutes === null ? "–" : minutes(takenMeanMinutes)),
        },
        {
          key: "learnt-mean",
          head: w.heads.learntMean,
          numeric: true,
          cell: ({ learntMeanMinutes, interval }) =>
            fill(w.range, {
              mean: minutes(learntMeanMinutes),
              low: minutes(interval.low),
              high: minutes(interval.high),
            }),
        },
        { key: "learnt", head: w.heads.learnt, cell: ({ learnt }) => points(learnt) },
        {
          key: "now",
          head: w.heads.now,
          cell: ({ station, assumed }) => points(usedNow.get(station) ?? assumed),
        },
      ]}
      rows={learning.stations}
      rowKey={({ station }) => station}
      csv={{
        fileName: "floor-times.csv",
        head: [
          "station",
          "visits",
          "too_short",
          "forgotten",
          "setting_mean",
          "taken_mean",
          "learnt_mean",
          "low",
          "high",
        ],
        rows: learning.stations.map((row) => [
          row.station,
          row.visits,
          row.tooShort,
          row.forgotten,
          row.assumedMeanMinutes,
          row.takenMeanMinutes ?? "",
          row.learntMeanMinutes,
          row.interval.low,
          row.interval.high,
        ]),
      }}
    />
  );
}

interface WrongRow {
  readonly what: string;
  readonly counted: string;
  readonly assumed: string;
  readonly taken: string;
  readonly learnt: string;
  readonly now: string;
}

function wrongRows(view: FloorLearningView): readonly WrongRow[] {
  const { learning, now } = view;
  const { pressDays, personDays, shocks, weeks } = learning;
  const chance = (what: string, counted: string, rate: typeof pressDays, used: number | undefined): WrongRow => ({
    what,
    counted: fill(counted, { failures: rate.failures, trials: count(rate.trials) }),
    assumed: percent(rate.assumed),
    taken: rate.trials === 0 ? "–" : percent(rate.failures / rate.trials),
    learnt: percentRange(rate.learnt, rate.interval),
    now: percent(used ?? rate.assumed),
  });
  const span = ({ low, high }: { readonly low: number; readonly high: number }) =>
    fill(w.delayRange, { low: count(low), high: count(high) });
  const list = shocks.standstills
    .map(({ from, workingDays }) => fill(w.delayItem, { days: workingDays, on: dayText(from) }))
    .join("; ");
  const pace = (sd: number) => fill(w.plusMinus, { percent: textForPeople(100 * sd, 1) });
  return [
    ...learning.rework.map((rate) =>
      chance(
        fill(w.rework, { station: stationText(view, rate.afterStation) }),
        w.ofPasses,
        rate,
        now.rework.find(({ loop }) => loop === rate.loop)?.probability,
      ),
    ),
    chance(w.pressDays, w.ofPressDays, pressDays, now.pressDayLostProbability),
    chance(w.personDays, w.ofPersonDays, personDays, now.personDayLostProbability),
    chance(
      fill(w.shocks, { window: count(learning.shocks.windowWorkingDays) }),
      w.ofWindows,
      shocks,
      now.sharedShock.probability,
    ),
    {
      what: w.delay,
      counted: shocks.standstills.length === 0 ? w.delayNone : fill(w.delayCounted, { list }),
      assumed: span(shocks.assumedDelay),
      taken: "–",
      learnt: span(shocks.learntDelay),
      now: span(now.sharedShock.delayWorkingDays),
    },
    {
      what: w.weeks,
      counted: fill(w.ofWeeks, { visits: weeks.visits, weeks: weeks.weeks }),
      assumed: pace(weeks.assumed),
      taken: "–",
      learnt: fill(w.range, {
        mean: pace(weeks.learnt),
        low: textForPeople(100 * weeks.interval.low, 1),
        high: percent(weeks.interval.high),
      }),
      now: pace(now.weekPaceLogSd),
    },
  ];
}

export function WrongTable({ view }: View) {
  return (
    <Table
      caption={w.wrong}
      hideCaption
      stacks
      columns={[
        { key: "what", head: w.wrongHeads.what, cell: (row) => row.what },
        { key: "counted", head: w.wrongHeads.counted, cell: (row) => row.counted },
        { key: "assumed", head: w.wrongHeads.assumed, numeric: true, cell: (row) => row.assumed },
        { key: "taken", head: w.wrongHeads.taken, numeric: true, cell: (row) => row.taken },
        { key: "learnt", head: w.wrongHeads.learnt, numeric: true, cell: (row) => row.learnt },
        { key: "now", head: w.wrongHeads.now, numeric: true, cell: (row) => row.now },
      ]}
      rows={wrongRows(view)}
      rowKey={({ what }) => what}
    />
  );
}

const mostLeftOut = 30;

/** A moment of the shop's own clock. */
function momentText(minute: number): string {
  const ofDay = minute % minutesPerDay;
  const two = (value: number) => String(value).padStart(2, "0");
  return `${dayText(dateOfShopMinute(minute))}, ${two(Math.floor(ofDay / 60))}:${two(ofDay % 60)}`;
}

export function LeftOutTable({ view }: View) {
  const rows = view.learning.leftOut.toReversed();
  const more = rows.length - mostLeftOut;
  return (
    <>
      <Table
        caption={w.leftOutTitle}
        hideCaption
        dense
        stacks
        empty={<p>{w.leftOutNone}</p>}
        columns={[
          { key: "station", head: w.leftOutHeads.station, cell: ({ visit }) => stationText(view, visit.station) },
          { key: "began", head: w.leftOutHeads.began, cell: ({ visit }) => momentText(visit.startMinute) },
          {
            key: "minutes",
            head: w.leftOutHeads.minutes,
            numeric: true,
            cell: ({ workMinutes }) => textForPeople(workMinutes, 0),
          },
          { key: "why", head: w.leftOutHeads.why, cell: ({ why }) => wordOf(w.why, why) },
          { key: "by", head: w.leftOutHeads.by, cell: ({ visit }) => visit.by ?? "–" },
        ]}
        rows={rows.slice(0, mostLeftOut)}
        rowKey={({ visit }) => `${visit.pair} ${visit.station} ${visit.startMinute}`}
      />
      {more > 0 ? <p className="mt-2 text-pencil">{fill(w.leftOutMore, { more })}</p> : null}
    </>
  );
}

export function BooksTable({ view }: View) {
  return (
    <Table
      caption={w.books}
      hideCaption
      stacks
      empty={<p>{w.booksNone}</p>}
      columns={[
        { key: "version", head: w.bookHeads.version, cell: ({ version }) => version },
        { key: "since", head: w.bookHeads.since, cell: ({ effectiveAt }) => <Clock at={effectiveAt} /> },
        {
          key: "rests",
          head: w.bookHeads.rests,
          cell: ({ summary }) =>
            fill(w.bookRests, {
              pairs: summary.pairs,
              visits: summary.stations.reduce((sum, { visits }) => sum + visits, 0),
              workingDays: summary.workingDays,
              to: dayText(summary.toDate),
            }),
        },
        { key: "by", head: w.bookHeads.by, cell: ({ approvedBy }) => approvedBy },
        { key: "reason", head: w.bookHeads.reason, cell: ({ reason }) => reason },
      ]}
      rows={view.books}
      rowKey={({ version }) => version}
    />
  );
}
