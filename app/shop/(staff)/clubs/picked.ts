/** A ticked quote is a field of its own: this and the quote's id. */
export const pickedPrefix = "pick-";
