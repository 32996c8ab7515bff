// The shop for the browser tests: the demo, new for every run, in its own folder on its own port.
import { rmSync } from "node:fs";
import path from "node:path";
import { cacheFolder } from "./lib.mjs";

const folder = path.join(cacheFolder, "e2e-data");
rmSync(folder, { recursive: true, force: true });
process.env.PAIRWRIGHT_DATA = folder;
process.env.HOST = "127.0.0.1";
process.env.PORT ||= "3210";
delete process.env.DATABASE_URL;
delete process.env.PAIRWRIGHT_ORIGIN;
await import("./start.mjs");
