import { EventEmitter } from "node:events";
import { describe, expect, it } from "vitest";
import { refusalOf } from "#app/_server/gate.ts";
import { answering, thisRequest } from "#app/_server/this-request.ts";

const hosts = new Set(["skis.example", "localhost:3000"]);
const status = (method: string, url: string, origin?: string) =>
  refusalOf({ method, url, headers: origin === undefined ? {} : { origin } }, hosts)?.status ?? null;

const closing = (writableFinished: boolean) => Object.assign(new EventEmitter(), { writableFinished });

describe("the front door", () => {
  it.each([
    ["GET", "/sheet/%00", undefined, 400],
    ["GET", "/pair/%E0%A4%A", undefined, 400],
    ["GET", "/shop?x=%00", undefined, 400],
    ["GET", "/shop?x=%", undefined, 400],
    ["TRACE", "/", undefined, 405],
    ["PUT", "/", undefined, 405],
    ["POST", "/sheet", "https://elsewhere.example", 403],
    ["POST", "/sheet", "null", 403],
    ["POST", "/sheet", "https://skis.example", null],
    ["POST", "/sheet", "http://localhost:3000", null],
    // Programs that send no Origin are no browsers: they carry nobody's session by accident.
    ["POST", "/sheet", undefined, null],
    ["GET", "/sheet?name=Gr%C3%B6%C3%9Fe+1", undefined, null],
    ["HEAD", "/", "https://elsewhere.example", null],
  ] as const)("answers %s %s from %s with %s", (method, url, origin, expected) => {
    expect(status(method, url, origin)).toBe(expected);
  });

  it("keeps what is known of a request beside it, without the key of its link", async () => {
    const url = `/sheet/${"k".repeat(43)}?secret=1`;
    const seen = answering({ method: "GET", url }, closing(false), () =>
      Promise.resolve().then(() => thisRequest()?.route),
    );
    expect(await seen).toBe("GET /sheet/[left out]");
    expect(thisRequest()).toBeUndefined();
  });

  it("knows a visitor who left from one who has the answer", () => {
    const hasGone = (isAnswered: boolean) => {
      const answer = closing(isAnswered);
      const signal = answering({}, answer, (record) => record.signal);
      const before = signal.aborted;
      answer.emit("close");
      return [before, signal.aborted];
    };
    expect([hasGone(false), hasGone(true)]).toEqual([
      [false, true],
      [false, false],
    ]);
  });
});
