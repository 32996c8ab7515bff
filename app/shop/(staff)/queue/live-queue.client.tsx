"use client";
/** Follows the queue: the page is read again when the queue changes, unless somebody is in the middle of something. */
import { useRouter } from "next/navigation";
import { useEffect, useState } from "react";
import { Button } from "@/app/_ui/button";
import words from "@/content/copy/queue.json";

const w = words.live;

/** True while a field on the page holds something typed. */
function isTyping(): boolean {
  return [...document.querySelectorAll<HTMLInputElement | HTMLTextAreaElement>("main input, main textarea")].some(
    (field) => field.type !== "hidden" && field.type !== "search" && field.value !== field.defaultValue,
  );
}

export function LiveQueue({ revision, isBusy = false }: { readonly revision: number; readonly isBusy?: boolean }) {
  const router = useRouter();
  const [state, setState] = useState<"off" | "live" | "again">("off");
  const [latest, setLatest] = useState(revision);
  useEffect(() => {
    const source = new EventSource("/shop/queue/live");
    source.addEventListener("open", () => setState("live"));
    source.addEventListener("error", () => setState("again"));
    source.addEventListener("revision", (event) => setLatest(Number((event as MessageEvent<string>).data)));
    return () => source.close();
  }, []);
  const isBehind = latest > revision;
  const mustAsk = isBehind && (isBusy || (typeof document !== "undefined" && isTyping()));
  useEffect(() => {
    if (isBehind && !mustAsk) router.refresh();
  }, [isBehind, mustAsk, router]);
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
