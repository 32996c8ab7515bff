"use client";
/**
 * Somebody is here: their typing and clicking is told now and then, so that nobody is signed out in the middle of a sentence,
 * and what they have typed is kept for the case that they are.
 */
import { usePathname, useSearchParams } from "next/navigation";
import { useEffect, useState } from "react";
import { Notice } from "#app/_ui/notice.tsx";
import { arrived, forgetTyped, keepTyped, markMoved, markSent, putBack } from "#app/_ui/typed.ts";
import words from "#content/copy/people.json";

/** Told at most this often; an idle end counts by minutes. */
const tellEveryMs = 60_000;
/** The storage is written when somebody pauses. */
const pauseMs = 300;

const w = words.typed;

export function Presence({ who }: { readonly who: string }) {
  const path = usePathname();
  const query = useSearchParams().toString();
  const at = query === "" ? path : `${path}?${query}`;
  const [isBack, setIsBack] = useState(false);
  useEffect(() => {
    let told = performance.now();
    const tell = () => {
      if (performance.now() - told < tellEveryMs) return;
      told = performance.now();
      // Whatever comes of it, the next page or form says it better.
      fetch("/shop/here", { method: "POST" }).catch(() => undefined);
    };
    const signs = ["keydown", "pointerdown", "input"] as const;
    for (const sign of signs) document.addEventListener(sign, tell, { capture: true, passive: true });
    return () => {
      for (const sign of signs) document.removeEventListener(sign, tell, { capture: true });
    };
  }, []);
  useEffect(() => {
    setIsBack(putBack(document, at, who, sessionStorage));
    markMoved(sessionStorage, at);
    let pause: ReturnType<typeof setTimeout> | undefined;
    const keep = () => {
      clearTimeout(pause);
      pause = setTimeout(() => keepTyped(document, at, who, sessionStorage), pauseMs);
    };
    const sent = () => {
      clearTimeout(pause);
      keepTyped(document, at, who, sessionStorage);
      markSent(sessionStorage);
    };
    const done = () => {
      forgetTyped(sessionStorage);
      setIsBack(false);
    };
    document.addEventListener("input", keep);
    document.addEventListener("change", keep);
    document.addEventListener("submit", sent, { capture: true });
    document.addEventListener(arrived, done);
    return () => {
      clearTimeout(pause);
      document.removeEventListener("input", keep);
      document.removeEventListener("change", keep);
      document.removeEventListener("submit", sent, { capture: true });
      document.removeEventListener(arrived, done);
    };
  }, [at, who]);
  return isBack ? (
    <div className="mx-auto w-full px-4 pt-6 sm:px-6">
      <Notice tone="info" title={w.title} live="polite">
        <p>{w.note}</p>
      </Notice>
    </div>
  ) : null;
}
