/** The running 3D studio, for everything else that wants a picture: spoons, exports. */
import { create } from 'zustand';
import type { LightId } from '../../colour/illuminant.ts';
import type { Finish } from '../../finish/finish.ts';
import type { Pose } from '../../stage/camera/pose.ts';
import type { Studio } from '../../stage/Scene.tsx';

interface Running {
  readonly studio: Studio | undefined;
  /** The pose the cars are seen in now, for a view of this aspect. */
  readonly poseFor: ((aspect: number) => Pose) | undefined;
  /** Address of a picture of a bowl sprayed with this finish, seen by this light. */
  readonly photograph: ((finish: Finish, light: LightId) => string | undefined) | undefined;
}

export const useStudio = create<Running>()(() => ({
  studio: undefined,
  poseFor: undefined,
  photograph: undefined,
}));
