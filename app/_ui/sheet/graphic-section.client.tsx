"use client";
import { useState } from "react";
import type { EngineCatalog } from "../../../lib/engine/assessment";
import { fillingPlacement, type GraphicSpec, type PairSpec, printCanvas } from "../../../lib/engine/configuration";
import { mountLineMm, type SkiShape, shapeAtLength } from "../../../lib/engine/geometry";
import { roundForPeople } from "../../../lib/engine/units";
import type { ArtworkView, RightsStatement } from "../../../lib/services/views";
import { HousePattern } from "../../_visuals/house-pattern";
import { drawnBase, drawnGraphic } from "../../_visuals/pair-figure";
import { SkiPair } from "../../_visuals/ski-drawing";
import { Button } from "../button";
import { RadioGroup } from "../choice-group";
import { CheckboxField, SelectField, TextField } from "../field";
import { moneyChangeText, moneyText } from "../money";
import { Notice } from "../notice";
import { SliderField } from "../slider-field.client";
import { fill } from "../words";
import { PlacePicture } from "./place-picture.client";
import { UploadPicture } from "./upload-picture.client";
import type { SheetState } from "./use-sheet.client";
import type { SheetWords } from "./words";

export interface PictureActions {
  readonly uploadUrl: string;
  /** The picture is at this address, a slash and its id. */
  readonly pictureBase: string;
  readonly stateRights: (
    artworkId: string,
    basis: RightsStatement["basis"],
    name: string,
  ) => Promise<{ readonly ok: boolean; readonly message?: string }>;
}

interface Props {
  readonly sheet: SheetState;
  readonly catalog: EngineCatalog;
  readonly words: SheetWords;
  readonly pictures: PictureActions;
}

export function GraphicSection({ sheet, catalog, words, pictures }: Props) {
  const spec = sheet.spec;
  const model = catalog.build.models.find((each) => each.id === spec?.model);
  if (!spec || !model) return <p className="text-pencil">{words.ski.empty}</p>;
  const shape = shapeAtLength(model.shape, spec.lengthCm);
  const set = (part: Partial<GraphicSpec>) => sheet.setChoices({ graphic: { ...spec.graphic, ...part } });
  const shared = { sheet, catalog, words, pictures, spec, shape, set };
  return (
    <>
      <RadioGroup
        name="graphicKind"
        label={words.graphic.kind}
        layout="chips"
        choices={[
          { value: "house", label: words.graphic.house },
          { value: "own", label: `${words.graphic.own}, ${optionPrice(catalog, "graphic-own")}` },
        ]}
        value={spec.graphic.kind}
        onChange={(kind) => set(kind === "own" ? { kind: "own" } : { kind: "house", house: houseOf(spec, catalog) })}
      />
      {spec.graphic.kind === "house" ? <House {...shared} /> : <Own {...shared} />}
      <Layout {...shared} />
      <Lettering {...shared} />
      <Window {...shared} />
      <Base {...shared} />
    </>
  );
}

interface Part extends Props {
  readonly spec: PairSpec;
  readonly shape: SkiShape;
  readonly set: (part: Partial<GraphicSpec>) => void;
}

function optionPrice(catalog: EngineCatalog, code: string): string {
  return moneyChangeText(catalog.priceBook.optionCents[code]?.cents ?? 0);
}

function houseOf(spec: PairSpec, catalog: EngineCatalog): string {
  return spec.graphic.house ?? catalog.build.houseGraphics[0]?.id ?? "";
}

function House({ catalog, words, spec, set }: Part) {
  return (
    <RadioGroup
      name="house"
      label={words.graphic.houseLabel}
      choices={catalog.build.houseGraphics.map((graphic) => ({
        value: graphic.id,
        label: (
          <span className="flex flex-wrap items-center gap-x-4">
            <svg viewBox="0 0 300 60" className="h-10 w-50 max-w-full flex-none border border-rule" aria-hidden="true">
              <g transform="translate(0 30) rotate(-90)">
                <HousePattern graphic={graphic} area={{ lengthMm: 300, reachMm: 30 }} />
              </g>
            </svg>
            {graphic.label}
          </span>
        ),
      }))}
      value={spec.graphic.house}
      onChange={(house) => set({ house })}
    />
  );
}

function Own({ sheet, catalog, words, pictures, spec, shape, set }: Part) {
  const rules = catalog.build.rules.print;
  const canvas = printCanvas(spec.graphic.layout, shape, rules);
  const arrived = (artwork: ArtworkView) => {
    const { artworkId, widthPx, heightPx, sha256 } = artwork;
    const taken = { id: artworkId as string, widthPx, heightPx, sha256 };
    set({ kind: "own", artwork: taken, placement: fillingPlacement(taken, canvas) });
  };
  const designer = moneyText(catalog.priceBook.optionCents["designer-hour"]?.cents ?? 0, "short");
  const artworkId = spec.graphic.artwork?.id;
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
      <PlacePicture
        shape={shape}
        mountMm={mountLineMm(shape, spec.mount.offsetMm)}
        spec={spec.graphic}
        graphic={drawnGraphic(spec, catalog.build, pictures.pictureBase)}
        rules={rules}
        words={words}
        designerRate={designer}
        onPlace={(placement) => set({ placement })}
      />
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

function Layout({ words, spec, set, catalog, shape }: Part) {
  const isOwn = spec.graphic.kind === "own";
  const layouts = Object.entries(words.graphic.layouts).filter(([value]) => !(isOwn && value === "alternate"));
  const change = (layout: GraphicSpec["layout"]) => {
    const { artwork } = spec.graphic;
    const crosses = (layout === "continuing") !== (spec.graphic.layout === "continuing");
    // One ski's canvas and the pair's differ too much for one placement to serve both.
    const placement =
      artwork && crosses
        ? fillingPlacement(artwork, printCanvas(layout, shape, catalog.build.rules.print))
        : spec.graphic.placement;
    set({ layout, ...(placement ? { placement } : {}) });
  };
  return (
    <RadioGroup
      name="layout"
      label={words.graphic.layout}
      choices={layouts.map(([value, text]) => ({
        value,
        label: text.label,
        detail: text.detail,
        ...(isOwn && value === "continuing" ? { aside: optionPrice(catalog, "graphic-own-pair") } : {}),
      }))}
      value={spec.graphic.layout}
      onChange={(value) => change(value as GraphicSpec["layout"])}
    />
  );
}

function Lettering({ words, spec, shape, set, sheet }: Part) {
  const text = spec.graphic.text;
  const [draft, setDraft] = useState(text?.text ?? "");
  const w = words.graphic;
  const start = { xMm: Math.round(shape.tipLengthMm + 230), capHeightMm: 28 };
  return (
    <div className="grid gap-4">
      <TextField
        name="lettering"
        label={w.text}
        optional
        hint={w.textHint}
        maxLength={60}
        value={draft}
        error={sheet.errors["choices.graphic"]}
        onChange={(event) => {
          const next = event.target.value;
          setDraft(next);
          if (next.trim() === "") sheet.setChoices({ graphic: withoutText(spec.graphic) });
          else set({ text: { ...start, ...text, text: next } });
        }}
      />
      {text ? (
        <>
          <SliderField
            name="textAt"
            label={w.textAt}
            min={0}
            max={Math.round(shape.lengthMm)}
            step={5}
            unit="mm"
            value={Math.min(text.xMm, shape.lengthMm)}
            onChange={(xMm) => set({ text: { ...text, xMm } })}
          />
          <SliderField
            name="textCap"
            label={w.textCap}
            min={8}
            max={60}
            step={1}
            unit="mm"
            value={text.capHeightMm}
            onChange={(capHeightMm) => set({ text: { ...text, capHeightMm } })}
          />
        </>
      ) : null}
    </div>
  );
}

function withoutText(graphic: GraphicSpec): GraphicSpec {
  const { text: _text, ...rest } = graphic;
  return rest;
}

function Window({ words, spec, shape, set, catalog }: Part) {
  const rules = catalog.build.rules.print;
  const first = spec.graphic.windows[0];
  const half = Math.floor(shape.waistWidthMm / 2 - rules.windowFromEdgeMm);
  const fresh = {
    fromXMm: Math.round(shape.tipLengthMm + 120),
    toXMm: Math.round(shape.tipLengthMm + 420),
    halfWidthMm: Math.min(22, half),
  };
  const change = (part: Partial<typeof fresh>) => set({ windows: [{ ...fresh, ...first, ...part }] });
  return (
    <div className="grid gap-4">
      <CheckboxField
        name="window"
        label={words.graphic.window}
        checked={first !== undefined}
        onChange={(event) => set({ windows: event.target.checked ? [fresh] : [] })}
      />
      {first ? (
        <>
          <SliderField
            name="windowFrom"
            label={words.graphic.windowFrom}
            min={0}
            max={Math.round(shape.lengthMm)}
            step={5}
            unit="mm"
            value={first.fromXMm}
            onChange={(fromXMm) => change({ fromXMm, toXMm: Math.max(first.toXMm, fromXMm + rules.windowLeastMm) })}
          />
          <SliderField
            name="windowTo"
            label={words.graphic.windowTo}
            min={0}
            max={Math.round(shape.lengthMm)}
            step={5}
            unit="mm"
            value={first.toXMm}
            onChange={(toXMm) => change({ toXMm, fromXMm: Math.min(first.fromXMm, toXMm - rules.windowLeastMm) })}
          />
          <SliderField
            name="windowHalf"
            label={words.graphic.windowHalf}
            min={Math.ceil(rules.windowLeastMm / 2)}
            max={Math.max(half, Math.ceil(rules.windowLeastMm / 2))}
            step={1}
            unit="mm"
            value={first.halfWidthMm}
            onChange={(halfWidthMm) => change({ halfWidthMm })}
          />
        </>
      ) : null}
    </div>
  );
}

function Base({ words, spec, shape, catalog, sheet }: Part) {
  const w = words.graphic;
  const colours = catalog.build.baseColours.map((each) => ({ value: each.id, label: each.label }));
  const set = (part: Partial<PairSpec["base"]>) => sheet.setChoices({ base: { ...spec.base, ...part } });
  const inlayPrice = {
    none: "",
    "swap-letters": optionPrice(catalog, "inlay-swap-letters"),
    complex: optionPrice(catalog, "inlay-complex"),
  };
  return (
    <fieldset className="grid gap-4 border-l-2 border-rule pl-4">
      <legend className="mb-2 font-medium">{w.base}</legend>
      <SkiPair
        shape={shape}
        orientation="lying"
        view="base"
        baseColours={drawnBase(spec, catalog.build)}
        className="w-full max-w-measure"
        description={words.baseView}
      />
      <div className="grid max-w-measure gap-4 sm:grid-cols-2">
        <SelectField
          name="baseLeft"
          label={w.baseLeft}
          options={colours}
          value={spec.base.left}
          onChange={(event) => set({ left: event.target.value })}
        />
        <SelectField
          name="baseRight"
          label={w.baseRight}
          options={colours}
          value={spec.base.right}
          onChange={(event) => set({ right: event.target.value })}
        />
      </div>
      <RadioGroup
        name="inlay"
        label={w.inlay}
        choices={(["none", "swap-letters", "complex"] as const).map((value) => ({
          value,
          label: w.inlays[value],
          aside: inlayPrice[value],
        }))}
        value={spec.base.inlay}
        onChange={(inlay) => set({ inlay: inlay as PairSpec["base"]["inlay"] })}
      />
      {spec.base.inlay === "none" ? null : (
        <TextField
          name="inlayText"
          label={w.inlayText}
          maxLength={24}
          defaultValue={spec.base.inlayText ?? ""}
          error={sheet.errors["choices.base"]}
          onChange={(event) => {
            const { inlayText: _old, ...rest } = spec.base;
            const letters = event.target.value.trim();
            sheet.setChoices({ base: letters === "" ? rest : { ...rest, inlayText: letters } });
          }}
        />
      )}
    </fieldset>
  );
}
