"use client";
import { useState } from "react";
import { fillingPlacement, printCanvas } from "#engine/configuration";
import { pairLook } from "#engine/scene";
import { roundForPeople } from "#engine/units";
import type { ArtworkView, RightsStatement } from "#services/views";
import { Button } from "../button";
import { RadioGroup } from "../choice-group";
import { TextField } from "../field";
import { moneyText } from "../money";
import { Notice } from "../notice";
import { fill } from "../words";
import type { GraphicPartProps, PictureActions } from "./graphic-parts";
import { PlacePicture } from "./place-picture.client";
import { UploadPicture } from "./upload-picture.client";
import type { SheetWords } from "./words";

/** The skier's own picture: sent, placed, and whose it is. */
export function OwnPicture({ sheet, catalog, words, pictures, spec, shape, set }: GraphicPartProps) {
  const rules = catalog.build.rules.print;
  const canvas = printCanvas(spec.graphic.layout, shape, rules);
  const arrived = (artwork: ArtworkView) => {
    const { artworkId, widthPx, heightPx, sha256 } = artwork;
    const taken = { id: artworkId as string, widthPx, heightPx, sha256 };
    set({ kind: "own", artwork: taken, placement: fillingPlacement(taken, canvas) });
  };
  const designer = moneyText(catalog.priceBook.optionCents["designer-hour"]?.cents ?? 0, "short");
  const artworkId = spec.graphic.artwork?.id;
  const look = pairLook(spec, catalog.build);
  return (
    <>
      <UploadPicture
        url={pictures.uploadUrl}
        words={words}
        hint={fill(words.graphic.uploadHint, {
          length: roundForPeople(canvas.lengthMm),
          width: roundForPeople(canvas.widthMm),
        })}
        onArrived={arrived}
      />
      {look ? (
        <PlacePicture
          look={look}
          pictureBase={pictures.pictureBase}
          spec={spec.graphic}
          rules={rules}
          words={words}
          designerRate={designer}
          onPlace={(placement) => set({ placement })}
        />
      ) : null}
      {artworkId ? (
        <Rights
          artworkId={artworkId}
          words={words}
          pictures={pictures}
          stated={sheet.view.artworks.find((each) => each.artworkId === artworkId)?.rights ?? null}
        />
      ) : null}
    </>
  );
}

function Rights({
  artworkId,
  words,
  pictures,
  stated,
}: {
  readonly artworkId: string;
  readonly words: SheetWords;
  readonly pictures: PictureActions;
  readonly stated: RightsStatement | null;
}) {
  const [basis, setBasis] = useState<RightsStatement["basis"] | undefined>(stated?.basis);
  const [name, setName] = useState(stated?.name ?? "");
  const [answer, setAnswer] = useState<{ readonly ok: boolean; readonly message: string } | null>(null);
  const w = words.graphic;
  const done = (by: string, why: RightsStatement["basis"]) => fill(w.rightsDone, { name: by, basis: w.rights[why] });
  const send = async () => {
    if (!basis || name.trim() === "") return setAnswer({ ok: false, message: w.rightsNote });
    const reply = await pictures.stateRights(artworkId, basis, name.trim());
    setAnswer({ ok: reply.ok, message: reply.ok ? done(name.trim(), basis) : (reply.message ?? "") });
  };
  return (
    <div className="grid gap-3 border-l-2 border-rule pl-4">
      <RadioGroup
        name="rights"
        label={w.rightsTitle}
        hint={w.rightsNote}
        layout="chips"
        choices={Object.entries(w.rights).map(([value, label]) => ({ value, label }))}
        value={basis}
        onChange={(value) => setBasis(value as RightsStatement["basis"])}
      />
      <TextField
        name="rightsName"
        label={w.rightsName}
        value={name}
        onChange={(event) => setName(event.target.value)}
      />
      <p>
        <Button onClick={send}>Confirm</Button>
      </p>
      {answer ? (
        <Notice tone={answer.ok ? "moss" : "amber"} title={answer.message} live="polite" />
      ) : stated ? (
        <Notice tone="moss" title={done(stated.name, stated.basis)} />
      ) : null}
    </div>
  );
}
