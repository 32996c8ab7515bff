import { permit } from "#auth";
import { pairBySerialNumber } from "#data/pairs";
import type { PairId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { findPair } from "#services/orders/find-order";
import { readable } from "#services/readable";
import { currentCatalog } from "#shop/catalogue/current";
import { readSerial } from "#shop/names/serial";
import { pairView, travellerView } from "#shop/pair/view";
import type { PairView, ScanResult } from "#shop/pair/views";

/** Everything that builds the pair; no price, no address. */
export async function readPair(ctx: Context, input: { readonly pairId: PairId }): Promise<Outcome<PairView>> {
  const found = await findPair(ctx, ctx.db, "pair.read", input.pairId);
  if (!found.ok) return found;
  return accept(await pairView(ctx.db, found.value, ctx.now));
}

/**
 * A scanned code or a typed serial: TY-0417, TY-0417-L-7, or a code that ends in one; `?print=3` names the print it was
 * scanned from. Refuses `serial-unreadable`, `serial-check` when the check digit is wrong, `not-found`.
 */
export async function findPairByCode(ctx: Context, input: { readonly code: string }): Promise<Outcome<ScanResult>> {
  const allowed = permit(ctx.actor, "pair.read");
  if (!allowed.ok) return allowed;
  const [address = "", query = ""] = input.code.trim().split("?", 2);
  const text = address.split("/").at(-1) ?? "";
  const serial = readSerial(currentCatalog().shop.serialPrefix, decodeURIComponent(text));
  if (serial.kind === "none") return refuse({ code: "serial-unreadable", path: "code", value: input.code });
  if (serial.kind === "wrong-check") {
    return refuse({ code: "serial-check", path: "code", value: input.code, expected: serial.expected });
  }
  const read = await readable(pairBySerialNumber(ctx.db, serial.number));
  if (!read.ok) return read;
  const pair = read.value;
  if (pair === null) return refuse({ code: "not-found", what: "pair", path: "code", value: input.code });
  const ski = serial.kind === "ski" ? pair.skis.find((each) => isThatSki(each, serial)) : null;
  if (ski === undefined) return refuse({ code: "not-found", what: "ski", path: "code", value: input.code });
  const printNumber = Number(new URLSearchParams(query).get("print"));
  const print = pair.prints.find((candidate) => candidate.print === printNumber);
  return accept({
    pairId: pair.id,
    serial: pair.serial,
    side: serial.kind === "ski" ? serial.side : null,
    isScrapped: ski?.state === "scrapped",
    print: print === undefined ? null : travellerView(print),
    isVoid: print !== undefined && print.voidedAt !== null,
  });
}

function isThatSki(
  ski: { readonly side: string; readonly build: number },
  serial: { readonly side: string; readonly build: number },
): boolean {
  return ski.side === serial.side && ski.build === serial.build;
}
