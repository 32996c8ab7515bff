"use client";
/** The number that nobody has asked for yet: the first thing of a call, with the cursor in it. */
import { useEffect, useRef, useState } from "react";
import { TextField } from "#app/_ui/field.tsx";
import { useSheetAround } from "#app/_ui/sheet/sheet-context.client.ts";
import type { CallWords } from "./words";

export function CallPhone({ words }: { readonly words: CallWords }) {
  const { sheet } = useSheetAround();
  // It stays as long as the page does, also once the number stands in it.
  const [isAsked] = useState(sheet.contact.phone === undefined);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.focus(), []);
  if (!isAsked) return null;
  return (
    <TextField
      ref={field}
      id="call-phone"
      name="callPhone"
      type="tel"
      dense
      label={words.phone}
      autoComplete="off"
      value={sheet.contact.phone ?? ""}
      error={sheet.errors["contact.phone"]}
      onChange={(event) => sheet.setContact("phone", event.target.value || undefined)}
    />
  );
}
