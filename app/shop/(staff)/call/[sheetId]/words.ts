import type words from "#content/copy/shop.json";

export type CallWords = (typeof words)["call"];
