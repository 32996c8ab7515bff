// Loaded before anything else (--import): the process lives at one instant, and ids come one after another, so that two
// records of the same code are the same.
import crypto from "node:crypto";
import { syncBuiltinESMExports } from "node:module";

const instant = Date.parse(process.env.RECORD_INSTANT ?? "");
if (Number.isNaN(instant)) throw new Error("RECORD_INSTANT must be an instant");
const RealDate = Date;

globalThis.Date = class extends RealDate {
  constructor(...given) {
    if (given.length === 0) super(instant);
    else super(...given);
  }
  static now() {
    return instant;
  }
};

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
