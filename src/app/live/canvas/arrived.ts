/**
 * How do live cars come to a page? Asks whether this browser draws 3D, then fetches code and car
 * while the drawings stand in. Whatever goes wrong on the way, the drawings stay, and `viewing`
 * says how far it has come.
 */
import { type ComponentType, useEffect, useMemo, useState } from 'react';
import type { Build } from '../../../build/build.ts';
import { absentCarParts } from '../../../build/fitted.ts';
import type { Mesh } from '../../../car/mesh.ts';
import type { Car } from '../../opening/garage.ts';
import { useViewing } from '../viewing.ts';

/** What has come. */
export interface Arrived<Props> {
  /** What draws the cars. */
  readonly Cars: ComponentType<Props>;
  /** The car without the parts that the build leaves out. */
  readonly mesh: Mesh;
}
interface Brought<Props> extends Arrived<Props> {
  /** The mesh without these parts of the car. */
  readonly without: (mesh: Mesh, ids: ReadonlySet<string>) => Mesh;
}

/** The live cars of this build, once they are there; `load` fetches what draws them. */
export function useArrived<Props>(
  car: Car,
  build: Build,
  load: () => Promise<ComponentType<Props>>,
): Arrived<Props> | undefined {
  const [brought, setBrought] = useState<Brought<Props> & { of: string }>();
  const liveness = useViewing((viewing) => viewing.liveness);

  useEffect(() => {
    if (car.glb === undefined || !drawsInDepth()) {
      useViewing.setState({ liveness: car.glb === undefined ? 'unfetched' : 'impossible' });
      return;
    }
    let isWanted = true;
    useViewing.setState({ liveness: 'coming' });
    const { glb, id } = car;
    void bring(glb, load)
      .then((found) => {
        if (isWanted) setBrought({ ...found, of: id });
      })
      .catch(() => {
        if (isWanted) useViewing.setState({ liveness: 'unfetched' });
      });
    return () => {
      isWanted = false;
    };
  }, [car, load]);

  // One key for one set of absent parts, so that a mere change of finish builds no new shape.
  const absent = [...absentCarParts(build, car.sight.parts)].sort().join(' ');
  const mesh = useMemo(
    () => brought?.without(brought.mesh, new Set(absent.split(' '))),
    [brought, absent],
  );
  if (brought === undefined || mesh === undefined) return undefined;
  if (brought.of !== car.id || liveness === 'impossible') return undefined;
  return { Cars: brought.Cars, mesh };
}

async function bring<Props>(
  glb: string,
  load: () => Promise<ComponentType<Props>>,
): Promise<Brought<Props>> {
  const [Cars, { readGlb }, { meshWithout }, bytes] = await Promise.all([
    load(),
    import('../../../car/glb.ts'),
    import('../../../car/mesh.ts'),
    fetch(glb).then((answer) => {
      if (!answer.ok) throw new Error(`${glb} could not be fetched (${answer.status})`);
      return answer.arrayBuffer();
    }),
  ]);
  return { Cars, mesh: await readGlb(new Uint8Array(bytes)), without: meshWithout };
}

/** Whether this browser can draw 3D at all; asked once, on a canvas that is thrown away. */
function drawsInDepth(): boolean {
  const gl = document.createElement('canvas').getContext('webgl2');
  gl?.getExtension('WEBGL_lose_context')?.loseContext();
  return gl !== null;
}
