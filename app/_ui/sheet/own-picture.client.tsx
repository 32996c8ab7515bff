"use client";
import { useMemo, useRef, useState } from "react";
import {
  type Artwork,
  fillingPlacement,
  firstOffer,
  type GraphicSpec,
  type PicturePrint,
  pictureOffers,
  picturePrint,
  printCanvas,
} from "#engine/configuration";
import { pairLook } from "#engine/scene";
import { roundForPeople } from "#engine/units";
import type { ArtworkView, RightsStatement } from "#services/views";
import { Button } from "../button";
import { RadioGroup } from "../choice-group";
import { TextField } from "../field";
import { moneyText } from "../money";
import { Notice } from "../notice";
import { fill } from "../words";
import { ArrangePicture, wholeDpi } from "./arrange-picture.client";
import type { GraphicPartProps, PictureActions } from "./graphic-parts";
import { KeepReadable } from "./keep-readable.client";
import { PlacePicture } from "./place-picture.client";
import { rimColour } from "./rim-colour.client";
import { TrueSize } from "./true-size.client";
import { UploadPicture } from "./upload-picture.client";
import type { SheetWords } from "./words";

/** The skier's own picture: sent, laid out, and whose it is. */
export function OwnPicture(props: GraphicPartProps) {
  const { sheet, catalog, words, pictures, spec, shape, set } = props;
  const { graphic, mount } = spec;
  const rules = catalog.build.rules.print;
  const canvas = printCanvas(graphic.layout, shape, rules);
  // What is chosen while a picture is under way stays.
  const latest = useRef(props);
  latest.current = props;
  const arrived = async ({ artworkId, widthPx, heightPx, sha256 }: ArtworkView) => {
    const artwork = { id: artworkId as string, widthPx, heightPx, sha256 };
    const ground = await rimColour(`${pictures.pictureBase}/${artwork.id}`);
    latest.current.sheet.setChoices({ graphic: withPicture(latest.current, artwork, ground) });
  };
  const look = useMemo(() => pairLook(spec, catalog.build), [spec, catalog.build]);
  const { artwork } = graphic;
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
      {look && artwork ? (
        <>
          <ArrangePicture {...props} artwork={artwork} look={look} />
          <PrintVerdict
            print={picturePrint(artwork, graphic, { shape, mountOffsetMm: mount.offsetMm }, rules)}
            hasGround={graphic.ground !== undefined}
            catalog={catalog}
            words={words}
          />
          {(graphic.arrangement ?? "fill") === "fill" ? (
            <PlacePicture
              look={look}
              pictureBase={pictures.pictureBase}
              spec={{ ...graphic, placement: graphic.placement ?? fillingPlacement(artwork, canvas) }}
              rules={rules}
              words={words}
              onPlace={(placement) => set({ placement })}
            />
          ) : null}
          <TrueSize look={look} pictureBase={pictures.pictureBase} words={words} />
          {graphic.layout === "mirrored" ? (
            <KeepReadable
              address={`${pictures.pictureBase}/${artwork.id}`}
              part={graphic.unmirrored}
              words={words}
              onChange={(unmirrored) => {
                const { unmirrored: _, ...rest } = graphic;
                sheet.setChoices({ graphic: unmirrored ? { ...rest, unmirrored } : rest });
              }}
            />
          ) : null}
        </>
      ) : null}
      {artwork ? (
        <Rights
          artworkId={artwork.id}
          words={words}
          pictures={pictures}
          stated={sheet.view.artworks.find((each) => each.artworkId === artwork.id)?.rights ?? null}
        />
      ) : null}
    </>
  );
}

/** A new picture begins with the first arrangement that prints; what belonged to an older picture goes. */
function withPicture({ spec, shape, catalog }: GraphicPartProps, artwork: Artwork, ground: string): GraphicSpec {
  const { layout: was, house, text, windows } = spec.graphic;
  const { print } = catalog.build.rules;
  const layout = was === "alternate" || was === "independent" ? "same" : was;
  const kept = { ...(house ? { house } : {}), ...(text ? { text } : {}), windows };
  const fresh: GraphicSpec = { ...kept, kind: "own", layout, artwork, ground };
  const offers = pictureOffers(artwork, fresh, { shape, mountOffsetMm: spec.mount.offsetMm }, print);
  const first = firstOffer(offers);
  const placement = fillingPlacement(artwork, printCanvas(layout, shape, print));
  return { ...fresh, placement, ...(first ? { arrangement: first.arrangement, layout: first.layout } : {}) };
}

const verdicts = { ok: "good", warn: "careful", block: "wrong" } as const;
const tones = { ok: "moss", warn: "amber", block: "iron" } as const;

function PrintVerdict({
  print: { verdict, effectiveDpi, coversCanvas },
  hasGround,
  catalog,
  words,
}: {
  readonly print: PicturePrint;
  readonly hasGround: boolean;
  readonly catalog: GraphicPartProps["catalog"];
  readonly words: SheetWords;
}) {
  const rate = moneyText(catalog.priceBook.optionCents["designer-hour"]?.cents ?? 0, "short");
  return (
    <Notice
      tone={tones[verdict]}
      title={fill(words.graphic.verdicts[verdicts[verdict]], { dpi: wholeDpi(effectiveDpi), rate })}
      live="polite"
    >
      {coversCanvas ? null : <p>{hasGround ? words.graphic.onGround : words.graphic.uncovered}</p>}
    </Notice>
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
