/** Papers and pictures as answers. */
import { describe, expect, it } from "vitest";
import { documentResponse } from "#app/files/document-response.ts";
import { GET as pairDocument } from "#app/files/pairs/[pairId]/[document]/route.ts";
import { accept } from "#engine/units";

const bytes = new TextEncoder().encode("%PDF-1.7");
const answer = (maxAge?: number) =>
  documentResponse(accept({ bytes, contentType: "application/pdf", fileName: 'Größe "1";\r\nx: y.pdf' }), maxAge);

describe("a paper as an answer", () => {
  it("is closed in, framed by nobody, of the kind it says, and in no cache", () => {
    const { headers } = answer();
    const policy = headers.get("content-security-policy")?.split("; ");
    expect(policy).toEqual(expect.arrayContaining(["default-src 'none'", "frame-ancestors 'none'", "sandbox"]));
    expect(headers.get("x-content-type-options")).toBe("nosniff");
    expect(headers.get("content-type")).toBe("application/pdf");
    expect(headers.get("cache-control")).toBe("no-store");
    expect(answer(60).headers.get("cache-control")).toMatch(/^private/);
  });

  it("has a name that no sign in it can get out of (RFC 5987)", () => {
    expect(answer().headers.get("content-disposition")).toBe(
      "inline; filename*=UTF-8''Gr%C3%B6%C3%9Fe%20%221%22%3B%0D%0Ax%3A%20y.pdf",
    );
  });

  it("that is numbered when it is fetched is not fetched by another site's link", async () => {
    const request = new Request("https://skis.example/files/pairs/p1/build-sheet", {
      headers: { "sec-fetch-site": "cross-site" },
    });
    const params = Promise.resolve({ pairId: "p1", document: "build-sheet" });
    expect((await pairDocument(request, { params })).status).toBe(403);
  });
});
