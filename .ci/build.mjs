// Builds the pages when a source changed since the last finished build.
import { existsSync } from "node:fs";
import path from "node:path";
import { hashOf, mustRun, programs, readStamp, root, say, step, writeStamp } from "./lib.mjs";

const sources = [
  "app",
  "lib",
  "content",
  "public",
  "prisma/schema.prisma",
  "prisma/models",
  "next.config.ts",
  "proxy.ts",
  "instrumentation.ts",
  "postcss.config.mjs",
  "tsconfig.json",
  "package-lock.json",
];

/** The README's pictures are made from the pages; no page shows them. */
const isSource = (file) => !file.startsWith(path.join(root, "public", "readme"));

export async function build() {
  const stamp = path.join(root, ".next", "pairwright.stamp");
  const wanted = `${hashOf(sources, isSource)} node${process.versions.node}`;
  if (readStamp(stamp) === wanted && existsSync(path.join(root, ".next/BUILD_ID"))) return;
  await step("Building the pages (under a minute)", () =>
    mustRun(process.execPath, [programs.next, "build"], {
      env: { NODE_ENV: "production", NEXT_TELEMETRY_DISABLED: "1" },
    }),
  );
  writeStamp(stamp, wanted);
}

if (process.argv[1] === import.meta.filename) {
  await build();
  say("The build is up to date.");
}
