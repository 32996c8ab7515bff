/** What a browser calls itself, short enough for a list: "Firefox on Linux". Said by the browser, so it is a help and no proof. */

const browsers: readonly (readonly [RegExp, string])[] = [
  [/Edg(?:e|A|iOS)?\//, "Edge"],
  [/OPR\/|Opera/, "Opera"],
  [/SamsungBrowser\//, "Samsung Internet"],
  [/Firefox\/|FxiOS\//, "Firefox"],
  [/Chrome\/|CriOS\/|Chromium\//, "Chrome"],
  [/Safari\//, "Safari"],
];
const systems: readonly (readonly [RegExp, string])[] = [
  [/iPad/, "iPad"],
  [/iPhone/, "iPhone"],
  [/Android/, "Android"],
  [/Windows/, "Windows"],
  [/CrOS/, "ChromeOS"],
  [/Mac OS X|Macintosh/, "Mac"],
  [/Linux/, "Linux"],
];

/** @returns undefined when it says nothing that is known */
export function browserName(userAgent: string | null): string | undefined {
  const named = (list: typeof browsers) => list.find(([pattern]) => pattern.test(userAgent ?? ""))?.[1];
  const found = [named(browsers), named(systems)].filter((part) => part !== undefined);
  return found.length === 0 ? undefined : found.join(" on ");
}
