/**
 * `testspoon see RACK FINISH`: what one finish looks like once everything is dry.
 */
import type { Command } from 'commander';
import { didYouMean } from '../build/nearest.ts';
import type { LightId } from '../colour/illuminant.ts';
import { nearestName } from '../colour/name.ts';
import { hexFromLab } from '../colour/srgb.ts';
import { type Appearance, appearanceOf } from '../finish/appearance.ts';
import type { Finish } from '../finish/finish.ts';
import type { Rack } from '../finish/rack/rack.ts';
import { InputError, shown } from '../ground/problem.ts';
import type { Lab } from '../ground/unit.ts';
import { lightNames, lightOption, numberFrom, printJson, printLines } from './argument.ts';
import { told } from './draw/progress.ts';
import { harmless, type Screen, screenOf, styled } from './draw/screen.ts';
import { bar } from './draw/swatch.ts';
import { hanging } from './draw/table.ts';
import { rackNamed } from './rack.ts';
import { sourceName } from './source.ts';

interface Asked {
  readonly light: LightId;
  readonly coats?: number;
  readonly json?: true;
}

/** Adds the command. */
export function addSee(program: Command): void {
  program
    .command('see')
    .summary('tell what one finish looks like')
    .description('Tells what one finish looks like once everything is dry.')
    .argument('<rack>', 'id of a rack that comes along, or a rack file (JSON or CSV)')
    .argument('<finish>', 'id of a finish in it')
    .addOption(lightOption('look at it under this light').default('D65'))
    .option('--coats <count>', 'coats of candy or clear', numberFrom(1, 20, '', true))
    .option('--json', 'print the look as JSON')
    .action(see);
}

async function see(named: string, id: string, { light, coats, json }: Asked): Promise<void> {
  const { rack, problems } = await rackNamed(named);
  const finish = finishIn(rack, id, sourceName(named));
  if (problems.length > 0) {
    const count = problems.length === 1 ? 'one problem' : `${problems.length} problems`;
    process.stderr.write(`${harmless(named)} has ${count}; “testspoon check” tells them.\n`);
  }
  const seen = appearanceOf(finish, light, coats === undefined ? {} : { coats });
  const name = await told('Looking for a name', () => nearestName(seen.lab));
  if (json) {
    printJson({
      lab: seen.lab,
      xyz: seen.xyz,
      srgb: seen.hex,
      face: seen.face,
      flop: seen.flop,
      gloss60: seen.gloss60,
      roughness: seen.roughness,
      sheen: seen.sheen.name,
      name: name.name,
      indicative: seen.isIndicative,
    });
  } else {
    printLines(lookLines(screenOf(process.stdout), rack, finish, { light, coats, seen, name }));
  }
}

function finishIn({ finishes }: Rack, id: string, source: string): Finish {
  const finish = finishes.find((one) => one.id === id);
  if (finish !== undefined) return finish;
  const ids = finishes.map((one) => one.id);
  const some =
    ids.length > 12 ? `${ids.slice(0, 12).join(', ')} … (${ids.length})` : ids.join(', ');
  throw new InputError(
    [
      {
        place: 'FINISH',
        found: shown(id),
        expected: `a finish of this rack: ${some}`,
        mend: `Name one of the finishes in this rack.${didYouMean(id, ids)}`,
      },
    ],
    source,
  );
}

interface Looked {
  readonly light: LightId;
  readonly coats: number | undefined;
  readonly seen: Appearance;
  readonly name: { readonly name: string; readonly deltaE: number };
}

const indent = 12;

function lookLines(
  screen: Screen,
  rack: Rack,
  finish: Finish,
  { light, coats, seen, name }: Looked,
): string[] {
  const line = (title: string, text: string): string[] => hanging(screen, title, indent, text);
  const isDyed = finish.effect === 'candy' || finish.effect === 'clear';
  const count = isDyed ? (coats ?? finish.coats) : finish.coats;
  const what = [
    finish.effect,
    ...(finish.chemistry === 'none' ? [] : [finish.chemistry]),
    ...(finish.chemistry === 'none' ? [] : [count === 1 ? 'one coat' : `${count} coats`]),
  ];
  const turns = finish.effect !== 'solid' && !isSame(seen.face, seen.flop);
  return [
    ...hanging(screen, '', 0, styled(screen, 'bold', harmless(finish.name))),
    ...hanging(
      screen,
      '',
      0,
      `${what.join(', ')}; from ${harmless(rack.name)}, under ${lightNames[light]}`,
    ),
    '',
    ...(turns ? line('face', colourText(screen, seen.face)) : []),
    ...line(turns ? 'body' : 'colour', colourText(screen, seen.lab, seen.hex)),
    ...(turns ? line('flop', colourText(screen, seen.flop)) : []),
    ...line('gloss', `${round(seen.gloss60)} GU at 60°, ${seen.sheen.name}`),
    ...line('roughness', `${round(seen.roughness, 3)}, as renderers take it`),
    ...line(
      'name',
      `“${name.name}”, ΔE2000 ${round(name.deltaE, 1)} away: a hint, not an identity`,
    ),
    ...line('certainty', `${finish.provenance.how}; within about ΔE2000 ${round(seen.deltaE, 1)}`),
    ...(coats !== undefined && !isDyed
      ? line('coats', 'This finish hides what is under it; --coats changes candy and clear only.')
      : []),
    ...(seen.isClipped
      ? line('screen', 'No screen of the usual kind can show this colour; the nearest is given.')
      : []),
    ...(seen.isIndicative
      ? line(
          'indicative',
          'The spectrum was estimated from the colour, not measured; expect the real one to differ.',
        )
      : []),
  ];
}

const isSame = (one: Lab, other: Lab): boolean => one.every((value, at) => value === other[at]);

const colourText = (screen: Screen, lab: Lab, hex = hexFromLab(lab).hex): string =>
  `${bar(screen, hex, 8)}${hex}   L* ${round(lab[0])}  a* ${round(lab[1])}  b* ${round(lab[2])}`;

const round = (value: number, places = 0): string => {
  const text = value.toFixed(places).replace(/^-(0(?:\.0+)?)$/, '$1');
  return text.replace('-', '−');
};
