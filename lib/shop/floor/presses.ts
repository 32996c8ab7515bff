/** Which presses stand in the shop, and what stands in the way of using one. */
import type { FloorChangeRecord } from "#data/floor-changes";
import type { RunningVisit } from "#data/pairs";
import type { FloorCatalog, Press } from "#engine/routing";
import type { FloorChangeData } from "#schemas/stored/index";
import { stationIdFor } from "./stations";
import type { PressChoice } from "./views";

/** Begun and not over. */
export function isOn({ fromAt, toAt }: FloorChangeRecord, at: Date): boolean {
  return (fromAt === null || fromAt <= at) && (toAt === null || toAt > at);
}

type DataOf<Kind extends FloorChangeData["kind"]> = Extract<FloorChangeData, { readonly kind: Kind }>;

const isOfKind = <Kind extends FloorChangeData["kind"]>(data: FloorChangeData, kind: Kind): data is DataOf<Kind> =>
  data.kind === kind;

/** What a stored change is about, without its times; null when it is of another kind. */
export function changeData<Kind extends FloorChangeData["kind"]>(
  record: FloorChangeRecord,
  kind: Kind,
): DataOf<Kind> | null {
  return isOfKind(record.data, kind) ? record.data : null;
}

/** When what is away longest is back, and why it is away; null when nothing is. */
export function longestAway(records: readonly FloorChangeRecord[]): FloorChangeRecord | null {
  const end = ({ toAt }: FloorChangeRecord) => toAt?.getTime() ?? Number.POSITIVE_INFINITY;
  return [...records].sort((a, b) => end(b) - end(a))[0] ?? null;
}

/**
 * Every press that is there at a moment, those of the settings first, with who is in it now and whether it is down then.
 *
 * @param at when it is needed
 */
export function pressChoices(
  floor: Pick<FloorCatalog, "presses">,
  changes: readonly FloorChangeRecord[],
  running: readonly RunningVisit[],
  at: Date,
): readonly PressChoice[] {
  const inForce = changes.filter((change) => isOn(change, at));
  const added = inForce.flatMap((change) => changeData(change, "extra-press")?.press ?? []);
  const pressing = stationIdFor("press");
  const inPress = running.filter(({ station }) => station === pressing);
  return [...floor.presses, ...added].map(({ id, label }, index) => {
    // What was begun before presses were recorded is in the first one, as the plan has it.
    const taken = inPress.find(({ press }) => (press === null ? index === 0 : press === id));
    const down = longestAway(inForce.filter((change) => changeData(change, "press-down")?.press === id));
    return {
      press: id,
      name: label,
      takenBy: taken === undefined ? null : { serial: taken.pair.serial, by: taken.startedByName ?? "" },
      down: down === null ? null : { until: down.toAt?.toISOString() ?? null, reason: down.reason },
    };
  });
}

export function isFree({ takenBy, down }: PressChoice): boolean {
  return takenBy === null && down === null;
}

/** Names of all presses that ever stood here, for what was pressed in them. */
export function pressNames(
  floor: Pick<FloorCatalog, "presses">,
  added: readonly FloorChangeRecord[],
): ReadonlyMap<string, string> {
  const extra = added.flatMap((change): readonly Press[] => {
    const data = changeData(change, "extra-press");
    return data === null ? [] : [data.press];
  });
  return new Map([...floor.presses, ...extra].map(({ id, label }) => [id, label] as const));
}
