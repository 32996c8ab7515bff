/** The plan of the floor in instants and days, as the board shows it. */
import type { PairRecord } from "../../data/pairs";
import { dayIndex, weekdayOf } from "../../engine/routing";
import type { IsoDate } from "../../engine/units";
import type { Context } from "../context";

export interface FloorPlan {
  readonly operations: readonly {
    readonly pairId: string;
    readonly station: number;
    readonly startsAt: Date;
    readonly endsAt: Date;
  }[];
  readonly pairs: readonly {
    readonly pairId: string;
    readonly finishDate: IsoDate;
    readonly expected: { readonly p50: IsoDate; readonly p90: IsoDate } | null;
  }[];
  readonly pressPlan: readonly {
    readonly pairId: string;
    readonly mould: string;
    readonly startsAt: Date;
    readonly endsAt: Date;
    readonly changeoverMinutes: number;
    readonly isFixed: boolean;
  }[];
  readonly capacityOf: (station: number) => number;
  readonly isWorkingDay: (date: IsoDate) => boolean;
}

export async function floorPlan(_ctx: Context, _pairs: readonly PairRecord[], _revision: number): Promise<FloorPlan> {
  return {
    operations: [],
    pairs: [],
    pressPlan: [],
    capacityOf: () => 1,
    isWorkingDay: (date) => weekdayOf(dayIndex(date)) <= 5,
  };
}
