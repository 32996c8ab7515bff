/** The body to be turned: few triangles, facing outwards, as wide, long and thick as the ski is cut. */
import { describe, expect, it } from "vitest";
import { halfWidthAt, profileHeightMm } from "#engine/geometry";
import { type MeshPart, modelLook, type PairLook, type PartMesh, skiMesh } from "#engine/scene";
import { catalog } from "../demo-catalog";

const { build } = catalog;
const looks = build.models.flatMap((model) => {
  const look = modelLook(model, build);
  return look ? [[model.id, look] as const] : [];
});

function partOf(look: PairLook, part: MeshPart): PartMesh {
  const mesh = skiMesh(look).find((each) => each.part === part);
  if (!mesh) throw new Error(`no ${part}`);
  return mesh;
}

const trianglesOf = (meshes: readonly PartMesh[]) => meshes.reduce((sum, { indices }) => sum + indices.length / 3, 0);

type V = readonly [number, number, number];
const at = (values: Float32Array, i: number): V => [values[3 * i] ?? 0, values[3 * i + 1] ?? 0, values[3 * i + 2] ?? 0];
const minus = (a: V, b: V): V => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross = (a: V, b: V): V => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const dot = (a: V, b: V) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

describe("a ski as a body", () => {
  it.each(looks)("%s: a pair stays under 30,000 triangles", (_id, look) => {
    expect(2 * trianglesOf(skiMesh(look))).toBeLessThan(30_000);
    expect(trianglesOf(skiMesh(look))).toBeGreaterThan(1000);
  });

  it.each(looks)("%s: every triangle faces the way its normals point", (_id, look) => {
    for (const { positions, normals, indices } of skiMesh(look)) {
      for (let i = 0; i < indices.length; i += 3) {
        const [a, b, c] = [indices[i] ?? 0, indices[i + 1] ?? 0, indices[i + 2] ?? 0];
        const face = cross(minus(at(positions, b), at(positions, a)), minus(at(positions, c), at(positions, a)));
        // Nothing to face where the tip closes to a point.
        if (Math.hypot(...face) < 0.05) continue;
        expect(dot(face, at(normals, a))).toBeGreaterThan(0);
      }
    }
  });

  it("is as wide as the outline and lies on the profile", () => {
    const [, look] = looks[0] ?? [];
    if (!look) throw new Error("no model");
    const { positions, uvs } = partOf(look, "base");
    for (let i = 0; i < positions.length / 3; i += 7) {
      const xMm = (uvs[2 * i + 1] ?? 0) * look.shape.lengthMm;
      expect(positions[3 * i]).toBeCloseTo(halfWidthAt(look.shape, Math.min(look.shape.lengthMm, xMm)), 2);
      expect(positions[3 * i + 2]).toBeCloseTo(
        profileHeightMm(look.shape, Math.min(look.shape.lengthMm, xMm), "free"),
        2,
      );
    }
  });

  it("carries normals of length one", () => {
    for (const [, look] of looks) {
      for (const { normals } of skiMesh(look)) {
        for (let i = 0; i < normals.length / 3; i++) expect(Math.hypot(...at(normals, i))).toBeCloseTo(1, 5);
      }
    }
  });
});
