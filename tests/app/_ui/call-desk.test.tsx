// @vitest-environment happy-dom
/** What the desk has beside the sheet: notes that are kept or say why not, what stops the sale now, and keys to jump. */
import { describe, expect, it, vi } from "vitest";
import { CallNotes } from "#app/shop/(staff)/call/[sheetId]/call-notes.client.tsx";
import type { CallSheetProps } from "#app/shop/(staff)/call/[sheetId]/call-sheet.client.tsx";
import { CallSheet } from "#app/shop/(staff)/call/[sheetId]/call-sheet.client.tsx";
import { ShortcutKeys } from "#app/shop/(staff)/call/[sheetId]/shortcuts.client.tsx";
import refusalWords from "#content/copy/refusals.json";
import sheetWords from "#content/copy/sheet.json";
import words from "#content/copy/shop.json";
import type { SheetView } from "#services/views";
import { catalog } from "../../engine/demo-catalog";
import { operate } from "../../support/browser";
import { dates, shopOf, viewOf } from "../../support/sheet";

vi.mock("#app/shop/(staff)/call/actions.ts", () => ({ answerForFlag: vi.fn(), quoteAllTheSame: vi.fn() }));

type Save = Parameters<typeof CallNotes>[0]["save"];
const call = words.call;

describe("notes of the call", () => {
  const notes = async (save: Save, known: object = {}) =>
    operate(<CallNotes view={viewOf({ version: 6, notes: "tall", ...known })} words={call} save={save} />);

  it("are kept with the sheet's version, without blanks around, and emptied as none", async () => {
    const save = vi.fn<Save>(async () => ({ ok: true, sheet: viewOf(), conflicts: [] }));
    const page = await notes(save);
    expect(page.value("notes")).toBe("tall");
    expect(page.seen.text).toContain("Nothing medical");
    expect(page.seen.all("[role=status]")).toEqual([]);
    await page.type("notes", " likes trees ");
    await page.press("Keep the notes");
    expect(save).toHaveBeenLastCalledWith({ notes: "likes trees" }, 6);
    expect(page.seen.one("[role=status]").text).toContain("Notes kept.");
    expect(page.seen.all("#call-notes-error")).toEqual([]);
    await page.type("notes", "  ");
    await page.press("Keep the notes");
    expect(save).toHaveBeenLastCalledWith({ notes: null }, 6);
    expect((await notes(save, { notes: null })).value("notes")).toBe("");
  });

  it("say what another desk wrote, or why they were not kept, and stay as typed", async () => {
    const conflict = { path: "notes", yours: "a", theirs: "likes piste", by: "Desk 2" };
    const save = vi.fn<Save>(async () => ({ ok: true, sheet: viewOf(), conflicts: [conflict] as never }));
    const page = await notes(save);
    await page.type("notes", "likes trees");
    await page.press("Keep the notes");
    expect(page.seen.one("#call-notes-error").text).toContain("likes piste");
    expect(page.seen.all("[role=status]")).toEqual([]);
    save.mockResolvedValueOnce({ ok: false, message: "This sheet is closed." });
    await page.press("Keep the notes");
    expect(page.seen.one("#call-notes-error").text).toContain("This sheet is closed.");
    expect(page.value("notes")).toBe("likes trees");
    save.mockRejectedValueOnce(new Error("offline"));
    await page.press("Keep the notes");
    expect(page.seen.text).not.toContain("Notes kept.");
    expect(page.seen.one("#call-notes").attribute("aria-invalid")).toBeNull();
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
    expect(patches).toEqual([{ "asked.homeSnow": "refused" }]);
    expect(page.seen.text).toContain("Next question: Turns they like");
  });

  it("lets an owner lift what stops it, and has neither question nor notes once it is closed", async () => {
    const owner = await sheetOf(undefined, { isOwner: true });
    await owner.page.wait(700);
    expect(owner.page.seen.form(call.allowButton).sent).toMatchObject({ reason: "" });
    const closed = await sheetOf(viewOf({ state: "quoted", asked: {} }));
    expect(closed.page.seen.text).not.toContain("of 14 answered");
    expect(closed.page.seen.buttons).not.toContain("Keep the notes");
  });
});

describe("the keys of a call", () => {
  it("can be clicked: what is closed opens, its first field takes the cursor, and the page stays where it is", async () => {
    const page = await operate(
      <>
        <ShortcutKeys sections={sheetWords.sections} words={call} />
        <details id="core">
          <summary>Core</summary>
          <label>
            Wood <input name="wood" />
          </label>
        </details>
      </>,
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
    expect(document.activeElement?.tagName).toBe("SUMMARY");
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
