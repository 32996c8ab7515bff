import type { NextConfig } from "next";

/** Fixed headers of every answer. The content security policy has a nonce and comes from proxy.ts. */
const headers = [
  { key: "X-Content-Type-Options", value: "nosniff" },
  { key: "X-Frame-Options", value: "DENY" },
  // Browsers send `Origin: null` on form posts under stricter policies, and then no form works.
  { key: "Referrer-Policy", value: "strict-origin-when-cross-origin" },
  // The camera reads the code on a build sheet; nothing else is asked of the device.
  { key: "Permissions-Policy", value: "camera=(self), microphone=(), geolocation=(), payment=(), usb=()" },
  { key: "Cross-Origin-Opener-Policy", value: "same-origin" },
  { key: "Cross-Origin-Resource-Policy", value: "same-origin" },
];

/** Whatever somebody needs a link or a sign-in for, and what only machines ask, is in no index. */
const privatePaths = ["shop", "sheet", "answers", "quote", "club", "pair", "wall", "files", "health"];
const notIndexed = [{ key: "X-Robots-Tag", value: "noindex, nofollow, noarchive" }];

const config: NextConfig = {
  poweredByHeader: false,
  // `npm run check` and `npm test` check the types of everything; a newcomer's start need not do it again.
  typescript: { ignoreBuildErrors: true },
  // Packages that load WebAssembly, workers or native code by their own path, or are compared by identity.
  serverExternalPackages: [
    "@electric-sql/pglite",
    "@electric-sql/pglite-prepopulatedfs",
    "@electric-sql/pglite-tools",
    "@prisma/adapter-pg",
    "@prisma/driver-adapter-utils",
    "@prisma/schema-engine-wasm",
    "nodemailer",
    "pg-boss",
    "pglite-prisma-adapter",
    "pg",
    "pino",
  ],
  turbopack: { root: import.meta.dirname },
  // Where browsers look on a page that names no icon, such as a file.
  redirects: async () => [{ source: "/favicon.ico", destination: "/icon.svg", permanent: true }],
  headers: async () => [
    { source: "/:path*", headers },
    ...privatePaths.map((path) => ({ source: `/${path}/:rest*`, headers: notIndexed })),
  ],
};

export default config;
