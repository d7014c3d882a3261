/**
 * Brings the live cars: asks whether this browser draws 3D, then fetches code and car while the
 * drawings stand in. Whatever goes wrong on the way, the drawings stay.
 */
import { type ComponentType, type RefObject, useEffect, useMemo, useState } from 'react';
import { absentCarParts } from '../../build/fitted.ts';
import type { Mesh } from '../../car/mesh.ts';
import { useWork } from '../store.ts';
import { useViewing } from './viewing.ts';

interface LiveProps {
  readonly within: RefObject<HTMLElement | null>;
}
interface Brought {
  readonly Cars: ComponentType<{ mesh: Mesh; within: LiveProps['within'] }>;
  readonly mesh: Mesh;
  /** The mesh without these parts of the car. */
  readonly without: (mesh: Mesh, ids: ReadonlySet<string>) => Mesh;
}

/** The live cars, once they are there. */
export function Live({ within }: LiveProps) {
  const { car, build } = useWork();
  const [brought, setBrought] = useState<Brought & { of: string }>();
  const liveness = useViewing((viewing) => viewing.liveness);

  useEffect(() => {
    if (car.glb === undefined || !drawsInDepth()) {
      useViewing.setState({ liveness: car.glb === undefined ? 'unfetched' : 'impossible' });
      return;
    }
    let isWanted = true;
    useViewing.setState({ liveness: 'coming' });
    const { glb, id } = car;
    void bring(glb)
      .then((found) => {
        if (isWanted) setBrought({ ...found, of: id });
      })
      .catch(() => {
        if (isWanted) useViewing.setState({ liveness: 'unfetched' });
      });
    return () => {
      isWanted = false;
    };
  }, [car]);

  // One key for one set of absent parts, so that a mere change of finish builds no new shape.
  const absent = [...absentCarParts(build, car.sight.parts)].sort().join(' ');
  const mesh = useMemo(
    () => brought?.without(brought.mesh, new Set(absent.split(' '))),
    [brought, absent],
  );
  if (brought === undefined || mesh === undefined) return null;
  if (brought.of !== car.id || liveness === 'impossible') return null;
  return <brought.Cars mesh={mesh} within={within} />;
}

async function bring(glb: string): Promise<Brought> {
  const [{ LiveCars }, { readGlb }, { meshWithout }, bytes] = await Promise.all([
    import('./LiveCars.tsx'),
    import('../../car/glb.ts'),
    import('../../car/mesh.ts'),
    fetch(glb).then((answer) => {
      if (!answer.ok) throw new Error(`${glb} could not be fetched (${answer.status})`);
      return answer.arrayBuffer();
    }),
  ]);
  return { Cars: LiveCars, mesh: await readGlb(new Uint8Array(bytes)), without: meshWithout };
}

/** Whether this browser can draw 3D at all; asked once, on a canvas that is thrown away. */
function drawsInDepth(): boolean {
  const gl = document.createElement('canvas').getContext('webgl2');
  gl?.getExtension('WEBGL_lose_context')?.loseContext();
  return gl !== null;
}
