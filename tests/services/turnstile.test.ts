import { describe, expect, it } from "vitest";
import { Busy, busyFor, Turnstile } from "#services/turnstile";

/** Work that lasts until it is let go. */
function gate() {
  let open = () => {};
  const shut = new Promise<void>((resolve) => {
    open = resolve;
  });
  return { open, shut };
}

const guest = (whose: string | null) => ({ isStaff: false, whose });
const staff = { isStaff: true, whose: null };

describe("a turnstile", () => {
  it("lets one in at a time, staff before those who came earlier", async () => {
    const turnstile = new Turnstile(5, 1);
    const order: string[] = [];
    const first = gate();
    const names = ["first", "guest", "staff"];
    const all = [guest("a"), guest("b"), staff].map((turn, at) =>
      turnstile.run(turn, async () => {
        order.push(names[at] ?? "");
        if (at === 0) await first.shut;
      }),
    );
    await Promise.resolve();
    expect(order).toEqual(["first"]);
    first.open();
    await Promise.all(all);
    expect(order).toEqual(["first", "staff", "guest"]);
  });

  it("turns the next one away at once when too many wait, never staff, and says for how long", async () => {
    const turnstile = new Turnstile(2, 3);
    const first = gate();
    const all = [turnstile.run(guest("a"), () => first.shut)];
    for (const whose of ["b", "c"]) all.push(turnstile.run(guest(whose), async () => {}));
    const away = await turnstile.run(guest("d"), async () => {}).catch((error: unknown) => error);
    expect(away).toBeInstanceOf(Busy);
    // Two wait, three seconds each.
    expect(busyFor(away)).toBe(6);
    all.push(turnstile.run(staff, async () => {}));
    first.open();
    await Promise.all(all);
  });

  it("keeps one waiting for each link, and drops who has gone", async () => {
    const turnstile = new Turnstile(5, 1);
    const first = gate();
    const done: string[] = [];
    const running = turnstile.run(guest("a"), () => first.shut);
    const older = turnstile.run(guest("b"), async () => void done.push("older")).catch(busyFor);
    const newer = turnstile.run(guest("b"), async () => void done.push("newer"));
    const leaves = new AbortController();
    const gone = turnstile
      .run({ ...guest("c"), signal: leaves.signal }, async () => void done.push("gone"))
      .catch(busyFor);
    leaves.abort();
    const late = turnstile
      .run({ ...guest("d"), signal: leaves.signal }, async () => void done.push("late"))
      .catch(busyFor);
    first.open();
    await Promise.all([running, older, newer, gone, late]);
    expect(done).toEqual(["newer"]);
    expect([await older, await gone]).toEqual([expect.any(Number), expect.any(Number)]);
  });

  it("goes on after work that failed", async () => {
    const turnstile = new Turnstile(5, 1);
    await expect(turnstile.run(staff, () => Promise.reject(new Error("no")))).rejects.toThrow("no");
    expect(await turnstile.run(staff, async () => "yes")).toBe("yes");
  });
});
