// @vitest-environment happy-dom
/** What was typed before a sign-in ended: kept for the same person and page in this tab, never a password, and only once. */
import { beforeEach, describe, expect, it } from "vitest";
import { forgetTyped, keepTyped, markAway, markMoved, markSent, putBack, readTyped } from "#app/_ui/typed.ts";

const page = "/shop/orders/o-1";

function form(): void {
  document.body.innerHTML = `<main>
    <form>
      <input type="hidden" name="version" value="3" />
      <input name="reason" value="" />
      <textarea name="note">as it was</textarea>
      <select name="method"><option value="counter" selected>Counter</option><option value="bank">Bank</option></select>
      <input type="checkbox" name="sure" />
      <input type="password" name="currentPassword" value="" />
      <input name="passcode" value="" />
    </form>
    <form><input name="reason" value="" /></form>
  </main>`;
}

function named(name: string, turn = 0): HTMLInputElement {
  const found = document.querySelectorAll<HTMLInputElement>(`[name="${name}"]`)[turn];
  if (found === undefined) throw new Error(`no field ${name}`);
  return found;
}

function type(): void {
  named("reason").value = "the customer called";
  named("reason", 1).value = "and again";
  named("method").value = "bank";
  named("sure").checked = true;
  named("currentPassword").value = "larch and ash 42";
  named("passcode").value = "480917";
  named("version").value = "4";
  keepTyped(document, page, "ada", sessionStorage);
}

beforeEach(() => {
  sessionStorage.clear();
  form();
});

describe("what was typed", () => {
  it("comes back into its fields after the sign-in, each in its place, and tells the page so", () => {
    type();
    markAway(sessionStorage, false);
    form();
    const heard: string[] = [];
    document.addEventListener("input", (event) => heard.push((event.target as HTMLInputElement).name));
    expect(putBack(document, page, "ada", sessionStorage)).toBe(true);
    expect(named("reason").value).toBe("the customer called");
    expect(named("reason", 1).value).toBe("and again");
    expect(named("method").value).toBe("bank");
    expect(named("sure").checked).toBe(true);
    expect(named("note").value).toBe("as it was");
    expect(named("version").value).toBe("3");
    expect(heard).toContain("reason");
    // Once: a page that is loaded again later is as it is.
    form();
    expect(putBack(document, page, "ada", sessionStorage)).toBe(false);
  });

  it("is kept without passwords, codes and hidden fields", () => {
    type();
    expect(Object.keys(readTyped(sessionStorage)?.fields ?? {})).toEqual([
      "reason 0",
      "method 0",
      "sure 0",
      "reason 1",
    ]);
    expect(JSON.stringify({ ...sessionStorage })).not.toMatch(/larch|480917/);
  });

  it("is not given to somebody else, nor after a sign-out, nor on another page", () => {
    type();
    markAway(sessionStorage, false);
    expect(putBack(document, "/shop/queue", "ada", sessionStorage)).toBe(false);
    expect(putBack(document, page, "bo", sessionStorage)).toBe(false);
    expect(readTyped(sessionStorage)).toBeNull();

    type();
    markAway(sessionStorage, true);
    expect(putBack(document, page, "ada", sessionStorage)).toBe(false);
    expect(readTyped(sessionStorage)).toBeNull();
  });

  it("is put back only after a sign-in", () => {
    type();
    form();
    expect(putBack(document, page, "ada", sessionStorage)).toBe(false);
  });

  it("is done with when it was sent and another page came, and kept when the sign-in came", () => {
    type();
    markSent(sessionStorage);
    markMoved(sessionStorage, "/shop/orders");
    expect(readTyped(sessionStorage)).toBeNull();

    type();
    markSent(sessionStorage);
    markAway(sessionStorage, false);
    form();
    expect(putBack(document, page, "ada", sessionStorage)).toBe(true);
    forgetTyped(sessionStorage);
    expect(sessionStorage).toHaveLength(0);
  });

  it("is nothing where nothing stands otherwise than it came", () => {
    keepTyped(document, page, "ada", sessionStorage);
    expect(readTyped(sessionStorage)).toBeNull();
  });
});
