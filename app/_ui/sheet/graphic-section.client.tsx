"use client";
import { HouseSwatch } from "#app/_visuals/house-swatch.tsx";
import type { EngineCatalog } from "#engine/assessment";
import { fillingPlacement, type GraphicSpec, type PairSpec, printCanvas } from "#engine/configuration";
import { shapeAtLength } from "#engine/geometry";
import { RadioGroup } from "../choice-group";
import { BaseFields } from "./base-fields.client";
import { Beside } from "./beside.client";
import { type GraphicPartProps, type GraphicSectionProps, optionPrice } from "./graphic-parts";
import { ClearWindow, Lettering } from "./lettering.client";
import { OwnPicture } from "./own-picture.client";

export function GraphicSection({ sheet, catalog, words, pictures }: GraphicSectionProps) {
  const spec = sheet.spec;
  const model = catalog.build.models.find((each) => each.id === spec?.model);
  if (!spec || !model) return <p className="text-pencil">{words.ski.empty}</p>;
  const shape = shapeAtLength(model.shape, spec.lengthCm);
  const set = (part: Partial<GraphicSpec>) => sheet.setChoices({ graphic: { ...spec.graphic, ...part } });
  const shared = { sheet, catalog, words, pictures, spec, shape, set };
  return (
    <>
      <Beside paths={["choices.graphic"]}>
        <RadioGroup
          name="graphicKind"
          label={words.graphic.kind}
          layout="chips"
          choices={[
            { value: "house", label: words.graphic.house },
            { value: "own", label: `${words.graphic.own}, ${optionPrice(catalog, "graphic-own")}` },
          ]}
          value={spec.graphic.kind}
          onChange={(kind) => set(kind === "own" ? ownKind(spec) : { kind: "house", house: houseOf(spec, catalog) })}
        />
      </Beside>
      {spec.graphic.kind === "house" ? <House {...shared} /> : <OwnPicture {...shared} />}
      <Layout {...shared} />
      <Lettering {...shared} />
      <ClearWindow {...shared} />
      <Beside paths={["choices.base"]}>
        <BaseFields {...shared} />
      </Beside>
    </>
  );
}

/** A house graphic lies across the pair for nothing, a picture of one's own does not: it begins on each ski. */
function ownKind({ graphic }: PairSpec): Partial<GraphicSpec> {
  return graphic.artwork === undefined && graphic.layout === "continuing"
    ? { kind: "own", layout: "same" }
    : { kind: "own" };
}

function houseOf(spec: PairSpec, catalog: EngineCatalog): string {
  return spec.graphic.house ?? catalog.build.houseGraphics[0]?.id ?? "";
}

function House({ catalog, words, spec, set }: GraphicPartProps) {
  return (
    <RadioGroup
      name="house"
      label={words.graphic.houseLabel}
      choices={catalog.build.houseGraphics.map((graphic) => ({
        value: graphic.id,
        label: (
          <span className="block">
            {graphic.label}
            <HouseSwatch graphic={graphic} className="mt-1 block h-auto w-full border border-rule" />
          </span>
        ),
      }))}
      value={spec.graphic.house}
      onChange={(house) => set({ house })}
    />
  );
}

function Layout({ words, spec, set, catalog, shape }: GraphicPartProps) {
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
    // What lies across both skis has to come off the one and stay on the other.
    const arrangement =
      spec.graphic.arrangement === "split" && layout !== "continuing" ? "ends" : spec.graphic.arrangement;
    set({ layout, ...(placement ? { placement } : {}), ...(arrangement ? { arrangement } : {}) });
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
