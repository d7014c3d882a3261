/** How the cars are looked at: lamp, distance, view, size, marks. */
import type { Build } from '../../../build/build.ts';
import { distances, lights, lightWords } from '../../cars/lamps.ts';
import { lookFrom, useViewing } from '../../live/viewing.ts';
import type { Car } from '../../opening/garage.ts';
import { view } from '../../store.ts';
import type { Command } from '../command.ts';

/** Everything about looking. */
export function stageCommands(build: Build, car: Car): Command[] {
  const { viewing } = build;
  const { liveness, places, place, isTrueSize, isMarking } = useViewing.getState();
  const isLive = liveness === 'live';
  const now = (is: boolean) => (is ? { note: 'as it is now' } : {});
  const looks = (isLive ? places : car.views).map(
    ({ id, name }): Command => ({
      id: `view ${id}`,
      name: `${name} view`,
      kind: 'view',
      also: 'look from see',
      ...now(place === id),
      run: () => lookFrom(id),
    }),
  );
  const lamps = lights.map(
    ({ value }): Command => ({
      id: `light ${value}`,
      name: `See by ${lightWords(value)}`,
      kind: 'light',
      also: `lamp illuminant ${value}`,
      ...now(viewing.light === value),
      run: () => view({ light: value }),
    }),
  );
  const away = distances.map(
    ({ value, name, note }): Command => ({
      id: `distance ${value}`,
      name: `See from ${name.toLowerCase()}, ${note}`,
      kind: 'distance',
      also: 'far near away',
      ...now(viewing.distanceMm === value),
      run: () => view({ distanceMm: value }),
    }),
  );
  const marking: Command = {
    id: 'marking',
    name: isMarking ? 'No longer mark differences' : 'Mark differences',
    kind: 'view',
    also: 'dashed lines alternatives differ',
    run: () => useViewing.setState({ isMarking: !isMarking }),
  };
  const size: Command = {
    id: 'true-size',
    name: isTrueSize ? 'Leave true size' : 'True size',
    kind: 'view',
    also: 'real as built',
    run: () => useViewing.setState({ isTrueSize: !isTrueSize }),
  };
  return [...looks, ...lamps, ...away, marking, ...(isLive ? [size] : [])];
}
