/**
 * A component operated as a person does: typed into, clicked, moved with keys. For test files that say
 * `// @vitest-environment happy-dom`; the timers are the test's own.
 */
import { act, type ReactNode } from "react";
import { createRoot } from "react-dom/client";
import { onTestFinished, vi } from "vitest";
import { type Reading, reading, words } from "./page-reading";
import { keepSound } from "./page-sound";

declare global {
  var IS_REACT_ACT_ENVIRONMENT: boolean;
}

export interface Operated {
  /** What is on the page now. */
  readonly seen: Reading;
  /** Types into the control of this name, as it stands after it. */
  type(name: string, text: string): Promise<void>;
  leave(name: string): Promise<void>;
  /** Picks a radio, ticks a box, or chooses in a list. */
  choose(name: string, value: string): Promise<void>;
  press(button: string): Promise<void>;
  key(selector: string, key: string): Promise<void>;
  /** Sends any event to an element. */
  send(selector: string, event: Event): Promise<void>;
  /** Opens or closes a disclosure by the words of its summary. */
  open(summary: string): Promise<void>;
  wait(ms: number): Promise<void>;
  draw(element: ReactNode): Promise<void>;
  value(name: string): string;
}

/** Time stands still except in `wait`. */
export async function operate(element: ReactNode): Promise<Operated> {
  globalThis.IS_REACT_ACT_ENVIRONMENT = true;
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout", "setInterval", "clearInterval", "requestAnimationFrame"] });
  const place = document.body.appendChild(document.createElement("div"));
  const root = createRoot(place);
  const draw = (each: ReactNode) => act(async () => root.render(each));
  onTestFinished(async () => {
    keepSound(place);
    await act(async () => root.unmount());
    place.remove();
    vi.useRealTimers();
  });
  const one = (selector: string): HTMLElement => {
    const found = place.querySelector<HTMLElement>(selector);
    if (!found) throw new Error(`nothing like ${selector}`);
    return found;
  };
  const named = (name: string) => one(`[name="${name}"]`) as HTMLInputElement;
  const fire = (target: Element, event: Event) => act(async () => void target.dispatchEvent(event));
  /** React listens to the setter of the element's own class, not to a value set past it. */
  const put = (target: HTMLInputElement | HTMLSelectElement, value: string) => {
    const set = Object.getOwnPropertyDescriptor(Object.getPrototypeOf(target), "value")?.set;
    set?.call(target, value);
  };
  await draw(element);
  keepSound(place);
  return {
    get seen() {
      return reading(place);
    },
    async type(name, text) {
      const target = named(name);
      put(target, text);
      await fire(target, new Event("input", { bubbles: true }));
    },
    leave: (name) => fire(named(name), new FocusEvent("focusout", { bubbles: true })),
    async choose(name, value) {
      const list = place.querySelector<HTMLSelectElement>(`select[name="${name}"]`);
      if (list) {
        put(list, value);
        await fire(list, new Event("change", { bubbles: true }));
      } else await act(async () => (one(`[name="${name}"][value="${value}"]`) as HTMLInputElement).click());
    },
    async press(button) {
      const found = [...place.querySelectorAll("button, input[type=checkbox]")].find(
        (each) => words(each) === button || each.getAttribute("name") === button,
      );
      if (!found) throw new Error(`no button "${button}"`);
      await act(async () => (found as HTMLElement).click());
    },
    key: (selector, key) => fire(one(selector), new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true })),
    send: (selector, event) => fire(one(selector), event),
    async open(summary) {
      const found = [...place.querySelectorAll("summary")].find((each) => words(each) === summary)?.parentElement;
      if (!found) throw new Error(`no summary "${summary}"`);
      (found as HTMLDetailsElement).open = true;
      await fire(found, new Event("toggle"));
    },
    wait: (ms) => act(async () => void (await vi.advanceTimersByTimeAsync(ms))),
    draw,
    value: (name) => named(name).value,
  };
}
