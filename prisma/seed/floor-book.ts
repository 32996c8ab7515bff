/** Who is where on the demo's floor, and when: no station takes more than it has room for, and nobody works at night. */
import { type StationId, type StationRole, stationFor, stationOf } from "#engine/floor";
import { hashText, keyedDraw, sampleTable } from "#engine/math";
import { dateOfDay, dayIndex, shopMinute, weekdayOf } from "#engine/routing";
import { threePointTable } from "#engine/simulate";
import { floorCatalog } from "#shop/floor/recipe";
import { instantOfShopMinute, shopDay } from "#shop/time/shop-time";

export const after = (instant: Date, minutes: number): Date => new Date(instant.getTime() + minutes * 60_000);

interface Stay {
  readonly from: number;
  readonly to: number;
}

/** What the demo's stations really take, as a share of their settings: invented. */
const truePace: Readonly<Partial<Record<StationRole, number>>> = { edges: 1.25, finish: 1.15, kit: 0.85 };

/** Starts are looked for every so many minutes. */
const gridMinutes = 5;

export class FloorBook {
  readonly #floor = floorCatalog();
  readonly #stays = new Map<StationId, Stay[]>();

  /**
   * From start to finish; the press is finished when it is opened. Every visit takes a time of its own, within what its
   * station's setting allows, and some stations are slower or quicker than they are set down as.
   *
   * @param pair tells one pair's visits from another's
   */
  minutesAt(station: StationId, pair: string): number {
    const { minutes, crewNeeded, role } = stationOf(this.#floor, station);
    const { heatUpMinutes, dwellMinutes, coolMinutes, unloadMinutes } = this.#floor.pressProgramme;
    const shut = role === "press" ? heatUpMinutes + dwellMinutes + coolMinutes + unloadMinutes : 0;
    const drawn = sampleTable(threePointTable(minutes), keyedDraw(0, 0, hashText(`${station} ${pair}`), 0, 0));
    const touch = Math.min(minutes.high, Math.max(minutes.low, drawn * (truePace[role] ?? 1)));
    return Math.ceil(touch / crewNeeded) + shut;
  }

  /**
   * When work can begin and end inside one stretch of the shop's hours. What is laid up goes straight into the press, so there
   * must be room in both.
   *
   * @returns null when it would not be over before `until`
   */
  firstRoom(station: StationId, pair: string, from: Date, until: Date): Date | null {
    const press = stationFor(this.#floor, "press").id;
    const isLayUp = stationOf(this.#floor, station).role === "lay-up";
    const own = this.minutesAt(station, pair);
    const whole = own + (isLayUp ? this.minutesAt(press, pair) : 0);
    for (const [opens, closes] of this.#stretches(from, until)) {
      for (
        let at = new Date(Math.max(Number(opens), Number(from)));
        after(at, whole) <= closes;
        at = after(at, gridMinutes)
      ) {
        const [loaded, end] = [after(at, own), after(at, whole)];
        if (this.#isFree(station, at, loaded) && (!isLayUp || this.#isFree(press, loaded, end))) return at;
      }
    }
    return null;
  }

  /** Whether somebody can begin at this moment of work, with no end in sight. */
  hasRoom(station: StationId, at: Date): boolean {
    const isOpen = this.#stretches(at, after(at, 1)).some(([opens, closes]) => opens <= at && at < closes);
    return isOpen && this.#isFree(station, at, new Date(8.64e15));
  }

  take(station: StationId, from: Date, to: Date): void {
    this.#stays.set(station, [...this.#staysAt(station), { from: Number(from), to: Number(to) }]);
  }

  #staysAt(station: StationId): readonly Stay[] {
    return this.#stays.get(station) ?? [];
  }

  /** One pair more than those that are there at any moment of the stay still has a bench. */
  #isFree(station: StationId, from: Date, to: Date): boolean {
    const during = this.#staysAt(station).filter((stay) => stay.from < Number(to) && stay.to > Number(from));
    const { capacity, role } = stationOf(this.#floor, station);
    return during.length < (role === "press" ? this.#floor.presses.length : capacity);
  }

  #stretches(from: Date, until: Date): readonly (readonly [Date, Date])[] {
    const { timeZone, windows, workingWeekdays, closedDays } = this.#floor.hours;
    const days: (readonly [Date, Date])[] = [];
    for (let day = dayIndex(shopDay(from, timeZone)); day <= dayIndex(shopDay(until, timeZone)); day += 1) {
      const date = dateOfDay(day);
      if (!workingWeekdays.includes(weekdayOf(day)) || closedDays.some((closed) => closed.date === date)) continue;
      const at = (minute: number) => instantOfShopMinute(shopMinute(date, minute), timeZone);
      days.push(...windows.map(({ fromMinute, toMinute }) => [at(fromMinute), at(toMinute)] as const));
    }
    return days.filter(([opens]) => opens < until);
  }
}
