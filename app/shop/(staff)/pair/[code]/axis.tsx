/** The pair on its one axis, as it is built. */
import { AxisChart } from "#app/_visuals/axis-chart.client.tsx";
import { pairLook, withThickness } from "#engine/scene";
import { buildOfRelease, type Context, type PairView } from "#services";

export async function PairAxis({ ctx, pair }: { readonly ctx: Context; readonly pair: PairView }) {
  const release = await buildOfRelease(ctx, { hash: pair.releaseHash });
  const look = release.ok ? pairLook(pair.spec, release.value) : null;
  if (!look) return null;
  const title = `${pair.modelName}, ${pair.spec.lengthCm} cm`;
  return (
    <AxisChart
      title={title}
      builds={[{ label: title, shape: look.shape, flex: pair.flex, mountMm: look.mountMm }]}
      pair={{ look: withThickness(look, pair.flex.stations), pictureBase: "/files/artwork/staff" }}
    />
  );
}
