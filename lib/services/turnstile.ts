/** Work that only one may do at a time: staff go first, each link waits once, and when too many wait the next is told at once. */

/** Too many wait; the message is for the log, the words are the page's. */
export class Busy extends Error {
  constructor(readonly retryAfterSeconds: number) {
    super("busy");
    this.name = "Busy";
  }
}

/** After how many seconds it is worth while to ask again; null when that is not what is wrong. */
export function busyFor(error: unknown): number | null {
  return error instanceof Error && error.name === "Busy" && "retryAfterSeconds" in error
    ? Number(error.retryAfterSeconds)
    : null;
}

export interface Turn {
  /** Verified staff: before everybody else, and never turned away. */
  readonly isStaff: boolean;
  /** Whose work it is: a newer request of the same takes the place of one that still waits. Null for nobody's. */
  readonly whose: string | null;
  /** Has gone when this is aborted. */
  readonly signal?: AbortSignal | undefined;
}

interface Waiting extends Turn {
  readonly begin: () => void;
  readonly giveUp: (error: Error) => void;
}

export class Turnstile {
  #isTaken = false;
  #waiting: Waiting[] = [];

  /**
   * @param most who is not staff is turned away when so many wait
   * @param seconds about how long one turn takes, for whoever is turned away
   */
  constructor(
    readonly most: number,
    readonly seconds: number,
  ) {}

  /** Waits for its turn and does the work. @throws Busy */
  async run<T>(turn: Turn, work: () => Promise<T>): Promise<T> {
    if (turn.signal?.aborted) throw this.#busy();
    await this.#enter(turn);
    try {
      return await work();
    } finally {
      this.#isTaken = false;
      this.#next();
    }
  }

  #enter(turn: Turn): Promise<void> {
    if (!this.#isTaken) {
      this.#isTaken = true;
      return Promise.resolve();
    }
    const older = this.#waiting.find(({ whose }) => turn.whose !== null && whose === turn.whose);
    if (older !== undefined) this.#drop(older);
    if (!turn.isStaff && this.#waiting.length >= this.most) throw this.#busy();
    return new Promise((begin, giveUp) => {
      const one: Waiting = { ...turn, begin, giveUp };
      this.#waiting.push(one);
      turn.signal?.addEventListener("abort", () => this.#drop(one), { once: true });
    });
  }

  #busy(): Busy {
    return new Busy(Math.max(1, Math.ceil(this.#waiting.length * this.seconds)));
  }

  #drop(one: Waiting): void {
    if (!this.#waiting.includes(one)) return;
    this.#waiting = this.#waiting.filter((other) => other !== one);
    one.giveUp(this.#busy());
  }

  #next(): void {
    const next = this.#waiting.find(({ isStaff }) => isStaff) ?? this.#waiting[0];
    if (next === undefined) return;
    this.#waiting = this.#waiting.filter((other) => other !== next);
    this.#isTaken = true;
    next.begin();
  }
}
