/** What faults a source offers, that they are right in syntax, and that each kind brings forth some that compile. */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { candidatesIn, type Fault, planted } from "../../../.ci/mutants/candidates.mjs";
import { operators } from "../../../.ci/mutants/operators.mjs";
import { parse } from "../../../.ci/mutants/syntax.mjs";
import { openTypes } from "../../../.ci/mutants/types.mjs";
import { temporaryFolder } from "../../support/child";
import { sources } from "../../support/sources";

/** The sources that a kind of fault makes of this one. */
function made(operator: string, source: string, file = "lib/a.tsx"): readonly string[] {
  return candidatesIn(file, source)
    .filter((fault) => fault.operator === operator)
    .map((fault) => planted(source, fault));
}

describe("faults", () => {
  it.each([
    ["comparison", "f(a === b);", ["f(a !== b);"]],
    ["comparison", "f(a < b);", ["f(a > b);"]],
    ["bound", "f(a < b);", ["f(a <= b);"]],
    ["bound", "f(a[1]);", ["f(a[2]);"]],
    ["condition", "f(a && b);", ["f(a || b);"]],
    ["condition", "f(!a);", ["f(a);"]],
    ["condition", "f(a ? b : c);", ["f(!(a) ? b : c);"]],
    ["condition", "f(true);", ["f(false);"]],
    ["sign", "f(a + (b));", ["f(a - (b));"]],
    ["sign", "f(-a);", ["f(a);"]],
    ["sign", "a += b;", ["a -= b;"]],
    [
      "side",
      "f(a.tipWidthMm);",
      ["f(a.tailWidthMm);", "f(a.tipHeightMm);", "f(a.tipThicknessMm);", "f(a.tipLengthMm);"],
    ],
    ["side", "f(Math.min(a, b));", ["f(Math.max(a, b));"]],
    ["side", "f({ left });", ["f({ left: right });"]],
    ["side", 'f("left");', ['f("right");']],
    ["side", "f(a.at(-1));", ["f(a.at(0));"]],
    ["unit", "f(60);", ["f(1);"]],
    ["unit", "f(0.35);", ["f(3.5);"]],
    ["unit", "f({ lengthMm });", ["f({ lengthMm: (lengthMm * 10) });", "f({ lengthMm: (lengthMm / 10) });"]],
    ["return", "function f() { if (a) return 1; return 2; }", ["function f() { ; return 2; }"]],
    ["return", "function f() { g(); }", ["function f() { return; g(); }"]],
    ["permission", "if (!allowed.ok) return allowed;", [";"]],
    ["permission", 'f(permit(actor, "a"));', ["f(({ ok: true, value: undefined } as ReturnType<typeof permit>));"]],
    ["arguments", "f(a, b, c);", ["f(b, a, c);", "f(a, c, b);"]],
    ["write", "await save(a);", [";"]],
  ] as const)("%s: %s", (operator, source, expected) => {
    const text = source.startsWith("if") ? `function f() { ${source} }` : source;
    const found = made(operator, text).map((one) => (text === source ? one : one.slice(15, -2)));
    expect([...found].sort()).toEqual([...expected].sort());
  });

  it("opens a table of policy one step wider, in the room of permissions alone", () => {
    const table = 'export const policy = { "a": { guest: "never", ...ownerOnly } };';
    expect(made("permission", table, "lib/auth/policy.ts")).toEqual([
      table.replace('"never"', '"always"'),
      table.replace("ownerOnly", "office"),
    ]);
    expect(made("permission", table, "lib/engine/fit/policy.ts")).toEqual([]);
  });

  it("leaves alone what is the same from either end, in either order, or by any name", () => {
    expect(made("side", "f(all.find((one) => one.id === id), all.find(({ id }) => id === own));")).toEqual([]);
    expect(made("side", "f(all.find((one) => one.kind === kind));")).toEqual([
      "f(all.findLast((one) => one.kind === kind));",
    ]);
    expect(made("arguments", "f(Math.max(a, b) + Math.hypot(a, b));")).toEqual([]);
    expect(made("unit", "f(<b key={share} x={share} />);")).toEqual([
      "f(<b key={share} x={(share * 100)} />);",
      "f(<b key={share} x={(share / 100)} />);",
    ]);
    expect(made("arguments", "f(Math.pow(a, b));")).toEqual(["f(Math.pow(b, a));"]);
  });

  it("leaves alone what does not run: imports, types, keys, names of attributes", () => {
    const source = `import { min } from "left";
      export * from "./first";
      type Side = "left" | "right";
      interface Tip { readonly tipMm: 60 }`;
    expect(candidatesIn("lib/a.ts", source)).toEqual([]);
  });

  it("tells line, change and kind, with offsets that umlauts and astral signs do not shift", () => {
    const source = 'const größe = "🎿";\nf(a < b);\n';
    const [fault] = candidatesIn("lib/a.ts", source).filter((one) => one.operator === "comparison");
    expect(fault).toMatchObject({ line: 2, what: "comparison: a < b → a > b" });
    expect(planted(source, fault as Fault)).toBe('const größe = "🎿";\nf(a > b);\n');
  });

  it("are right in syntax wherever they stand in the product", () => {
    const product = sources("lib", "app").filter((_, index) => index % 10 === 0);
    let count = 0;
    for (const { path: file, text } of product)
      for (const fault of candidatesIn(file, text).filter((_, index) => index % 20 === 0)) {
        expect(() => parse(file, planted(text, fault)), `${file}:${fault.line} ${fault.what}`).not.toThrow();
        count += 1;
      }
    expect(count).toBeGreaterThan(200);
  });
});

describe("the compiler", () => {
  it("accepts some fault of every kind, refuses what has no type, and leaves the file as it is", async () => {
    const root = temporaryFolder();
    const source = readFileSync(path.join(import.meta.dirname, "sample.txt"), "utf8");
    mkdirSync(path.join(root, "lib/auth"), { recursive: true });
    writeFileSync(path.join(root, "tsconfig.json"), JSON.stringify({ compilerOptions: { strict: true, types: [] } }));
    writeFileSync(path.join(root, "lib/auth/sample.ts"), source);
    writeFileSync(
      path.join(root, "lib/auth/user.ts"),
      'import { mean } from "./sample";\nexport const text: string = mean(1, 2).toFixed();\n',
    );
    const types = await openTypes(root);
    const compiling = new Set<string>();
    for (const fault of candidatesIn("lib/auth/sample.ts", source))
      if ((await types.errorIn("lib/auth/sample.ts", planted(source, fault))) === null) compiling.add(fault.operator);
    const dropped = source.replace("longer(tip: number, tail: number)", "longer(tip: number, tail: string)");
    const inItself = await types.errorIn("lib/auth/sample.ts", dropped);
    const text = source.replace("return (tip + tail) / 2;", "return tip > tail ? tip : null;");
    const inUser = await types.errorIn("lib/auth/sample.ts", text, ["lib/auth/user.ts"]);
    await types.close();
    expect([...compiling].sort()).toEqual(Object.keys(operators).sort());
    expect(inItself).toMatch(/^lib\/auth\/sample\.ts: /);
    expect(inUser).toMatch(/^lib\/auth\/user\.ts: /);
    expect(readFileSync(path.join(root, "lib/auth/sample.ts"), "utf8")).toBe(source);
  });
});
