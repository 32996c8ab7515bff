/** Months as the promises name them: "2026-11". */
import { dayText } from "#app/_ui/date-range.tsx";

/** "November 2026" */
export const monthText = (month: string): string => dayText(`${month}-01`).replace(/^\d+ /, "");

/** "Nov 26" */
export const shortMonth = (month: string): string => monthText(month).replace(/^(\w{3})\w* \d\d/, "$1 ");
