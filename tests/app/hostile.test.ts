/** A sample of `npm run attack`, the same one every day: its hostile requests at the front door and at the doors of files. */
import { EventEmitter } from "node:events";
import { describe, expect, it, vi } from "vitest";
import { admit } from "#app/_server/admission.ts";
import { Crowd } from "#app/_server/crowd.ts";
import { refusalOf } from "#app/_server/gate.ts";
import { answering } from "#app/_server/this-request.ts";
import { GET as picture } from "#app/files/artwork/[key]/[id]/route.ts";
import { POST as newPicture } from "#app/files/artwork/[key]/route.ts";
import { GET as pairPaper } from "#app/files/pairs/[pairId]/[document]/route.ts";
import { GET as quotePaper } from "#app/files/quotes/[key]/route.ts";
import { POST as paymentDoor } from "#app/payments/route.ts";
import { POST as here } from "#app/shop/here/route.ts";
import { drawn, hostileRequest } from "../../.ci/attack/fuzz.mjs";
import { headerGuard } from "../../.ci/serve.mjs";
import { quotedSheet } from "../support/builders/sale";
import { openShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";
import { called, freshBrowser, sitDown } from "../support/page-requests";

const seed = 1;
const db = databaseForTests();

/** Escapes that make no text, or a sign that ends one: %00, and UTF-8 that is cut off (RFC 3629) or no hexadecimal. */
const unreadable: ReadonlySet<string> = new Set(["/%00", "/%E0%A4%A", "?x=%00", "?_rsc=%"]);
const known: ReadonlySet<string> = new Set(["GET", "HEAD", "POST", "OPTIONS"]);

const answer = () => Object.assign(new EventEmitter(), { writableFinished: false, write: () => true });

describe("hostile requests", () => {
  it("are told at the front door what is wrong with them, and hold no place there when they have gone", () => {
    const draw = drawn(seed);
    const guard = headerGuard(0);
    const crowd = new Crowd({ anybody: 2, reserved: 0, waiting: 0, besideStaffMs: 0 });
    const statuses = new Set<number | null>();
    const wrong: string[] = [];
    for (let n = 0; n < 1000; n += 1) {
      const { method, headers, place, tail } = hostileRequest(draw, ["0".repeat(42)]);
      const sent: Record<string, string> = { ...headers, host: "skis.example", cookie: `pairwright-session=${tail}` };
      const request = { method, url: `${place}${tail}`, headers: sent };
      const isOwn = guard({ headers: sent, socket: { remoteAddress: "192.0.2.7" } });
      const refused = refusalOf(request, new Set(["skis.example"]))?.status ?? null;
      const isElsewhere = method === "POST" && headers.origin !== undefined;
      const expected = !known.has(method) ? 405 : unreadable.has(tail) ? 400 : isElsewhere ? 403 : null;
      const connection = answer();
      const isFull = admit(request, connection, () => {}, crowd) !== null;
      const route = answering(request, connection, (record) => record.route);
      connection.emit("close");
      statuses.add(refused);
      if (isOwn || isFull || refused !== expected || !route.startsWith(`${method} /`))
        wrong.push(`${method} ${place}${tail}: ${refused}, not ${expected}`);
    }
    expect(wrong).toEqual([]);
    expect([...statuses].sort()).toEqual([400, 403, 405, null]);
  });

  it("are no fault of ours at the doors of files, whoever sends them", async () => {
    freshBrowser();
    const { token, quote } = await quotedSheet(await openShop(db()));
    const written = vi.spyOn(process.stderr, "write").mockReturnValue(true);
    const draw = drawn(seed);
    const statuses: (number | string)[] = [];
    for (let n = 0; n < 120; n += 1) {
      if (n % 40 === 0) await sitDown(([null, "maker", "desk1"] as const)[n / 40] ?? null);
      const { headers, body, tail: drawnTail } = hostileRequest(draw, []);
      // A part of an address that is empty is none, and never comes to a door.
      const tail = drawnTail || "x";
      const key = n % 3 === 0 ? token : n % 3 === 1 ? quote.quoteId : tail;
      const url = `http://localhost/x${tail}`;
      const get = new Request(url, { headers });
      const post = () => new Request(url, { method: "POST", headers, body });
      const doors = [
        () => picture(get, { params: Promise.resolve({ key, id: tail }) }),
        () => newPicture(post(), { params: Promise.resolve({ key }) }),
        () => pairPaper(get, { params: Promise.resolve({ pairId: tail, document: key }) }),
        () => quotePaper(get, { params: Promise.resolve({ key }) }),
        () => paymentDoor(post()),
        () => here(),
      ];
      const door = doors[n % doors.length];
      if (door === undefined) throw new RangeError("no door");
      const { value, to } = await called(door);
      statuses.push(value?.status ?? to ?? "");
    }
    const lines = written.mock.calls.map(([line]) => String(line));
    written.mockRestore();
    expect(lines.filter((line) => line.includes('"a fault"'))).toEqual([]);
    expect(statuses.filter((status) => typeof status === "number" && status >= 500)).toEqual([]);
    // The sample reaches what is there and what is not.
    expect(new Set(statuses).size).toBeGreaterThan(4);
  });
});
