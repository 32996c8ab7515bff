/** A binary heap of (time, event) pairs, earliest first; equal times come out by event number, so runs are repeatable. */
export class EventQueue {
  private times = new Float64Array(256);
  private events = new Int32Array(256);
  private size = 0;

  get isEmpty(): boolean {
    return this.size === 0;
  }

  /** Time of the earliest event. */
  get nextTime(): number {
    return this.times[0] as number;
  }

  clear(): void {
    this.size = 0;
  }

  push(time: number, event: number): void {
    if (this.size === this.times.length) this.grow();
    let at = this.size++;
    while (at > 0) {
      const parent = (at - 1) >>> 1;
      if (!this.isBefore(time, event, parent)) break;
      this.times[at] = this.times[parent] as number;
      this.events[at] = this.events[parent] as number;
      at = parent;
    }
    this.times[at] = time;
    this.events[at] = event;
  }

  /** Takes the earliest event out. */
  pop(): number {
    const first = this.events[0] as number;
    this.size -= 1;
    const time = this.times[this.size] as number;
    const event = this.events[this.size] as number;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= this.size) break;
      if (
        child + 1 < this.size &&
        this.isBefore(this.times[child + 1] as number, this.events[child + 1] as number, child)
      ) {
        child += 1;
      }
      if (!this.isBefore(this.times[child] as number, this.events[child] as number, -1, time, event)) break;
      this.times[at] = this.times[child] as number;
      this.events[at] = this.events[child] as number;
      at = child;
    }
    this.times[at] = time;
    this.events[at] = event;
    return first;
  }

  private isBefore(
    time: number,
    event: number,
    index: number,
    otherTime = this.times[index] as number,
    otherEvent = this.events[index] as number,
  ): boolean {
    return time < otherTime || (time === otherTime && event < otherEvent);
  }

  private grow(): void {
    const times = new Float64Array(this.times.length * 2);
    const events = new Int32Array(this.events.length * 2);
    times.set(this.times);
    events.set(this.events);
    this.times = times;
    this.events = events;
  }
}
