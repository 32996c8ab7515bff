/**
 * A pair in space: the engine's bodies lit from one side, drawn again only when something moved. Loaded on demand; the one
 * place that knows the 3-D library.
 */
import {
  BufferAttribute,
  BufferGeometry,
  CanvasTexture,
  DirectionalLight,
  Group,
  HemisphereLight,
  Mesh,
  MeshStandardMaterial,
  PerspectiveCamera,
  Scene,
  SRGBColorSpace,
  WebGLRenderer,
} from "three";
import type { MeshPart, PartMesh, SkiSide } from "#engine/scene";

export interface SkiBody {
  readonly side: SkiSide;
  readonly meshes: readonly PartMesh[];
  /** The topsheet's picture, upright, tip at the top. */
  readonly top: HTMLCanvasElement;
  readonly base: string;
  /** Where its centre line lies, mm across. */
  readonly acrossMm: number;
}

/** How the pair is held: turned about its long axis, tilted towards the eye, seen from so far. */
export interface Pose {
  readonly turnDeg: number;
  readonly tiltDeg: number;
  /** 1 shows the whole pair. */
  readonly zoom: number;
}

export interface Stage {
  readonly show: (pose: Pose) => void;
  readonly resize: () => void;
  readonly end: () => void;
}

const viewDeg = 24;
const looks: Readonly<
  Record<Exclude<MeshPart, "top" | "base">, { readonly colour: string; readonly rough: number; readonly metal: number }>
> = {
  wall: { colour: "#24282c", rough: 0.7, metal: 0 },
  steel: { colour: "#9aa2a6", rough: 0.35, metal: 0.8 },
};

/** @throws Error when the browser has no WebGL */
export function openStage(canvas: HTMLCanvasElement, bodies: readonly SkiBody[], lengthMm: number): Stage {
  const renderer = new WebGLRenderer({ canvas, alpha: true, antialias: true });
  const scene = new Scene();
  const pair = new Group();
  const ends: (() => void)[] = [];
  for (const body of bodies) pair.add(skiOf(body, lengthMm, ends));
  scene.add(pair, new HemisphereLight("#fffdf6", "#8c857a", 1.6));
  const sun = new DirectionalLight("#fff6e6", 2.2);
  sun.position.set(-0.7, 0.5, 0.9);
  scene.add(sun);
  const camera = new PerspectiveCamera(viewDeg, 1, 10, 50_000);
  let last: Pose = { turnDeg: 0, tiltDeg: 0, zoom: 1 };
  const show = (pose: Pose) => {
    last = pose;
    pair.rotation.set((-pose.tiltDeg * Math.PI) / 180, (pose.turnDeg * Math.PI) / 180, 0, "XYZ");
    camera.position.set(0, 0, (lengthMm * 0.53) / Math.tan((viewDeg / 2 / 180) * Math.PI) / pose.zoom);
    renderer.render(scene, camera);
  };
  const resize = () => {
    const { clientWidth, clientHeight } = canvas;
    renderer.setPixelRatio(Math.min(2, devicePixelRatio));
    renderer.setSize(clientWidth, clientHeight, false);
    camera.aspect = clientWidth / Math.max(1, clientHeight);
    camera.updateProjectionMatrix();
    show(last);
  };
  resize();
  return {
    show,
    resize,
    end: () => {
      for (const end of ends) end();
      renderer.dispose();
    },
  };
}

/** Tip up: the engine's y from the tip becomes height. */
function skiOf({ meshes, top, base, acrossMm }: SkiBody, lengthMm: number, ends: (() => void)[]): Group {
  const ski = new Group();
  for (const { part, positions, normals, uvs, indices } of meshes) {
    const geometry = new BufferGeometry();
    geometry.setAttribute("position", new BufferAttribute(stood(positions, lengthMm / 2), 3));
    geometry.setAttribute("normal", new BufferAttribute(stood(normals, 0), 3));
    geometry.setAttribute("uv", new BufferAttribute(upward(uvs), 2));
    geometry.setIndex(new BufferAttribute(mirrored(indices), 1));
    const material = materialOf(part, top, base);
    ends.push(() => {
      material.map?.dispose();
      material.dispose();
      geometry.dispose();
    });
    ski.add(new Mesh(geometry, material));
  }
  ski.position.x = acrossMm;
  return ski;
}

function materialOf(part: MeshPart, top: HTMLCanvasElement, base: string): MeshStandardMaterial {
  if (part === "top") {
    const map = new CanvasTexture(top);
    map.colorSpace = SRGBColorSpace;
    map.anisotropy = 8;
    return new MeshStandardMaterial({ map, roughness: 0.42 });
  }
  if (part === "base") return new MeshStandardMaterial({ color: base, roughness: 0.55 });
  const { colour, rough, metal } = looks[part];
  return new MeshStandardMaterial({ color: colour, roughness: rough, metalness: metal });
}

/** x, from the tip, up → x, height, towards the eye. */
function stood(points: Float32Array, middleMm: number): Float32Array {
  const out = new Float32Array(points.length);
  for (let i = 0; i < points.length; i += 3) {
    out[i] = points[i] ?? 0;
    out[i + 1] = middleMm - (points[i + 1] ?? 0);
    out[i + 2] = points[i + 2] ?? 0;
  }
  return out;
}

/** Standing the ski up mirrors it, which turns its triangles round. */
function mirrored(indices: Uint16Array): Uint16Array {
  return indices.map((_, i) => indices[i % 3 === 0 ? i : i % 3 === 1 ? i + 1 : i - 1] ?? 0);
}

/** The library's v grows upwards, ours from the tip down. */
function upward(uvs: Float32Array): Float32Array {
  return uvs.map((value, i) => (i % 2 === 1 ? 1 - value : value));
}
