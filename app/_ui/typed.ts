/**
 * What somebody typed and had not sent when their sign-in ended. It waits in this tab's own storage, without passwords and
 * codes, and goes back into the form when the same person has signed in again.
 */

/** One page's fields, each under its name and its turn among those of that name. */
export interface Typed {
  /** Path and query of the page. */
  readonly page: string;
  /** Who typed: nobody else gets it back. */
  readonly who: string;
  readonly fields: Readonly<Record<string, string | boolean>>;
  /** A form of the page was sent since the last key. */
  readonly isSent: boolean;
}

const key = "pairwright-typed";
const away = "pairwright-typed-away";
/** A page told by one of its forms that what was sent has arrived. */
export const arrived = "pairwright-arrived";

export type Control = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement;

const secret = /passw|passcode|secret|token/i;

function isKept(control: Control): boolean {
  return (
    control.name !== "" &&
    !secret.test(control.name) &&
    !["hidden", "password", "file", "submit"].includes(control.type)
  );
}

function controlsOf(page: Document): readonly (readonly [string, Control])[] {
  const turns = new Map<string, number>();
  return [...page.querySelectorAll<Control>("main input, main textarea, main select")].filter(isKept).map((control) => {
    const turn = turns.get(control.name) ?? 0;
    turns.set(control.name, turn + 1);
    return [`${control.name} ${turn}`, control] as const;
  });
}

const isTick = (control: Control): control is HTMLInputElement =>
  control instanceof HTMLInputElement && (control.type === "checkbox" || control.type === "radio");

export function isChanged(control: Control): boolean {
  if (isTick(control)) return control.checked !== control.defaultChecked;
  if (control instanceof HTMLSelectElement) {
    // Without a choice of the page's own a list stands on its first.
    const options = [...control.options];
    const own = options.find((option) => option.hasAttribute("selected")) ?? options[0];
    return control.value !== own?.value;
  }
  return control.value !== control.defaultValue;
}

/** Keeps what stands in the page's fields otherwise than it came. */
export function keepTyped(page: Document, at: string, who: string, storage: Storage): void {
  const fields = Object.fromEntries(
    controlsOf(page).flatMap(([name, control]) =>
      isChanged(control) ? [[name, isTick(control) ? control.checked : control.value] as const] : [],
    ),
  );
  if (Object.keys(fields).length === 0) storage.removeItem(key);
  else storage.setItem(key, JSON.stringify({ page: at, who, fields, isSent: false } satisfies Typed));
}

export function readTyped(storage: Storage): Typed | null {
  try {
    return JSON.parse(storage.getItem(key) ?? "null") as Typed | null;
  } catch {
    return null;
  }
}

/** A form was sent: when another page comes next, it has arrived; when the sign-in comes, it has not. */
export function markSent(storage: Storage): void {
  const typed = readTyped(storage);
  if (typed !== null) storage.setItem(key, JSON.stringify({ ...typed, isSent: true }));
}

export function forgetTyped(storage: Storage): void {
  storage.removeItem(key);
  storage.removeItem(away);
}

/** The sign-in stands before the page now. @param isOut somebody signed out on purpose: nothing is kept for the next one */
export function markAway(storage: Storage, isOut: boolean): void {
  if (isOut) forgetTyped(storage);
  else if (readTyped(storage) !== null) storage.setItem(away, "yes");
}

/** Another page of the shop came, not the sign-in: what was sent before has arrived. */
export function markMoved(storage: Storage, at: string): void {
  const typed = readTyped(storage);
  if (typed?.isSent && typed.page !== at) forgetTyped(storage);
}

/**
 * After a sign-in: puts what was typed back into its fields, by the same events as if it were typed again.
 * @returns whether anything was put back
 */
export function putBack(page: Document, at: string, who: string, storage: Storage): boolean {
  const typed = readTyped(storage);
  if (storage.getItem(away) === null || typed === null) return false;
  if (typed.who !== who) {
    forgetTyped(storage);
    return false;
  }
  if (typed.page !== at) return false;
  let count = 0;
  for (const [name, control] of controlsOf(page)) {
    const value = typed.fields[name];
    if (value === undefined) continue;
    enter(control, value);
    count += 1;
  }
  storage.removeItem(away);
  return count > 0;
}

export const typedIn = (control: Control): string | boolean => (isTick(control) ? control.checked : control.value);

/** For a control that already holds the value: back to what the page came with, then the value as if it were typed. */
export function enterAgain(control: Control, value: string | boolean): void {
  if (isTick(control)) {
    control.checked = !value;
    control.click();
    return;
  }
  const line = isLine(control) ? control : null;
  const caret = [line?.selectionStart ?? null, line?.selectionEnd ?? null] as const;
  // Past React's own ear, which would take the value for known.
  if (!(control instanceof HTMLSelectElement)) control.value = control.defaultValue;
  enter(control, value);
  if (document.activeElement === line) line?.setSelectionRange(...caret);
}

const isLine = (control: Control): control is HTMLInputElement | HTMLTextAreaElement =>
  control instanceof HTMLTextAreaElement ||
  (control instanceof HTMLInputElement && ["text", "tel"].includes(control.type));

/** React hears of a value only when it is set as a browser sets it. */
function enter(control: Control, value: string | boolean): void {
  if (isTick(control)) {
    if (control.checked !== value) control.click();
    return;
  }
  const setter = Object.getOwnPropertyDescriptor(Object.getPrototypeOf(control), "value")?.set;
  setter?.call(control, String(value));
  control.dispatchEvent(new Event("input", { bubbles: true }));
  control.dispatchEvent(new Event("change", { bubbles: true }));
}
