/**
 * What the shop's documents are made of. A document is pure: plain data in, PDF bytes out.
 *
 * Two steps, so that the pages and the command line print the same paper:
 *   facts (engine types, filled by a service or by the command line) → compose…() → …Data (plain, printable) → bytes.
 *
 * Units as everywhere: mm, N, MPa, g or kg, °C, minutes, integer cents. Days are `YYYY-MM-DD` in the shop's zone; clock
 * readings are the shop's own `YYYY-MM-DDTHH:mm`. Nothing here holds a binding's release value, a hole or a screw.
 */
export * from "./data";
export * from "./facts";
