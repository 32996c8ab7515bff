"use client";
/**
 * The skier's sheet as the desk works it on the telephone: every section open, keys to jump, the next question in sight,
 * and what somebody of the shop has to answer for.
 */
import { type ReactNode, useMemo, useState } from "react";
import { Sheet, type SheetProps } from "#app/_ui/sheet/sheet.client.tsx";
import type { AssessReply, SheetActions } from "#app/_ui/sheet/use-sheet.client.ts";
import type { FitFlag } from "#engine/fit";
import type { SheetView } from "#services/views";
import { CallFlags, CallNotes } from "./call-notes.client";
import { NextQuestion } from "./next-question.client";
import { ShortcutKeys } from "./shortcuts.client";
import type { CallWords } from "./words";

interface CallActions extends Omit<SheetActions, "assess"> {
  readonly assess: () => Promise<{ readonly reply: AssessReply } & CallStops>;
  readonly quote: SheetProps["actions"]["quote"];
  readonly ask: SheetProps["actions"]["ask"];
}

/** Flags that stand, and codes of what stops the sale until an owner lets it go on. */
interface CallStops {
  readonly flags: readonly FitFlag[];
  readonly liftable: readonly string[];
}

export interface CallSheetProps {
  readonly sheet: Omit<SheetProps, "actions" | "dense" | "children">;
  readonly actions: CallActions;
  readonly callWords: CallWords;
  readonly isOwner: boolean;
  /** The ends of the call. */
  readonly children?: ReactNode;
}

export function CallSheet({ sheet, actions, callWords, isOwner, children }: CallSheetProps) {
  const [saved, setSaved] = useState<SheetView>(sheet.initial);
  const [stops, setStops] = useState<CallStops>({ flags: [], liftable: [] });
  const listening = useMemo(() => listen(actions, setSaved, setStops), [actions]);
  // What the page read anew (an acknowledged flag, a call back) counts when it is the newer one.
  const view = sheet.initial.version > saved.version ? sheet.initial : saved;
  const acks = sheet.initial.flagAcks.length >= view.flagAcks.length ? sheet.initial.flagAcks : view.flagAcks;
  return (
    <>
      <div className="mx-auto grid w-full max-w-page gap-2 px-4 py-3 sm:px-6">
        <ShortcutKeys sections={sheet.words.sections} words={callWords} />
        {view.state === "open" ? <NextQuestion view={view} words={callWords} save={listening.save} /> : null}
      </div>
      <Sheet {...sheet} actions={listening} dense>
        <CallFlags {...stops} acks={acks} sheetId={view.sheetId} words={callWords} isOwner={isOwner} />
        {view.state === "open" ? <CallNotes view={view} words={callWords} save={listening.save} /> : null}
        {children}
      </Sheet>
    </>
  );
}

/** The same actions, with an ear on what the server answers. */
function listen(
  actions: CallActions,
  setSaved: (view: SheetView) => void,
  setStops: (stops: CallStops) => void,
): SheetProps["actions"] {
  return {
    ...actions,
    save: async (patch, baseVersion) => {
      const reply = await actions.save(patch, baseVersion);
      if (reply.ok) setSaved(reply.sheet);
      return reply;
    },
    assess: async () => {
      const { reply, ...stops } = await actions.assess();
      setStops(stops);
      return reply;
    },
  };
}
