import type { MetadataRoute } from "next";

/** What may be searched for: the pages that are for everybody. All others also say of themselves that they may not. */
export default function robots(): MetadataRoute.Robots {
  return { rules: { userAgent: "*", allow: ["/$", "/method", "/_next/static/"], disallow: ["/"] } };
}
