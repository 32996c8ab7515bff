/** How many pages are in work at once: a bound for everybody, places that only verified staff get, and a short line before it. */

export interface CrowdSize {
  /** Pages in work for anybody. */
  readonly anybody: number;
  /** Pages in work beyond these, for verified staff alone. */
  readonly reserved: number;
  /** How many may wait, of staff and of others each; the next is told at once. */
  readonly waiting: number;
  /** While pages of staff are in work, one of anybody else is begun this long after the last: they go on, but hold nobody up. */
  readonly besideStaffMs: number;
}

interface Waiting {
  readonly isStaff: boolean;
  readonly begin: () => void;
}

/** Gives a place back, or the wait up; a second time does nothing. */
export type Leave = () => void;

export class Crowd {
  readonly #size: CrowdSize;
  #guests = 0;
  #staff = 0;
  #line: Waiting[] = [];
  #guestBegunAt = Number.NEGATIVE_INFINITY;
  #isLookingAgain = false;

  constructor(size: CrowdSize) {
    this.#size = size;
  }

  /**
   * Begins at once, or when a place is free: staff before others, each in the order they came.
   * @returns null when too many wait already
   */
  enter(isStaff: boolean, begin: () => void): Leave | null {
    const one: Waiting = { isStaff, begin };
    if (this.#hasPlace(isStaff)) this.#take(one);
    else {
      if (this.#line.filter((other) => other.isStaff === isStaff).length >= this.#size.waiting) return null;
      this.#line.push(one);
      this.#lookAgain();
    }
    let hasLeft = false;
    return () => {
      if (hasLeft) return;
      hasLeft = true;
      this.#leave(one);
    };
  }

  #hasPlace(isStaff: boolean): boolean {
    const { anybody, reserved } = this.#size;
    if (this.#guests + this.#staff >= anybody + reserved) return false;
    return isStaff || (this.#guests < anybody && this.#guestWaitMs() <= 0);
  }

  /** Until one of anybody may be begun beside staff; none when staff have no page in work. */
  #guestWaitMs(): number {
    return this.#staff === 0 ? 0 : this.#guestBegunAt + this.#size.besideStaffMs - performance.now();
  }

  /** Nobody need leave for the next guest's time to come. */
  #lookAgain(): void {
    const waitMs = this.#guestWaitMs();
    if (this.#isLookingAgain || this.#line.length === 0 || waitMs <= 0) return;
    this.#isLookingAgain = true;
    const again = () => {
      this.#isLookingAgain = false;
      this.#next();
    };
    setTimeout(again, Math.ceil(waitMs)).unref();
  }

  #take(one: Waiting): void {
    if (one.isStaff) this.#staff += 1;
    else {
      this.#guests += 1;
      this.#guestBegunAt = performance.now();
    }
    one.begin();
  }

  #leave(one: Waiting): void {
    if (this.#line.includes(one)) {
      this.#line = this.#line.filter((other) => other !== one);
      return;
    }
    if (one.isStaff) this.#staff -= 1;
    else this.#guests -= 1;
    this.#next();
  }

  /** As many as there are places: when staff have left, more than one of anybody may be begun. */
  #next(): void {
    for (;;) {
      const next = this.#line.find(({ isStaff }) => isStaff) ?? this.#line[0];
      if (next === undefined || !this.#hasPlace(next.isStaff)) break;
      this.#line = this.#line.filter((other) => other !== next);
      this.#take(next);
    }
    this.#lookAgain();
  }
}
