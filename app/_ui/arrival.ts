/**
 * Where reading goes on when a page arrives with an answer: spread on a heading, a notice or a field. It is the browser's own
 * autofocus, so that it works without scripts; it is set only on what the person has just asked for.
 */
export const arrival = { tabIndex: -1, autoFocus: true } as const;
