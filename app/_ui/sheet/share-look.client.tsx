"use client";
/** Passes the look of the pair on: by the device's own way of sharing, or as an address that is copied. */
import { useState } from "react";
import { type PairSpec, sharedLook } from "#engine/configuration";
import { Button } from "../button";
import type { SheetWords } from "./words";

export function ShareLook({
  spec,
  title,
  words,
}: {
  readonly spec: PairSpec;
  readonly title: string;
  readonly words: SheetWords;
}) {
  const [told, setTold] = useState("");
  const w = words.share;
  const share = async () => {
    const url = new URL(`/look?${sharedLook(spec)}`, location.href).href;
    try {
      if (navigator.share) {
        await navigator.share({ title, url });
        return;
      }
      await navigator.clipboard.writeText(url);
      setTold(w.copied);
    } catch (error) {
      // Who closes the device's own window has said no; anything else is told, with the address to take by hand.
      if (error instanceof DOMException && error.name === "AbortError") return;
      setTold(url);
    }
  };
  return (
    <>
      <Button size="small" onClick={share}>
        {w.ask}
      </Button>
      <span role="status" className="text-sm text-pencil [overflow-wrap:anywhere]">
        {told}
      </span>
    </>
  );
}
