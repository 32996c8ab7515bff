import { describe, expect, it } from "vitest";
import { z } from "zod";
import { isShared, visitorAddress, visitorIdentity } from "#app/_server/address.ts";
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

describe("by what a visitor is told from others", () => {
  const device = "mark-of-this-browser";
  const identity = (
    forwardedFor: string | null,
    trustedProxies: number,
    isProxied = false,
    mark: string | null = device,
  ) => visitorIdentity({ forwardedFor, trustedProxies, isProxied, device: mark });

  it("is the address, where it is the visitor's own", () => {
    expect(identity("192.0.2.7", 0)).toBe("address 192.0.2.7");
    expect(identity("203.0.113.9, 192.0.2.7", 1)).toBe("address 192.0.2.7");
    // A proxy that is named may stand in the same house.
    expect(identity("192.0.2.7, 10.0.0.1", 2)).toBe("address 192.0.2.7");
  });

  it.each([
    "127.0.0.1",
    "::1",
    "::ffff:127.0.0.1",
    "10.1.2.3",
    "192.168.1.9",
    "172.16.0.1",
    "172.31.9.9",
    "169.254.1.1",
    "fd00::1",
    "fe80::2",
    null,
  ])("is the browser's mark behind %s, where a proxy nobody has named may stand", (address) => {
    expect(identity(address, 0)).toBe(`device ${device}`);
    expect(identity(address, 0, false, null)).toBeNull();
  });

  it("is the browser's mark where forwarded headers came that nobody may be believed", () => {
    expect(identity("192.0.2.7", 0, true)).toBe(`device ${device}`);
    expect(isShared({ forwardedFor: "192.0.2.7", trustedProxies: 1, isProxied: true })).toBe(false);
  });

  it.each(["172.15.0.1", "172.32.0.1", "192.169.0.1", "11.0.0.1", "fec0::1", "2001:db8::1"])(
    "is %s itself",
    (address) => {
      expect(identity(address, 0)).toBe(`address ${address}`);
    },
  );
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
