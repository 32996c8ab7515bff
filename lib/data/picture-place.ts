/** What a store of pictures does, and where each picture lies in it. */

export interface PictureStore {
  /** Resolves when the picture is kept. @throws Error when it is not */
  put(name: string, bytes: Uint8Array): Promise<void>;
  /** @throws Error when it is not there */
  get(name: string): Promise<Uint8Array>;
  /** Resolves when it is not there any more. */
  remove(name: string): Promise<void>;
}

/** Where a picture lies below its folder or bucket. @throws RangeError for what is no name of one */
export function keyOf(name: string): string {
  if (!/^[a-z0-9]{8,}[a-z0-9.-]*$/.test(name)) throw new RangeError(`"${name}" is no name of a picture`);
  return `${name.slice(0, 2)}/${name}`;
}
