// Loaded before anything else (--import): the process lives at one instant, and ids come one after another, so that two
// records of the same code are the same.
import crypto from "node:crypto";
import { syncBuiltinESMExports } from "node:module";

const instant = Date.parse(process.env.RECORD_INSTANT ?? "");
if (Number.isNaN(instant)) throw new Error("RECORD_INSTANT must be an instant");
const RealDate = Date;

// Everything of its own, as the real one has it: the framework copies what it finds on the constructor itself.
function FixedDate(...given) {
  if (new.target === undefined) return new RealDate(instant).toString();
  return Reflect.construct(RealDate, given.length === 0 ? [instant] : given, new.target);
}
Object.defineProperties(FixedDate, {
  prototype: { value: RealDate.prototype },
  now: { value: () => instant, writable: true, configurable: true },
  parse: { value: RealDate.parse, writable: true, configurable: true },
  UTC: { value: RealDate.UTC, writable: true, configurable: true },
  length: { value: 7 },
  name: { value: "Date" },
});
RealDate.prototype.constructor = FixedDate;
globalThis.Date = FixedDate;

// Each process has a series of its own, named by whoever starts it.
const series = Buffer.from(process.env.RECORD_SERIES ?? "0")
  .toString("hex")
  .slice(0, 8)
  .padEnd(8, "0");
let last = 0;
crypto.randomUUID = () => {
  last += 1;
  return `${series}-0000-4000-8000-${String(last).padStart(12, "0")}`;
};
syncBuiltinESMExports();
