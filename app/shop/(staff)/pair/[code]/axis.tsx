/** The pair on its one axis, as it is built. */
import { AxisChart } from "#app/_visuals/axis-chart.client.tsx";
import { drawnGraphic, drawnWood } from "#app/_visuals/pair-figure.tsx";
import { mountLineMm, shapeAtLength } from "#engine/geometry";
import { activeCatalog, type Context, type PairView } from "#services";

export async function PairAxis({ ctx, pair }: { readonly ctx: Context; readonly pair: PairView }) {
  const catalog = await activeCatalog(ctx);
  if (!catalog.ok) return null;
  const { build } = catalog.value.engine;
  const model = build.models.find((each) => each.id === pair.spec.model);
  if (!model) return null;
  const shape = shapeAtLength(model.shape, pair.spec.lengthCm);
  const title = `${pair.modelName}, ${pair.spec.lengthCm} cm`;
  return (
    <AxisChart
      title={title}
      builds={[{ label: title, shape, flex: pair.flex, mountMm: mountLineMm(shape, pair.spec.mount.offsetMm) }]}
      pair={{
        graphic: drawnGraphic(pair.spec, build, "/files/artwork/staff"),
        wood: drawnWood(pair.spec, build),
        bindingHalfMm: build.rules.print.bindingZoneMm / 2,
      }}
    />
  );
}
