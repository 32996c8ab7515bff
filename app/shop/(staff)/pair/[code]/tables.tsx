/** The pair in tables: strips, parts, thickness and every operation. */
import { Badge } from "#app/_ui/notice.tsx";
import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import { Clock } from "#app/shop/cells.tsx";
import copy from "#content/copy/rework.json";
import words from "#content/copy/shop.json";
import { textForPeople } from "#engine/units";
import type { PairView } from "#services";

const w = words.pair;
const { rework } = copy;

interface Props {
  readonly pair: PairView;
}

export function Strips({ pair }: Props) {
  const h = w.stripHeads;
  return (
    <Table
      caption={w.strips}
      hideCaption
      dense
      columns={[
        { key: "ski", head: h.ski, cell: (strip) => strip.side },
        { key: "position", head: h.position, cell: (strip) => strip.position },
        { key: "place", head: h.place, cell: (strip) => strip.place },
        { key: "wood", head: h.wood, cell: (strip) => strip.species },
        { key: "board", head: h.board, cell: (strip) => strip.board },
        {
          key: "modulus",
          head: h.modulus,
          numeric: true,
          cell: (strip) => textForPeople(strip.modulusMpa / 1000, 2),
        },
        { key: "density", head: h.density, numeric: true, cell: (strip) => textForPeople(strip.densityKgM3, 0) },
        { key: "bin", head: h.bin, cell: (strip) => strip.bin },
      ]}
      rows={pair.strips}
      rowKey={(strip) => strip.stripId}
      empty={<p className="text-pencil">{w.noStrips}</p>}
    />
  );
}

export function Parts({ pair }: Props) {
  const h = w.partHeads;
  const count = (value: number) => (value === 0 ? "" : textForPeople(value, Number.isInteger(value) ? 0 : 1));
  return (
    <Table
      caption={w.parts}
      hideCaption
      dense
      columns={[
        { key: "line", head: h.line, numeric: true, cell: (part) => part.line },
        {
          key: "part",
          head: h.part,
          cell: (part) => (
            <>
              {part.fromOption ? <strong className="font-semibold">{part.label}</strong> : part.label}
              <span className="block text-pencil">{part.material}</span>
            </>
          ),
        },
        { key: "cut", head: h.cut, cell: (part) => part.cut },
        { key: "left", head: h.left, numeric: true, cell: (part) => count(part.quantityLeft) },
        { key: "right", head: h.right, numeric: true, cell: (part) => count(part.quantityRight) },
        {
          key: "pair",
          head: h.pair,
          numeric: true,
          cell: (part) => (part.quantityPair === 0 ? "" : `${count(part.quantityPair)} ${part.unit}`),
        },
        { key: "station", head: h.station, numeric: true, cell: (part) => part.stationNumber },
      ]}
      rows={pair.parts.lines}
      rowKey={(part) => `${part.line}${part.code}`}
      csv={{
        fileName: `${pair.serial}-parts.csv`,
        head: ["line", "code", "part", "material", "cut", "left", "right", "pair", "unit", "station"],
        rows: pair.parts.lines.map((part) => [
          part.line,
          part.code,
          part.label,
          part.material,
          part.cut,
          part.quantityLeft,
          part.quantityRight,
          part.quantityPair,
          part.unit,
          part.stationNumber,
        ]),
      }}
    />
  );
}

const shownStations = 9;

/** Evenly spread over the stations that were computed, both ends included. */
function spread<T>(items: readonly T[], count: number): readonly T[] {
  if (items.length <= count) return items;
  return Array.from({ length: count }, (_, i) => items[Math.round((i * (items.length - 1)) / (count - 1))]).filter(
    (item): item is T => item !== undefined,
  );
}

export function Thickness({ pair }: Props) {
  const h = w.thicknessHeads;
  return (
    <Table
      caption={w.thickness}
      hideCaption
      dense
      columns={[
        { key: "x", head: h.x, numeric: true, cell: (at) => textForPeople(at.xMm, 0) },
        { key: "core", head: h.core, numeric: true, cell: (at) => textForPeople(at.coreMm, 2) },
        { key: "ski", head: h.ski, numeric: true, cell: (at) => textForPeople(at.thicknessMm, 2) },
        { key: "width", head: h.width, numeric: true, cell: (at) => textForPeople(at.widthMm, 1) },
      ]}
      rows={spread(pair.flex.stations, shownStations)}
      rowKey={(at) => String(at.xMm)}
    />
  );
}

export function Operations({ pair }: Props) {
  const h = w.operationHeads;
  const tones = { blocked: "amber", ready: "info", running: "info", done: "moss", redo: "iron" } as const;
  const tick = (at: string | null, by: string | null) =>
    at ? (
      <>
        <Clock at={at} /> <span className="text-pencil">{by}</span>
      </>
    ) : null;
  return (
    <Table
      caption={w.operations}
      hideCaption
      dense
      columns={[
        {
          key: "station",
          head: h.station,
          cell: (each) => (
            <>
              {each.stationNumber} {each.stationName}
              {each.side ? (
                <span className="block text-pencil">{fill(rework.redoOf, { side: w.sides[each.side] })}</span>
              ) : null}
            </>
          ),
        },
        {
          key: "state",
          head: h.state,
          cell: (each) => <Badge tone={tones[each.state]}>{words.queue.states[each.state]}</Badge>,
        },
        {
          key: "started",
          head: h.started,
          cell: (each) => (
            <>
              {tick(each.startedAt, each.startedBy)}
              {each.pressName ? <span className="block">{fill(w.inPress, { press: each.pressName })}</span> : null}
            </>
          ),
        },
        { key: "finished", head: h.finished, cell: (each) => tick(each.finishedAt, each.finishedBy) },
      ]}
      rows={pair.operations}
      rowKey={(each) => each.operationId}
    />
  );
}
