import { writeFileSync } from "node:fs";
import sharp from "sharp";
import { test } from "vitest";
import { catalog } from "./demo-catalog";
import { completeSpec } from "#engine/configuration";
import { pairLook, pairScene, sideScene, svgDocument, svgMarks, daylightColour } from "#engine/scene";

test("preview", async () => {
  const build = catalog.build as any;
  const combos: [string, string, string[]][] = [
    ["kerfline-68", "shards", ["#e9f1f4", "#9cc0cf", "#4a7f98", "#24465a"]],
    ["midlow-84", "branch", ["#1f2d3a", "#c9862b", "#e6c15a"]],
    ["midlow-95", "branch", ["#1f2d3a", "#c9862b", "#e6c15a"]],
    ["ridgefold-106", "folds", ["#d9d2c3", "#9c8f7c", "#5d564b", "#2f2c28"]],
    ["drifthold-117", "relief", ["#f2efe6", "#3c5a54", "#8aa39b"]],
    ["upleigh-92", "relief", ["#f2efe6", "#3c5a54", "#8aa39b"]],
  ];
  let x = 0; let out = ""; let sizes: any = {};
  for (const [id, pattern, colours] of combos) {
    const model = build.models.find((m: any) => m.id === id)!;
    const spec = completeSpec({ graphic: { kind: "house", house: "plain", layout: "continuing", windows: id==="ridgefold-106" ? [{fromXMm: 1150, toXMm: 1350, halfWidthMm: 30}]:[] } }, { model: id, lengthCm: model.shape.refLengthCm, flexRatio: 1, finish: {} as any, mount: { offsetMm: 0 } }, build);
    if (!spec.ok) throw new Error(JSON.stringify(spec));
    const look0 = pairLook(spec.value, build)!;
    const look = { ...look0, graphic: { ...look0.graphic, house: { id: "x", label: "x", pattern: pattern as any, colours } } };
    for (const scene of [pairScene(look), pairScene(look, { view: "below", sides: ["left"] }), sideScene(look)]) {
      const manner = { id: `p${x}`, colour: daylightColour, picture: () => null, hairlineMm: 1.2, font: "sans-serif" };
      const s = svgMarks(scene.marks, manner); sizes[`${id} ${x}`] = s.length;
      out += `<g transform="translate(${x - scene.box.x} ${1900 - scene.box.height})">${s}</g>`; x += scene.box.width + 40;
    }
  }
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${x} 1920" width="${Math.round(x/2.2)}" height="${Math.round(1920/2.2)}"><rect width="100%" height="100%" fill="#f7f4ee"/>${out}</svg>`;
  writeFileSync("/tmp/lead/p.svg", svg); console.log(sizes);
  await sharp(Buffer.from(svg)).png().toFile("/tmp/lead/p.png");
});
test("zoom", async () => {
  const build = catalog.build as any;
  const model = build.models.find((m: any) => m.id === "midlow-95")!;
  const spec = completeSpec({ base: { left: build.baseColours[1].id, right: build.baseColours[2].id, inlay: "counterchange", inlayText: "FERN" }, graphic: { kind: "house", house: "plain", layout: "continuing", text: { text: "Thistle", xMm: 1500, capHeightMm: 30 } as any, windows: [{fromXMm: 1180, toXMm: 1350, halfWidthMm: 30}] } }, { model: model.id, lengthCm: 178, flexRatio: 1, finish: {} as any, mount: { offsetMm: 0 } }, build);
  if (!spec.ok) throw new Error("x");
  const look0 = pairLook(spec.value, build)!;
  const look = { ...look0, graphic: { ...look0.graphic, house: { id: "x", label: "x", pattern: "branch" as any, colours: ["#1f2d3a", "#c9862b", "#e6c15a"] } } };
  let out = ""; let x = 0;
  for (const scene of [pairScene(look), pairScene(look, { view: "below" }), sideScene(look)]) {
    const s = svgMarks(scene.marks, { id: `z${x}`, colour: daylightColour, picture: () => null, hairlineMm: 0.5, font: "sans-serif" });
    console.log(s.length, require("node:zlib").gzipSync(s).length);
    out += `<g transform="translate(${x - scene.box.x} 0)">${s}</g>`; x += scene.box.width + 30;
  }
  const svg = (y: number, h: number) => `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 ${y} ${x} ${h}" width="${Math.round(x * 2)}" height="${Math.round(h * 2)}"><rect y="${y}" width="100%" height="100%" fill="#f7f4ee"/>${out}</svg>`;
  await sharp(Buffer.from(svg(0, 420))).png().toFile("/tmp/lead/z1.png");
  await sharp(Buffer.from(svg(1100, 700))).png().toFile("/tmp/lead/z2.png");
});
