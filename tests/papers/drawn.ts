/**
 * What a drawing puts on the paper, as shapes with their coordinates: components are called until only the primitives of the
 * PDF library are left. Nothing is laid out and no bytes are made.
 */
import { Fragment, isValidElement, type ReactNode } from "react";

export interface Shape {
  /** "LINE", "PATH", "RECT", "TEXT", "VIEW", "SVG", "G", "IMAGE". */
  readonly type: string;
  readonly props: Readonly<Record<string, unknown>>;
  /** Everything that is written in it. */
  readonly text: string;
}

/** A dimension as a drawing asks for it, before it is made of lines: `HDim` runs along x, `VDim` along y. */
export interface Dimension {
  readonly name: string;
  readonly from: number;
  readonly to: number;
  readonly text: string;
  readonly props: Readonly<Record<string, unknown>>;
}

type Component = (props: Readonly<Record<string, unknown>>) => ReactNode;
const isComponent = (type: unknown): type is Component => typeof type === "function";

interface Found {
  readonly shapes: Shape[];
  readonly dimensions: Dimension[];
}

function gather(node: ReactNode, found: Found): string {
  if (node === null || node === undefined || typeof node === "boolean") return "";
  if (Array.isArray(node)) return node.map((each: ReactNode) => gather(each, found)).join("");
  if (!isValidElement<Readonly<Record<string, unknown>>>(node)) return String(node);
  const { type, props } = node;
  const children = props.children as ReactNode;
  if (isComponent(type)) {
    if (type.name === "HDim") found.dimensions.push(dimension("HDim", props, "x1", "x2"));
    if (type.name === "VDim") found.dimensions.push(dimension("VDim", props, "y1", "y2"));
    return gather(type(props), found);
  }
  if ((type as unknown) === Fragment) return gather(children, found);
  const at = found.shapes.length;
  found.shapes.push({ type: String(type), props, text: "" });
  const text = gather(children, found);
  found.shapes[at] = { type: String(type), props, text };
  return text;
}

function dimension(name: string, props: Readonly<Record<string, unknown>>, from: string, to: string): Dimension {
  return { name, from: Number(props[from]), to: Number(props[to]), text: plain(String(props.text)), props };
}

const plain = (text: string) => text.replaceAll("\u00a0", " ");

export function drawn(node: ReactNode): {
  readonly shapes: readonly Shape[];
  readonly dimensions: readonly Dimension[];
} {
  const found: Found = { shapes: [], dimensions: [] };
  gather(node, found);
  return { ...found, shapes: found.shapes.map((shape) => ({ ...shape, text: plain(shape.text) })) };
}

/** Corners of a path of straight lines, as the pen goes. */
export function corners(path: unknown): readonly { readonly x: number; readonly y: number }[] {
  return [...String(path).matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map((m) => ({ x: Number(m[1]), y: Number(m[2]) }));
}

/** The named numbers of a shape, in that order. */
export function numbers(shape: Shape | undefined, ...names: readonly string[]): readonly number[] {
  return names.map((name) => Math.round(Number(shape?.props[name]) * 1e6) / 1e6);
}

export const ofType = (shapes: readonly Shape[], type: string) => shapes.filter((shape) => shape.type === type);

/** A text that is written, with the place it stands at. */
export function textAt(shapes: readonly Shape[], text: string): readonly number[] {
  return numbers(
    ofType(shapes, "TEXT").find((shape) => shape.text === text),
    "x",
    "y",
  );
}
