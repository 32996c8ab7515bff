"use client";
/** The pair as it stands in the room: upright beside the sheet on a wide screen, raised from the bar on a narrow one. */
import { useEffect, useRef, useState } from "react";
import { SkiPair, SkiSideView } from "#app/_visuals/ski-drawing.tsx";
import { TurnablePair } from "#app/_visuals/turnable/turnable-pair.client.tsx";
import type { EngineCatalog } from "#engine/assessment";
import { Button } from "../button";
import { More } from "../section";
import type { DrawnPair } from "./drawn-pair.client";
import { PairNumbers } from "./pair-numbers";
import { ShareLook } from "./share-look.client";
import type { SheetState } from "./use-sheet.client";
import type { SheetWords } from "./words";

export interface StandingProps {
  readonly sheet: SheetState;
  readonly catalog: EngineCatalog;
  readonly words: SheetWords;
  readonly pictureBase: string;
  readonly pair: DrawnPair | null;
}

/** Both skis and the left one's side view on one axis, or the pair in space where it was asked for. */
function Figure({ pair, words, pictureBase, isComputing }: StandingProps & { readonly isComputing: boolean }) {
  const [isTurned, setTurned] = useState(false);
  if (!pair) return null;
  return (
    <>
      {isTurned ? (
        <TurnablePair look={pair.look} pictureBase={pictureBase} words={words.turn} />
      ) : (
        <div className={`flex min-h-0 flex-1 items-stretch justify-center gap-5 ${isComputing ? "opacity-70" : ""}`}>
          <SkiPair
            look={pair.look}
            pictureBase={pictureBase}
            orientation="upright"
            className="h-full min-h-0 max-w-full"
            description={`${words.preview}: ${pair.title}`}
          />
          <SkiSideView
            look={pair.look}
            orientation="upright"
            className="h-full min-h-0"
            description={words.stand.side}
          />
        </div>
      )}
      <p className="flex flex-none flex-wrap items-center gap-2">
        <Button size="small" aria-pressed={isTurned} onClick={() => setTurned(!isTurned)}>
          {isTurned ? words.turn.stop : words.turn.ask}
        </Button>
        <ShareLook spec={pair.spec} title={pair.title} words={words} />
      </p>
    </>
  );
}

function Told({ sheet, catalog, words, pair }: StandingProps) {
  if (!pair) return <p className="text-pencil">{words.stand.waiting}</p>;
  return (
    <>
      <p className="text-lg font-semibold">{pair.title}</p>
      <p className="min-h-12 text-base">{pair.feel}</p>
      <More summary={words.stand.numbers}>
        <PairNumbers sheet={sheet} catalog={catalog} words={words} pair={pair} />
      </More>
    </>
  );
}

/** The column beside the sheet; its place is kept from the start, so that nothing jumps when the pair arrives. */
export function StandingColumn(props: StandingProps) {
  return (
    <aside
      aria-label={props.words.stand.title}
      className="sticky top-0 hidden h-[calc(100svh-8.5rem)] flex-col gap-3 py-5 lg:flex"
    >
      <Figure {...props} isComputing={props.sheet.isComputing} />
      {props.pair ? null : <div className="min-h-0 flex-1 border border-dashed border-rule" />}
      <div className="flex-none">
        <Told {...props} />
      </div>
    </aside>
  );
}

/** The figure over the page; `arrived` is the once that the third answer earns it. */
export function RaisedPair(
  props: StandingProps & { readonly open: "no" | "asked" | "arrived"; readonly onClose: () => void },
) {
  const { words, open, onClose } = props;
  const box = useRef<HTMLDialogElement>(null);
  const goOn = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    const dialog = box.current;
    if (!dialog) return;
    if (open !== "no" && !dialog.open) {
      dialog.showModal();
      goOn.current?.focus();
    }
    if (open === "no" && dialog.open) dialog.close();
  }, [open]);
  const arrived = open === "arrived";
  return (
    <dialog
      ref={box}
      aria-label={words.stand.title}
      onClose={onClose}
      className="m-0 h-dvh max-h-none w-screen max-w-none bg-paper p-4 text-ink"
    >
      {open === "no" ? null : (
        <div className="mx-auto flex h-full max-w-measure flex-col gap-3">
          {arrived ? <h2 className="text-lg">{words.stand.arrived}</h2> : null}
          <Figure {...props} isComputing={false} />
          <div className="flex-none">
            <Told {...props} />
          </div>
          <p className="flex-none">
            <Button ref={goOn} tone="primary" onClick={onClose}>
              {arrived ? words.stand.goOn : words.stand.close}
            </Button>
          </p>
        </div>
      )}
    </dialog>
  );
}
