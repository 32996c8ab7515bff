/** Ids that read well in a failure: pair-1, pair-2, … */
export function countingIds(prefix = "id"): () => string {
  let last = 0;
  return () => {
    last += 1;
    return `${prefix}-${last}`;
  };
}
