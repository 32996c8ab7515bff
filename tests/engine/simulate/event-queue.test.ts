/** Events come out by time, equal times by number, whatever the order they went in. */
import { describe, expect, it } from "vitest";
import { EventQueue } from "../../../lib/engine/simulate/event-queue";

/** Numbers that look random and are the same every time (Lehmer's generator, 48271 mod 2^31 − 1). */
function* scattered(count: number) {
  let state = 42;
  for (let index = 0; index < count; index++) {
    state = (state * 48_271) % 2_147_483_647;
    yield state;
  }
}

describe("the queue of events", () => {
  it.each([1, 2, 3, 10, 256, 257, 1000])("brings %d events into order, many at one time", (count) => {
    const queue = new EventQueue();
    const events = [...scattered(count)].map((value, event) => ({ time: value % 17, event: (event * 7919) % 10_007 }));
    for (const { time, event } of events) queue.push(time, event);
    const sorted = [...events].sort((a, b) => a.time - b.time || a.event - b.event);
    const out = sorted.map(() => {
      expect(queue.isEmpty).toBe(false);
      const time = queue.nextTime;
      return { time, event: queue.pop() };
    });
    expect(out).toEqual(sorted);
    expect(queue.isEmpty).toBe(true);
  });

  it("goes on in order while some come and some go, and is empty when cleared", () => {
    const queue = new EventQueue();
    for (const time of [5, 3, 9]) queue.push(time, time);
    expect(queue.pop()).toBe(3);
    queue.push(4, 4);
    queue.push(9, 1);
    expect([queue.pop(), queue.pop(), queue.nextTime, queue.pop(), queue.pop()]).toEqual([4, 5, 9, 1, 9]);
    queue.push(1, 1);
    queue.clear();
    expect(queue.isEmpty).toBe(true);
    queue.push(2, 2);
    expect(queue.pop()).toBe(2);
  });
});
