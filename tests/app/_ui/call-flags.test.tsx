// @vitest-environment happy-dom
/** Flags of a call, with the owner's word against what stops it. */
import { describe, expect, it, vi } from "vitest";
import { CallFlags } from "#app/shop/(staff)/call/[sheetId]/call-notes.client.tsx";
import words from "#content/copy/shop.json";
import type { FitFlag } from "#engine/fit";
import { idOf } from "#schemas/ids";
import { operate } from "../../support/browser";

vi.mock("#app/shop/(staff)/call/actions.ts", () => ({ answerForFlag: vi.fn(), quoteAllTheSame: vi.fn() }));

const stiff: FitFlag = { code: "flex-out-of-range", message: "A stout flex.", blocks: "sale", script: "Ask." };
const wide: FitFlag = { code: "wide-for-piste", message: "A wide one.", blocks: "nothing", script: "Say." };
const word = { code: "flex-out-of-range", reason: "liked it", by: "Odile", byOwner: true, at: "2026-11-10T16:00:00Z" };

async function seen(known: Partial<Parameters<typeof CallFlags>[0]>) {
  const page = await operate(
    <CallFlags
      flags={[stiff, wide]}
      liftable={["flex-out-of-range"]}
      acks={[]}
      sheetId={idOf("sheet", "s-1")}
      words={words.call}
      isOwner={false}
      {...known}
    />,
  );
  return page.seen;
}

describe("flags of a call", () => {
  it("that stop the sale are the owner's to lift, with one reason", async () => {
    const desk = await seen({});
    expect(desk.text).toContain(words.call.ackOwner);
    expect(desk.buttons).not.toContain(words.call.allowButton);
    const owner = await seen({ isOwner: true });
    expect(owner.form(words.call.allowButton).sent).toEqual({ sheetId: "s-1", reason: "" });
    // The flag that stops nothing is acknowledged alone.
    expect(owner.form(words.call.ackButton).sent).toMatchObject({ code: "wide-for-piste" });
  });

  it("that were lifted say by whom and why; a flex chosen by hand is lifted without a flag of its own", async () => {
    const lifted = await seen({ isOwner: true, acks: [word] });
    expect(lifted.text).toContain("Acknowledged by Odile: liked it");
    expect(lifted.buttons).not.toContain(words.call.allowButton);
    const byHand = await seen({ isOwner: true, flags: [] });
    expect(byHand.text).toContain(words.call.noFlags);
    expect(byHand.buttons).toContain(words.call.allowButton);
    expect((await seen({ isOwner: true, liftable: [] })).buttons).not.toContain(words.call.allowButton);
  });
});
