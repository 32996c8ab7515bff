import { describe, expect, it } from "vitest";
import { proseIn } from "../support/prose";
import { sources } from "../support/sources";

/** Names of type faces, which nobody reads. The list may only become shorter. */
const EXCEPTIONS: Readonly<Record<string, readonly string[]>> = {
  "lib/papers/parts/fonts.ts": ["Plex Sans", "Plex Mono"],
};

describe("what people read", () => {
  it("is found in strings, templates and markup, and nowhere else", () => {
    const text = `
      import { one } from "two words";
      type Way = "not a value";
      const said = "two words" + \`\${count} pairs of skis\` + \`\${width} × \${length} mm\`;
      const code = ["order-closed", "L", "M0 0L1 1Z"];
      const page = <Section title="Please note"><Text>{said}, and more of it</Text></Section>;
      if (!said) throw new RangeError("no words given");
    `;
    expect(proseIn(text)).toEqual(["two words", "{} pairs of skis", "Please note", ", and more of it"]);
  });

  it("stands in content/copy, and in no paper, service or room of the shop", () => {
    const places = sources("lib/papers", "lib/services", "lib/shop");
    expect(places.length).toBeGreaterThan(150);
    const found = places.flatMap(({ path, text }) =>
      proseIn(text, path)
        .filter((words) => !EXCEPTIONS[path]?.includes(words))
        .map((words) => `${path}: ${words}`),
    );
    expect(found).toEqual([]);
  });

  it("is excepted nowhere without need", () => {
    const needless = Object.entries(EXCEPTIONS).flatMap(([place, words]) => {
      const here = sources(place).flatMap(({ path, text }) => proseIn(text, path));
      return words.filter((each) => !here.includes(each)).map((each) => `${place}: ${each}`);
    });
    expect(needless).toEqual([]);
  });
});
