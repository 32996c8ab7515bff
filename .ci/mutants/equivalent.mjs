// Faults that change nothing anybody could see: judged by hand, one reason each, and few.

/** At most this share of what is planted may be set aside. */
export const largestShare = 0.03;

/** The entry that speaks of this fault: same file, same text of the line, same change. */
export function judgedEquivalent(entries, fault, source) {
  const line = source.split("\n")[fault.line - 1]?.trim();
  return entries.find((one) => one.file === fault.file && one.line === line && one.what === fault.what);
}

/** What is wrong with the list: entries without a reason, and entries whose line is no longer there. */
export function faultsOfList(entries, readSource) {
  return entries.flatMap((entry) => {
    const { file, line, what, reason } = entry;
    if (![file, line, what, reason].every((text) => typeof text === "string" && text !== ""))
      return [`an entry needs file, line, what and reason: ${JSON.stringify(entry)}`];
    const text = readSource(file);
    if (text === null) return [`${file}: there is no such file`];
    if (!text.split("\n").some((one) => one.trim() === line)) return [`${file}: no line reads "${line}"`];
    return [];
  });
}

/** How many of so many planted faults may be set aside. */
export function mostSetAside(planted) {
  return Math.floor(planted * largestShare);
}
