/** The gateway's answer by method and by who says so, as tests/support/deposit-rules.ts has it. */
import { describe, expect, it } from "vitest";
import { demoGateway } from "#services/money/gateway";
import { depositRows } from "../support/deposit-rules";

describe("the gateway", () => {
  const cells = depositRows.flatMap((row) =>
    [false, true].map((isStaff) => ({ ...row, isStaff, result: isStaff ? row.desk : row.skier })),
  );

  it.each(cells)("$method, reference $reference, staff $isStaff: $result", async (cell) => {
    const { method, reference, isStaff, result } = cell;
    const request = { orderNumber: "A-1", cents: 96_250, currency: "USD", method, reference, isStaff } as const;
    const answer = await demoGateway.take(request);
    if (result === "reference-missing") {
      return expect(answer).toEqual({ ok: false, refusal: { code: "reference-missing", path: "reference" } });
    }
    const proof = method === "demo-card" ? "demo A-1" : reference;
    const value = result === "received" ? { state: result, reference: proof } : { state: result, reference: null };
    expect(answer).toEqual({ ok: true, value });
  });
});
