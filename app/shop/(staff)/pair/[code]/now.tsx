/** The one thing to do on this pair: what runs is finished, what is ready is started, and the last tick can be undone. */

import { ActionForm, type FormField } from "#app/_ui/action-form.client.tsx";
import { dayText } from "#app/_ui/date-range.tsx";
import { More } from "#app/_ui/section.tsx";
import { fill } from "#app/_ui/words.ts";
import { WaitingBadges } from "#app/shop/(staff)/waiting-badges.tsx";
import { clock } from "#app/shop/say.ts";
import { StationCautions } from "#app/shop/station-cautions.tsx";
import copy from "#content/copy/rework.json";
import words from "#content/copy/shop.json";
import { standingOperationStates } from "#engine/floor";
import type { OperationView, PairView, PressChoice } from "#services";
import { finish, start, undo } from "../actions";

const w = words.pair;

function tickFields(pair: PairView, operation: OperationView) {
  return [
    { kind: "hidden", name: "serial", value: pair.serial },
    { kind: "hidden", name: "operationId", value: operation.operationId },
    { kind: "hidden", name: "version", value: String(operation.version) },
  ] as const;
}

const isFree = ({ takenBy, down }: PressChoice) => takenBy === null && down === null;

/** Asked only when there is something to choose; the press of the pair's fixed slot stands first. */
function pressFields(pair: PairView): readonly FormField[] {
  const free = pair.presses.filter(isFree);
  const [first] = free;
  if (first === undefined) return [];
  if (free.length === 1) return [{ kind: "hidden", name: "press", value: first.press }];
  const planned = free.find(({ press }) => press === pair.plannedPress);
  return [
    {
      kind: "select",
      name: "press",
      label: w.press,
      options: free.map(({ press, name }) => ({ value: press, label: name })),
      ...(planned === undefined ? { empty: w.pressEmpty } : { value: planned.press }),
    },
  ];
}

/** Which press is free, who is in it, until when it is down. */
function PressesNow({ presses }: { readonly presses: readonly PressChoice[] }) {
  return presses.map(({ press, name, takenBy, down }) => (
    <p key={press} className={takenBy === null && down === null ? "text-pencil" : "text-amber"}>
      {down
        ? fill(w.pressDown, { press: name, until: down.until ? clock(down.until) : "–", reason: down.reason })
        : takenBy
          ? fill(w.pressTaken, { press: name, serial: takenBy.serial })
          : fill(w.pressFree, { press: name })}
    </p>
  ));
}

/** The latest tick on the pair. */
function lastTicked(operations: readonly OperationView[]): OperationView | undefined {
  const tickedAt = (operation: OperationView) => operation.finishedAt ?? operation.startedAt ?? "";
  return operations
    .filter((operation) => standingOperationStates.includes(operation.state))
    .sort((a, b) => tickedAt(b).localeCompare(tickedAt(a)))[0];
}

export function Now({ pair, mayTick }: { readonly pair: PairView; readonly mayTick: boolean }) {
  const running = pair.operations.filter((operation) => operation.state === "running");
  const ready = pair.operations.filter((operation) => operation.state === "ready");
  const last = lastTicked(pair.operations);
  const isDone = pair.operations.every((operation) => operation.state === "done");
  return (
    <div className="grid gap-4">
      {pair.gates.waitingFor.length > 0 ? <WaitingBadges waitingFor={pair.gates.waitingFor} /> : null}
      {pair.holds.length > 0 ? (
        <ul className="grid gap-1 text-amber">
          {pair.holds.map((hold) => (
            <li key={`${hold.station}${hold.reason}${hold.note}`}>
              {fill(hold.expectedOn ? w.heldUntil : w.held, {
                station: hold.stationNumber,
                until: hold.expectedOn ? dayText(hold.expectedOn) : "",
                note: hold.note,
              })}
            </li>
          ))}
        </ul>
      ) : null}
      {running.length + ready.length === 0 ? <p>{isDone ? w.allDone : w.nothing}</p> : null}
      <ul className="grid gap-4 *:min-w-0 md:grid-cols-2">
        {[...running, ...ready].map((operation) => (
          <li key={operation.operationId} className="grid gap-3 border border-control bg-sheet p-4">
            <Operation pair={pair} operation={operation} mayTick={mayTick} />
          </li>
        ))}
      </ul>
      {last && mayTick ? (
        <More summary={`${w.undo}: ${last.stationName}`}>
          <ActionForm
            key={`${last.operationId}${last.version}`}
            action={undo}
            idPrefix="undo-"
            tone="plain"
            size="floor"
            fields={[
              ...tickFields(pair, last),
              { kind: "text", name: "reason", label: w.undoReason, value: w.undoDefault, autoComplete: "off" },
            ]}
            submit={w.undoButton}
          />
        </More>
      ) : null}
    </div>
  );
}

function Operation({
  pair,
  operation,
  mayTick,
}: {
  readonly pair: PairView;
  readonly operation: OperationView;
  readonly mayTick: boolean;
}) {
  const isRunning = operation.state === "running";
  return (
    <>
      <div>
        <h3 className="text-lg font-semibold">
          {operation.stationNumber} {operation.stationName}
          {operation.side ? `, ${fill(copy.rework.redoOf, { side: words.pair.sides[operation.side] })}` : ""}
        </h3>
        <p className="text-pencil">
          {words.queue.states[operation.state]}, {fill(w.typical, { minutes: operation.typicalMinutes })}
          {operation.startedAt
            ? `, ${fill(w.since, { at: clock(operation.startedAt), by: operation.startedBy ?? "" })}`
            : ""}
          {isRunning && operation.pressName ? `, ${fill(w.inPress, { press: operation.pressName })}` : ""}
        </p>
        {!isRunning && operation.usesPress ? <PressesNow presses={pair.presses} /> : null}
        {!isRunning && operation.notBefore ? (
          <p className="text-amber">{fill(w.notBefore, { at: clock(operation.notBefore) })}</p>
        ) : null}
      </div>
      {mayTick ? (
        <ActionForm
          key={operation.state}
          action={isRunning ? finish : start}
          idPrefix={`tick-${operation.station}-`}
          size="floor"
          fields={[...tickFields(pair, operation), ...(isRunning || !operation.usesPress ? [] : pressFields(pair))]}
          submit={isRunning ? w.finish : w.start}
          busy={isRunning ? w.finishing : w.starting}
        />
      ) : (
        <p className="text-sm text-pencil">{w.deskOnly}</p>
      )}
      <StationCautions station={operation.station} />
    </>
  );
}
