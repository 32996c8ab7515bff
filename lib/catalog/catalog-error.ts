/** Everything that is wrong with the content, at once: which file, where in it, what stands there. */
export interface CatalogProblem {
  readonly file: string;
  /** Dotted, such as models.3.core.blend; empty for the whole file. */
  readonly path: string;
  readonly value: unknown;
  readonly message: string;
}

export class CatalogError extends Error {
  constructor(readonly problems: readonly CatalogProblem[]) {
    super(["The catalogue cannot be used:", ...problems.map(lineOf)].join("\n"));
    this.name = "CatalogError";
  }
}

function lineOf({ file, path, value, message }: CatalogProblem): string {
  const place = path === "" ? file : `${file} at ${path}`;
  return value === undefined ? `  ${place}: ${message}` : `  ${place}: ${message} (it is ${shown(value)})`;
}

function shown(value: unknown): string {
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 80 ? `${text.slice(0, 77)}…` : text;
}
