"use client";
/**
 * The skier's sheet as the desk works it on the telephone: every section open, keys to jump, the next question in sight,
 * and what somebody of the shop has to answer for.
 */
import { type ReactNode, useMemo, useState } from "react";
import { Sheet, type SheetProps } from "#app/_ui/sheet/sheet.client.tsx";
import { useSheetAround } from "#app/_ui/sheet/sheet-context.client.ts";
import type { AssessReply } from "#app/_ui/sheet/use-sheet.client.ts";
import type { FitFlag } from "#engine/fit";
import { CallFlags, CallNotes } from "./call-notes.client";
import { CallPen, isTheirs } from "./call-pen.client";
import { CallPhone } from "./call-phone.client";
import { NextQuestion } from "./next-question.client";
import { ShortcutKeys } from "./shortcuts.client";
import type { CallWords } from "./words";

interface CallActions extends Omit<SheetProps["actions"], "assess"> {
  readonly assess: () => Promise<{ readonly reply: AssessReply } & CallStops>;
}

/** Flags that stand, and codes of what stops the sale until an owner lets it go on. */
interface CallStops {
  readonly flags: readonly FitFlag[];
  readonly liftable: readonly string[];
}

export interface CallSheetProps {
  readonly sheet: Omit<SheetProps, "actions" | "dense" | "children" | "before" | "isReadOnly">;
  readonly actions: CallActions;
  readonly callWords: CallWords;
  readonly isOwner: boolean;
  /** The ends of the call. */
  readonly children?: ReactNode;
}

export function CallSheet({ sheet, actions, callWords, isOwner, children }: CallSheetProps) {
  const [stops, setStops] = useState<CallStops>({ flags: [], liftable: [] });
  const listening = useMemo(() => listen(actions, setStops), [actions]);
  return (
    <Sheet
      {...sheet}
      actions={listening}
      dense
      // Whoever only reads along changes nothing.
      isReadOnly={isTheirs}
      before={<CallHead words={callWords} />}
    >
      <CallNote stops={stops} words={callWords} isOwner={isOwner}>
        {children}
      </CallNote>
    </Sheet>
  );
}

function CallHead({ words }: { readonly words: CallWords }) {
  const around = useSheetAround();
  const isOpen = around.sheet.view.state === "open";
  return (
    <div className="grid w-full gap-2 py-3">
      <CallPen words={words} />
      <ShortcutKeys sections={around.words.sections} words={words} />
      {isOpen ? <NextQuestion words={words} /> : null}
      {isOpen ? <CallPhone words={words} /> : null}
    </div>
  );
}

function CallNote({
  stops,
  words,
  isOwner,
  children,
}: {
  readonly stops: CallStops;
  readonly words: CallWords;
  readonly isOwner: boolean;
  readonly children: ReactNode;
}) {
  const { view } = useSheetAround().sheet;
  return (
    <>
      <CallFlags {...stops} acks={view.flagAcks} sheetId={view.sheetId} words={words} isOwner={isOwner} />
      {view.state === "open" ? <CallNotes words={words} /> : null}
      {view.state === "open" ? children : null}
    </>
  );
}

/** The same actions, with an ear on what the server answers. */
function listen(actions: CallActions, setStops: (stops: CallStops) => void): SheetProps["actions"] {
  return {
    ...actions,
    assess: async () => {
      const { reply, ...stops } = await actions.assess();
      setStops(stops);
      return reply;
    },
  };
}
