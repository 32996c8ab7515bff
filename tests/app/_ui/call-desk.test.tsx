// @vitest-environment happy-dom
/** What the desk has beside the sheet: notes that are kept or say why not, what stops the sale now, and keys to jump. */
import { describe, expect, it, vi } from "vitest";
import { CallNotes } from "#app/shop/(staff)/call/[sheetId]/call-notes.client.tsx";
import { CallPhone } from "#app/shop/(staff)/call/[sheetId]/call-phone.client.tsx";
import type { CallSheetProps } from "#app/shop/(staff)/call/[sheetId]/call-sheet.client.tsx";
import { CallSheet } from "#app/shop/(staff)/call/[sheetId]/call-sheet.client.tsx";
import { ShortcutKeys } from "#app/shop/(staff)/call/[sheetId]/shortcuts.client.tsx";
import refusalWords from "#content/copy/refusals.json";
import sheetWords from "#content/copy/sheet.json";
import words from "#content/copy/shop.json";
import type { SheetView } from "#services/views";
import { catalog } from "../../engine/demo-catalog";
import { operate } from "../../support/browser";
import { AroundSheet, dates, shopOf, viewOf } from "../../support/sheet";

vi.mock("#app/shop/(staff)/call/actions.ts", () => ({
  answerForFlag: vi.fn(),
  quoteAllTheSame: vi.fn(),
  changedCopy: vi.fn(),
  putDown: vi.fn(),
  takeOver: vi.fn(),
}));

const call = words.call;

describe("notes of the call", () => {
  const notes = async (known: object = {}) => {
    const view = viewOf({ version: 6, notes: "tall", ...known });
    const shop = shopOf(view);
    const page = await operate(
      <AroundSheet start={view} shop={shop}>
        <CallNotes words={call} />
      </AroundSheet>,
    );
    return { page, shop };
  };

  it("save themselves as fields do, blanks and all while they are typed", async () => {
    const { page, shop } = await notes();
    expect(page.value("notes")).toBe("tall");
    expect(page.seen.text).toContain("Nothing medical");
    expect(page.seen.buttons).toEqual([]);
    await page.type("notes", "likes trees ");
    await page.wait(500);
    expect(shop.save).toHaveBeenLastCalledWith({ notes: "likes trees " }, 6);
    expect(page.value("notes")).toBe("likes trees ");
    await page.type("notes", "");
    await page.wait(500);
    expect(shop.save).toHaveBeenLastCalledWith({ notes: null }, 7);
    expect((await notes({ notes: null })).page.value("notes")).toBe("");
  });

  it("say what another desk wrote, or why they were not kept, and stay as typed", async () => {
    const { page, shop } = await notes();
    const conflict = { path: "notes", yours: "likes trees", theirs: "likes piste", by: "Desk 2" };
    shop.save.mockResolvedValueOnce({
      ok: true,
      sheet: viewOf({ version: 8, notes: "likes piste" }),
      savedPaths: [],
      conflicts: [conflict],
    });
    await page.type("notes", "likes trees");
    await page.wait(500);
    expect(page.value("notes")).toBe("likes trees");
    expect(page.seen.one("[data-conflict=notes]").text).toContain("likes piste");
    await page.press("Take theirs: “likes piste”");
    expect(page.value("notes")).toBe("likes piste");
    shop.save.mockResolvedValueOnce({ ok: false, message: "Leave the knee out.", path: "notes" });
    await page.type("notes", "a knee");
    await page.wait(500);
    expect(page.seen.one("#call-notes-error").text).toContain("Leave the knee out.");
    expect(page.value("notes")).toBe("a knee");
  });
});

describe("the sheet of a call", () => {
  const stop = { code: "flex-out-of-range", message: "A stout flex.", blocks: "sale", script: "Ask." } as const;

  async function sheetOf(view: SheetView = viewOf({ asked: {} }), known: Partial<CallSheetProps> = {}) {
    const { patches, ...shop } = shopOf(view);
    const actions: CallSheetProps["actions"] = {
      ...shop,
      assess: async () => ({
        reply: { ok: true, dateRange: dates, totalCents: null },
        flags: [stop],
        liftable: ["flex-out-of-range"],
      }),
    };
    const page = await operate(
      <CallSheet
        callWords={call}
        isOwner={false}
        actions={actions}
        sheet={{
          catalog,
          initial: view,
          words: sheetWords,
          refusalWords,
          cautions: { localRules: "Local rules", hazards: [] },
          pictures: { uploadUrl: "/u", pictureBase: "/p", stateRights: vi.fn() },
        }}
        {...known}
      >
        <p>the ends</p>
      </CallSheet>,
    );
    return { page, patches };
  }

  it("asks the next question, and hears from the server what stops the sale", async () => {
    const { page, patches } = await sheetOf();
    expect(page.seen.text).toContain("5 of 14 answered");
    expect(page.seen.text).toContain(call.noFlags);
    expect(page.seen.text).toContain("the ends");
    await page.wait(700);
    expect(page.seen.text).not.toContain(call.noFlags);
    expect(page.seen.text).toContain("A stout flex.");
    expect(page.seen.text).toContain(call.ackOwner);
    expect(page.seen.buttons).not.toContain(call.allowButton);
    // What the server took is what the next question is asked after.
    await page.press(call.notSaid);
    await page.wait(500);
    expect(patches).toEqual([{ "asked.homeSnow": "refused" }]);
    expect(page.seen.text).toContain("Next question: Turns they like");
  });

  it("lets an owner lift what stops it, and has neither question nor notes once it is closed", async () => {
    const owner = await sheetOf(undefined, { isOwner: true });
    await owner.page.wait(700);
    expect(owner.page.seen.form(call.allowButton).sent).toMatchObject({ reason: "" });
    const closed = await sheetOf(viewOf({ state: "quoted", asked: {} }));
    expect(closed.page.seen.text).not.toContain("of 14 answered");
    expect(closed.page.seen.all("[name=notes]")).toEqual([]);
  });
});

describe("the pen", () => {
  const held = (holder: string, isMine: boolean) => ({ holder, isMine, until: "2026-11-10T17:15:00.000Z" });

  it("is gone as soon as another desk takes it: who has it is said, nothing can be changed, and it can be taken back", async () => {
    const start = viewOf({ lease: held("Desk 1", true) });
    const shop = shopOf(start);
    const page = await operate(
      <CallSheet
        callWords={call}
        isOwner={false}
        actions={{ ...shop, assess: async () => ({ reply: await shop.assess(), flags: [], liftable: [] }) }}
        sheet={{
          catalog,
          initial: start,
          words: sheetWords,
          refusalWords,
          cautions: { localRules: "Local rules", hazards: [] },
          pictures: { uploadUrl: "/u", pictureBase: "/p", stateRights: vi.fn() },
        }}
      />,
    );
    expect(page.seen.text).toContain(call.mine);
    const isFree = () => document.querySelector("[name=mass]")?.closest("fieldset[disabled]") === null;
    expect(isFree()).toBe(true);
    shop.reload.mockResolvedValueOnce({ ...start, version: 5, lease: held("Desk 2", false) });
    document.dispatchEvent(new Event("visibilitychange"));
    await page.wait(0);
    expect(page.seen.text).toContain("Desk 2 has taken this draft over");
    expect(page.seen.buttons).toContain(call.takeBack);
    expect(page.seen.buttons).not.toContain(call.putDown);
    expect(isFree()).toBe(false);
    shop.reload.mockResolvedValueOnce({ ...start, version: 6, lease: held("Desk 1", true) });
    document.dispatchEvent(new Event("visibilitychange"));
    await page.wait(0);
    expect(page.seen.text).toContain(call.mine);
    expect(isFree()).toBe(true);
  });

  it("asks for the telephone number first where none is known, with the cursor in it", async () => {
    const start = viewOf({ contact: {} });
    const shop = shopOf(start);
    const page = await operate(
      <AroundSheet start={start} shop={shop}>
        <CallPhone words={call} />
      </AroundSheet>,
    );
    expect(document.activeElement?.id).toBe("call-phone");
    await page.type("callPhone", "303 555 0199");
    await page.wait(500);
    expect(shop.save).toHaveBeenCalledWith({ "contact.phone": "303 555 0199" }, 4);
    expect(page.value("callPhone")).toBe("303 555 0199");
    const known = await operate(
      <AroundSheet start={viewOf()} shop={shop}>
        <CallPhone words={call} />
      </AroundSheet>,
    );
    expect(known.seen.all("[name=callPhone]")).toEqual([]);
  });
});

describe("the keys of a call", () => {
  it("can be clicked: what is closed opens, its first field takes the cursor, and the page stays where it is", async () => {
    const page = await operate(
      <AroundSheet start={viewOf()} shop={shopOf(viewOf())}>
        <ShortcutKeys sections={sheetWords.sections} words={call} />
        <details id="core">
          <summary>Core</summary>
          <label>
            Wood <input name="wood" />
          </label>
        </details>
      </AroundSheet>,
    );
    const scrolled = vi.fn();
    const place = document.querySelector<HTMLDetailsElement>("#core");
    if (place) place.scrollIntoView = scrolled;
    const click = async (id: string) => {
      const event = new MouseEvent("click", { bubbles: true, cancelable: true });
      await page.send(`a[href="#${id}"]`, event);
      return event;
    };
    const clicked = await click("core");
    expect(clicked.defaultPrevented).toBe(true);
    expect(place?.open).toBe(true);
    expect(document.activeElement?.getAttribute("name")).toBe("wood");
    expect(scrolled).toHaveBeenCalledWith({ block: "start" });
    // A section that is not on the page is no fault.
    expect((await click("price")).defaultPrevented).toBe(true);
    const key = (code: string) => {
      const event = new KeyboardEvent("keydown", { code, altKey: true, cancelable: true });
      window.dispatchEvent(event);
      return event.defaultPrevented;
    };
    expect([key("Digit3"), key("Digit8"), key("KeyA")]).toEqual([true, false, false]);
  });
});
