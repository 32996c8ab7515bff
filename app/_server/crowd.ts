/** How many pages are in work at once: a bound for everybody, places that only verified staff get, and a short line before it. */

export interface CrowdSize {
  /** Pages in work for anybody. */
  readonly anybody: number;
  /** Pages in work beyond these, for verified staff alone. */
  readonly reserved: number;
  /** How many may wait, of staff and of others each; the next is told at once. */
  readonly waiting: number;
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

  constructor(size: CrowdSize) {
    this.#size = size;
  }

  /**
   * Begins at once, or when a place is free: staff before others, each in the order they came.
   * @returns null when too many wait already
   */
  enter(isStaff: boolean, begin: () => void): Leave | null {
    const one: Waiting = { isStaff, begin };
    if (!this.#hasPlace(isStaff)) {
      if (this.#line.filter((other) => other.isStaff === isStaff).length >= this.#size.waiting) return null;
      this.#line.push(one);
    } else this.#take(one);
    let hasLeft = false;
    return () => {
      if (hasLeft) return;
      hasLeft = true;
      this.#leave(one);
    };
  }

  #hasPlace(isStaff: boolean): boolean {
    const { anybody, reserved } = this.#size;
    return this.#guests + this.#staff < anybody + reserved && (isStaff || this.#guests < anybody);
  }

  #take(one: Waiting): void {
    if (one.isStaff) this.#staff += 1;
    else this.#guests += 1;
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

  #next(): void {
    const next = this.#line.find(({ isStaff }) => isStaff) ?? this.#line[0];
    if (next === undefined || !this.#hasPlace(next.isStaff)) return;
    this.#line = this.#line.filter((other) => other !== next);
    this.#take(next);
  }
}
