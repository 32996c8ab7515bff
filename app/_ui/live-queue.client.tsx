"use client";
/** Follows the queue: the page is read again when the queue changes, unless somebody is in the middle of something. */
import { useRouter } from "next/navigation";
import { useEffect, useState } from "react";
import words from "#content/copy/queue.json";
import { Button } from "./button";

const w = words.live;

/** A server that was away answers again after this long at the latest. */
const againMs = 3000;

/** True while a field on the page holds something typed or chosen, or a row is being dragged. */
function isTyping(): boolean {
  if (document.body.dataset.dragging !== undefined) return true;
  if (document.querySelector("main select[data-chosen]") !== null) return true;
  const fields = [...document.querySelectorAll<HTMLInputElement | HTMLTextAreaElement>("main input, main textarea")];
  return fields.some((field) => field.type !== "hidden" && field.value !== field.defaultValue);
}

/** A list's choice is marked when somebody makes it: its options move by themselves when the queue does. */
function markChoice({ target }: Event): void {
  if (target instanceof HTMLSelectElement) target.dataset.chosen = "";
}

export function LiveQueue({
  revision,
  isBusy = false,
  from = "/shop/queue/live",
}: {
  readonly revision: number;
  readonly isBusy?: boolean;
  /** Where the revisions come from. */
  readonly from?: string;
}) {
  const router = useRouter();
  const [state, setState] = useState<"off" | "live" | "again">("off");
  const [latest, setLatest] = useState(revision);
  useEffect(() => {
    let source: EventSource;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const follow = () => {
      source = new EventSource(from);
      source.addEventListener("open", () => setState("live"));
      source.addEventListener("revision", (event) => setLatest(Number((event as MessageEvent<string>).data)));
      source.addEventListener("error", () => {
        setState("again");
        // The browser tries again by itself, but not after an answer that was no stream.
        if (source.readyState === EventSource.CLOSED) timer = setTimeout(follow, againMs);
      });
    };
    follow();
    document.addEventListener("change", markChoice);
    return () => {
      document.removeEventListener("change", markChoice);
      clearTimeout(timer);
      source.close();
    };
  }, [from]);
  const isBehind = latest > revision;
  const mustAsk = isBehind && (isBusy || (typeof document !== "undefined" && isTyping()));
  useEffect(() => {
    // Both numbers: what changes while the page is being read again is read once more.
    if (latest > revision && !mustAsk) router.refresh();
  }, [latest, revision, mustAsk, router]);
  if (state === "off") return null;
  return (
    <p role="status" data-live={state} className="flex flex-wrap items-center gap-3 text-sm text-pencil">
      {state === "live" ? w.live : w.again}
      {mustAsk ? (
        <>
          <span className="text-amber">{w.changed}</span>
          <Button size="small" onClick={() => router.refresh()}>
            {w.show}
          </Button>
        </>
      ) : null}
    </p>
  );
}
