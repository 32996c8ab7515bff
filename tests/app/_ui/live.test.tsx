// @vitest-environment happy-dom
/** The shop's own client parts: following the queue, dragging its rows, and the keys of a call. */
import { AppRouterContext } from "next/dist/shared/lib/app-router-context.shared-runtime";
import { PathnameContext, SearchParamsContext } from "next/dist/shared/lib/hooks-client-context.shared-runtime";
import { beforeEach, describe, expect, it, vi } from "vitest";
import { LiveQueue } from "#app/_ui/live-queue.client.tsx";
import { arrived, markAway, readTyped } from "#app/_ui/typed.ts";
import { NextQuestion } from "#app/shop/(staff)/call/[sheetId]/next-question.client.tsx";
import { ShortcutKeys } from "#app/shop/(staff)/call/[sheetId]/shortcuts.client.tsx";
import { Presence } from "#app/shop/(staff)/presence.client.tsx";
import { DragOrder } from "#app/shop/(staff)/queue/order/drag-order.client.tsx";
import sheetWords from "#content/copy/sheet.json";
import shopWords from "#content/copy/shop.json";
import { operate } from "../../support/browser";
import { stillRouter } from "../../support/drawn";
import { AroundSheet, shopOf, viewOf } from "../../support/sheet";

vi.mock("#app/shop/(staff)/call/actions.ts", () => ({}));

const router = { ...stillRouter, refresh: vi.fn(), push: vi.fn() };
const sources: FakeSource[] = [];
class FakeSource extends EventTarget {
  static readonly CLOSED = 2;
  readyState = 1;
  close = vi.fn();
  constructor(readonly url: string) {
    super();
    sources.push(this);
  }
}
beforeEach(() => {
  sources.length = 0;
  router.refresh.mockClear();
  router.push.mockClear();
  vi.stubGlobal("EventSource", FakeSource);
});

describe("the live queue", () => {
  const queue = (revision: number, isBusy = false) => (
    <AppRouterContext value={router}>
      <main>
        <LiveQueue revision={revision} isBusy={isBusy} />
        <input name="reason" aria-label="Reason" defaultValue="" />
      </main>
    </AppRouterContext>
  );
  it("reads the page again when the queue changes, asks while somebody types, and comes back", async () => {
    const page = await operate(queue(5));
    expect(page.seen.all("[role=status]")).toEqual([]);
    const [source] = sources;
    expect(source?.url).toBe("/shop/queue/live");
    const tell = async (name: string, data?: string) => {
      source?.dispatchEvent(data === undefined ? new Event(name) : new MessageEvent(name, { data }));
      await page.wait(0);
    };
    await tell("open");
    expect(page.seen.text).toContain("Live: this page follows the queue.");
    await tell("revision", "5");
    expect(router.refresh).not.toHaveBeenCalled();
    await tell("revision", "6");
    expect(router.refresh).toHaveBeenCalledTimes(1);
    await page.draw(queue(6));
    await page.type("reason", "because");
    await tell("revision", "7");
    expect(router.refresh).toHaveBeenCalledTimes(1);
    expect(page.seen.text).toContain("The queue has changed.");
    await page.press("Show it");
    expect(router.refresh).toHaveBeenCalledTimes(2);
    await page.draw(queue(7, true));
    await page.type("reason", "");
    await tell("revision", "8");
    expect(page.seen.text).toContain("The queue has changed.");
    if (source) source.readyState = 2;
    await tell("error");
    expect(page.seen.text).toContain("Connection lost, trying again …");
    await page.wait(2999);
    expect(sources).toHaveLength(1);
    await page.wait(1);
    expect(sources).toHaveLength(2);
  });
});

describe("a list chosen from", () => {
  it("counts as something in hand: the page asks before it is read again", async () => {
    const queue = (revision: number) => (
      <AppRouterContext value={router}>
        <main>
          <LiveQueue revision={revision} from="/wall/tok/live" />
          <select name="pair" aria-label="Pair" defaultValue="a">
            <option value="a">a</option>
            <option value="b">b</option>
          </select>
        </main>
      </AppRouterContext>
    );
    const page = await operate(queue(5));
    expect(sources[0]?.url).toBe("/wall/tok/live");
    const tell = async (revision: string) => {
      sources[0]?.dispatchEvent(new MessageEvent("revision", { data: revision }));
      await page.wait(0);
    };
    await page.choose("pair", "b");
    await tell("6");
    expect(router.refresh).not.toHaveBeenCalled();
    expect(page.seen.one("select").attribute("data-chosen")).toBe("");
  });
});

describe("somebody at the desk", () => {
  const here = (who = "s-1", path = "/shop/people") => (
    <PathnameContext value={path}>
      <SearchParamsContext value={new URLSearchParams("page=2")}>
        <Presence who={who} />
        <main>
          <form>
            <input name="note" aria-label="Note" defaultValue="" />
            <input name="password" aria-label="Password" type="password" defaultValue="" />
          </form>
        </main>
      </SearchParamsContext>
    </PathnameContext>
  );
  const asked = vi.fn(async () => new Response(null, { status: 204 }));
  let clock = 0;
  beforeEach(() => {
    sessionStorage.clear();
    asked.mockClear();
    clock = 1000;
    vi.stubGlobal("fetch", asked);
    const now = vi.spyOn(performance, "now").mockImplementation(() => clock);
    return () => now.mockRestore();
  });
  const back = "What you had typed is back in its fields";

  it("is told of once a minute at most, by keys, pointer and typing alike", async () => {
    const page = await operate(here());
    const does = async (event: string, afterMs: number) => {
      clock += afterMs;
      await page.send("[name=note]", new Event(event, { bubbles: true }));
      return asked.mock.calls.length;
    };
    expect(await does("keydown", 59_999)).toBe(0);
    expect(await does("keydown", 1)).toBe(1);
    expect(asked).toHaveBeenCalledWith("/shop/here", { method: "POST" });
    expect(await does("pointerdown", 59_999)).toBe(1);
    expect(await does("pointerdown", 1)).toBe(2);
    expect(await does("input", 60_000)).toBe(3);
    expect(await does("mousemove", 60_000)).toBe(3);
    asked.mockRejectedValueOnce(new TypeError("no connection"));
    expect(await does("keydown", 60_000)).toBe(4);
  });

  it("finds what they had typed when the sign-in ended over it, until it has arrived", async () => {
    const first = await operate(here());
    await first.type("note", "called twice");
    await first.type("password", "larch-board-seven");
    // Written when the typing pauses.
    await first.wait(299);
    expect(readTyped(sessionStorage)).toBeNull();
    await first.wait(1);
    expect(readTyped(sessionStorage)).toEqual({
      page: "/shop/people?page=2",
      who: "s-1",
      fields: { "note 0": "called twice" },
      isSent: false,
    });
    expect(first.seen.text).not.toContain(back);
    await first.draw(null);
    markAway(sessionStorage, false);
    const second = await operate(here());
    expect(second.value("note")).toBe("called twice");
    expect(second.seen.text).toContain(back);
    // Sent at once: nobody waits for a pause.
    await second.type("note", "called three times");
    await second.send("form", new Event("submit", { bubbles: true }));
    expect(readTyped(sessionStorage)).toMatchObject({ fields: { "note 0": "called three times" }, isSent: true });
    document.dispatchEvent(new Event(arrived));
    await second.wait(0);
    expect(second.seen.text).not.toContain(back);
    expect(readTyped(sessionStorage)).toBeNull();
  });

  it("finds nothing that somebody else had typed", async () => {
    const first = await operate(here());
    await first.type("note", "called twice");
    await first.wait(300);
    await first.draw(null);
    markAway(sessionStorage, false);
    const second = await operate(here("s-2"));
    expect(second.value("note")).toBe("");
    expect(second.seen.text).not.toContain(back);
    expect(readTyped(sessionStorage)).toBeNull();
  });
});

describe("dragging a row", () => {
  it("opens the effect of its new place, before the row under the pointer's upper half", async () => {
    const row = (id: string, movable = "yes") => (
      <tr key={id} id={id}>
        <td>
          <span data-pair={id} data-movable={movable} />
        </td>
      </tr>
    );
    const table = (hint: string | null) => (
      <AppRouterContext value={router}>
        <div>
          <table>
            <tbody>{[row("p-1", "no"), row("p-2"), row("p-3")]}</tbody>
          </table>
          {hint === null ? null : <DragOrder hint={hint} behind="p-9" />}
        </div>
      </AppRouterContext>
    );
    const page = await operate(table(null));
    const body = document.querySelector("tbody");
    // What this browser's tables lack.
    Object.defineProperty(body, "rows", { value: [...(body?.children ?? [])] });
    for (const [index, each] of [...(body?.children ?? [])].entries())
      Object.defineProperty(each, "sectionRowIndex", { value: index });
    await page.draw(table("drag"));
    const rows = [...document.querySelectorAll<HTMLTableRowElement>("tbody tr")];
    expect(rows.map(({ draggable }) => draggable)).toEqual([false, true, true]);
    for (const [index, each] of rows.entries())
      each.getBoundingClientRect = () => ({ top: 100 * index, height: 100 }) as DOMRect;
    const drag = (type: string, id: string, clientY = 0) =>
      page.send(`#${id}`, new MouseEvent(type, { bubbles: true, cancelable: true, clientY }));
    const move = async (from: string, to: string, clientY: number) => {
      await drag("dragstart", from);
      expect(document.body.dataset.dragging).toBe("");
      await drag("dragover", to, clientY);
      await drag("drop", to, clientY);
      await drag("dragend", from);
      expect(document.body.dataset.dragging).toBeUndefined();
      return router.push.mock.lastCall?.[0];
    };
    expect(await move("p-3", "p-1", 40)).toBe("/shop/queue/order?move=p-3&before=p-1");
    expect(await move("p-3", "p-1", 60)).toBe("/shop/queue/order?move=p-3&before=p-2");
    expect(await move("p-2", "p-3", 260)).toBe("/shop/queue/order?move=p-2&before=p-9");
    router.push.mockClear();
    await move("p-2", "p-2", 120);
    await drag("drop", "p-1", 0);
    expect(router.push).not.toHaveBeenCalled();
  });
});

describe("a call", () => {
  it("leads to a section by Alt and its digit", async () => {
    const page = await operate(
      <AroundSheet start={viewOf()} shop={shopOf(viewOf())}>
        <ShortcutKeys sections={sheetWords.sections} words={shopWords.call} />
        <details id="core">
          <summary>Core</summary>
          <input name="wood" aria-label="Wood" />
        </details>
        <section id="end">
          <input type="hidden" />
          <button type="button">End</button>
        </section>
      </AroundSheet>,
    );
    expect(
      page.seen.all("nav a").map((link) => [link.text, link.attribute("href"), link.attribute("aria-keyshortcuts")]),
    ).toEqual([
      ["Alt 1You", "#you", "Alt+1"],
      ["Alt 2Ski", "#ski", "Alt+2"],
      ["Alt 3Core", "#core", "Alt+3"],
      ["Alt 4Reinforcement", "#reinforcement", "Alt+4"],
      ["Alt 5Graphic", "#graphic", "Alt+5"],
      ["Alt 6Price", "#price", "Alt+6"],
      ["Alt 7Date", "#date", "Alt+7"],
      ["Alt 9End the call", "#end", "Alt+9"],
      ["Alt 0Next missing", "#you", "Alt+0"],
    ]);
    const key = (code: string, known: object = {}) =>
      window.dispatchEvent(new KeyboardEvent("keydown", { code, altKey: true, cancelable: true, ...known }));
    const details = document.querySelector("details");
    key("Digit3", { altKey: false });
    key("Digit3", { ctrlKey: true });
    key("Digit3", { metaKey: true });
    expect(details?.open).toBe(false);
    key("Digit3");
    expect(details?.open).toBe(true);
    // On the field, not on the summary above it.
    expect(document.activeElement?.getAttribute("name")).toBe("wood");
    key("Digit9");
    expect(document.activeElement?.textContent).toBe("End");
  });

  it("names the next question, and passes it over", async () => {
    const asking = async (known: object) => {
      const view = viewOf(known);
      const shop = shopOf(view);
      const page = await operate(
        <AroundSheet start={view} shop={shop}>
          <NextQuestion words={shopWords.call} />
        </AroundSheet>,
      );
      return { page, shop };
    };
    const { page, shop } = await asking({ answers: { heightCm: 180 }, asked: { massKg: "refused" } });
    expect(page.seen.text).toContain("Next question: Ability, by what they do on the hill");
    expect(page.seen.text).toContain("1 of 14 answered");
    await page.press("Would rather not say");
    await page.wait(500);
    expect(shop.save).toHaveBeenCalledWith({ "asked.ability": "refused" }, 4);
    const all = Object.fromEntries(Object.keys(shopWords.call.questions).map((name) => [name, "refused"]));
    const done = await asking({ answers: {}, asked: all });
    expect(done.page.seen.text).toContain("Every question has been answered or passed over.");
  });

  it("puts the cursor on the next answer that is missing, on Alt and 0", async () => {
    const view = viewOf({ answers: { heightCm: 180, massKg: 80, ability: "expert", offPistePercent: 10 } });
    const page = await operate(
      <AroundSheet start={view} shop={shopOf(view)}>
        <ShortcutKeys sections={sheetWords.sections} words={shopWords.call} />
        <details id="you">
          <summary>You</summary>
          <label>
            Height <input name="height" />
          </label>
          <label>
            Calm <input type="radio" name="temperament" value="calm" />
          </label>
        </details>
      </AroundSheet>,
    );
    const field = document.querySelector<HTMLElement>("[name=temperament]");
    if (field) field.scrollIntoView = () => {};
    await page.send("body, details", new KeyboardEvent("keydown", { code: "Digit0", altKey: true, bubbles: true }));
    expect(document.activeElement).toBe(field);
    expect(document.querySelector("details")?.open).toBe(true);
  });
});
