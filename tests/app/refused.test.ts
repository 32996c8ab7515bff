/** Refusals that matter to safety stand in the log, by what they are and not by whom. */
import { afterEach, beforeEach, expect, it, type MockInstance, vi } from "vitest";
import { z } from "zod";
import { formAction } from "#app/_server/form-action.ts";
import { refusalResponse } from "#app/_server/handler.ts";
import { replyOf } from "#app/_server/sheet-reply.ts";
import { answering } from "#app/_server/this-request.ts";
import { type Refusal, refuse } from "#engine/units";
import type { Context } from "#services";

let written: MockInstance<typeof process.stderr.write>;
beforeEach(() => {
  written = vi.spyOn(process.stderr, "write").mockReturnValue(true);
});
afterEach(() => {
  written.mockRestore();
});

const text = () => written.mock.calls.map(([chunk]) => String(chunk)).join("");

async function sendForm(refusal: Refusal): Promise<void> {
  const enter = formAction({
    name: "sign in",
    schema: z.object({ email: z.string() }),
    context: async () => ({}) as Context,
    run: async () => refuse(refusal),
    words: () => "refused",
  });
  const form = new FormData();
  form.set("email", "robin@mail.example");
  await enter({ status: "new", values: {}, refusals: {} }, form);
}

/** An answer that nobody has closed. */
const open = { writableFinished: false, once: () => undefined };

it("a wrong sign-in, an act not allowed and a forged message are lines without anybody's name", async () => {
  await answering({ method: "POST", url: "/shop/sign-in" }, open, () => sendForm({ code: "wrong-sign-in" }));
  refusalResponse({ code: "payment-not-signed" }, "refused");
  await replyOf(
    "save a field",
    async () => refuse({ code: "not-allowed" }),
    () => "refused",
  );
  const lines = text()
    .trimEnd()
    .split("\n")
    .map((line) => JSON.parse(line) as Record<string, unknown>);
  expect(lines).toMatchObject([
    { level: "warn", where: "sign in", refusal: "wrong-sign-in", route: "POST /shop/sign-in", role: null },
    { level: "warn", refusal: "payment-not-signed" },
    { level: "warn", where: "save a field", refusal: "not-allowed" },
  ]);
  expect(text()).not.toContain("robin");
});

it("what a person mistyped is none", async () => {
  await sendForm({ code: "email-taken", path: "email" });
  expect(text()).toBe("");
});
