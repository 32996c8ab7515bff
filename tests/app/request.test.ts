import { describe, expect, it } from "vitest";
import { z } from "zod";
import { visitorAddress } from "#app/_server/address.ts";
import { messagesByPath, readForm, typedValues } from "#app/_server/form-state.ts";
import { safeBackPath } from "#app/shop/sign-in/back-path.ts";

describe("visitorAddress", () => {
  it("believes only what our own server wrote when no proxy is named", () => {
    expect(visitorAddress("192.0.2.7", 0)).toBe("192.0.2.7");
    expect(visitorAddress(null, 0)).toBe("unknown");
  });

  it("takes the address the outermost of our proxies saw, whatever the visitor claims before it", () => {
    expect(visitorAddress("203.0.113.9, 192.0.2.7", 1)).toBe("192.0.2.7");
    expect(visitorAddress("203.0.113.9, 192.0.2.7, 198.51.100.1", 2)).toBe("192.0.2.7");
    expect(visitorAddress("192.0.2.7", 3)).toBe("192.0.2.7");
  });
});

describe("safeBackPath", () => {
  it("leads back into the shop", () => {
    expect(safeBackPath("/shop/queue?day=2026-01-06")).toBe("/shop/queue?day=2026-01-06");
  });

  it.each([
    "https://evil.example",
    "//evil.example",
    "/shop//evil.example",
    "/shop\\evil",
    "/shopping",
    "javascript:x",
    undefined,
  ])("does not follow %s", (back) => {
    expect(safeBackPath(back)).toBe("/shop");
  });
});

describe("a form's fields", () => {
  it("come back as typed, but never a password", () => {
    const form = new FormData();
    form.set("email", " Desk@thistle-yard.example ");
    form.set("password", "secret");
    form.set("newPassword", "secret");
    form.append("priority", "light");
    form.append("priority", "edge hold");
    form.set("$ACTION_ID_x", "");
    form.set("file", new File(["x"], "x.png"));
    const fields = readForm(form);
    expect(fields).toEqual({
      email: " Desk@thistle-yard.example ",
      password: "secret",
      newPassword: "secret",
      priority: ["light", "edge hold"],
    });
    expect(typedValues(fields)).toEqual({ email: " Desk@thistle-yard.example ", priority: "light,edge hold" });
  });

  it("are refused by path, the first message of each", () => {
    const schema = z.object({ massKg: z.coerce.number().min(30, "at least 30 kg"), name: z.string().min(1, "a name") });
    const parsed = schema.safeParse({ massKg: "12", name: "" });
    expect(parsed.error && messagesByPath(parsed.error.issues)).toEqual({ massKg: "at least 30 kg", name: "a name" });
  });
});
