/**
 * Brings the live cars: asks whether this browser draws 3D, then fetches code and car while the
 * drawings stand in. Whatever goes wrong on the way, the drawings stay.
 */
import { type ComponentType, type RefObject, useEffect, useState } from 'react';
import type { Mesh } from '../../car/mesh.ts';
import { useWork } from '../store.ts';
import { useViewing } from './viewing.ts';

interface LiveProps {
  readonly within: RefObject<HTMLElement | null>;
}
type Cars = ComponentType<{ mesh: Mesh; within: LiveProps['within'] }>;

/** The live cars, once they are there. */
export function Live({ within }: LiveProps) {
  const { car } = useWork();
  const [brought, setBrought] = useState<{ Cars: Cars; mesh: Mesh; of: string }>();
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

  if (brought === undefined || brought.of !== car.id || liveness === 'impossible') return null;
  return <brought.Cars mesh={brought.mesh} within={within} />;
}

async function bring(glb: string): Promise<{ Cars: Cars; mesh: Mesh }> {
  const [{ LiveCars }, { readGlb }, bytes] = await Promise.all([
    import('./LiveCars.tsx'),
    import('../../car/glb.ts'),
    fetch(glb).then((answer) => {
      if (!answer.ok) throw new Error(`${glb} could not be fetched (${answer.status})`);
      return answer.arrayBuffer();
    }),
  ]);
  return { Cars: LiveCars, mesh: await readGlb(new Uint8Array(bytes)) };
}

/** Whether this browser can draw 3D at all; asked once, on a canvas that is thrown away. */
function drawsInDepth(): boolean {
  const gl = document.createElement('canvas').getContext('webgl2');
  gl?.getExtension('WEBGL_lose_context')?.loseContext();
  return gl !== null;
}
